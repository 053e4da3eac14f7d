"""Compare the size our part has with the size an offer says it has; hold back what differs, with the numbers."""

from typing import Literal

from ...basics.value import Value
from .v_belts import BeltSize, read_belt, tolerance

Verdict = Literal["same size", "other duty", "different", "cannot be compared"]


class SizeCheck(Value, frozen=True, kw_only=True):
    """The verdict and why, in numbers. 'other duty': fits the groove but is made lighter or heavier."""

    verdict: Verdict
    words: str

    @property
    def vetoes(self) -> bool:
        """Whether the match is held back. What can't be compared neither speaks for nor against."""
        return self.verdict in ("different", "other duty")


NOT_COMPARED = SizeCheck(verdict="cannot be compared", words="")


def check_size(asked: str, *offered: str) -> SizeCheck:
    """Compare a designation we ask for with the first readable one among an offer's texts.

    A size that agrees never makes two parts the same: cord, cover and cogs decide too.
    """
    want = read_belt(asked)
    have = next((size for text in offered if (size := read_belt(text))), None)
    if want is None or have is None:
        return NOT_COMPARED
    return _compare(want, have)


def _compare(want: BeltSize, have: BeltSize) -> SizeCheck:
    both = f"asked {want.words()}; offered {have.words()}"
    if want.section.groove != have.section.groove:
        gap = abs(want.section.top_width - have.section.top_width)
        sits = "too narrow, it sinks in the groove and slips" if have.section.top_width < want.section.top_width else ""
        how = sits or "too wide, it rides on top of the groove"
        return SizeCheck(verdict="different", words=f"different section, {gap:.3f} in in width: {how} ({both})")
    apart, allowed = abs(want.outside - have.outside), tolerance(min(want.inside, have.inside))
    if apart > allowed:
        words = f"different length, {apart.normalize():f} in apart where {allowed} in is allowed ({both})"
        return SizeCheck(verdict="different", words=words)
    if want.section.light_duty != have.section.light_duty:
        return SizeCheck(verdict="other duty", words=f"{_duty(want)} ({both})")
    cogs = "; one is cogged, the other is not" if want.section.name != have.section.name else ""
    return SizeCheck(verdict="same size", words=f"same size within {allowed} in{cogs} ({both})")


def _duty(want: BeltSize) -> str:
    # One way only: a classical belt may take a light-duty belt's place where the smallest sheave is large enough
    # (distributors' catalogues: about 3 in for A, 5.4 in for B); a light-duty belt wears out early in its place.
    if want.section.light_duty:
        least = "3 in" if want.section.groove == "A" else "5.4 in"
        return f"fits but is heavier duty: it serves only where the smallest sheave is about {least} or more"
    return "fits but is light duty: lower power rating and shorter life, not accepted in place of a classical belt"
