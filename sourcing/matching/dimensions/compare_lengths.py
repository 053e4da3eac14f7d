"""Two belt lengths compared as one kind, by the additions tables print; where sources differ too much, there is no
answer."""

from decimal import Decimal

from .size import MM_PER_INCH, BeltSize, Length, LengthKind, Unit, in_mm, kinds_of, lengths_as, shown
from .tolerances import allowed_apart
from .verdict import SizeCheck

_ORDER: tuple[LengthKind, ...] = ("outside", "inside", "datum", "effective", "pitch", "nominal")
"""Which of two kinds is compared in, the same whichever belt is asked for. Outside first: belts of one groove and
different thickness (B and 5L) sit alike at their tops."""


def compare_lengths(want: BeltSize, have: BeltSize) -> SizeCheck:
    """'same size' within the tolerance by every source, 'different' by every source, else 'cannot be compared'.

    Sources differ (a trade rule of whole inches against geometry): an answer that hangs on the choice is doubtful.
    """
    allowed = allowed_apart(want, have)
    if "not said" in (want.length.kind, have.length.kind):
        return _not_said(want, have, allowed.minus)
    kind = _common_kind(want, have)
    if kind is None:
        reason = f"{want.length.kind} and {have.length.kind} length can't be converted: no published addition"
        return SizeCheck(verdict="cannot be compared", words=reason, doubtful=True)
    gaps = _gaps(lengths_as(want, kind), lengths_as(have, kind))
    limit = _shown(allowed.minus, want.length.unit)
    if max(gaps) <= allowed.minus:
        own = (
            "" if allowed.source.startswith(("IP-20", "DIN")) and "own" not in allowed.source else f", {allowed.source}"
        )
        return SizeCheck(verdict="same size", words=f"same size within {limit}{own}{_allowance(gaps, want)}")
    if min(gaps) > allowed.minus:
        words = f"different length, {_range(gaps, want)} apart where {limit} is allowed"
        return SizeCheck(verdict="different", words=words)
    words = f"{kind} lengths are {_range(gaps, want)} apart by different sources, {limit} is allowed: a person decides"
    return SizeCheck(verdict="cannot be compared", words=words, doubtful=True)


def possible(want: BeltSize, have: BeltSize, allowed: Decimal) -> bool:
    """Whether any kinds of length that may be meant bring the two within `allowed` millimetres."""
    said = [size for size in (want, have) if size.length.kind != "not said"]
    if len(said) == 2:
        pairs = [(one, other) for one in _all_kinds(want) for other in _all_kinds(have) if one.kind == other.kind]
        return not pairs or any(abs(one.mm() - other.mm()) <= allowed for one, other in pairs)
    if said:
        unsaid = have if said[0] is want else want
        return any(abs(length.mm() - unsaid.length.mm()) <= allowed for length in _all_kinds(said[0]))
    apart = abs(want.length.mm() - have.length.mm())
    if want.section.family == have.section.family == "plain":
        return apart <= allowed + INSIDE_TO_OUTSIDE * max(want.section.widths_mm())
    return any(abs(apart - gap) <= allowed for gap in _between_kinds(want, have))


INSIDE_TO_OUTSIDE = 5
"""No more than so many times the top width lie between inside and outside length (A 4, E 4 by the trade rule; own
choice)."""


def _common_kind(want: BeltSize, have: BeltSize) -> LengthKind | None:
    kinds = {want.length.kind, have.length.kind}
    return next((kind for kind in _ORDER if kind in kinds and lengths_as(want, kind) and lengths_as(have, kind)), None)


def _gaps(wanted: tuple[Length, ...], offered: tuple[Length, ...]) -> list[Decimal]:
    return sorted({abs(one.mm() - other.mm()) for one in wanted for other in offered})


def _all_kinds(size: BeltSize) -> list[Length]:
    return [length for kind in kinds_of(size.section) for length in lengths_as(size, kind)] or [size.length]


def _between_kinds(want: BeltSize, have: BeltSize) -> set[Decimal]:
    """Millimetres between any two kinds of length of the section that is known."""
    known = want.section if want.section.additions else have.section
    steps = {Decimal(0), *(in_mm(one.add, known.unit) for one in known.additions)}
    return {abs(one - other) for one in steps for other in steps}


def _not_said(want: BeltSize, have: BeltSize, allowed: Decimal) -> SizeCheck:
    if not possible(want, have, allowed):
        return SizeCheck(verdict="different", words="different length, whatever kind of length is meant")
    if want.length.kind == have.length.kind:
        words = "neither says whether its length is inside, datum or outside"
    else:
        words = "lengths may agree, but one does not say whether it is inside, datum or outside"
    return SizeCheck(verdict="cannot be compared", words=words)


def _shown(mm: Decimal, unit: Unit) -> str:
    return f"{shown(mm / MM_PER_INCH)} in" if unit == "in" else f"{shown(mm, '0.1')} mm"


def _range(gaps: list[Decimal], want: BeltSize) -> str:
    least, most = _shown(gaps[0], want.length.unit), _shown(gaps[-1], want.length.unit)
    return least if least == most else f"{least.split()[0]} to {most}"


def _allowance(gaps: list[Decimal], want: BeltSize) -> str:
    if len(gaps) == 1:
        return ""
    return f"; sources for converting differ by {_shown(gaps[-1] - gaps[0], want.length.unit)}"
