"""What comparing two sizes says: the verdict, why in numbers, and whether the match is held back for a person."""

from typing import Literal

from ...basics.value import Value

Verdict = Literal["same size", "other duty", "different", "cannot be compared"]


class SizeCheck(Value, frozen=True, kw_only=True):
    """The verdict and why, in numbers. 'other duty': fits the groove or seat but is made lighter, heavier or otherwise.

    `doubtful`: nothing could be proved, and what was read is a reason for a person to look before it is taken.
    """

    verdict: Verdict
    words: str
    doubtful: bool = False

    @property
    def vetoes(self) -> bool:
        """Whether the match is held back. What can't be compared neither speaks for nor against, unless it is
        doubtful."""
        return self.verdict in ("different", "other duty") or self.doubtful

    @property
    def caution(self) -> int:
        """How much it asks for a person: 4 different, 3 other duty, 2 doubtful, 1 same size, 0 cannot be compared."""
        if self.verdict == "different":
            return 4
        if self.verdict == "other duty":
            return 3
        if self.doubtful:
            return 2
        return 1 if self.verdict == "same size" else 0


NOT_COMPARED = SizeCheck(verdict="cannot be compared", words="")
