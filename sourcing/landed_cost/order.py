"""The landed cost of one order at one supplier: named lines that sum to the total to the cent.

Rounding: each goods line once at its total (supplier's currency), converted and rounded on its own; duty per line on
the converted goods; charges once per order. Shares of the charges go by value of goods, largest remainder.
"""

from collections.abc import Sequence
from decimal import Decimal

from ..basics.landed_cost import CostLine, LandedItem, LandedOrder, Missing, OrderItem
from ..basics.money import Money, percent_of, share_out, total, zero
from ..basics.value import changed
from .charges import FREIGHT_NAMES, Charges, charges_at
from .door import Door
from .quantity import break_at, goods_at


def landed_order(items: Sequence[OrderItem], door: Door) -> LandedOrder:
    """The order's cost at the door, every part a named line, each item with its share. Items must not be empty."""
    bare = [_bare_item(item, door) for item in items]
    order_value = total((item.goods for item in bare), door.terms.currency)
    charges = charges_at(order_value, door)
    lines = (*_goods_lines(bare, door), *_discount_lines(bare, door), *_duty_lines(bare, door), *charges.lines)
    landed = _with_shares(bare, charges, door)
    return LandedOrder(
        supplier=door.terms.supplier,
        supplier_name=door.terms.name,
        items=tuple(landed),
        lines=lines,
        total=total((line.amount for line in lines), door.currency),
        order_value=order_value,
        freight=total((line.amount for line in charges.lines if line.name in FREIGHT_NAMES), door.currency),
        core_charge=total((item.core_charge for item in landed), door.currency),
        missing=tuple(Missing(what=one) for one in charges.open_questions),
        refusal=charges.refusal,
    )


def line_cost(item: OrderItem, door: Door) -> tuple[Money, Money]:
    """What an item adds to an order before charges: (value in the supplier's currency, cost in the shop's)."""
    bare = _bare_item(item, door)
    return bare.goods, bare.landed


def _bare_item(item: OrderItem, door: Door) -> LandedItem:
    """The item without a share of charges."""
    full = goods_at(item.offer, item.ordered)
    goods = full - percent_of(full, door.terms.discount_percent)
    cost = door.rate.convert(goods)
    duty = percent_of(cost, door.terms.duty_percent) if door.terms.duty_percent is not None else zero(door.currency)
    core = (item.offer.core_charge or Decimal(0)) * item.ordered
    return LandedItem(
        item=item,
        unit_price=break_at(item.offer, item.ordered).price,
        goods=goods,
        goods_cost=cost,
        duty=duty,
        landed=cost + duty,
        surplus_cost=_surplus_cost(item, cost),
        core_charge=door.here(core),
    )


def _surplus_cost(item: OrderItem, cost: Money) -> Money:
    return Money(amount=cost.amount * item.surplus / item.ordered, currency=cost.currency).rounded()


def _goods_lines(bare: Sequence[LandedItem], door: Door) -> list[CostLine]:
    lines = []
    for one in bare:
        offer, each = one.item.offer, f"{one.unit_price} {one.item.offer.currency}"
        per = "" if offer.price_basis == 1 else f" per {offer.price_basis}"
        full = goods_at(offer, one.item.ordered)
        amount = one.goods_cost if not door.terms.discount_percent else door.rate.convert(full)
        rule = f"{one.item.ordered} x {each}{per}{door.conversion()}{_why_more(one.item)}"
        lines.append(CostLine(name=f"Goods {offer.supplier_number}", amount=amount, rule=rule))
    return lines


def _why_more(item: OrderItem) -> str:
    if not item.surplus:
        return ""
    pack = f"in packs of {item.offer.pack}, " if item.offer.pack > 1 else ""
    return f"; {pack}{item.needed} needed, {item.surplus} to the shelf"


def _discount_lines(bare: Sequence[LandedItem], door: Door) -> list[CostLine]:
    percent = door.terms.discount_percent
    if not percent:
        return []
    full = total((door.rate.convert(goods_at(one.item.offer, one.item.ordered)) for one in bare), door.currency)
    net = total((one.goods_cost for one in bare), door.currency)
    return [CostLine(name="Discount", amount=net - full, rule=f"{percent} % on each line")]


def _duty_lines(bare: Sequence[LandedItem], door: Door) -> list[CostLine]:
    percent = door.terms.duty_percent
    if percent is None:
        return []
    duty = total((one.duty for one in bare), door.currency)
    return [CostLine(name="Duty", amount=duty, rule=f"{percent} % of the goods, rounded line by line")]


def _with_shares(bare: Sequence[LandedItem], charges: Charges, door: Door) -> list[LandedItem]:
    together = total((line.amount for line in charges.lines), door.currency)
    shares = share_out(together, [item.goods_cost.amount for item in bare])
    return [_plus(item, share) for item, share in zip(bare, shares, strict=True)]


def _plus(item: LandedItem, share: Money) -> LandedItem:
    return changed(item, landed=item.landed + share)
