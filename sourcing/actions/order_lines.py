"""Which approved lines of jobs can be ordered now, of which offer and in how many pieces; and which wait, and why."""

from collections.abc import Iterator, Mapping, Sequence

from sqlalchemy import Connection

from ..basics.alarm import Decision
from ..basics.approval import AnswerWord
from ..basics.choice import Asks
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.order_now import OrderNow
from ..basics.problem import Problem, problem, refused
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value, changed
from ..landed_cost.arrival import arrival
from ..ordering.order_now import order_now, pieces_standing
from ..ordering.purchase import StillToOrder, Wanted, still_to_order
from ..quoting.freight_answers import without_freight
from ..quoting.hold import Today, why_held
from ..storage.after_order import events
from ..storage.after_quote import decisions
from ..storage.jobs import job as stored_job
from ..storage.orders import orders
from .answers import Standing, standing_of
from .as_quoted import asks_now, item_of, price_now, quoted_offer
from .covered_day import covered_day
from .evaluate import Catalogue


class ToOrder(Value, frozen=True, kw_only=True):
    """An approved line of which pieces are still to be ordered. `line` has as many pieces as are still to be ordered;
    `approval` is the number of the yes, `approved` the amount it was given to. `counted`: pieces under another label
    that were taken as ordered for it; `freight`: a freight line that it needs and that is not approved, and its answer.
    """

    wanted: Wanted
    line: QuoteLine
    quote: Quote
    approval: int
    approved: Money
    asks: Asks = Asks()
    decision: Decision | None = None
    counted: tuple[str, ...] = ()
    freight: tuple[str, AnswerWord] | None = None

    @property
    def whole(self) -> QuoteLine:
        """The line as it stands on the quote, with all of its pieces."""
        return _line(self.quote, self.wanted.label)


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


def _ready(found: Catalogue, one: ToOrder) -> OrderItem | Problem:
    if one.asks.contradicted:
        return _held("identity-contradicted", one, one.asks.contradicted)
    if one.freight is not None:
        freight, answer = one.freight
        job, label = one.wanted.job, one.wanted.label
        return problem("freight-not-approved", job=job, label=label, freight=freight, answer=answer)
    offer, missing = quoted_offer(found, one.line, one.asks)
    if offer is None:
        return _held("approval-no-longer-covers", one, why_held(one.whole, None, missing, one.decision))
    item = item_of(found, offer, one.wanted.need, one.line.quantity)
    unit_cost, price = price_now(found, item, one.line.category)
    today = Today(
        unit_cost=unit_cost,
        latest=arrival(item, found.door(offer.supplier), found.at).latest,
        promised=covered_day(found.connection, one.wanted.job, one.approval),
        approved=one.approved,
        tolerance=one.quote.tolerance,
    )
    why = why_held(one.whole, price.each, "", one.decision, today)
    return _held("approval-no-longer-covers", one, why) if why else item


def _held(code: str, one: ToOrder, why: str) -> Problem:
    return problem(code, job=one.wanted.job, label=one.wanted.label, found=why)


def doubts(lines: Mapping[str, ToOrder], ordered: Sequence[str]) -> Iterator[str]:
    """What is doubtful about which part the lines need, and what was counted as ordered under another label."""
    for need, one in lines.items():
        yield from one.counted
        if need in ordered:
            yield from (f"{one.wanted.job} line {one.wanted.label}: {words}" for words in one.asks.warnings)
