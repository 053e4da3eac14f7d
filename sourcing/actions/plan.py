"""Plan a job's needs over the suppliers: the cheapest set of orders at the door that is here in time."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from ..basics.choice import Priced
from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.plan import Plan, PlannedOrder, PlanNeed
from ..basics.problem import refused
from ..basics.value import changed
from ..choosing.plan import Choice, Market, best_plan
from ..choosing.programme import Step
from ..landed_cost.arrival import arrival, latest_of
from ..landed_cost.charges import charge_steps
from ..landed_cost.order import landed_order, line_cost
from ..landed_cost.quantity import sensible_quantities
from ..storage.jobs import job as stored_job
from .desk import Desk
from .evaluate import Catalogue, Evaluated, catalogue, evaluate
from .needs import asks_of


def plan_job(desk: Desk, number: str, need_by: date | None, only_agreed: bool = False) -> Plan:
    """The plan for a stored job, with its add-ons unless `only_agreed`; `need_by` None takes the job's own day."""
    with desk.store.reading() as connection:
        found = catalogue(connection, desk.at)
        job = stored_job(connection, number)
        return plan_needs(found, job_needs(job, found, only_agreed), need_by or job.need_by)


def job_needs(job: Job, found: Catalogue, only_agreed: bool = False) -> tuple[PlanNeed, ...]:
    """A job's parts by line label. Refuses a part that is not in the equivalence table."""
    needs = []
    for label, line in job.labelled():
        if not line.part or (only_agreed and not label.isdigit()):
            continue
        if line.part not in found.families:
            raise refused("part-not-ours", title=line.title, found=line.part)
        asks = asks_of(found, job, line)
        needs.append(PlanNeed(label=label, our_part=line.part, quantity=line.quantity, asks=asks))
    return tuple(needs)


def plan_needs(found: Catalogue, needs: Sequence[PlanNeed], need_by: date | None) -> Plan:
    """The best plan for these needs on the sheets that hold now."""
    seen = {need.label: evaluate_need(found, need) for need in needs}
    choices = {need.label: choices_for(found, need, seen[need.label]) for need in needs}
    suppliers = {one.item.offer.supplier for some in choices.values() for one in some}
    market = Market(
        land=lambda items: land(found, items),
        steps={supplier: _steps(found, supplier) for supplier in sorted(suppliers)},
        currency=found.shop.settings.currency,
        supplier_names={supplier: found.supplier_name(supplier) for supplier in sorted(suppliers)},
    )
    plan = best_plan(needs, choices, market, need_by)
    return changed(plan, warnings=tuple(_warnings(plan, seen)))


def evaluate_need(found: Catalogue, need: PlanNeed) -> Evaluated:
    """Every offer of the need's part. An order too small alone may still be part of a plan."""
    return evaluate(found, need.our_part, need.quantity, keep_refused=True, asks=need.asks)


def choices_for(found: Catalogue, need: PlanNeed, seen: Evaluated) -> list[Choice]:
    """Every offer that may be ranked, in every sensible quantity."""
    return [choice for priced in seen.priced for choice in _choices(found, need, priced)]


def _warnings(plan: Plan, seen: Mapping[str, Evaluated]) -> Iterator[str]:
    """By line: doubts about the need, what to ask of the chosen offer, and what was rejected where none was."""
    chosen = {item.item.need: item.item.offer for order in plan.orders for item in order.landed.items}
    for need in plan.needs:
        yield from (f"line {need.label}: {words}" for words in need.asks.warnings)
        offer = chosen.get(need.label)
        for one in seen[need.label].priced:
            if offer == one.offer:
                shown = f"line {need.label}: {one.supplier_name} {offer.shown_number}"
                yield from (f"{shown}: {words}" for words in one.warnings)
        if offer is None:
            for away in seen[need.label].set_aside:
                if away.rejected:
                    yield f"line {need.label}: {away.supplier_name} {away.offer.shown_number} is {away.reason}"


def land(found: Catalogue, items: Sequence[OrderItem]) -> PlannedOrder:
    """One supplier's items as an order, with the day it is all here."""
    door = found.shop.door(items[0].offer.supplier, found.at)
    together = latest_of([arrival(item, door, found.at) for item in items])
    return PlannedOrder(landed=landed_order(items, door), arrival=together)


def _choices(found: Catalogue, need: PlanNeed, priced: Priced) -> list[Choice]:
    door = found.shop.door(priced.offer.supplier, found.at)
    result = []
    needed = priced.landed.items[0].item.needed  # in the offer's own unit: two loose pieces for one pair
    for pieces in sensible_quantities(priced.offer, needed):
        item = OrderItem(need=need.label, offer=priced.offer, needed=needed, ordered=pieces)
        value, cost = line_cost(item, door)
        result.append(Choice(item=item, value=value, cost=cost, arrival=arrival(item, door, found.at)))
    return result


def _steps(found: Catalogue, supplier: str) -> tuple[Step, ...]:
    steps: Mapping[int, Step] = {
        step.from_value.minor(): Step(
            from_value=step.from_value.minor(), charge=step.charge.minor(), refused=bool(step.refusal)
        )
        for step in charge_steps(found.shop.door(supplier, found.at))
    }
    return tuple(steps[at] for at in sorted(steps))
