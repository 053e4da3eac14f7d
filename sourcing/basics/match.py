"""What matching says of one row: which of our parts it may be, how sure, and why."""

from typing import Literal

from .value import Value

Tier = Literal["automatic", "candidate", "none"]
"""Automatic: by the same number or a path of good statements, nothing against it. Candidate: for a person to judge."""


class RowMatch(Value, frozen=True, kw_only=True):
    """One part a row may be. `row` counts the rows from 0; `rank` 1 is likeliest; `score` is between 0 and 1.

    A row that is like none of our parts has one entry with a blank `part` and rank 0. `against`: something speaks
    against it (a must-not, a size, a side); it is shown, and never accepted in bulk. `facts`: the level reached in each
    respect, kept with a person's answer so that the score can learn from it.
    """

    row: int
    part: str
    tier: Tier
    score: float
    rank: int
    reasons: tuple[str, ...]
    against: bool = False
    facts: tuple[int, ...] = ()


class Judged(Value, frozen=True, kw_only=True):
    """A person's answer to a candidate: the facts it was shown with, and whether it is the same part."""

    facts: tuple[int, ...]
    same: bool
