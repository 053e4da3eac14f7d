"""The landed total of one offer ordered alone, its order discount that of another price: for a search for a price.

Goods and the discount on the whole order are rounded each by itself, so that the total may fall by a cent while the
price rises. It never falls while the goods alone rise, and never rises while the discount alone does.
"""

from ..basics.landed_cost import OrderItem
from ..basics.money import Money, from_minor
from .charges import fee_lines, order_discount_at, order_discount_line, refusal
from .door import Door
from .figures import figures
from .order_freight import freight_lines
from .percents import Sums, add_percents, percent_charges
from .prepared import prepared


def total_with_discount_of(item: OrderItem, discounted: OrderItem, door: Door) -> Money | None:
    """The item's landed total with the order discount that `discounted` would get; with the item's own the true one.

    In the shop's currency, rounded as in a landed order. None where the supplier would refuse the order or something of
    its cost is not known. Like a landed order it refuses an offer in another currency than the terms.
    """
    at = prepared(door)
    one = figures(item, at)
    value = from_minor(one.value, door.terms.currency)
    freight, unknown = freight_lines([item], [one], at, 1)
    if unknown or len(one.duty_percents) > 1 or refusal(value, door.terms):
        return None
    discount = order_discount_line(_discounted_value(one.value, discounted, door), door)
    sums: Sums = {
        "goods": one.goods,
        "discount": discount.amount.minor() if discount else 0,
        "freight": sum(line.amount.minor() for line in freight),
        "duty": one.duty,
        "fees": one.fees + sum(line.amount.minor() for line in fee_lines(value, door)),
        "tax": 0,
    }
    add_percents([charge.percent for charge in percent_charges(door)], sums)
    return at.money(sum(sums.values()))


def _discounted_value(own: int, discounted: OrderItem, door: Door) -> Money:
    value = from_minor(goods_value(discounted, door), door.terms.currency)
    found = order_discount_at(value, door.terms)
    # All taken off, goods and discount cancel to the cent at any price: told apart they would keep a search for ever.
    return from_minor(own, value.currency) if found and found.percent == 100 else value


def goods_value(item: OrderItem, door: Door) -> int:
    """The value of the item's goods after line discount, in the supplier's minor units: what thresholds look at."""
    return figures(item, prepared(door)).value
