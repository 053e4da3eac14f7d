"""What an order pays by its value of goods, whatever is in it: handling, small-order fee, entry fee, order discount.

Value is that of the goods after line discount, in the supplier's currency, core charges not counted.
"""

from collections.abc import Iterable
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.landed_cost import CostLine
from ..basics.money import Money, from_minor
from ..basics.terms import OrderDiscount, Terms
from .door import Door
from .freight import line
from .minor import reached_from, whole


def fee_lines(value: Money, door: Door) -> tuple[CostLine, ...]:
    """The fixed fees of an order with goods of that value."""
    terms, found = door.terms, []
    fee, least = terms.small_order_fee, terms.minimum_order
    if fee is not None and least is not None and value.amount < least:
        rule = f"{fee} {terms.currency} on orders below {least}"
        found.append(line("Small-order fee", "small-order fee", fee, rule, door))
    if terms.handling:
        rule = f"{terms.handling} {terms.currency} per order"
        found.append(line("Handling", "handling", terms.handling, rule, door))
    if terms.entry_fee:
        rule = f"{terms.entry_fee} {terms.currency} per order"
        found.append(line("Entry fee", "entry fee", terms.entry_fee, rule, door))
    return tuple(found)


def refusal(value: Money, terms: Terms) -> str:
    """Why the supplier takes no order of that value; blank where he does."""
    least = terms.minimum_order
    if least is None or terms.small_order_fee is not None or value.amount >= least:
        return ""
    return f"{terms.name} takes no order below {least} {terms.currency}; this one has {value.amount}"


def order_discount_at(value: Money, terms: Terms) -> OrderDiscount | None:
    """The discount on the whole order that goods of that value reach: the last one."""
    reached = [one for one in terms.order_discounts if one.from_value <= value.amount]
    return max(reached, key=lambda one: one.from_value, default=None)


def percent_here(percent: Decimal, door: Door) -> Decimal:
    """A per cent of the supplier's minor units that gives the shop's: the rate of the currency is in it."""
    places = minor_units(door.currency) - minor_units(door.terms.currency)
    return percent * door.rate.rate.scaleb(places)


def share_here(value: int, percent: Decimal) -> int:
    """That per cent (see `percent_here`) of a value in the supplier's minor units, rounded once in the shop's."""
    return whole(value * percent / 100)


def order_discount_line(value: Money, door: Door) -> CostLine | None:
    """What the supplier takes off the whole order, negative; None where the value reaches no such discount."""
    found = order_discount_at(value, door.terms)
    if found is None:
        return None
    off = share_here(value.minor(), percent_here(found.percent, door))
    rule = f"{found.percent} % off {value.amount} {value.currency} of goods, from {found.from_value}"
    amount = from_minor(-off, door.currency)
    return CostLine(name="Order discount", kind="discount", amount=amount, rule=rule + door.conversion())


def cash_discount_line(value: Money, door: Door) -> CostLine | None:
    """What paying early would take off the goods after all other discounts, negative; freight and fees are left out.

    That such a discount is taken on goods and not on freight is common practice, no source.
    """
    cash = door.terms.cash_discount
    if cash is None:
        return None
    other = order_discount_at(value, door.terms)
    percent = cash.percent * (1 - other.percent / 100) if other else cash.percent
    off = share_here(value.minor(), percent_here(percent, door))
    rule = f"{cash.percent} % of the goods after discounts if paid within {cash.within_days} days{door.conversion()}"
    return CostLine(name="Cash discount", kind="discount", amount=from_minor(-off, door.currency), rule=rule)


def values_that_matter(door: Door) -> list[int]:
    """Every value of goods (supplier's minor units) at which a fee, a refusal or the order discount changes; from 0."""
    terms = door.terms
    return _rising([terms.minimum_order, *(one.from_value for one in terms.order_discounts)], terms.currency)


def counted_values_that_matter(door: Door) -> list[int]:
    """Every value of counted goods (supplier's minor units) at which freight by value changes; from 0."""
    freight = door.terms.freight
    if freight is None:
        return [0]
    return _rising([freight.free_from, *(band.from_value for band in freight.bands)], door.terms.currency)


def _rising(limits: Iterable[Decimal | None], currency: str) -> list[int]:
    return sorted({0, *(max(0, reached_from(limit, currency)) for limit in limits if limit is not None)})
