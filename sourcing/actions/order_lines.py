"""Which approved lines of jobs can be ordered now, of which offer and in how many pieces; and which wait, and why."""

from collections.abc import Iterator, Mapping, Sequence

from sqlalchemy import Connection

from ..basics.alarm import Decision
from ..basics.approval import AnswerWord
from ..basics.choice import Asks
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.order_now import OrderNow
from ..basics.part_number import number_key
from ..basics.problem import Problem, Refused, problem, refused
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value, changed
from ..landed_cost.arrival import arrival
from ..ordering.order_now import order_now, pieces_standing
from ..ordering.purchase import StillToOrder, Wanted, still_to_order
from ..quoting.alarm import risen
from ..quoting.freight_answers import without_freight
from ..quoting.hold import Today, why_held
from ..storage.after_order import events
from ..storage.after_quote import bill_of
from ..storage.jobs import job as stored_job
from ..storage.orders import orders
from .answers import Standing, standing_of
from .as_quoted import asks_now, item_of, price_now, quoted_offer
from .covered_day import covered_day
from .decided import decisions_now
from .evaluate import Catalogue
from .said_before import said_before


class ToOrder(Value, frozen=True, kw_only=True):
    """An approved line of which pieces are still to be ordered. `line` has as many pieces as are still to be ordered;
    `approval` is the number of the yes, `approved` the amount and `condition` what it was given to. `counted`: pieces
    under another label that were taken as ordered for it; `freight`: a freight line that it needs and that is not
    approved, and its answer.
    """

    wanted: Wanted
    line: QuoteLine
    quote: Quote
    approval: int
    approved: Money
    asks: Asks = Asks()
    decision: Decision | None = None
    counted: tuple[str, ...] = ()
    condition: str = ""
    freight: tuple[str, AnswerWord] | None = None

    @property
    def whole(self) -> QuoteLine:
        """The line as it stands on the quote, with all of its pieces."""
        return _line(self.quote, self.wanted.label)


class Ready(Value, frozen=True, kw_only=True):
    """Items to order by need, why the others wait, and in `notes`, by need, what is to be known before ordering."""

    items: dict[str, OrderItem]
    held: tuple[Problem, ...]
    notes: dict[str, tuple[str, ...]]


def job_orders_now(connection: Connection, job: str | None = None) -> list[OrderNow]:
    """Every order as it stands now, or those with a line of the job, oldest first."""
    happened = events(connection)
    return [order_now(order, happened) for order in orders(connection, job)]


def lines_to_order(found: Catalogue, numbers: Sequence[str], only: Sequence[str] = ()) -> dict[str, ToOrder]:
    """Approved lines with a part of which pieces stand on no order yet, by need. `only` names lines of one job.

    Refuses a billed job, a named line that is not approved, and where nothing is left to order.
    """
    lines: dict[str, ToOrder] = {}
    for number in dict.fromkeys(numbers):
        lines |= _of_job(found, number, only)
    if not any(one.line.quantity for one in lines.values()):
        raise _nothing_left(found.connection, tuple(dict.fromkeys(numbers)))
    return lines


def ready_items(found: Catalogue, lines: Mapping[str, ToOrder]) -> Ready:
    """What can be ordered of them as it was approved, and which lines wait for a person or for a new answer."""
    items: dict[str, OrderItem] = {}
    held: list[Problem] = []
    notes: dict[str, tuple[str, ...]] = {}
    for need, one in lines.items():
        item = _ready(found, one) if one.line.quantity else None
        if isinstance(item, Problem):
            held.append(item)
        elif item is not None:
            items[need], notes[need] = item
    return Ready(items=items, held=tuple(held), notes=notes)


def held_back(found: Catalogue, number: str) -> dict[str, Problem]:
    """By label, why approved lines of a job whose pieces are still to be ordered wait. Refuses a billed job."""
    left = [one for one in _of_job(found, number, ()).values() if one.line.quantity]
    return {one.wanted.label: item for one in left if isinstance(item := _ready(found, one), Problem)}


def _nothing_left(connection: Connection, numbers: Sequence[str]) -> Refused:
    """Why nothing can be ordered: all that is approved stands on orders, which are named, or nothing is approved."""
    every = (now for number in numbers for now in job_orders_now(connection, number))
    standing = list(dict.fromkeys(now.order.number for now in every if not now.cancelled))
    job = ", ".join(numbers)
    if not standing:
        return refused("nothing-approved", job=job)
    return refused("all-on-order", job=job, orders=", ".join(standing), order=standing[-1])


def _of_job(found: Catalogue, number: str, only: Sequence[str]) -> dict[str, ToOrder]:
    if bill_of(found.connection, stored_job(found.connection, number).number) is not None:
        raise refused("billed-no-order", job=number)
    standing = standing_of(found.connection, number)
    words = standing.words()
    for label in only:
        if words.get(label) == "declined":
            raise refused("line-declined", job=number, label=label)
        if words.get(label) != "approved":
            raise refused("not-approved", job=number, label=label, answer=words.get(label, "not on the quote"))
    approved = [line for line in standing.quote.lines if line.part and words[line.label] == "approved"]
    wanted = [_wanted(number, standing.quote, line) for line in approved]
    left = still_to_order(wanted, pieces_standing(job_orders_now(found.connection, number)))
    decided = decisions_now(found.connection, standing.quote)
    return {
        one.wanted.need: _to_order(found, standing, one, decided.get(one.wanted.label))
        for one in left
        if not only or one.wanted.label in only
    }


