"""What would be bought for a job's quote: its plan, with decided offers pinned and lines ordered already left out."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from ..basics.alarm import Decision
from ..basics.choice import Priced
from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.part_number import number_key
from ..basics.plan import Plan, PlannedOrder, PlanNeed
from ..basics.problem import Refused, refused
from ..basics.quote import Quote, QuoteLine
from ..basics.value import changed
from ..quoting.bought import Bought
from ..quoting.freight_answers import brings, freight_lines
from ..quoting.freight_at_cost import Choices
from ..quoting.freight_lines import freight_way
from ..quoting.pricing import offer_price
from ..quoting.tolerance import line_at, may_rise_to
from ..storage.after_order import standing_lines
from ..storage.quotes import newest_quote
from .answers import standing_of
from .decided import decisions_of_job
from .evaluate import Catalogue
from .freight_choices import freight_choices
from .plan import JOB_WISHES, evaluate_need, job_needs, land, plan_offers
from .sorted_offers import Evaluated

SECONDS_BESIDE = 3
"""No plan that is only for comparison is looked for longer than this."""


@dataclass(frozen=True)
class Market:
    """A job's open needs with every offer of each, evaluated once, so that it can be planned in several ways.

    `decided` and `settled` by label, as `Bought` holds them; `last` is the newest revision, None before the first.
    `yes`: the amounts approved before tax, by label of its approved lines; `approved` the offers of these, cut to the
    one approved, where its price is still covered by that yes.
    """

    found: Catalogue
    job: Job
    need_by: date | None
    needs: tuple[PlanNeed, ...]
    seen: Mapping[str, Evaluated]
    decided: Mapping[str, Decision]
    settled: Mapping[str, QuoteLine]
    last: Quote | None
    approved: Mapping[str, Evaluated]
    yes: Mapping[str, Money]

    def anew(self) -> "Market":
        """The same with nothing kept for having been approved."""
        return replace(self, approved={})

    def plan(self) -> Plan:
        """The shop's cheapest plan. What the customer said yes to stays, so that she need not be asked again, as long
        as all needs can be filled so."""
        wishes = changed(JOB_WISHES, need_by=self.need_by)
        if self.approved:
            kept = plan_offers(self.found, self.needs, self._offers(), wishes)
            if not kept.unfilled:
                return kept
        return plan_offers(self.found, self.needs, self.seen, wishes)

    def plan_beside(self, supplier: str = "", need_by: date | None = None, front: bool = False) -> Plan | None:
        """Another plan, only for comparison: with `supplier`, of his offers alone; `need_by` earlier than the job's own
        day. None where none was found in a short time."""
        offers = self._offers()
        seen = offers if not supplier else {at: _of(one, supplier) for at, one in offers.items()}
        wishes = changed(JOB_WISHES, need_by=need_by or self.need_by, front=front, seconds=SECONDS_BESIDE)
        try:
            return plan_offers(self.found, self.needs, seen, wishes)
        except Refused:
            return None

    def _offers(self) -> Mapping[str, Evaluated]:
        return {**self.seen, **self.approved}

    def bought(self, plan: Plan) -> Bought:
        """The plan with all else that a quote on it stands on."""
        families, terms = self.found.families, self.found.shop.terms
        parts = {line.part: families[line.part].part for _, line in self.job.labelled() if line.part}
        promised = _promised(self.decided, self.job, self.last)
        return Bought(
            plan=plan,
            agreed_alone=_agreed_alone(self.found, plan),
            decisions=self.decided,
            settled=self.settled,
            returns={order.landed.supplier: terms[order.landed.supplier].return_terms for order in plan.orders},
            names={code: part.name for code, part in parts.items()},
            categories={code: part.category for code, part in parts.items()},
            promised=frozenset(promised) - set(self.settled),
            kept_freight=_kept_freight({**self.settled, **promised}, self.job, self.last),
            kept_arrives=self.last.arrives if self.settled and self.last else None,
            freight_choices=self._freight_choices(plan),
        )

    def _freight_choices(self, plan: Plan) -> Choices:
        billed = freight_way(self.job, self.found.shop.settings) == "billed"
        return freight_choices(self.found, plan) if billed else {}


def market(found: Catalogue, job: Job, need_by: date | None) -> Market:
    """Evaluate the job's needs. Refuses where an offer that was decided on can't be had now."""
    newest = newest_quote(found.connection, job.number)
    last = newest.quote if newest else None
    decided = decisions_of_job(found.connection, job)
    settled = _settled(found, job, last)
    needs = tuple(need for need in job_needs(job, found) if need.label not in settled)
    seen = {need.label: _pinned(found, job, need, decided.get(need.label)) for need in needs}
    holding = standing_of(found.connection, job.number).holding if last else {}
    yes = {label: one.amount for label, one in holding.items() if one.answer == "approved"}
    approved = _approved(found, job, [need for need in needs if need.label in yes], seen, last, yes) if last else {}
    return Market(found, job, need_by or job.need_by, needs, seen, decided, settled, last, approved, yes)


def _of(seen: Evaluated, supplier: str) -> Evaluated:
    def his(some: Sequence[Priced]) -> tuple[Priced, ...]:
        return tuple(one for one in some if one.offer.supplier == supplier)

    return replace(seen, priced=his(seen.priced), unknown=his(seen.unknown))


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


def _promised(decided: Mapping[str, Decision], job: Job, last: Quote | None) -> dict[str, QuoteLine]:
    """Lines of the last revision whose price was promised since, whatever the part costs; none whose label the job
    file has given to other work by now."""
    held = {label: last.line(label) for label, one in decided.items() if one.way != "ask"} if last else {}
    asked = dict(job.labelled())
    return {label: line for label, line in held.items() if line is not None and line.part == asked[label].part}


def _kept_freight(settled: Mapping[str, QuoteLine], job: Job, last: Quote | None) -> tuple[QuoteLine, ...]:
    """Freight lines of the last revision that brought something which is ordered, or promised at its price. A case of
    one that names a line whose label is another part's by now says nothing any more."""
    if last is None:
        return ()
    asked = {label: line.part for label, line in job.labelled()}
    same = {line.label for line in last.lines if asked.get(line.label) == line.part}
    return tuple(
        changed(one, freight_cases=tuple(case for case in one.freight_cases if same.issuperset(case.labels)))
        for one in freight_lines(last)
        if any(brings(one, line) for line in settled.values())
    )


