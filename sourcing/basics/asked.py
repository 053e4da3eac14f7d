"""What a need asks of its part beside the number: construction, side, and whether it is one piece, a pair or a set."""

from typing import Literal

from .value import Value

SoldAs = Literal["", "each", "pair", "matched set", "kit"]
"""Blank: not asked. A matched set is belts of one length, sold together; loose belts are not one."""

Side = Literal["", "left", "right"]

Cogs = Literal["", "cogged", "plain"]


class Asked(Value, frozen=True, kw_only=True):
    """Blank means: not asked. Words such as cord 'aramid' and cover 'wrapped' are compared with what an offer says.

    `pieces` is how many a matched set or kit holds; 0: not asked. Where a pair, matched set or kit is asked, a need's
    quantity counts pairs, sets and kits: one matched set of two belts is 1 and not 2.
    """

    cord: str = ""
    cover: str = ""
    cogs: Cogs = ""
    side: Side = ""
    sold_as: SoldAs = ""
    pieces: int = 0

    @property
    def set_of(self) -> int:
        """How many pieces one asked pair or set holds; 1 for single pieces, 0 where it is not known."""
        if self.sold_as == "pair":
            return 2
        if self.sold_as in ("matched set", "kit"):
            return self.pieces
        return 1

    def words(self) -> tuple[str, ...]:
        """What is asked, one text an attribute: 'cord aramid', 'matched set of 2'."""
        shape = {"": "", "each": "single pieces", "kit": "kit"}.get(self.sold_as, self.sold_as)
        if shape and self.sold_as != "each" and self.pieces:
            shape = f"{shape} of {self.pieces}"
        said = (
            self.cord and f"cord {self.cord}",
            self.cover and f"cover {self.cover}",
            self.cogs and f"{'cogged' if self.cogs == 'cogged' else 'without cogs'}",
            self.side and f"{self.side} side",
            shape,
        )
        return tuple(one for one in said if one)
