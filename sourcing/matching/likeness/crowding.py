"""Whether two numbers that are nearly alike say anything: among short and crowded numbers a near one is chance."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..numbers.near_numbers import NearNumbers
from ..numbers.surprise import NumberCrowd, crowd_of, surprise

TELLING = 0.25
"""From this chance on that a number is its near one with a slip, the nearness tells something."""


@dataclass(frozen=True)
class Crowding:
    """How the parts' numbers crowd, and how many of them stand one slip from each number of the sheet."""

    crowd: NumberCrowd
    neighbours: Mapping[str, int]

    def telling(self, key: str) -> bool:
        """Whether a part's number one slip from `key` is likelier to mean it than `TELLING`."""
        return surprise(key, max(1, self.neighbours.get(key, 1)), self.crowd) >= TELLING


def crowding(keys: Iterable[str], parts: list[str], index: NearNumbers) -> Crowding:
    """`keys`: the numbers of the sheet; `index` is made of the parts' numbers `parts`."""
    asked = sorted(set(keys))
    counts = index.neighbours(asked).tolist()
    return Crowding(crowd_of(parts, index), {key: count for key, count in zip(asked, counts, strict=True) if count})
