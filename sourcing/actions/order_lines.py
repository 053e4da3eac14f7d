"""Which approved lines of jobs can be ordered now, of which offer and in how many pieces; and which wait, and why."""

from collections.abc import Iterator, Mapping, Sequence

from sqlalchemy import Connection

from ..basics.alarm import Decision
from ..basics.choice import Asks
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.order_now import OrderNow
from ..basics.problem import Problem, problem, refused
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value, changed
from ..landed_cost.arrival import arrival
from ..landed_cost.order import line_cost
from ..landed_cost.quantity import sensible_quantities
from ..ordering.order_now import order_now, pieces_standing
from ..ordering.purchase import Wanted, still_to_order
from ..quoting.hold import Today, why_held
from ..quoting.pricing import offer_price
from ..storage.after_order import events
from ..storage.after_quote import decisions
from ..storage.jobs import job as stored_job
from ..storage.orders import orders
from .answers import Standing, standing_of
from .covered_day import covered_day
from .evaluate import Catalogue, judged_offers
from .needs import asks_of
from .sorted_offers import why_not


class ToOrder(Value, frozen=True, kw_only=True):
    """An approved line of which pieces are still to be ordered. `line` has as many pieces as are still to be ordered;
    `counted`: pieces under another label that were taken as ordered for it."""

    wanted: Wanted
    line: QuoteLine
    quote: Quote
    approval: int
    asks: Asks = Asks()
    decision: Decision | None = None
    counted: tuple[str, ...] = ()


class Ready(Value, frozen=True, kw_only=True):
    """Items to order by need, and why the others wait."""

    items: dict[str, OrderItem]
    held: tuple[Problem, ...]


def job_orders_now(connection: Connection, job: str | None = None) -> list[OrderNow]:
    """Every order as it stands now, or those with a line of the job, oldest first."""
    happened = events(connection)
    return [order_now(order, happened) for order in orders(connection, job)]


def lines_to_order(found: Catalogue, numbers: Sequence[str], only: Sequence[str] = ()) -> dict[str, ToOrder]:
    """Approved lines with a part of which pieces stand on no order yet, by need. `only` names lines of one job.

    Refuses a named line that is not approved, and where nothing is left to order.
    """
    lines: dict[str, ToOrder] = {}
    for number in dict.fromkeys(numbers):
        lines |= _of_job(found, number, only)
    if not any(one.line.quantity for one in lines.values()):
        raise refused("nothing-approved", job=", ".join(dict.fromkeys(numbers)))
    return lines


def ready_items(found: Catalogue, lines: Mapping[str, ToOrder]) -> Ready:
    """What can be ordered of them as it was approved, and which lines wait for a person or for a new answer."""
    items: dict[str, OrderItem] = {}
    held: list[Problem] = []
    for need, one in lines.items():
        item = _ready(found, one) if one.line.quantity else None
        if isinstance(item, Problem):
            held.append(item)
        elif item is not None:
            items[need] = item
    return Ready(items=items, held=tuple(held))


def _of_job(found: Catalogue, number: str, only: Sequence[str]) -> dict[str, ToOrder]:
    standing = standing_of(found.connection, number)
    words = standing.words()
    for label in only:
        if words.get(label) != "approved":
            raise refused("not-approved", job=number, label=label, answer=words.get(label, "not on the quote"))
    approved = [line for line in standing.quote.lines if line.part and words[line.label] == "approved"]
    wanted = [_wanted(number, standing.quote, line) for line in approved]
    left = still_to_order(wanted, pieces_standing(job_orders_now(found.connection, number)))
    decided = {one.label: one for one in decisions(found.connection, number)}
    return {
        one.wanted.need: ToOrder(
            wanted=one.wanted,
            line=changed(_line(standing, one.wanted.label), quantity=one.pieces),
            quote=standing.quote,
            approval=standing.approval_of[one.wanted.label],
            asks=_asks(found, one.wanted),
            decision=decided.get(one.wanted.label),
            counted=one.counted,
        )
        for one in left
        if not only or one.wanted.label in only
    }


def _wanted(number: str, quote: Quote, line: QuoteLine) -> Wanted:
    return Wanted(
        job=number,
        revision=quote.revision,
        label=line.label,
        part=line.part,
        quantity=line.quantity,
        category=line.category,
    )


def _line(standing: Standing, label: str) -> QuoteLine:
    return next(line for line in standing.quote.lines if line.label == label)


def _asks(found: Catalogue, wanted: Wanted) -> Asks:
    """What the job's line asks now; only what our part asks where the line is gone or asks for another part."""
    job = stored_job(found.connection, wanted.job)
    line = dict(job.labelled()).get(wanted.label)
    return asks_of(found, job, line) if line and line.part == wanted.part else Asks()


def _ready(found: Catalogue, one: ToOrder) -> OrderItem | Problem:
    if one.asks.contradicted:
        return _held("identity-contradicted", one, one.asks.contradicted)
    offer, missing = _quoted_offer(found, one)
    if offer is None:
        return _held("approval-no-longer-covers", one, why_held(one.line, None, missing, one.decision))
    item = _item(found, one, offer)
    unit_cost, price = _price_now(found, item, one.line.category)
    today = Today(
        unit_cost=unit_cost,
        latest=arrival(item, found.door(offer.supplier), found.at).latest,
        promised=covered_day(found.connection, one.wanted.job, one.approval),
        tolerance=one.quote.tolerance,
    )
    why = why_held(one.line, price, "", one.decision, today)
    return _held("approval-no-longer-covers", one, why) if why else item


def _held(code: str, one: ToOrder, why: str) -> Problem:
    return problem(code, job=one.wanted.job, label=one.wanted.label, found=why)


def _quoted_offer(found: Catalogue, one: ToOrder) -> tuple[Offer | None, str]:
    """The offer the line was quoted on as it stands on the supplier's newest sheet, or why it is not there."""
    behind = one.line.behind
    if behind is None:
        return None, "the quote names no offer"
    for judged in judged_offers(found, one.line.part, one.asks, one.line.quantity):
        offer, standing = judged.offer, judged.verdict
        if (offer.supplier, offer.supplier_number) == (behind.supplier, behind.supplier_number):
            why = why_not(found, offer) if standing.stands else "; ".join(standing.objections)
            return (None, why) if why else (offer, "")
    return None, f"{behind.supplier_number} is not on the newest sheet of {found.supplier_name(behind.supplier)}"


def _item(found: Catalogue, one: ToOrder, offer: Offer) -> OrderItem:
    """As many pieces as the plan would take: more than needed only where a break makes the goods cheaper."""
    pieces = sensible_quantities(offer, one.line.quantity, found.shop.terms[offer.supplier].breaks)[-1]
    return OrderItem(need=one.wanted.need, offer=offer, needed=one.line.quantity, ordered=pieces)


def _price_now(found: Catalogue, item: OrderItem, category: str) -> tuple[Money, Money]:
    """What one piece costs today in goods, and what it would be priced at, both in the shop's currency."""
    door = found.door(item.offer.supplier)
    value, _ = line_cost(item, door)
    cost = door.rate.convert(value)
    each = Money(amount=cost.amount / item.ordered, currency=cost.currency)
    return each, offer_price(item.offer, cost, item.ordered, found.shop.settings, category).each


def doubts(lines: Mapping[str, ToOrder], ordered: Sequence[str]) -> Iterator[str]:
    """What is doubtful about which part the lines need, and what was counted as ordered under another label."""
    for need, one in lines.items():
        yield from one.counted
        if need in ordered:
            yield from (f"{one.wanted.job} line {one.wanted.label}: {words}" for words in one.asks.warnings)
