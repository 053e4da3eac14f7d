"""Old parts and goods sent back to the supplier: each step recorded, what waits listed with its last day."""

from collections.abc import Collection, Iterator, Sequence
from datetime import date
from decimal import Decimal
from itertools import chain
from typing import Literal

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.money import Money, total
from ..basics.order import GoodsBack, PurchaseOrder, PurchaseOrderLine, ReturnStep
from ..basics.problem import refused
from ..basics.terms import Terms
from ..basics.value import Value, changed
from ..ordering.goods_back import (
    STEP_WORDS,
    NotUsed,
    Standing,
    expected_credit,
    goods_back_open,
    last_day,
    refuse_step,
    standing,
)
from ..ordering.lots import Lot
from ..ordering.order_now import order_now
from ..ordering.receiving import in_currency
from ..storage.after_order import add_goods_back, events, every_step_back, goods_back
from ..storage.after_quote import lines_not_done
from ..storage.orders import order, orders, receipts, some_orders
from ..storage.shop import terms_on
from .desk import Desk

WHAT = {"core": "old part", "goods": "goods"}
MOST_ALONE = 20
"""Orders looked at one by one; of more than this what happened to all orders is read at once."""


class BackStep(Value, frozen=True, kw_only=True):
    """What is said of a step: which line, old part or goods, how many; amounts in the supplier's currency.

    `credit` is what he gave back after `fee`, his restocking; `freight` what sending cost. None: not part of the step.
    """

    line: int
    kind: Literal["core", "goods"]
    step: ReturnStep
    pieces: int = 1
    paper: str = ""
    credit: Decimal | None = None
    fee: Decimal | None = None
    freight: Decimal | None = None
    words: str = ""


class LastStep(Value, frozen=True, kw_only=True):
    """Of which line the last step is taken back, and why. `known`: how many steps and words the page showed of it;
    None: whatever the last one is."""

    order: str
    line: int
    kind: Literal["core", "goods"]
    words: str
    known: int | None = None


class StepTold(Value, frozen=True, kw_only=True):
    """A step, and the word that took it back; None: it stands."""

    step: GoodsBack
    taken_back: GoodsBack | None = None


class StepsOfLine(Value, frozen=True, kw_only=True):
    """The steps of a line's old parts or goods; `known` as `LastStep` wants it."""

    steps: tuple[StepTold, ...]
    known: int

    @property
    def last(self) -> GoodsBack | None:
        """The last step that stands; None where none does."""
        return next((one.step for one in reversed(self.steps) if one.taken_back is None), None)


class WentBack(Value, frozen=True, kw_only=True):
    """The step kept, what is to be known of it, and what still waits on that order."""

    step: GoodsBack
    notes: tuple[str, ...]
    still_open: tuple[GoodsBackOpen, ...]


def send_back(desk: Desk, number: str, said: BackStep) -> WentBack:
    """Keep one step of an old part or of goods going back. Refuses a step that can't follow the earlier ones, and
    giving up, or a credit of more than was to be expected, without a word why."""
    if said.step == "lost" and not said.words.strip():
        raise refused("words-missing", found="giving an old part or goods up")
    with desk.writing("send back") as pen:
        bought = order(pen.connection, number)
        line = _line(bought, said.line)
        now, came = order_now(bought, events(pen.connection, number)), receipts(pen.connection, number)
        here = standing(now, line.line, said.kind, came, goods_back(pen.connection, number))
        step = _step(desk, bought, said)
        refuse_step(here, step)
        terms = terms_on(pen.connection, desk.at.date()).get(bought.supplier)
        _refuse_more(here, step, terms)
        notes = tuple(chain(_late(here, step, terms), _less(here, step, terms)))
        add_goods_back(pen.connection, step)
        what = WHAT[said.kind]
        credit = f", {step.credit}" if step.credit is not None else ""
        told = f"{what} {line.supplier_number} of {number}, {step.pieces} x: {STEP_WORDS[step.step]}{credit}"
        pen.note(line.job, told + (f" ({step.words})" if step.words else ""))
        return WentBack(step=step, notes=notes, still_open=_open(pen.connection, desk, [bought]))


