"""The lines of an order that are about its goods: each item's goods, the line discount, the duty on the goods."""

from collections.abc import Sequence

from ..basics.landed_cost import CostLine, OrderItem
from .figures import Figures
from .prepared import Prepared
from .quantity import parts_of


def goods_lines(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared) -> list[CostLine]:
    """One line an item, before line discount."""
    return [
        CostLine(
            name=f"Goods {item.offer.supplier_number}",
            kind="goods",
            amount=at.money(one.full_here),
            rule=_goods_rule(item, at),
        )
        for item, one in zip(items, found, strict=True)
    ]


def discount_lines(found: Sequence[Figures], at: Prepared) -> list[CostLine]:
    """What the discount on each line takes off, as one line; none where the terms have no such discount."""
    if not at.discount:
        return []
    off = at.money(sum(one.goods - one.full_here for one in found))
    return [CostLine(name="Discount", kind="discount", amount=off, rule=f"{at.discount} % on each line")]


def duty_lines(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared) -> list[CostLine]:
    """The duty on the goods as one line; none where the terms know of no duty or the rate of no item is known."""
    known = [(item, one) for item, one in zip(items, found, strict=True) if len(one.duty_percents) == 1]
    if not known or (at.terms.duty_percent is None and not at.terms.duty_rates):
        return []
    percents = {one.duty_percents[0] for _, one in known}
    if len(percents) == 1 and len(known) == len(found):
        rule = f"{percents.pop()} % of the goods"
    else:
        rule = ", ".join(f"{one.duty_percents[0]} % of {item.offer.supplier_number}" for item, one in known)
    duty = at.money(sum(one.duty for _, one in known))
    return [CostLine(name="Duty", kind="duty", amount=duty, rule=f"{rule}, rounded line by line")]


def _goods_rule(item: OrderItem, at: Prepared) -> str:
    offer = item.offer
    per = "" if offer.price_basis == 1 else f" per {offer.price_basis}"
    parts = parts_of(offer, item.ordered, at.terms.breaks)
    pieces = " and ".join(f"{count} x {price} {offer.currency}{per}" for count, price in parts)
    return f"{pieces}{at.door.conversion()}{_why_more(item)}"


def _why_more(item: OrderItem) -> str:
    if not item.surplus:
        return ""
    pack = f"in packs of {item.offer.pack}, " if item.offer.pack > 1 else ""
    return f"; {pack}{item.needed} needed, {item.surplus} to the shelf"
