"""Small planning questions in a line or two: needs by label, offers of each, ways to suppliers; and what was bought.

All is ordered on Tuesday, 13 January 2026 at 10:15, before the cut-off of `builders.door`: what is in stock at a
supplier two days away is here on Thursday the 15th.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, datetime
from time import monotonic
from types import SimpleNamespace
from typing import Any

from sourcing.actions.plan_offers import Place, Wanted, planned
from sourcing.basics.offer import Offer
from sourcing.basics.plan import Plan, PlanNeed, PlanWishes
from sourcing.choosing.search import Answer, Found
from sourcing.landed_cost.door import Door

AT = datetime(2026, 1, 13, 10, 15)
THURSDAY, FRIDAY = date(2026, 1, 15), date(2026, 1, 16)
Bought = dict[str, list[tuple[str, int]]]


def need(label: str = "1", quantity: int = 1, **fields: Any) -> PlanNeed:
    """A need of so many pieces of a part of its own."""
    return PlanNeed(label=label, our_part=f"PART-{label}", quantity=quantity, **fields)


def plan(
    needs: Sequence[PlanNeed],
    offers: Mapping[str, Sequence[Offer]],
    doors: Iterable[Door],
    wishes: PlanWishes | None = None,
    clock: Callable[[], float] = monotonic,
) -> Plan:
    """The product's plan; every offer is the right part."""
    wanted = {one.label: [Wanted(offer, one.quantity) for offer in offers.get(one.label, ())] for one in needs}
    place = Place({each.terms.supplier: each for each in doors}, AT, "USD", clock)
    return planned(needs, wanted, place, wishes or PlanWishes())


def bought(of: Plan) -> Bought:
    """By need: (supplier's number, pieces ordered) of everything ordered for it."""
    result: Bought = {}
    for order in of.orders:
        for one in order.landed.items:
            result.setdefault(one.item.need, []).append((one.item.offer.supplier_number, one.item.ordered))
    return {label: sorted(some) for label, some in sorted(result.items())}


class Clock:
    """A clock that stands still for so many looks, and then is a thousand seconds further at each."""

    def __init__(self, looks: int) -> None:
        self.left, self.now = looks, 0.0

    def __call__(self) -> float:
        """Seconds."""
        self.left -= 1
        if self.left < 0:
            self.now += 1000
        return self.now


class SilentOnThursday:
    """Stands in for a search whose time runs out on the first of two days that are tried."""

    choices = (SimpleNamespace(need=0, latest=THURSDAY), SimpleNamespace(need=0, latest=FRIDAY))

    def best(self, day: date, seconds: float = 1) -> Answer:
        """Nothing on Thursday for lack of time; a plan on Friday."""
        return Answer(None, None) if day == THURSDAY else Answer(self.found(day), 1)

    def found(self, day: date) -> Found:
        """A plan that is complete on that day."""
        return Found(picks=(), orders=(), counted=1, latest=day, proven=True)
