"""Plan a job's needs over the suppliers: the cheapest set of orders at the door that is here in time."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Literal

from ..basics.choice import Priced
from ..basics.equivalence import GOOD_STANDING
from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.plan import Alternative, Plan, PlannedOrder, PlanNeed, PlanWishes
from ..basics.problem import refused
from ..basics.value import changed
from ..storage.jobs import job as stored_job
from .basis_notes import basis_notes
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read, evaluate
from .land import land_at
from .needs import asks_of
from .order_lines import lines_to_order
from .plan_offers import Place, Wanted, planned
from .sorted_offers import Evaluated, ShopAt
from .why_none import with_reasons

AnyDay = Literal["any day"]
ANY_DAY: AnyDay = "any day"
"""Said in place of a day: the goods may come when they come."""

JOB_WISHES = PlanWishes(more_than_needed="cheaper break")
"""What a job's plan asks unless told otherwise: no pieces beyond what was approved, but for a cheaper break."""


def plan_job(
    desk: Desk,
    number: str,
    need_by: date | AnyDay | None,
    only_agreed: bool = False,
    wishes: PlanWishes = JOB_WISHES,
    left_to_order: bool = False,
) -> Plan:
    """The plan for a stored job, with its add-ons unless `only_agreed`; `need_by` None takes the job's own day, 'any
    day' buys whatever day the goods come, also where no day is known. `left_to_order`: only for pieces that are
    approved and on no order yet; refuses where there are none."""
    with desk.store.reading() as connection:
        found = catalogue_to_read(desk, connection)
        job = stored_job(connection, number)
        wishes = changed(wishes, need_by=None if need_by == ANY_DAY else need_by or wishes.need_by or job.need_by)
        needs = needs_left(found, job.number) if left_to_order else job_needs(job, found, only_agreed)
        seen = {need.label: evaluate_need(found, need) for need in needs}
        plan = plan_offers(found, needs, seen, wishes)
        # The sentences on what has no offer count the rows somebody could judge, whatever else is offered.
        empty = [need for need in needs if any(words.startswith(f"{need.label}:") for words in plan.unfilled)]
        if empty:
            seen |= {need.label: _with_look_alikes(found, need) for need in empty}
            plan = plan_offers(found, needs, seen, wishes)
        return _with_more_pieces(plan, found, needs, seen) if wishes.more_than_needed == "cheaper break" else plan


def _with_more_pieces(plan: Plan, found: Catalogue, needs: Sequence[PlanNeed], seen: Mapping[str, Evaluated]) -> Plan:
    """Beside it, where it is cheaper: what buying more pieces than needed would cost. Nothing of it is ordered."""
    if not plan.orders:
        return plan
    wider = plan_offers(found, needs, seen, changed(plan.wishes, more_than_needed="whatever pays"))
    saved = plan.total - wider.total
    if saved.amount <= 0 or wider.unfilled != plan.unfilled:
        return plan
    more = [
        f"{item.item.surplus} more of {order.landed.supplier_name} {item.item.offer.supplier_number}"
        for order in wider.orders
        for item in order.landed.items
        if item.item.surplus
    ]
    why = f"{saved} less, with pieces for the shelf: {', '.join(more)}"
    other = Alternative(name="more pieces than needed", total=wider.total, latest=wider.latest, why=why, more=-saved)
    return changed(plan, alternatives=(*plan.alternatives, other))


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


def needs_left(found: Catalogue, number: str) -> tuple[PlanNeed, ...]:
    """What is approved and on no order yet, by line label. Refuses where nothing of the job is."""
    return tuple(
        PlanNeed(label=one.wanted.label, our_part=one.wanted.part, quantity=one.line.quantity, asks=one.asks)
        for one in lines_to_order(found, [number]).values()
        if one.line.quantity
    )


def evaluate_need(found: Catalogue, need: PlanNeed) -> Evaluated:
    """Every offer of the need's part. An order too small alone may still be part of a plan.

    Rows whose number is only near the part's are looked for, among all numbers of all sheets, where no offer of good
    standing is there: a plan never buys them, it counts them where it says why a need has none.
    """
    seen = evaluate(found, need.our_part, need.quantity, keep_refused=True, asks=need.asks, look_alikes=False)
    is_offered = any(one.standing in GOOD_STANDING for one in (*seen.priced, *seen.unknown))
    return seen if is_offered else _with_look_alikes(found, need)


def _with_look_alikes(found: Catalogue, need: PlanNeed) -> Evaluated:
    return evaluate(found, need.our_part, need.quantity, keep_refused=True, asks=need.asks)


def plan_offers(here: ShopAt, needs: Sequence[PlanNeed], seen: Mapping[str, Evaluated], wishes: PlanWishes) -> Plan:
    """The best plan for needs whose offers were evaluated already (by the need's label), wherever they come from."""
    offers = {need.label: _plannable(seen[need.label], wishes) for need in needs}
    suppliers = sorted({one.offer.supplier for some in offers.values() for one in some})
    doors = {supplier: here.door(supplier) for supplier in suppliers}
    # The quantity is in the offer's own unit: two loose pieces for one pair.
    wanted = {
        label: [Wanted(one.offer, one.landed.items[0].item.needed) for one in some] for label, some in offers.items()
    }
    plan = planned(needs, wanted, Place(doors, here.at, here.shop.settings.currency), wishes)
    bought_at = [doors[order.landed.supplier] for order in plan.orders]
    return changed(
        plan,
        unfilled=with_reasons(plan.unfilled, needs, seen, wishes),
        notes=(*plan.notes, *basis_notes(bought_at, here.at.date(), plan.latest)),
        warnings=tuple(_warnings(plan, seen)),
    )


def land(here: ShopAt, items: Sequence[OrderItem]) -> PlannedOrder:
    """One supplier's items as an order, with the day it is all here."""
    return land_at(items, here.door(items[0].offer.supplier), here.at)


def _plannable(seen: Evaluated, wishes: PlanWishes) -> list[Priced]:
    """Offers a plan may use; one whose freight is not known alone may be known in a larger order."""
    return [one for one in (*seen.priced, *seen.unknown) if not wishes.trusted_only or one.standing in GOOD_STANDING]


def _warnings(plan: Plan, seen: Mapping[str, Evaluated]) -> Iterator[str]:
    """By line: doubts about the need, what to ask of each chosen offer, and what was rejected where none was."""
    chosen: dict[str, list[Offer]] = defaultdict(list)
    for item in (item for order in plan.orders for item in order.landed.items):
        chosen[item.item.need].append(item.item.offer)
    for need in plan.needs:
        yield from (f"line {need.label}: {words}" for words in need.asks.doubts)
        offers = chosen[need.label]
        for one in (*seen[need.label].priced, *seen[need.label].unknown):
            if one.offer in offers:
                shown = f"line {need.label}: {one.supplier_name} {one.offer.shown_number}"
                yield from (f"{shown}: {words}" for words in one.warnings)
        if not offers:
            for away in seen[need.label].set_aside:
                if away.rejected:
                    yield f"line {need.label}: {away.supplier_name} {away.offer.shown_number} is {away.reason}"
