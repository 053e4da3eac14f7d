"""Two roller chains compared: pitch, roller, inner width, strands, plates, length in pitches, chain or single link."""

from decimal import Decimal

from .plain_chain import ROUNDED
from .size import MM_PER_INCH, ChainSize, shown
from .verdict import SizeCheck

_NEXT_PITCH = Decimal("0.99")
"""Feet and metres are rounded to the next pitch; a count of links is exact."""


def compare_chains(want: ChainSize, have: ChainSize) -> SizeCheck:
    """The verdict on two chains; symmetric but for the words. 40 = 08A; 40, 41 and 08B differ though the pitch
    agrees."""
    both = f"asked {want.words()}; offered {have.words()}"
    reason = _other_sprocket(want, have) or _other_length(want, have)
    if reason:
        return SizeCheck(verdict="different", words=f"{reason} ({both})")
    if want.roller is None or have.roller is None:
        words = f"pitch and width may agree, but roller and plates are not said ({both})"
        return SizeCheck(verdict="cannot be compared", words=words)
    if want.number != have.number or want.heavy != have.heavy:
        return SizeCheck(verdict="other duty", words=f"runs on the same sprocket but its plates differ ({both})")
    open_question = _open(want, have)
    if open_question:
        apart = (want.bare, want.strands) != (have.bare, have.strands)
        return SizeCheck(verdict="cannot be compared", words=f"{open_question} ({both})", doubtful=apart)
    said = "" if _says_length(want) == _says_length(have) else "; its length is said on one side only"
    link = "" if want.piece == have.piece else f"; {want.piece} asked, {have.piece} offered"
    return SizeCheck(verdict="same size", words=f"same chain{said}{link} ({both})")


def _other_sprocket(want: ChainSize, have: ChainSize) -> str:
    plain = want.roller is None or have.roller is None
    for what, one, other, allowed in (
        ("pitch", want.pitch, have.pitch, Decimal(0)),
        ("roller", want.roller, have.roller, Decimal(0)),
        ("inner width", want.width, have.width, ROUNDED if plain else Decimal(0)),
    ):
        if one is not None and other is not None and abs(one - other) > allowed:
            return f"different {what}, {shown(one)} mm asked and {shown(other)} mm offered"
    if want.strands != have.strands and (None not in (want.strands, have.strands) or 1 in (want.strands, have.strands)):
        return f"different number of strands, {_strands(want)} asked and {_strands(have)} offered"
    return ""


def _strands(size: ChainSize) -> str:
    return "several" if size.strands is None else str(size.strands)


def _open(want: ChainSize, have: ChainSize) -> str:
    """What nobody can tell though nothing differs: several strands without a number, a length without a unit."""
    if None in (want.strands, have.strands):
        return "how many strands is not said"
    if (want.bare is not None and _says_length(have)) or (have.bare is not None and _says_length(want)):
        return "the length may agree, but links or feet is not said"
    return ""


def _says_length(size: ChainSize) -> bool:
    return size.pitches is not None or size.bare is not None


def _other_length(want: ChainSize, have: ChainSize) -> str:
    if _says_length(want) and _says_length(have):
        apart = min(_apart(one, other) for one in _lengths(want) for other in _lengths(have))
        # Whatever may be meant, they do not meet.
        return f"different length, {shown(apart, '0.1')} pitches apart" if apart else ""
    link = want if want.piece != "chain" else have
    if link.piece != "chain" and (_says_length(want) or _says_length(have)):
        return f"one is a length of chain, the other a single {link.piece}"
    if want.piece != have.piece and "chain" not in (want.piece, have.piece):
        return f"different link, {want.piece} asked and {have.piece} offered"
    return ""


def _lengths(size: ChainSize) -> list[tuple[Decimal, bool]]:
    """Pitches that may be meant, and whether each is a count: a bare figure is links or feet."""
    if size.pitches is not None:
        return [(size.pitches, size.counted)]
    bare = size.bare or Decimal(0)
    return [(bare, True), (bare * 12 * MM_PER_INCH / size.pitch, False)]


def _apart(one: tuple[Decimal, bool], other: tuple[Decimal, bool]) -> Decimal:
    """Pitches between two lengths; none where rounding explains it."""
    gap = abs(one[0] - other[0])
    return gap if gap > (Decimal(0) if one[1] and other[1] else _NEXT_PITCH) else Decimal(0)
