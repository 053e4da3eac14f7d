"""The landed cost of one order at one supplier: named lines that sum to the total to the cent.

Rounding: each goods line once at its total (supplier's currency), converted and rounded on its own; duty per line on
the converted goods; charges once per order. Shares of the charges go by value of goods, largest remainder.
"""

from collections.abc import Mapping, Sequence

from ..basics.landed_cost import CostLine, LandedItem, LandedOrder, Missing, OrderItem
from ..basics.money import Money, from_minor, share_out, total
from ..basics.schedule import SummedPart
from .beside import beside
from .charges import cash_discount_line, fee_lines, order_discount_line, refusal
from .door import Door
from .duty import not_stated
from .figures import Figures, duty_on, figures
from .freight import Unknown
from .goods_lines import discount_lines, duty_lines, goods_lines
from .order_freight import freight_lines
from .percents import PercentCharge, Sums, add_percents, percent_charges, percent_lines
from .prepared import Prepared, prepared
from .quantity import price_each


def landed_order(items: Sequence[OrderItem], door: Door, deliveries: int = 1) -> LandedOrder:
    """The order's cost at the door, every part a named line, each item with its share. Items must not be empty.

    `deliveries`: in how many goes it leaves the supplier; later ones cost where the terms send each part when ready.
    What is not known stands in `missing` and in no line.
    """
    at = prepared(door)
    found = [figures(item, at) for item in items]
    value = from_minor(sum(one.value for one in found), door.terms.currency)
    freight, unknown = freight_lines(items, found, at, deliveries)
    discount, fees = order_discount_line(value, door), [*fee_lines(value, door), *_per_line(found, at)]
    sums = _sums(found, discount, freight, fees)
    charges, before = percent_charges(door), dict(sums)
    percents = percent_lines(charges, sums, door)
    goods = [*goods_lines(items, found, at), *discount_lines(found, at), *([discount] if discount else [])]
    lines = (*goods, *duty_lines(items, found, at), *freight, *fees, *percents)
    landed = _items(items, found, at, sum(sums.values()))
    return LandedOrder(
        supplier=door.terms.supplier,
        supplier_name=door.terms.name,
        items=tuple(landed),
        lines=lines,
        total=at.money(sum(sums.values())),
        order_value=value,
        freight=total((one.amount for one in lines if one.is_freight), door.currency),
        core_charge=total((one.core_charge for one in landed), door.currency),
        missing=_missing([*_open_duties(items, found, at), *unknown], before, charges, at),
        refusal=refusal(value, door.terms),
        cash_discount=cash_discount_line(value, door),
    )


def line_cost(item: OrderItem, door: Door) -> tuple[Money, Money]:
    """What an item adds to an order before charges: (value in the supplier's currency, cost in the shop's)."""
    one = figures(item, prepared(door))
    return from_minor(one.value, door.terms.currency), from_minor(one.goods + one.duty, door.currency)


def _per_line(found: Sequence[Figures], at: Prepared) -> list[CostLine]:
    if not at.per_line:
        return []
    rule = f"{len(found)} lines x {at.terms.handling_per_line} {at.terms.currency}{at.door.conversion()}"
    amount = at.money(sum(one.fees for one in found))
    return [CostLine(name="Handling of lines", kind="handling", amount=amount, rule=rule)]


def _sums(
    found: Sequence[Figures], discount: CostLine | None, freight: Sequence[CostLine], fees: Sequence[CostLine]
) -> Sums:
    return {
        "goods": sum(one.goods for one in found),
        "discount": discount.amount.minor() if discount else 0,
        "freight": sum(one.amount.minor() for one in freight),
        "duty": sum(one.duty for one in found),
        "fees": sum(one.amount.minor() for one in fees),
        "tax": 0,
    }


def _items(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared, whole_cost: int) -> list[LandedItem]:
    """The items with their shares of all that is not their own goods and duty."""
    rest = at.money(whole_cost - sum(one.goods + one.duty for one in found))
    shares = share_out(rest, [one.goods for one in found])
    return [_item(item, one, share, at) for item, one, share in zip(items, found, shares, strict=True)]


def _item(item: OrderItem, one: Figures, share: Money, at: Prepared) -> LandedItem:
    cost = at.money(one.goods)
    return LandedItem(
        item=item,
        unit_price=price_each(item.offer, item.ordered, at.terms.breaks),
        goods=from_minor(one.value, at.terms.currency),
        goods_cost=cost,
        duty=at.money(one.duty),
        landed=at.money(one.goods + one.duty) + share,
        surplus_cost=at.money(one.surplus),
        core_charge=at.money(one.core),
        beside=beside(item, cost, at.door),
    )


def _open_duties(items: Sequence[OrderItem], found: Sequence[Figures], at: Prepared) -> list[Unknown]:
    open_ones = [(item.offer, one) for item, one in zip(items, found, strict=True) if len(one.duty_percents) > 1]
    return [
        Unknown(
            what=f"duty on {offer.supplier_number}: the sheet does not state "
            f"{not_stated(offer.origin, offer.tariff_code, at.terms)}",
            part="duty",
            least=duty_on(one.goods, one.duty_percents[0]),
            most=duty_on(one.goods, one.duty_percents[-1]),
        )
        for offer, one in open_ones
    ]


def _missing(
    unknown: Sequence[Unknown], before: Sums, charges: Sequence[PercentCharge], at: Prepared
) -> tuple[Missing, ...]:
    """What is not known with its range, what follows from it (tax on it, a fee's least amount) counted in.

    `before` are the order's sums without charges in per cent.
    """
    least: dict[SummedPart, int] = {}
    most: dict[SummedPart, int] = {}
    result = []
    for one in unknown:
        low = _grown(one.part, one.least, least, (before, charges))
        high = _grown(one.part, one.most, most, (before, charges))
        result.append(
            Missing(
                what=one.what,
                least=None if low is None else at.money(low),
                most=None if high is None else at.money(high),
            )
        )
    return tuple(result)


def _grown(
    part: SummedPart,
    amount: int | None,
    added: dict[SummedPart, int],
    order: tuple[Sums, Sequence[PercentCharge]],
) -> int | None:
    """How much dearer the order gets by an amount more in that part, on top of what was `added` before."""
    if amount is None:
        return None
    without = _total_with(added, *order)
    added[part] = added.get(part, 0) + amount
    return _total_with(added, *order) - without


def _total_with(added: Mapping[SummedPart, int], before: Sums, charges: Sequence[PercentCharge]) -> int:
    sums: Sums = {part: amount + added.get(part, 0) for part, amount in before.items()}
    add_percents([one.percent for one in charges], sums)
    return sum(sums.values())
