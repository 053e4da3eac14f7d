"""What is approved and on no order yet, planned by itself: the least it would cost now, beside ordering it as quoted.

A quote is planned with all its lines; where the customer declined some, what is left may be cheaper bought otherwise,
and lines may bear freight and fees that were reckoned to fall on others. Nothing of it is ordered from here.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date

from ..basics.choice import Priced
from ..basics.money import Money, total
from ..basics.offer import Offer
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.part_number import number_key
from ..basics.plan import Plan, PlanNeed
from ..basics.problem import Refused
from ..basics.quote import QuoteLine
from ..basics.value import changed
from ..landed_cost.arrival import arrival
from ..quoting.freight_answers import brings, freight_lines
from ..quoting.freight_at_cost import at_cost
from ..quoting.number_approved import covers_number
from ..quoting.tolerance import line_at, rises_too_far
from .answers import standing_of
from .as_quoted import price_now
from .covered_day import covered_day
from .evaluate import Catalogue
from .order_lines import ToOrder
from .plan import JOB_WISHES, evaluate_need, plan_offers
from .quote_plan import SECONDS_BESIDE
from .sorted_offers import Evaluated

ROUNDING = 1
"""Minor units by which a line's share of the same charges may differ, for it is rounded among other lines."""


def bought_anew(
    found: Catalogue, lines: Mapping[str, ToOrder], orders: Sequence[PurchaseOrder], need_by: date | None
) -> tuple[str, ...]:
    """In sentences, that what `orders` buy as it was quoted would be cheaper bought anew by itself, from whom, when,
    and what has to be done for it. Nothing where it would not be, or where no such plan is found in a short time.

    `lines` by need, as they are to be ordered; `orders` as they would be placed now, complete in their costs.
    """
    labels = {(line.job, line.label) for order in orders for line in order.lines}
    wanted = {need: one for need, one in lines.items() if (one.wanted.job, one.wanted.label) in labels}
    plan = _plan(found, wanted, need_by)
    if plan is None or not orders:
        return ()
    quoted = total((order.landed_total for order in orders), plan.total.currency)
    saved = quoted - plan.total
    if saved.amount <= 0:
        return ()
    names = " and ".join(dict.fromkeys(order.supplier_name for order in orders))
    others = " and ".join(dict.fromkeys(order.landed.supplier_name for order in plan.orders))
    days = [order.expected[1] if order.expected else None for order in orders]
    return (
        f"as quoted, what is approved and not ordered yet costs {quoted} at the door from {names}{_by(days)}; bought "
        f"anew by itself it costs {plan.total} from {others}{_by([plan.latest])}, {saved} less",
        *_to_do(found, wanted, plan),
    )


def unbilled_charges(found: Catalogue, lines: Mapping[str, ToOrder], orders: Sequence[PurchaseOrder]) -> Iterator[str]:
    """Lines that bear more freight and fees in these orders than their quote counted, and than is billed for them.

    Lines of a job that share a line of billed freight, or else an order, are looked at together.
    """
    by_label = {(one.wanted.job, one.wanted.label): one for one in lines.values()}
    groups: dict[tuple[str, str], list[tuple[PurchaseOrderLine, ToOrder]]] = defaultdict(list)
    billed: dict[tuple[str, str], QuoteLine | None] = {}
    for order in orders:
        for line in order.lines:
            of = by_label[line.job, line.label]
            freight = next((one for one in freight_lines(of.quote) if brings(one, of.whole)), None)
            group = line.job, f"line {freight.label}" if freight else order.supplier
            groups[group].append((line, of))
            billed[group] = freight
    for group, some in groups.items():
        yield from _unbilled(group[0], some, _as_billed(found, group[0], billed[group]))


def _as_billed(found: Catalogue, job: str, freight: QuoteLine | None) -> QuoteLine | None:
    """The freight line as it is billed with what is approved now."""
    words = standing_of(found.connection, job).words()
    return freight and next(iter(at_cost([freight], [label for label, said in words.items() if said == "approved"])))


