"""What a need asks of its part beside the number: construction, side, and whether it is one piece, a pair or a set."""

from typing import Literal

from .value import Value

SoldAs = Literal["", "each", "pair", "matched set", "kit"]
"""Blank: not asked. A matched set is belts of one length, sold together; loose belts are not one."""

Side = Literal["", "left", "right"]

Cogs = Literal["", "cogged", "plain"]


class Asked(Value, frozen=True, kw_only=True):
    """Blank means: not asked. Words such as cord 'aramid' and cover 'wrapped' are compared with what an offer says.

    `pieces` is how many a matched set or kit holds; 0: not asked.
    """

    cord: str = ""
    cover: str = ""
    cogs: Cogs = ""
    side: Side = ""
    sold_as: SoldAs = ""
    pieces: int = 0
