"""What the lines of an order cost as it stands now, in whole minor units of the shop's currency."""

from decimal import Decimal

from ..basics.margin_facts import OrderedLine, Purchase
from ..basics.value import Value
from .minor import digits, half_up, minor, part_of, shared

OLD_CARRIER = "Freight"
OLD_FEE = "Small-order fee"
"""The names these charges had in orders kept before kinds were written down."""


class AsOrdered(Value, frozen=True, kw_only=True):
    """A line as ordered. `goods` is for all pieces, `surplus` what of it goes on the shelf, `charges` all the rest of
    its landed cost. Of the charges, `carrier`, `drive` and `small` are its shares of the carrier's freight, of the
    shop's own drive and of the small-order fee; `papers` its share of what a supplier's paper may state beside goods
    and freight (handling, small-order fee)."""

    line: OrderedLine
    pieces: int
    goods: int
    surplus: int
    charges: int
    carrier: int
    drive: int
    small: int
    papers: int

    @property
    def need(self) -> int:
        """The goods of the need, without what goes on the shelf."""
        return self.goods - self.surplus


def as_ordered(purchase: Purchase, places: int, came: frozenset[int]) -> list[AsOrdered]:
    """The lines still wanted, and those of which something came (`came`, line numbers)."""
    pieces = purchase.pieces
    kept = [line for line in purchase.order.lines if pieces.get(line.line, line.ordered) or line.line in came]
    placed = [digits(line.goods_cost, places) for line in kept]
    goods = [_goods(line, purchase, one, places) for line, one in zip(kept, placed, strict=True)]
    charges = _charges(kept, placed, goods, purchase, places)
    carrier, drive, small, papers = (shared(one, goods) for one in _by_kind(purchase, places))
    return [
        AsOrdered(
            line=line,
            pieces=pieces.get(line.line, line.ordered),
            goods=goods[at],
            surplus=_surplus(line, purchase, (goods[at], placed[at]), places),
            charges=charges[at],
            carrier=carrier[at],
            drive=drive[at],
            small=small[at],
            papers=papers[at],
        )
        for at, line in enumerate(kept)
    ]


def _goods(line: OrderedLine, purchase: Purchase, placed: int, places: int) -> int:
    """As placed, or in proportion to what it costs now in the supplier's currency."""
    now = purchase.goods.get(line.line) if purchase.goods else None
    if now is None:
        return placed
    before = Decimal(line.goods.amount)
    return half_up(placed * now / before) if before else minor(now * (purchase.order.rate or Decimal(1)), places)


def _surplus(line: OrderedLine, purchase: Purchase, of: tuple[int, int], places: int) -> int:
    goods, placed = of
    pieces = purchase.pieces.get(line.line, line.ordered) if purchase.pieces else line.ordered
    if pieces != line.ordered:
        return part_of(goods, max(0, pieces - line.needed), pieces)
    surplus = digits(line.surplus_cost, places)
    return part_of(surplus, goods, placed) if surplus else 0


def _charges(
    kept: list[OrderedLine], placed: list[int], goods: list[int], purchase: Purchase, places: int
) -> list[int]:
    """Each line's own; where lines were cancelled, the order's charges fall on those that are left."""
    own = [digits(line.landed, places) - one for line, one in zip(kept, placed, strict=True)]
    if len(kept) == len(purchase.order.lines):
        return own
    every = sum(digits(line.landed, places) - digits(line.goods_cost, places) for line in purchase.order.lines)
    more = shared(every - sum(own), goods)
    return [mine + share for mine, share in zip(own, more, strict=True)]


def _by_kind(purchase: Purchase, places: int) -> tuple[int, int, int, int]:
    """The order's carrier freight, own drive, small-order fee, and what a supplier's paper may state beside freight.

    The shop's own drive stands on no paper of a supplier.
    """
    carrier = drive = small = handling = 0
    for one in purchase.order.charges:
        amount = minor(one.amount.amount, places)
        if one.kind == "freight" or (not one.kind and one.name == OLD_CARRIER):
            carrier += amount
        elif one.is_freight:
            drive += amount
        elif one.kind == "small-order fee" or (not one.kind and one.name == OLD_FEE):
            small += amount
        elif one.kind == "handling":
            handling += amount
    return carrier, drive, small, small + handling
