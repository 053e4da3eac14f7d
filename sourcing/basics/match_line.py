"""One line of matching two files: a row of the sheet and a part it may be."""

from .match import Tier
from .value import Value


class MatchLine(Value, frozen=True, kw_only=True):
    """Row and part with their rows in the two files (the first row of a file is 1). No part: `part_row` is None.

    `rank` 1 is likeliest, 0 stands with no part. `against`: something speaks against it.
    """

    row: int
    number: str
    maker: str
    description: str
    part_row: int | None
    part: str
    part_maker: str
    part_description: str
    tier: Tier
    score: float
    rank: int
    against: bool
    reasons: tuple[str, ...]
    facts: tuple[int, ...] = ()
