"""Plan over offers and doors: what each quantity costs and when it comes, the supplier's charges, the best plan.

It needs no database: needs, the offers of each, and what stands between each supplier and the shop.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime
from time import monotonic
from typing import NamedTuple

from ..basics.landed_cost import Arrival, OrderItem
from ..basics.offer import Offer
from ..basics.plan import Plan, PlanNeed, PlanWishes
from ..basics.schedule import ItemSums, Schedule
from ..basics.value import changed
from ..choosing.choices import Choice, choice
from ..choosing.plan import best_plan, check_wishes
from ..choosing.search import Market
from ..landed_cost.arrival import arrival
from ..landed_cost.door import Door
from ..landed_cost.rungs import Gain, gain_of, rungs
from ..landed_cost.schedule import schedule
from ..landed_cost.sums import item_sums
from .land import land_at


class Wanted(NamedTuple):
    """An offer for a need, and how many pieces of it fill the need alone."""

    offer: Offer
    full: int


class Place(NamedTuple):
    """The door to each supplier, the moment on the shop's clock, and the shop's currency.

    `clock`: seconds that only rise, by which the search stops.
    """

    doors: Mapping[str, Door]
    at: datetime
    currency: str
    clock: Callable[[], float] = monotonic


class _Ways(NamedTuple):
    """What decides in which quantities offers are considered."""

    wishes: PlanWishes
    gains: Mapping[str, Gain]
    market: Market


def planned(
    needs: Sequence[PlanNeed], offers: Mapping[str, Sequence[Wanted]], place: Place, wishes: PlanWishes
) -> Plan:
    """The best plan for the needs; `offers` by the need's label. Refuses wishes that can't be meant."""
    check_wishes(needs, wishes)
    suppliers = sorted({one.offer.supplier for some in offers.values() for one in some})
    schedules = {supplier: _schedule(place.doors[supplier], offers) for supplier in suppliers}
    gains = {supplier: gain_of(schedules[supplier]) for supplier in suppliers}
    market = _market(place, schedules)
    ways = _Ways(wishes, gains, market)
    choices = {
        need.label: [one for wanted in offers.get(need.label, ()) for one in _choices(place, at, need, wanted, ways)]
        for at, need in enumerate(needs)
    }
    return best_plan(needs, choices, market, wishes)


def _schedule(door: Door, offers: Mapping[str, Sequence[Wanted]]) -> Schedule:
    """The supplier's charges for orders up to twice as heavy as the needs' heaviest offers; beyond they are no less."""
    mine = [[one for one in some if one.offer.supplier == door.terms.supplier] for some in offers.values()]
    heaviest = sum(max((_grams(one) for one in some), default=0) for some in mine)
    return schedule(door, 2 * heaviest + 1000)


def _grams(wanted: Wanted) -> int:
    offer = wanted.offer
    volume = (offer.length_cm or 0) * (offer.width_cm or 0) * (offer.height_cm or 0)
    return int(max((offer.weight_kg or 0) * 1000, volume) * wanted.full)  # no divisor is below 1 cm3 for a gram


def _market(place: Place, schedules: Mapping[str, Schedule]) -> Market:
    doors = place.doors

    def see(item: OrderItem) -> tuple[ItemSums, Arrival]:
        door = doors[item.offer.supplier]
        return item_sums(item, door), arrival(item, door, place.at)

    return Market(
        land=lambda items: land_at(items, doors[items[0].offer.supplier], place.at),
        see=see,
        schedules=schedules,
        gathered=frozenset(one for one in schedules if doors[one].terms.split.sends == "together"),
        supplier_names={supplier: doors[supplier].terms.name for supplier in schedules},
        currency=place.currency,
        today=place.at.date(),
        clock=place.clock,
    )


def _choices(place: Place, at: int, need: PlanNeed, wanted: Wanted, ways: _Ways) -> Iterator[Choice]:
    """The offer in every quantity worth considering, for the need at that place."""
    offer, full = wanted
    asked = (ways.wishes.more_than_needed, need.may_split, ways.wishes.in_stock_only)
    for rung in rungs(offer, full, place.doors[offer.supplier], asked, ways.gains[offer.supplier]):
        item = OrderItem(need=need.label, offer=offer, needed=min(full, rung.pieces), ordered=rung.pieces)
        try:
            found = choice(at, item, full, (rung.step, rung.more), ways.market.see)
        except ValueError:  # its duty or size is not known: its order can't be priced
            return
        if not (ways.wishes.in_stock_only and found.arrival.told):  # his later word: what the sheet has is not there
            yield changed(found, least=rung.least)