def _pinned(found: Catalogue, job: Job, need: PlanNeed, decision: Decision | None) -> Evaluated:
    """The need's offers; only the one that was decided on. A price that is held, or asked anew, is that of the number
    approved, as long as that can be had; a switch names another, and refuses where it can't."""
    seen = evaluate_need(found, need)
    if decision is None or not decision.supplier:
        return seen
    wanted = (decision.supplier, number_key(decision.supplier_number))

    def only(some: Sequence[Priced]) -> tuple[Priced, ...]:
        return tuple(one for one in some if _offer_key(one.offer) == wanted)

    pinned = replace(seen, priced=only(seen.priced), unknown=only(seen.unknown))
    if not pinned.priced and not pinned.unknown:
        if decision.way != "switch":
            return seen
        away = (one for one in seen.set_aside if _offer_key(one.offer) == wanted)
        why = next((one.reason for one in away), "it is not on the newest sheet")
        name, number = found.supplier_name(decision.supplier), decision.supplier_number
        raise refused("pinned-offer-gone", label=need.label, job=job.number, supplier=name, found=number, why=why)
    return pinned


def _offer_key(offer: Offer) -> tuple[str, str]:
    return offer.supplier, number_key(offer.supplier_number)


def _approved(
    found: Catalogue,
    job: Job,
    needs: Sequence[PlanNeed],
    seen: Mapping[str, Evaluated],
    last: Quote,
    yes: Mapping[str, Money],
) -> dict[str, Evaluated]:
    """By label the offers of the lines that are approved, cut to the one approved, where the yes covers its price."""
    result, lines = {}, dict(job.labelled())
    for need in needs:
        before = last.line(need.label)
        if before is None or before.behind is None or before.part != need.our_part:
            continue
        wanted = (before.behind.supplier, number_key(before.behind.supplier_number))
        category = lines[need.label].category or found.families[need.our_part].part.category
        same = [one for one in seen[need.label].priced if _offer_key(one.offer) == wanted]
        most = may_rise_to(yes[need.label], found.shop.settings.tolerance)
        kept = tuple(one for one in same if line_at(before, _price(one, found, category)) <= most)
        if kept:
            result[need.label] = replace(seen[need.label], priced=kept, unknown=())
    return result


def _price(one: Priced, found: Catalogue, category: str) -> Money:
    landed = one.landed.items[0]
    return offer_price(one.offer, landed.goods_cost, landed.item.ordered, found.shop.settings, category).each


def _agreed_alone(found: Catalogue, plan: Plan) -> tuple[PlannedOrder, ...]:
    """The plan's offers of the agreed lines as orders of their own."""
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for order in plan.orders:
        for one in order.landed.items:
            if one.item.need.isdigit():
                by_supplier[order.landed.supplier].append(one.item)
    return tuple(land(found, items) for items in by_supplier.values())