def take_step_back(desk: Desk, said: LastStep) -> WentBack:
    """Take the last step of a line's old parts or goods back, as taken down wrongly. It stays to be read, with who took
    it back and why; what waited before it waits again.

    Refuses where no step stands, where another was taken down or back since the page was opened, and silence about why.
    """
    if not said.words.strip():
        raise refused("words-missing", found="taking a step back")
    with desk.writing("take step back") as pen:
        bought = order(pen.connection, said.order)
        line, what = _line(bought, said.line), WHAT[said.kind]
        last, known = _last(pen.connection, said)
        if said.known is not None and said.known != known:
            raise refused("step-changed-meanwhile", line=said.line, order=bought.number, found=what)
        if last is None:
            raise refused("no-step-to-take-back", line=said.line, order=bought.number, found=what)
        word = _word(desk, last, said.words.strip())
        add_goods_back(pen.connection, word)
        step = f"{last.pieces} x: {STEP_WORDS[last.step]} on {last.at.date()}"
        pen.note(line.job, f"{what} {line.supplier_number} of {bought.number}, {step}, taken back: {word.words}")
        return WentBack(step=last, notes=(), still_open=_open(pen.connection, desk, [bought]))


def steps_of(desk: Desk, number: str, line: int, kind: Literal["core", "goods"]) -> StepsOfLine:
    """Every step taken down of a line's old parts or goods, oldest first. Refuses an unknown order."""
    with desk.store.reading() as connection:
        order(connection, number)
        every = [one for one in every_step_back(connection, number) if (one.line, one.kind) == (line, kind)]
    steps: list[StepTold] = []
    for one in every:
        if one.takes_back:
            at = max(at for at, told in enumerate(steps) if told.taken_back is None)
            steps[at] = changed(steps[at], taken_back=one)
        else:
            steps.append(StepTold(step=one))
    return StepsOfLine(steps=tuple(steps), known=len(every))


def _last(connection: Connection, said: LastStep) -> tuple[GoodsBack | None, int]:
    """The last step that stands, and how many steps and words there are of that line and kind."""
    mine, every = (
        [one for one in some(connection, said.order) if (one.line, one.kind) == (said.line, said.kind)]
        for some in (goods_back, every_step_back)
    )
    return mine[-1] if mine else None, len(every)


def _word(desk: Desk, last: GoodsBack, words: str) -> GoodsBack:
    nothing = {"paper": "", "credit": None, "fee": None, "freight": None}
    return changed(last, at=desk.at, who=desk.who, words=words, takes_back=True, **nothing)


def going_back(desk: Desk, number: str | None = None) -> tuple[GoodsBackOpen, ...]:
    """What waits to be sent back, or for credit, of one order or of all; the earliest last day first."""
    with desk.store.reading() as connection:
        some = [order(connection, number)] if number else orders(connection)
        return _open(connection, desk, some)


def waiting_of_orders(
    connection: Connection, desk: Desk, numbers: Collection[str]
) -> dict[str, tuple[GoodsBackOpen, ...]]:
    """By order, of those named, what of it waits to be sent back or for credit."""
    found: dict[str, list[GoodsBackOpen]] = {number: [] for number in numbers}
    few = len(numbers) <= MOST_ALONE
    bought = some_orders(connection, numbers) if few else orders(connection)
    wanted = [one for one in bought if one.number in found]
    for some in [[one] for one in wanted] if few else [wanted]:
        for waiting in _open(connection, desk, some):
            found[waiting.order].append(waiting)
    return {number: tuple(waiting) for number, waiting in found.items()}


