"""A placed order's cost as kept beside what it would be now, part by part."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from ..basics.landed_cost import CostLine, LandedOrder
from ..basics.landed_view import CostDifference
from ..basics.money import Money, from_minor, total
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.value import changed

DISCOUNT = "Discount"
"""The name of the line that says what the discount on each line takes off."""


def order_differences(order: PurchaseOrder, now: LandedOrder | None) -> tuple[CostDifference, ...]:
    """The goods of each line, the discount on them, then every charge by its name; kept ones first. They sum to both.

    Goods are before the discount, as in every other list of costs. A kept order does not hold that figure: where it
    can't be worked out to the cent (another currency, prices of several breaks) the goods are told after discount.
    """
    before = [_before_discount(line, order.discount_percent) for line in order.lines]
    known = [one for one in before if one is not None]
    found = _goods(order, known, now) if len(known) == len(before) else _goods_after_discount(order, now)
    return (*found, *_charges(order, now))


def less(now: Money | None, kept: Money | None) -> Money | None:
    """None where one is not known, or where the shop's currency has changed since."""
    if now is None or kept is None or now.currency != kept.currency:
        return None
    return now - kept


def _before_discount(line: PurchaseOrderLine, percent: Decimal) -> int | None:
    """The line's goods without discount in minor units of the shop's currency; None where that can't be told."""
    if not percent:
        return line.goods_cost.minor()
    if line.goods.currency != line.goods_cost.currency:
        return None
    full = Money(amount=line.unit_price * line.ordered / line.price_basis, currency=line.goods.currency).rounded()
    off = Money(amount=full.amount * percent / 100, currency=full.currency).rounded()
    return full.minor() if full - off == line.goods else None


def _goods(order: PurchaseOrder, kept: Sequence[int], now: LandedOrder | None) -> Iterator[CostDifference]:
    lines = _lines_of(now, "Goods")
    for line, cents, at in zip(order.lines, kept, range(len(kept)), strict=True):
        same = lines[at] if at < len(lines) else None
        was = from_minor(cents, line.goods_cost.currency)
        name = f"Goods {line.supplier_number}"
        yield _difference(name, was, same.amount if same else None, same.rule if same else "")
    off = [
        line.goods_cost - from_minor(cents, line.goods_cost.currency)
        for line, cents in zip(order.lines, kept, strict=True)
    ]
    kept_off = {DISCOUNT: total(off, off[0].currency)} if order.discount_percent else {}
    yield from _by_names(kept_off, _lines_of(now, DISCOUNT), now)


def _goods_after_discount(order: PurchaseOrder, now: LandedOrder | None) -> Iterator[CostDifference]:
    lines, discounts = _lines_of(now, "Goods"), _lines_of(now, DISCOUNT)
    off = f", less {discounts[0].rule}" if discounts else ""
    for at, line in enumerate(order.lines):
        item, rule = (now.items[at], f"{lines[at].rule}{off}") if now else (None, "")
        name = f"Goods after discount {line.supplier_number}"
        yield _difference(name, line.goods_cost, item.goods_cost if item else None, rule)


def _charges(order: PurchaseOrder, now: LandedOrder | None) -> Iterator[CostDifference]:
    """Those lines of an order that are not its goods after line discount."""
    charges = [line for line in now.lines if not line.is_goods] if now else []
    return _by_names(_by_name(order.charges), charges, now)


def _by_names(
    kept: Mapping[str, Money], lines: Sequence[CostLine], now: LandedOrder | None
) -> Iterator[CostDifference]:
    here = _by_name(lines)
    for name in dict.fromkeys((*kept, *here)):
        rules = [line.rule for line in lines if line.name == name]
        was, is_now = kept.get(name), here.get(name)
        one = _difference(name, was, is_now, "; ".join(rules))
        # A charge that is gone, or new, differs by all of it; but only where nothing of the order is left open.
        if now and not now.missing and (was is None or is_now is None):
            one = changed(one, difference=is_now if was is None else -was)
        yield one


def _lines_of(now: LandedOrder | None, name: str) -> list[CostLine]:
    return [line for line in now.lines if line.name.startswith(name)] if now else []


def _by_name(lines: Sequence[CostLine]) -> dict[str, Money]:
    found: defaultdict[str, list[Money]] = defaultdict(list)
    for line in lines:
        found[line.name].append(line.amount)
    return {name: total(some, some[0].currency) for name, some in found.items()}


def _difference(name: str, kept: Money | None, now: Money | None, rule: str) -> CostDifference:
    return CostDifference(name=name, kept=kept, now=now, difference=less(now, kept), rule=rule)
