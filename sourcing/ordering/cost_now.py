"""What the lines of a placed order cost as it stands now: prices confirmed since, later deliveries, lines dropped.

Everything nobody has changed stays as the order kept it, to the cent.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.money import Money, share_out, total, zero
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.order_now import LineNow, OrderNow
from ..basics.value import Value

LATER = "Freight of later deliveries"
"""The name of the line an order keeps its later deliveries under."""


class LineCost(Value, frozen=True, kw_only=True):
    """A line's landed cost without what goes on the shelf, the freight in it, and the goods of one piece, not rounded;
    all in the shop's currency."""

    cost: Money
    freight: Money
    unit_cost: Money


class Further(Value, frozen=True, kw_only=True):
    """What happens beside what the order kept. Money in the shop's currency.

    `deliveries`: in how many goes the order comes in all, each beyond the first at `later_each`. `waiting`: lines of
    which something is still to come; they bear that freight. `dropped`: lines that would be cancelled.
    `freight_more`: what freight of the rest rises by because of it.
    """

    later_each: Money
    deliveries: int = 1
    waiting: tuple[int, ...] = ()
    dropped: tuple[int, ...] = ()
    freight_more: Money | None = None


def costs_now(now: OrderNow, further: Further) -> dict[int, LineCost]:
    """The cost of each line that stands, by its number. An order of which nothing is left costs nothing.

    Charges of lines that fall away are borne by the rest, but for duty on them, which is then not due.
    """
    kept = [one for one in now.lines if one.pieces and one.line.line not in further.dropped]
    if not kept:
        return {}
    shares = _charges(now.order, kept)
    more = _more_freight(now.order, kept, further)
    return {one.line.line: _cost(now.order, one, shares, more) for one in kept}


def goods_here(order: PurchaseOrder, one: LineNow) -> Money:
    """The line's goods in the shop's currency: as kept where nothing changed, else at the rate of the order."""
    line = one.line
    if one.goods == line.goods:
        return line.goods_cost
    return Money(amount=one.goods.amount * _rate(order, line), currency=line.goods_cost.currency).rounded()


def _rate(order: PurchaseOrder, line: PurchaseOrderLine) -> Decimal:
    if order.rate is not None:
        return order.rate
    return line.goods_cost.amount / line.goods.amount if line.goods.amount else Decimal(1)


def _charges(order: PurchaseOrder, kept: Sequence[LineNow]) -> dict[int, tuple[Money, Money]]:
    """For each line that stays what it bears beyond its goods: as kept and its part of what others leave; and the
    freight in that."""
    currency = order.landed_total.currency
    names = [line.line for line in order.lines]
    goods = [line.goods_cost.minor() for line in order.lines]
    freight = total((one.amount for one in order.charges if one.is_freight), currency)
    others = total((one.amount for one in order.charges if not one.is_freight and one.kind != "duty"), currency)
    by_line = {
        sort: dict(zip(names, share_out(amount, goods), strict=True))
        for sort, amount in (("freight", freight), ("others", others))
    }
    stay = [one.line.line for one in kept]
    weights = [one.line.goods_cost.minor() for one in kept]
    gone = [name for name in names if name not in stay]
    left = {
        sort: dict(zip(stay, share_out(total((shares[name] for name in gone), currency), weights), strict=True))
        for sort, shares in by_line.items()
    }
    result = {}
    for one in kept:
        at, line = one.line.line, one.line
        beside = line.landed - line.goods_cost + left["freight"][at] + left["others"][at]
        result[at] = (beside, by_line["freight"][at] + left["freight"][at])
    return result


def _more_freight(order: PurchaseOrder, kept: Sequence[LineNow], further: Further) -> Mapping[int, Money]:
    """Later deliveries beyond those the order was reckoned with, on the lines that wait; freight that rises, on all."""
    currency = order.landed_total.currency
    reckoned = total((one.amount for one in order.charges if one.name == LATER), currency)
    later = further.later_each * max(further.deliveries - 1, 0) - reckoned
    waiting = [one for one in kept if one.line.line in further.waiting]
    found = {one.line.line: zero(currency) for one in kept}
    if later.amount > 0 and waiting:
        _add(found, waiting, later)
    if further.freight_more is not None:
        _add(found, kept, further.freight_more)
    return found


def _add(found: dict[int, Money], some: Sequence[LineNow], amount: Money) -> None:
    shares = share_out(amount, [one.line.goods_cost.minor() for one in some])
    for one, share in zip(some, shares, strict=True):
        found[one.line.line] += share


def _cost(
    order: PurchaseOrder, one: LineNow, charges: Mapping[int, tuple[Money, Money]], more: Mapping[int, Money]
) -> LineCost:
    at, goods = one.line.line, goods_here(order, one)
    beside, freight = charges[at]
    return LineCost(
        cost=goods - _surplus(one, goods) + beside + more[at],
        freight=freight + more[at],
        unit_cost=Money(amount=goods.amount / one.pieces, currency=goods.currency),
    )


def _surplus(one: LineNow, goods: Money) -> Money:
    if goods == one.line.goods_cost and one.pieces == one.line.ordered:
        return one.line.surplus_cost
    over = max(one.pieces - one.line.needed, 0)
    return Money(amount=goods.amount * over / one.pieces, currency=goods.currency).rounded()