def not_used(connection: Connection, day: date) -> NotUsed:
    """The lines that were not done by their jobs' bills, on that day."""
    return NotUsed(lines=lines_not_done(connection), today=day)


def _open(connection: Connection, desk: Desk, some: Sequence[PurchaseOrder]) -> tuple[GoodsBackOpen, ...]:
    one = some[0].number if len(some) == 1 else None
    return goods_back_open(
        some,
        receipts(connection, one),
        goods_back(connection, one),
        terms_on(connection, desk.at.date()),
        events(connection, one),
        not_used(connection, desk.at.date()),
    )


def _line(bought: PurchaseOrder, at: int) -> PurchaseOrderLine:
    lines = {line.line: line for line in bought.lines}
    if at not in lines:
        raise refused("no-such-order-line", line=at, order=bought.number, known=", ".join(map(str, lines)))
    return lines[at]


def _step(desk: Desk, bought: PurchaseOrder, said: BackStep) -> GoodsBack:
    def money(amount: Decimal | None) -> Money | None:
        return None if amount is None else in_currency(amount, bought.currency)

    return GoodsBack(
        order=bought.number,
        line=said.line,
        kind=said.kind,
        step=said.step,
        pieces=said.pieces,
        at=desk.at,
        who=desk.who,
        paper=said.paper.strip(),
        credit=money(said.credit),
        fee=money(said.fee),
        freight=money(said.freight),
        words=said.words.strip(),
    )


def _first(lots: Iterator[Lot], pieces: int) -> Iterator[tuple[Lot, int]]:
    """The lots these pieces are of, with how many of each."""
    for lot in lots:
        take = min(lot.pieces, pieces)
        pieces -= take
        if take:
            yield lot, take


def _late(here: Standing, step: GoodsBack, terms: Terms | None) -> Iterator[str]:
    """Sent after the last day the terms name."""
    if step.step != "sent":
        return
    for lot, _ in _first(chain(here.must_go.waiting(), here.may_go.waiting()), step.pieces):
        due = last_day(lot.since, step.kind, terms)
        if due is not None and step.at.date() > due:
            days = (step.at.date() - due).days
            yield f"the last day for it was {due}, {days} days ago: ask the supplier whether he still takes it"
    if step.kind == "goods" and terms and terms.return_terms.returnable is False:
        yield f"{terms.name} takes no goods back by his terms: ask him first"


def _refuse_more(here: Standing, step: GoodsBack, terms: Terms | None) -> None:
    """A credit is kept for good: one that is too high is more likely mistyped than given."""
    whole = _expected(here, step, terms) if step.credit is not None and not step.words else None
    if isinstance(whole, Money) and step.credit is not None and step.credit > whole:
        raise refused("credit-above-expected", found=step.credit, expected=whole)


def _expected(here: Standing, step: GoodsBack, terms: Terms | None) -> Money | Lot:
    """What was charged for the pieces less the fee in the terms; or the lot for which the terms say nothing."""
    expected: list[Money] = []
    for lot, take in _first(chain(here.must_go.on_the_way(), here.may_go.on_the_way()), step.pieces):
        amount, _ = expected_credit(lot, terms)
        if amount is None:
            return lot
        expected.append(Money(amount=amount.amount * take / lot.pieces, currency=amount.currency).rounded())
    return total(expected, step.credit.currency if step.credit else "")


def _less(here: Standing, step: GoodsBack, terms: Terms | None) -> Iterator[str]:
    """Credited less, or more, than was to be expected."""
    if step.credit is None:
        return
    whole = _expected(here, step, terms)
    if isinstance(whole, Lot):
        charged = f"{whole.amount} was charged for {whole.pieces}"
        yield f"what the supplier keeps of returned goods is not in his terms: {charged}"
    elif step.credit != whole:
        less = step.credit < whole
        gap = whole - step.credit if less else step.credit - whole
        yield f"{whole} was to be expected, {step.credit} came: {gap} {'less' if less else 'more'}"
