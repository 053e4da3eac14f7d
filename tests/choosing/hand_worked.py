"""One job worked out by hand: belt, two belt keepers and an idler pulley, from one of two suppliers or both.

Every sum stands where it is used. Stonegarth: freight 14.95, free from 150.00, cut-off 14:00, two days on the road.
Larkmoor: freight 9.95, 5.00 more on orders below 30.00, cut-off 15:00, three days on the road.
"""

from collections.abc import Mapping
from datetime import date, datetime, time
from decimal import Decimal

from sourcing.basics.offer import Offer
from sourcing.basics.plan import PlanNeed, PlanWishes
from tests.builders import door, flat, lead, offer
from tests.choosing.trial import Trial

MONDAY_14_40 = datetime(2026, 3, 2, 14, 40)
THURSDAY = date(2026, 3, 5)
FRIDAY = date(2026, 3, 6)

PRICES = {
    "belt": (1, "128.00", "119.50"),
    "keeper": (2, "6.40", "5.10"),
    "idler": (1, "22.50", "24.75"),
}


def job(
    *labels: str, wishes: PlanWishes, at: datetime = MONDAY_14_40, waiting: bool = False, name: str = "by hand"
) -> Trial:
    """These needs of the job; `waiting`: Stonegarth has no idler pulley, 'backorder, 2-3 weeks'."""
    needs = tuple(PlanNeed(label=label, our_part=label.upper(), quantity=PRICES[label][0]) for label in labels)
    doors = {
        "larkmoor": door(
            "larkmoor",
            freight=flat("9.95"),
            minimum_order=Decimal(30),
            small_order_fee=Decimal(5),
            cut_off=time(15),
            transit_days=(3, 3),
        ),
        "stonegarth": door("stonegarth", freight=flat("14.95", "150"), cut_off=time(14), transit_days=(2, 2)),
    }
    return Trial(name=name, needs=needs, offers=_offers(labels, waiting), doors=doors, at=at, wishes=wishes)


def _offers(labels: tuple[str, ...], waiting: bool) -> Mapping[str, tuple[Offer, ...]]:
    offers = {}
    for label in labels:
        _, stonegarth, larkmoor = PRICES[label]
        late = {"stock": 0, "lead_time": lead("backorder, 2-3 weeks", 10, 15)} if waiting and label == "idler" else {}
        offers[label] = (
            offer("stonegarth", f"S-{label}", stonegarth, **late),
            offer("larkmoor", f"L-{label}", larkmoor),
        )
    return offers
