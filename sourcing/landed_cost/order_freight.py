"""All freight of one order: the supplier's rule, oversize goods, later deliveries; and what of it is not known."""

from collections.abc import Sequence

from ..basics.landed_cost import CostLine, OrderItem
from ..basics.money import from_minor
from .figures import Figures, oversize_pieces
from .freight import Unknown, freight_of_goods, line
from .prepared import Prepared


def freight_lines(
    items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared, deliveries: int
) -> tuple[list[CostLine], list[Unknown]]:
    """The freight of an order that comes in so many deliveries. `found` are the items' figures, in their order."""
    value = from_minor(sum(one.counted for one in found), at.terms.currency)
    by_rule = freight_of_goods(value, items, at.door)
    lines: list[CostLine] = []
    unknown: list[Unknown] = []
    if isinstance(by_rule, Unknown):
        unknown.append(by_rule)
    else:
        lines.extend(by_rule)
    lines.extend(_oversize(items, found, at))
    unknown.extend(_perhaps_oversize(items, found, at))
    lines.extend(_later(at, deliveries))
    return lines, unknown


def once_oversize(at: Prepared) -> int:
    """What an order pays once as soon as it holds oversize goods, in the shop's minor units."""
    rule = at.oversize
    return at.door.here(rule.charge).minor() if rule is not None and rule.per == "order" else 0


def later_delivery(at: Prepared) -> int:
    """What each delivery beyond the first costs, in the shop's minor units."""
    split = at.terms.split
    return at.door.here(split.later_charge).minor() if split.sends == "as ready" else 0


def _oversize(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared) -> list[CostLine]:
    rule, pieces = at.oversize, sum(item.ordered for item, one in zip(items, found, strict=True) if one.oversize)
    if rule is None or not pieces:
        return []
    if rule.per == "order":
        words = f"{rule.charge} {at.terms.currency} per order with oversize goods"
        return [line("Oversize", "freight", rule.charge, words, at.door)]
    words = f"{pieces} oversize x {rule.charge} {at.terms.currency}{at.door.conversion()}"
    amount = at.money(sum(one.freight for one in found))
    return [CostLine(name="Oversize", kind="freight", amount=amount, rule=words)]


def _perhaps_oversize(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared) -> list[Unknown]:
    """Goods of which it must be asked. No range where it would also change what counts towards freight by value."""
    rule, freight = at.oversize, at.terms.freight
    open_ones = [item for item, one in zip(items, found, strict=True) if one.oversize is None]
    if rule is None or freight is None or not open_ones:
        return []
    ranged = rule.counts or (freight.free_from is None and not freight.bands)
    if rule.per == "order" and ranged:
        if any(one.oversize for one in found):
            return []
        numbers = ", ".join(item.offer.supplier_number for item in open_ones)
        return [Unknown(what=_asked(numbers), least=0, most=once_oversize(at))]
    return [
        Unknown(
            what=_asked(item.offer.supplier_number),
            least=0 if ranged else None,
            most=oversize_pieces(item.ordered, at) if ranged else None,
        )
        for item in open_ones
    ]


def _asked(numbers: str) -> str:
    return f"whether {numbers} counts as oversize: the sheet does not state it"


def _later(at: Prepared, deliveries: int) -> list[CostLine]:
    each = later_delivery(at)
    if not each or deliveries <= 1:
        return []
    charge = f"{at.terms.split.later_charge} {at.terms.currency}{at.door.conversion()}"
    words = f"{deliveries} deliveries, each beyond the first {charge}"
    amount = at.money(each * (deliveries - 1))
    return [CostLine(name="Freight of later deliveries", kind="freight", amount=amount, rule=words)]
