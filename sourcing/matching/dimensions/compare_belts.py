"""Two belts compared: section, joined strands, ribs or teeth, width, length with its kind, duty.

Light duty against classical goes one way (distributors' lists): 4L = A and 5L = B fit the same groove; a classical
belt may take the light one's place where the smallest sheave is large enough, the light one does not take the
classical's.
"""

from decimal import Decimal

from .compare_lengths import compare_lengths, possible
from .interchange import look_alike_words
from .size import MM_PER_INCH, BeltSize, shown
from .tolerances import allowed_apart
from .verdict import SizeCheck

_PRINTED_APART = Decimal("0.3")
"""Millimetres two printings of one width may differ by rounding; belt and groove differ by more (own choice)."""

_NEAR = Decimal("0.8")
"""Millimetres (1/32 in) below which another section is not said to sink or ride: it only looks alike (own choice)."""


def compare_belts(want: BeltSize, have: BeltSize) -> SizeCheck:
    """The verdict on two belts; symmetric but for the words."""
    if "plain" in (want.section.family, have.section.family):
        return _other_strands(want, have) or _with_plain(want, have)
    if want.section.groove != have.section.groove:
        return _other_section(want, have)
    for differ in (_other_strands(want, have), _other_count(want, have), _other_width(want, have)):
        if differ:
            return differ
    return _same_groove(want, have)


def _both(want: BeltSize, have: BeltSize) -> str:
    return f"asked {want.words()}; offered {have.words()}"


def _different(reason: str, want: BeltSize, have: BeltSize) -> SizeCheck:
    return SizeCheck(verdict="different", words=f"{reason} ({_both(want, have)})")


def _unknown(reason: str, want: BeltSize, have: BeltSize, doubtful: bool = False) -> SizeCheck:
    words = f"{reason} ({_both(want, have)})"
    return SizeCheck(verdict="cannot be compared", words=words, doubtful=doubtful)


def _other_section(want: BeltSize, have: BeltSize) -> SizeCheck:
    alike = look_alike_words(want.section.groove, have.section.groove)
    if alike:
        return _different(f"different section: {alike}; a person decides", want, have)
    wide, offered = want.section.widths_mm(), have.section.widths_mm()
    flat = {"V-ribbed", "synchronous"} & {want.section.family, have.section.family}
    if flat or not wide or not offered:
        return _different(f"different kind of belt: {_kind(want)} asked, {_kind(have)} offered", want, have)
    gap = abs(wide[0] - offered[0])
    if gap < _NEAR:
        reason = "different section of nearly the same width: depth or use differs; a person decides"
        return _different(reason, want, have)
    how = (
        "too narrow, it sinks in the groove and slips"
        if offered[0] < wide[0]
        else "too wide, it rides on top of the groove"
    )
    return _different(f"different section, {_in_unit(gap, want)} in width: {how}", want, have)


def _kind(size: BeltSize) -> str:
    return f"{size.section.family} {size.section.name}"


def _in_unit(mm: Decimal, want: BeltSize) -> str:
    if want.section.unit == "in":
        return f"{(mm / MM_PER_INCH).quantize(Decimal('0.001'))} in"
    return f"{shown(mm, '0.1')} mm"


def _other_strands(want: BeltSize, have: BeltSize) -> SizeCheck | None:
    """Joined against single, or so many against so many: a joined belt is not made of single ones, nor they of it."""
    if want.strands == have.strands or (None in (want.strands, have.strands) and 1 not in (want.strands, have.strands)):
        return None
    reason = f"different number of joined strands, {_strands(want)} asked and {_strands(have)} offered"
    return _different(reason, want, have)


def _strands(size: BeltSize) -> str:
    return "several" if size.strands is None else str(size.strands)


def _other_count(want: BeltSize, have: BeltSize) -> SizeCheck | None:
    if want.count == have.count:
        return None
    what = "teeth" if want.section.family == "synchronous" else "ribs"
    return _different(f"different belt, {want.count} {what} asked and {have.count} offered", want, have)


def _other_width(want: BeltSize, have: BeltSize) -> SizeCheck | None:
    if want.section.family != "synchronous":
        return None
    if want.width is None or have.width is None:
        return _unknown("same pitch and teeth, but the width is not said on both sides", want, have)
    if want.width != have.width:
        return _different("different width", want, have)
    profile = "; the tooth profile is not said" if want.section.name.endswith("M") else ""
    return SizeCheck(verdict="same size", words=f"same teeth, pitch and width{profile} ({_both(want, have)})")


def _same_groove(want: BeltSize, have: BeltSize) -> SizeCheck:
    lengths = compare_lengths(want, have)
    if lengths.verdict != "same size":
        words = f"{lengths.words} ({_both(want, have)})"
        return SizeCheck(verdict=lengths.verdict, words=words, doubtful=lengths.doubtful)
    if None in (want.strands, have.strands):
        return _unknown("how many strands are joined is not said", want, have, want.strands != have.strands)
    if want.section.light_duty != have.section.light_duty:
        return SizeCheck(verdict="other duty", words=f"{_duty(want)} ({_both(want, have)})")
    if want.section.cogged != have.section.cogged:
        # Same groove and number; a cogged belt is not for drives that bend it back or clutch on its back (from memory).
        made = "fits but is made otherwise: one is cogged, the other is not"
        return SizeCheck(verdict="other duty", words=f"{made} ({_both(want, have)})")
    remarks = [lengths.words, *_remarks(want, have)]
    return SizeCheck(verdict="same size", words=f"{'; '.join(remarks)} ({_both(want, have)})")


def _remarks(want: BeltSize, have: BeltSize) -> list[str]:
    if want.section.unit == have.section.unit:
        return []
    return [note for note in dict.fromkeys((want.section.note, have.section.note)) if note]


def _duty(want: BeltSize) -> str:
    # Distributors' lists: about 3 in for A, 5.4 in for B; a light-duty belt wears out early in a classical one's place.
    if want.section.light_duty:
        least = "3 in" if want.section.groove == "A" else "5.4 in"
        return f"fits but is heavier duty: it serves only where the smallest sheave is about {least} or more"
    return "fits but is light duty: lower power rating and shorter life, not accepted in place of a classical belt"


def _with_plain(want: BeltSize, have: BeltSize) -> SizeCheck:
    """A belt told by width and length only can contradict; it confirms nothing, its section is not said."""
    apart = min(
        (abs(one - other) for one in want.section.widths_mm() for other in have.section.widths_mm()), default=None
    )
    if apart is None:
        return _unknown("a width and a length do not say the section", want, have)
    if apart > _PRINTED_APART and not _one_section(want, have):
        return _different(f"different width, {_in_unit(apart, want)} apart", want, have)
    allowed = allowed_apart(want, have).minus
    if not possible(want, have, allowed):
        return _different("different length, whatever kind of length is meant", want, have)
    return _unknown("width and length may agree, but section and kind of length are not said", want, have)


def _one_section(want: BeltSize, have: BeltSize) -> bool:
    """Two plain widths that tables print for one and the same section, such as 5/8 and 21/32 for B."""
    printed = {Decimal("15.875"), Decimal("16.66875")}
    return {*want.section.widths_mm()} <= printed and {*have.section.widths_mm()} <= printed
