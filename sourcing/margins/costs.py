"""What an ordered line cost once it came: price charged, its share of the freight charged, the order's other charges.

What lies on the shelf afterwards is taken out at what was charged for it.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.money import Money, share_out, total, zero
from ..basics.order import PurchaseOrder, PurchaseOrderLine, Receipt
from ..basics.value import Value


class Came(Value, frozen=True, kw_only=True):
    """One receipt with the goods charged on each of its lines, in the supplier's currency (line number to money)."""

    receipt: Receipt
    charged: Mapping[int, Money]


class ReceivedCost(Value, frozen=True, kw_only=True):
    """A complete line as received, in the shop's currency: all of it less the surplus, its goods and its freight."""

    cost: Money
    goods: Money
    freight: Money
    surplus_cost: Money
    pieces: int


def received_costs(order: PurchaseOrder, came: Sequence[Came], currency: str) -> dict[int, ReceivedCost]:
    """The cost of every line of the order that has come in full, by line number. `currency` is the shop's."""
    goods: dict[int, Money] = {}
    freight: dict[int, Money] = {}
    pieces: dict[int, int] = {}
    for one in came:
        _add(goods, {at: _here(money, one.receipt.rate, currency) for at, money in one.charged.items()})
        _add(freight, _freight_shares(one, currency))
        for line in one.receipt.lines:
            pieces[line.line] = pieces.get(line.line, 0) + line.quantity
    others = _other_charges(order, currency)
    return {
        line.line: _cost(line, pieces[line.line], goods[line.line], freight[line.line], others[line.line])
        for line in order.lines
        if pieces.get(line.line, 0) >= line.ordered
    }


def _cost(line: PurchaseOrderLine, pieces: int, goods: Money, freight: Money, others: Money) -> ReceivedCost:
    """What came beyond the need lies on the shelf, whether a pack forced it or the supplier sent too much."""
    spare = Money(amount=goods.amount * (pieces - line.needed) / pieces, currency=goods.currency).rounded()
    cost = goods + freight + others - spare
    return ReceivedCost(cost=cost, goods=goods, freight=freight, surplus_cost=spare, pieces=pieces)


def _here(amount: Money, rate: Decimal, currency: str) -> Money:
    return Money(amount=amount.amount * rate, currency=currency).rounded()


def _add(sums: dict[int, Money], more: Mapping[int, Money]) -> None:
    for at, amount in more.items():
        sums[at] = sums[at] + amount if at in sums else amount


def _freight_shares(one: Came, currency: str) -> dict[int, Money]:
    lines = list(one.charged)
    freight = _here(one.receipt.freight, one.receipt.rate, currency)
    shares = share_out(freight, [one.charged[at].amount for at in lines])
    return dict(zip(lines, shares, strict=True))


def _other_charges(order: PurchaseOrder, currency: str) -> dict[int, Money]:
    """Charges a receipt does not state (duty, fees, the shop's own drive), as ordered, shared by value of goods."""
    if not order.lines:
        return {}
    others = total((line.amount for line in order.charges if line.name != "Freight"), currency)
    shares = share_out(others, [line.goods_cost.amount for line in order.lines])
    return {line.line: share for line, share in zip(order.lines, shares, strict=True)}


def ordered_cost(line: PurchaseOrderLine) -> Money:
    """The line's landed cost as ordered, without what goes on the shelf."""
    return line.landed - line.surplus_cost


def freight_of(order: PurchaseOrder, job: str, currency: str) -> Money:
    """The job's share of the order's freight and pick-up, as ordered, by value of goods."""
    together = total((line.amount for line in order.charges if line.is_freight), currency)
    shares = share_out(together, [line.goods_cost.amount for line in order.lines])
    mine = (share for line, share in zip(order.lines, shares, strict=True) if line.job == job)
    return total(mine, currency) if order.lines else zero(currency)