def _unbilled(job: str, some: Sequence[tuple[PurchaseOrderLine, ToOrder]], freight: QuoteLine | None) -> Iterator[str]:
    currency = some[0][0].landed.currency
    then = [counted for _, of in some if (counted := _counted(of.whole)) is not None]
    if len(then) < len(some) or any(of.whole.quantity != of.line.quantity for _, of in some):
        return  # nothing to compare with: an old paper, or a line of which a part is ordered already
    now, counted = total((line.landed - line.goods_cost for line, _ in some), currency), total(then, currency)
    more = now - max(counted, freight.freight_price if freight else counted)
    if more.minor() <= ROUNDING * len(some):
        return
    labels = [line.label for line, _ in some]
    bear = "bears" if len(labels) == 1 else "bear"
    on_bill = f" and bills {freight.freight_price} as line {freight.label}" if freight else ""
    yield (
        f"job {job}: {_lines(labels)} {bear} {now} of freight and fees, the quote counted {counted}{on_bill}; "
        f"nobody is billed for {more} of it"
    )


def _counted(line: QuoteLine) -> Money | None:
    """Freight, fees and duty that the quote counted in the line's cost."""
    behind = line.behind
    if behind is None or behind.cost.currency != behind.unit_cost.currency:
        return None
    goods = Money(amount=behind.unit_cost.amount * line.quantity, currency=behind.cost.currency)
    return behind.cost - goods.rounded()


def _plan(found: Catalogue, wanted: Mapping[str, ToOrder], need_by: date | None) -> Plan | None:
    """The least plan for these lines, in time where they are wanted by a day; what was decided on stays as decided."""
    needs = [
        PlanNeed(label=need, our_part=one.wanted.part, quantity=one.line.quantity, asks=one.asks)
        for need, one in wanted.items()
    ]
    seen = {need.label: _as_decided(evaluate_need(found, need), wanted[need.label]) for need in needs}
    try:
        plan = plan_offers(found, needs, seen, changed(JOB_WISHES, need_by=need_by, seconds=SECONDS_BESIDE))
    except Refused:
        return None
    return None if plan.unfilled else plan


def _as_decided(seen: Evaluated, one: ToOrder) -> Evaluated:
    """All offers; of a line on which a way out was taken only the one it is quoted on."""
    behind = one.line.behind
    if one.decision is None or behind is None:
        return seen
    wanted = (behind.supplier, number_key(behind.supplier_number))

    def same(some: Sequence[Priced]) -> tuple[Priced, ...]:
        return tuple(each for each in some if _key(each.offer) == wanted)

    return replace(seen, priced=same(seen.priced), unknown=same(seen.unknown))


def _key(offer: Offer) -> tuple[str, str]:
    return offer.supplier, number_key(offer.supplier_number)


def _to_do(found: Catalogue, wanted: Mapping[str, ToOrder], plan: Plan) -> Iterator[str]:
    """How it can be bought so: an order is placed as its quote says, so it takes a new revision."""
    for job in dict.fromkeys(one.wanted.job for one in wanted.values()):
        standing = standing_of(found.connection, job)
        words = standing.words()
        gone = [line.label for line in standing.quote.lines if line.part and words[line.label] == "declined"]
        out = f"take out of the job what was declined ({_lines(gone)}), then " if gone else ""
        yield f"to buy it so for job {job}: {out}write a new revision by --plan shop"
    asked = list(_asked_again(found, wanted, plan))
    more = f": {'; '.join(asked)}" if asked else ""
    yield f"on it a yes holds where number, price and day are as approved; what is not is asked again{more}"


def _asked_again(found: Catalogue, wanted: Mapping[str, ToOrder], plan: Plan) -> Iterator[str]:
    """Lines that would bear another number, a price above what the yes covers, or come later than it does."""
    for item in (item.item for order in plan.orders for item in order.landed.items):
        one, number = wanted[item.need], str(item.offer.numbers()[0])
        job, label = one.wanted.job, one.wanted.label
        if not covers_number(one.whole, number, one.decision):
            yield f"line {label} of job {job} as {number}"
            continue
        each = price_now(found, item, one.line.category)[1].each
        if rises_too_far(one.whole, each, one.approved, one.quote.tolerance):
            price = line_at(one.whole, each)
            yield f"line {label} of job {job} at {price} before tax, approved was {one.approved}"
        here = arrival(item, found.door(item.offer.supplier), found.at).latest
        covered = covered_day(found, job, one.approval)
        if covered is not None and (here is None or here > covered.day):
            day = f"by {here}" if here else "on a day not known"
            yield f"line {label} of job {job} {day}, approved was by {covered.words()}"


def _lines(labels: Sequence[str]) -> str:
    return f"line {labels[0]}" if len(labels) == 1 else f"lines {', '.join(labels)}"


def _by(days: Sequence[date | None]) -> str:
    """By when all of it is here; nothing where a day is not known."""
    known = [day for day in days if day is not None]
    return f", here by {max(known)}" if known and len(known) == len(days) else ""