def _to_order(found: Catalogue, standing: Standing, left: StillToOrder, decision: Decision | None) -> ToOrder:
    quote, label = standing.quote, left.wanted.label
    line = _line(quote, label)
    return ToOrder(
        wanted=left.wanted,
        line=changed(line, quantity=left.pieces),
        quote=quote,
        approval=standing.approval_of[label],
        approved=standing.holding[label].amount,
        asks=asks_now(found, stored_job(found.connection, quote.job), line),
        decision=decision,
        counted=left.counted,
        condition=standing.holding[label].condition,
        freight=without_freight(quote, standing.words(), line),
    )


def _wanted(number: str, quote: Quote, line: QuoteLine) -> Wanted:
    return Wanted(
        job=number,
        revision=quote.revision,
        label=line.label,
        part=line.part,
        quantity=line.quantity,
        category=line.category,
    )


def _line(quote: Quote, label: str) -> QuoteLine:
    return next(line for line in quote.lines if line.label == label)


def _ready(found: Catalogue, one: ToOrder) -> tuple[OrderItem, tuple[str, ...]] | Problem:
    if one.asks.contradicted:
        return _held("identity-contradicted", one, one.asks.contradicted)
    if one.freight is not None:
        freight, answer = one.freight
        job, label = one.wanted.job, one.wanted.label
        return problem("freight-not-approved", job=job, label=label, freight=freight, answer=answer)
    switching = _to_switch(found, one)
    if switching is not None:
        return switching
    offer, missing = quoted_offer(found, one.line, one.asks)
    if offer is None:
        return _held("approval-no-longer-covers", one, why_held(one.whole, None, missing, one.decision))
    if offer.core_charge and not one.whole.core_words:
        return problem("old-part-not-told", job=one.wanted.job, label=one.wanted.label)
    item = item_of(found, offer, one.wanted.need, one.line.quantity)
    unit_cost, price = price_now(found, item, one.line.category)
    here = arrival(item, found.door(offer.supplier), found.at)
    said = (*([here.told] if here.told else []), *said_before(found.connection, one.wanted.job, offer))
    today = Today(
        unit_cost=unit_cost,
        latest=here.latest,
        covered=covered_day(found, one.wanted.job, one.approval),
        approved=one.approved,
        tolerance=one.quote.tolerance,
        number=str(offer.numbers()[0]),
    )
    why = why_held(one.whole, price.each, "", one.decision, today)
    if why:
        return _held("approval-no-longer-covers", one, "; ".join((why, *said)))
    return item, (*said, *_dearer(one.whole, unit_cost))


def _to_switch(found: Catalogue, one: ToOrder) -> Problem | None:
    """Why it waits where it was decided to buy it elsewhere, and the newest revision still buys it as before."""
    decision, behind = one.decision, one.line.behind
    if decision is None or decision.way != "switch" or behind is None:
        return None
    wanted = (decision.supplier, number_key(decision.supplier_number))
    if wanted == (behind.supplier, number_key(behind.supplier_number)):
        return None
    return problem(
        "switch-not-quoted",
        job=one.wanted.job,
        label=one.wanted.label,
        supplier=found.supplier_name(decision.supplier),
        found=decision.supplier_number,
        on=decision.at.date(),
        who=decision.who,
    )


def _dearer(line: QuoteLine, unit_cost: Money) -> Iterator[str]:
    """A part that costs the shop more than it was quoted on, though nothing of it is the customer's."""
    before = line.behind.unit_cost if line.behind else unit_cost
    if before.rounded() < unit_cost.rounded():
        yield f"the part costs more than quoted, {risen(before, unit_cost)}; the price to the customer stays"


def _held(code: str, one: ToOrder, why: str) -> Problem:
    return problem(code, job=one.wanted.job, label=one.wanted.label, found=why)


def doubts(lines: Mapping[str, ToOrder], ready: Ready) -> Iterator[str]:
    """What is doubtful about which part the lines need, what was counted as ordered under another label, and what else
    is to be known of the lines that can be ordered."""
    for need, one in lines.items():
        yield from one.counted
        if need in ready.items:
            condition = (f"approved on condition: {one.condition}; see that it is met",) if one.condition else ()
            some = (*condition, *one.asks.warnings, *ready.notes.get(need, ()))
            yield from (f"{one.wanted.job} line {one.wanted.label}: {words}" for words in some)


def still_waiting(connection: Connection, numbers: Sequence[str]) -> Iterator[str]:
    """Lines with a part that the customers of the jobs have not answered yet: they might go with the order."""
    for number in dict.fromkeys(numbers):
        standing = standing_of(connection, number)
        words = standing.words()
        parts = [line for line in standing.quote.lines if line.part and words[line.label] == "waiting"]
        waits = [f"{line.label} ({line.title})" for line in parts]
        if waits:
            yield f"job {number}: the customer has not answered yet on {', '.join(waits)}; nothing of it is ordered"
