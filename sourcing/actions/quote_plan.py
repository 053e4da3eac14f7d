"""What would be bought for a job's quote: its plan, with decided offers pinned and lines ordered already left out."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from ..basics.alarm import Decision
from ..basics.choice import Priced
from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.plan import Plan, PlannedOrder, PlanNeed
from ..basics.problem import Refused, refused
from ..basics.quote import Quote, QuoteLine
from ..basics.value import changed
from ..quoting.bought import Bought
from ..quoting.held_prices import last_of_each
from ..storage.after_order import standing_lines
from ..storage.after_quote import decisions
from ..storage.quotes import newest_quote
from ..storage.quotes import quote as stored_quote
from .evaluate import Catalogue
from .plan import JOB_WISHES, evaluate_need, job_needs, land, plan_offers
from .sorted_offers import Evaluated

SECONDS_BESIDE = 3
"""No plan that is only for comparison is looked for longer than this."""


@dataclass(frozen=True)
class Market:
    """A job's open needs with every offer of each, evaluated once, so that it can be planned in several ways.

    `decided` and `settled` by label, as `Bought` holds them; `last` is the newest revision, None before the first.
    """

    found: Catalogue
    job: Job
    need_by: date | None
    needs: tuple[PlanNeed, ...]
    seen: Mapping[str, Evaluated]
    decided: Mapping[str, Decision]
    settled: Mapping[str, QuoteLine]
    last: Quote | None

    def plan(self) -> Plan:
        """The shop's cheapest plan."""
        return plan_offers(self.found, self.needs, self.seen, changed(JOB_WISHES, need_by=self.need_by))

    def plan_beside(self, supplier: str = "", need_by: date | None = None, front: bool = False) -> Plan | None:
        """Another plan, only for comparison: with `supplier`, of his offers alone; `need_by` earlier than the job's own
        day. None where none was found in a short time."""
        seen = self.seen if not supplier else {at: _of(one, supplier) for at, one in self.seen.items()}
        wishes = changed(JOB_WISHES, need_by=need_by or self.need_by, front=front, seconds=SECONDS_BESIDE)
        try:
            return plan_offers(self.found, self.needs, seen, wishes)
        except Refused:
            return None

    def bought(self, plan: Plan) -> Bought:
        """The plan with all else that a quote on it stands on."""
        families, terms = self.found.families, self.found.shop.terms
        parts = {need.our_part for need in self.needs}
        return Bought(
            plan=plan,
            agreed_alone=_agreed_alone(self.found, plan),
            decisions=self.decided,
            settled=self.settled,
            returns={order.landed.supplier: terms[order.landed.supplier].return_terms for order in plan.orders},
            categories={code: families[code].part.category for code in parts},
            kept_freight=_kept_freight(self.settled, self.last),
            kept_arrives=self.last.arrives if self.settled and self.last else None,
        )


def market(found: Catalogue, job: Job, need_by: date | None) -> Market:
    """Evaluate the job's needs. Refuses where an offer that was decided on can't be had now."""
    newest = newest_quote(found.connection, job.number)
    last = newest.quote if newest else None
    decided = _decided(found, job)
    settled = _settled(found, job, last)
    needs = tuple(need for need in job_needs(job, found) if need.label not in settled)
    seen = {need.label: _pinned(found, job, need, decided.get(need.label)) for need in needs}
    return Market(found, job, need_by or job.need_by, needs, seen, decided, settled, last)


def _of(seen: Evaluated, supplier: str) -> Evaluated:
    def his(some: Sequence[Priced]) -> tuple[Priced, ...]:
        return tuple(one for one in some if one.offer.supplier == supplier)

    return replace(seen, priced=his(seen.priced), unknown=his(seen.unknown))


def _decided(found: Catalogue, job: Job) -> dict[str, Decision]:
    """The last decision of each line, as long as the line asks for the part that was decided on."""
    last = last_of_each(decisions(found.connection, job.number))
    asked = dict(job.labelled())
    result = {}
    for label, one in last.items():
        before = stored_quote(found.connection, job.number, one.revision).quote.line(label)
        if before is not None and label in asked and before.part == asked[label].part:
            result[label] = one
    return result


def _settled(found: Catalogue, job: Job, last: Quote | None) -> dict[str, QuoteLine]:
    """Lines that stand on an order and still ask for the part and quantity they were ordered for."""
    if last is None:
        return {}
    ordered = {label for number, label in standing_lines(found.connection) if number == job.number}
    result = {}
    for label, asked in job.labelled():
        before = last.line(label)
        if label in ordered and before is not None and before.behind is not None and before.part == asked.part:
            result[label] = before
    return result


def _kept_freight(settled: Mapping[str, QuoteLine], last: Quote | None) -> tuple[QuoteLine, ...]:
    """Freight lines of the last revision that brought something which is ordered."""
    lines = last.lines if last else ()
    freight = (line for line in lines if line.freight_price.amount and not line.part)
    return tuple(one for one in freight if any(_brings(one, label, line) for label, line in settled.items()))


def _brings(freight: QuoteLine, label: str, line: QuoteLine) -> bool:
    return label in freight.freight_for if freight.freight_for else line.kind == freight.kind


def _pinned(found: Catalogue, job: Job, need: PlanNeed, decision: Decision | None) -> Evaluated:
    """The need's offers; only the one that was decided on. A price that is held is held for the number approved, as
    long as that can be had; a switch names another, and refuses where it can't."""
    seen = evaluate_need(found, need)
    if decision is None or decision.way == "ask" or not decision.supplier:
        return seen
    wanted = (decision.supplier, decision.supplier_number)

    def only(some: Sequence[Priced]) -> tuple[Priced, ...]:
        return tuple(one for one in some if (one.offer.supplier, one.offer.supplier_number) == wanted)

    pinned = replace(seen, priced=only(seen.priced), unknown=only(seen.unknown))
    if not pinned.priced and not pinned.unknown:
        if decision.way == "hold":
            return seen
        away = (one for one in seen.set_aside if (one.offer.supplier, one.offer.supplier_number) == wanted)
        why = next((one.reason for one in away), "it is not on the newest sheet")
        name, number = found.supplier_name(decision.supplier), decision.supplier_number
        raise refused("pinned-offer-gone", label=need.label, job=job.number, supplier=name, found=number, why=why)
    return pinned


def _agreed_alone(found: Catalogue, plan: Plan) -> tuple[PlannedOrder, ...]:
    """The plan's offers of the agreed lines as orders of their own."""
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for order in plan.orders:
        for one in order.landed.items:
            if one.item.need.isdigit():
                by_supplier[order.landed.supplier].append(one.item)
    return tuple(land(found, items) for items in by_supplier.values())
