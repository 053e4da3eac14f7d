"""The landed total of one offer ordered alone, for whole sheets: the same figures and charges without words.

A door is made ready once; each offer then costs a few lookups. Tests hold it equal to the landed order's total.
"""

from bisect import bisect_right

from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.schedule import FreightStep
from .charges import counted_values_that_matter, share_here, values_that_matter
from .door import Door
from .figures import Figures, figures
from .freight import charge_of_items
from .order_freight import once_oversize
from .percents import Sums, add_percents, percent_charges
from .prepared import prepared
from .quantity import pieces_to_order
from .schedule import freight_step, value_step


class QuickDoor:
    """A door made ready to land many offers, each ordered alone."""

    def __init__(self, door: Door) -> None:
        self._door = door
        self._at = prepared(door)
        self._values = values_that_matter(door)
        self._steps = [value_step(value, door) for value in self._values]
        self._counted = counted_values_that_matter(door)
        self._freight = [freight_step(value, door) for value in self._counted]
        self._once = once_oversize(self._at)
        self._percents = tuple(one.percent for one in percent_charges(door))

    def landed(self, offer: Offer, needed: int) -> int | None:
        """The landed total in the shop's minor units of the fewest pieces that cover the need, in one delivery.

        None where it can't be said: no net price, something of the cost not known, an order the supplier refuses. Like
        a landed order it refuses an offer in another currency than the terms. Says nothing of whether the price holds.
        """
        if not offer.breaks:
            return None
        item = OrderItem(need="", offer=offer, needed=needed, ordered=pieces_to_order(offer, needed))
        one = figures(item, self._at)
        if one.oversize is None or len(one.duty_percents) > 1:
            return None
        step = self._steps[bisect_right(self._values, one.value) - 1]
        freight = self._freight_of(item, one)
        if step.refused or freight is None:
            return None
        discount = -share_here(one.value, step.discount_percent) if step.discount_percent else 0
        fees = step.fees + one.fees
        if not self._percents:
            return one.goods + one.duty + discount + freight + fees
        sums: Sums = {
            "goods": one.goods,
            "discount": discount,
            "freight": freight,
            "duty": one.duty,
            "fees": fees,
            "tax": 0,
        }
        add_percents(self._percents, sums)
        return sum(sums.values())

    def _freight_of(self, item: OrderItem, one: Figures) -> int | None:
        step: FreightStep = self._freight[bisect_right(self._counted, one.counted) - 1]
        if not step.known:
            return None
        by_weight = charge_of_items([item], self._door) if step.by_weight else 0
        if by_weight is None:
            return None
        return step.freight + by_weight + one.freight + (self._once if one.oversize else 0)
