"""What would be bought, made by hand for tests of building a quote: offers, one order a supplier."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, datetime

from sourcing.basics.job import Customer, Job, JobLine, Machine
from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.money import total
from sourcing.basics.offer import Offer
from sourcing.basics.plan import Plan, PlannedOrder
from sourcing.basics.quote import Quote
from sourcing.basics.terms import Terms
from sourcing.landed_cost.arrival import order_arrival
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order
from sourcing.quoting.bought import Bought
from sourcing.quoting.build import build_quote
from tests.builders import door, item
from tests.quoting.test_pricing_and_totals import settings

AT = datetime(2026, 3, 4, 10, 0)


def need(title: str, part: str = "", quantity: int = 1, **fields: object) -> JobLine:
    """A line of a job; without a part it has work only."""
    values: dict[str, object] = {"title": title, "part": part, "quantity": quantity if part else 0}
    return JobLine(**{**values, **fields})  # type: ignore[arg-type]


def job(agreed: Sequence[JobLine], add_ons: Sequence[JobLine] = (), **fields: object) -> Job:
    """Maud Tilbrook's snow thrower."""
    values: dict[str, object] = {
        "number": "2026-0001",
        "customer": Customer(name="Maud Tilbrook"),
        "machine": Machine(description="snow thrower"),
        "complaint": "Auger stops",
        "agreed": tuple(agreed),
        "add_ons": tuple(add_ons),
        "received_on": date(2026, 3, 2),
    }
    return Job(**{**values, **fields})  # type: ignore[arg-type]


def bought(
    offers: Mapping[str, Offer], pieces: Mapping[str, int], doors: Mapping[str, Door] | None = None, **fields: object
) -> Bought:
    """Each line's offer in so many pieces (packs counted up), one order a supplier; 10.00 flat freight unless said."""
    items = [item(one, pieces[label], -(-pieces[label] // one.pack) * one.pack, label) for label, one in offers.items()]
    places = {one.supplier: door(one.supplier) for one in offers.values()} | dict(doors or {})
    orders = _orders(items, places)
    plan = Plan(
        needs=(),
        orders=orders,
        total=total((one.landed.total for one in orders), "USD"),
        core_charge=total((), "USD"),
        latest=max(order.arrival.latest for order in orders if order.arrival.latest) if orders else None,
        proven=True,
        counted=total((one.landed.total for one in orders), "USD"),
    )
    alone = _orders([one for one in items if one.need.isdigit()], places)
    returns = {name: _terms(one).return_terms for name, one in places.items()}
    values: dict[str, object] = {"plan": plan, "agreed_alone": alone, "returns": returns}
    return Bought(**{**values, **fields})  # type: ignore[arg-type]


def quote(of: Job, what: Bought, revision: int = 1, **shop: object) -> Quote:
    """The quote at the shop of the worked days with those settings."""
    return build_quote(of, what, settings(**shop), AT, revision)


def _terms(one: Door) -> Terms:
    return one.terms


def _orders(items: Sequence[OrderItem], doors: Mapping[str, Door]) -> tuple[PlannedOrder, ...]:
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for one in items:
        by_supplier[one.offer.supplier].append(one)
    return tuple(
        PlannedOrder(landed=landed_order(some, doors[name]), arrival=order_arrival(some, doors[name], AT))
        for name, some in by_supplier.items()
    )
