"""How much a near number means: the chance that a new number is a slip of the key it is near, not a sister of it.

A sheet's number that is none of ours either is one of ours with a slip in it, or another article's. Other articles have
near numbers too: how many, the table itself tells, for its own keys are a sample of what numbers there are. With

    s  the share of unknown numbers that are slips (`SLIPS`),
    c  how many keys another article's number has one slip away, on average (`NumberCrowd`, at least `SISTERS`),
    n  how many keys this number has there,

a slip makes n likely as 1 + Poisson(c), another article as Poisson(c); by Bayes the odds of a slip are s·n to
(1 - s)·c, and each of the n keys is as likely the one. So each is the one with s / (s·n + (1 - s)·c). Where this number
stands in a thicker crowd than its like, the n - 1 others are the better measure of c, and the larger of both is taken.
"""

from collections import defaultdict
from collections.abc import Sequence
from math import ceil

from ...basics.value import Value
from .near_numbers import NearNumbers
from .slip_kinds import SHORTEST, is_mixed

SLIPS = 0.02
"""Of numbers that are none of ours, the share that is one of ours with a slip (common practice, no source)."""
SISTERS = 0.002
"""However empty the table looks, so many keys at least stand one slip from another article's number: sister parts,
new generations (common practice, no source). It keeps the weight of the rarest number below 0.92."""
SAMPLE = 2_000


class NumberCrowd(Value, frozen=True, kw_only=True):
    """How many keys of a table stand one slip from one of its own keys, on average, by the sort of key.

    `near` is by `sort_of`; `keys` is how many the table has.
    """

    keys: int
    near: dict[str, float]

    def expected(self, key: str) -> float:
        """How many keys of the table another article's number of this sort has one slip away."""
        return max(SISTERS, self.near.get(sort_of(key), 0.0))


def sort_of(key: str) -> str:
    """'5 figures', '9 mixed', '6 letters': length and alphabet, by which numbers are crowded or not."""
    alphabet = "figures" if key.isdigit() else "mixed" if is_mixed(key) else "letters"
    return f"{len(key)} {alphabet}"


def crowd_of(keys: Sequence[str], index: NearNumbers, sample: int = SAMPLE) -> NumberCrowd:
    """The crowd of a table's keys, `index` being made of them; of each sort up to `sample` keys, evenly spread."""
    sorts: dict[str, list[str]] = defaultdict(list)
    for key in dict.fromkeys(keys):
        if len(key) >= SHORTEST:
            sorts[sort_of(key)].append(key)
    near = {}
    for sort, members in sorts.items():
        asked = members[:: ceil(len(members) / sample)]
        near[sort] = index.neighbours(asked).sum().item() / len(asked)
    return NumberCrowd(keys=len(keys), near=near)


def surprise(key: str, near_count: int, universe: NumberCrowd, slips: float = SLIPS) -> float:
    """The weight, between 0 and 1, of one near number: the chance that `key` is it with a slip.

    `near_count`: how many keys of the table are one slip away; 0 gives 0. See the head of this file for the formula.
    """
    if near_count < 1:
        return 0.0
    chance = max(universe.expected(key), near_count - 1.0)
    return slips / (slips * near_count + (1 - slips) * chance)
