"""Two roller chains compared: pitch, roller, inner width, strands, plates, length in pitches, chain or single link."""

from decimal import Decimal

from .size import ChainSize, shown
from .verdict import SizeCheck


def compare_chains(want: ChainSize, have: ChainSize) -> SizeCheck:
    """The verdict on two chains; symmetric but for the words. 40 = 08A; 40, 41 and 08B differ though the pitch
    agrees."""
    both = f"asked {want.words()}; offered {have.words()}"
    reason = _other_sprocket(want, have) or _other_length(want, have)
    if reason:
        return SizeCheck(verdict="different", words=f"{reason} ({both})")
    if want.number != have.number or want.heavy != have.heavy:
        return SizeCheck(verdict="other duty", words=f"runs on the same sprocket but its plates differ ({both})")
    said = "" if (want.pitches is None) == (have.pitches is None) else "; its length is said on one side only"
    link = "" if want.piece == have.piece else f"; {want.piece} asked, {have.piece} offered"
    return SizeCheck(verdict="same size", words=f"same chain{said}{link} ({both})")


def _other_sprocket(want: ChainSize, have: ChainSize) -> str:
    for what, one, other in (
        ("pitch", want.pitch, have.pitch),
        ("roller", want.roller, have.roller),
        ("inner width", want.width, have.width),
    ):
        if one != other:
            return f"different {what}, {shown(one)} mm asked and {shown(other)} mm offered"
    if want.strands != have.strands:
        return f"different number of strands, {want.strands} asked and {have.strands} offered"
    return ""


def _other_length(want: ChainSize, have: ChainSize) -> str:
    if want.pitches is not None and have.pitches is not None:
        apart = abs(want.pitches - have.pitches)
        # Feet and metres are rounded to the next pitch; a count of links is exact.
        allowed = Decimal(0) if want.counted and have.counted else Decimal("0.99")
        if apart > allowed:
            return f"different length, {shown(apart, '0.1')} pitches apart"
        return ""
    link = want if want.piece != "chain" else have
    if link.piece != "chain" and (want.pitches is not None or have.pitches is not None):
        return f"one is a length of chain, the other a single {link.piece}"
    if want.piece != have.piece and "chain" not in (want.piece, have.piece):
        return f"different link, {want.piece} asked and {have.piece} offered"
    return ""
