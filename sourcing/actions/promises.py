"""Promised days: kept with who said them and when, never changed; and everything that is still open, oldest first."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from functools import partial

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.problem import refused
from ..basics.promise import OpenPromise, Promise, PromiseKind
from ..basics.quote import Quote
from ..basics.value import Value
from ..ordering.promised import moved
from ..quoting.deposit_held import deposit_held
from ..storage.after_order import add_promise, goods_back, promises
from ..storage.after_quote import bill_of, billed_jobs, deposits
from ..storage.jobs import job as stored_job
from ..storage.jobs import job_numbers
from ..storage.orders import orders
from ..storage.quotes import approvals, newest_quote
from ..storage.sheets import kept_sheets
from ..storage.shop import terms_on
from .answers import standing_of
from .back_list import back_list
from .desk import Desk
from .job_now import OnOrder, lines_on_order
from .remembered import Remembered, with_remembered

SOON_DAYS = 3
"""A quote without an answer is listed from so many days before it runs out (our own choice)."""
SHEET_SOON_DAYS = 7
"""A sheet is listed from so many days before its prices run out (our own choice)."""


PAGE = 50


class PromisesFound(Value, frozen=True, kw_only=True):
    """Rows of a page, which they are (`first` counts from 1, 0 where there is none), and how many there are in all."""

    rows: tuple[OpenPromise, ...]
    first: int
    count: int
    page: int
    pages: int


class Said(Value, frozen=True, kw_only=True):
    """A promise as it was said. `latest` None: the one day named. `order` and `line`: about which goods; blank: all."""

    kind: PromiseKind
    earliest: date
    latest: date | None = None
    said_by: str
    words: str = ""
    order: str = ""
    line: int | None = None


def promise(desk: Desk, number: str, said: Said) -> Promise:
    """Keep a promised day beside the earlier ones of the job. The latest word is what holds; none is ever changed.

    Refuses an unknown or billed job, a promise of nobody, days the wrong way round or past, and goods the job has not
    on order.
    """
    with desk.writing("promise") as pen:
        job = stored_job(pen.connection, number)
        if bill_of(pen.connection, number) is not None:
            raise refused("promise-for-billed", job=number)
        one = _checked(desk, number, said, lines_on_order(pen.connection, number))
        add_promise(pen.connection, one)
        day = f"{one.latest}" if one.earliest == one.latest else f"{one.earliest} to {one.latest}"
        words = f": {one.words}" if one.words else ""
        pen.note(job.number, f"{one.said_by} promised {one.kind} {day}{words}")
        return one


def promises_of(desk: Desk, number: str) -> tuple[Promise, ...]:
    """Every promise kept for a job, in the order they were said. Refuses an unknown job."""
    with desk.store.reading() as connection:
        return tuple(promises(connection, stored_job(connection, number).number))


def open_promises(desk: Desk, job: str | None = None) -> tuple[OpenPromise, ...]:
    """What somebody waits for, of one job or of all, the oldest day first; what has no day comes last.

    Parts not come, machines to be ready, old parts and goods to send back, credit, deposits held, quotes without an
    answer and sheets about to run out. Nothing of a billed job but goods and money of the supplier's.
    """
    today = desk.at.date()
    with desk.store.reading() as connection:
        if job is None:
            every = with_remembered(desk.store, connection, today, partial(_of_every_job, connection, today))
            found = [*every, *_sheets(connection, today)]
        else:
            billed = stored_job(connection, job).number in billed_jobs(connection)
            found = [] if billed else list(_of_job(connection, job, today))
    found += (_to_go_back(one, today) for one in back_list(desk) if job in (None, one.job))
    return tuple(sorted(found, key=_order_of))


def promises_paged(desk: Desk, page: int) -> PromisesFound:
    """The same of all jobs, one page of it; pages are counted from 1, and one that is not there is the nearest."""
    every = open_promises(desk)
    pages = max(1, -(-len(every) // PAGE))
    page = min(max(page, 1), pages)
    rows = every[(page - 1) * PAGE : page * PAGE]
    first = (page - 1) * PAGE + 1 if rows else 0
    return PromisesFound(rows=rows, first=first, count=len(every), page=page, pages=pages)


def _of_every_job(
    connection: Connection, today: date, kept: Remembered, _orders: Mapping[str, set[str]]
) -> list[OpenPromise]:
    """What is open in every job that is not billed; only what is not remembered is worked out."""
    billed = billed_jobs(connection)
    numbers = [number for number in job_numbers(connection) if number not in billed]
    for number in numbers:
        if number not in kept.promised:
            kept.promised[number] = tuple(_of_job(connection, number, today))
    return [one for number in numbers for one in kept.promised[number]]


def _order_of(one: OpenPromise) -> tuple[bool, date, str, str, str, int]:
    return one.due is None, one.due or date.max, one.job, one.kind, one.order, one.line or 0


def _checked(desk: Desk, number: str, said: Said, on_order: Sequence[OnOrder]) -> Promise:
    latest = said.latest or said.earliest
    if not said.said_by.strip():
        raise refused("promise-of-nobody", found=said.kind, job=number)
    if latest < said.earliest:
        raise refused("promise-backwards", first=said.earliest, last=latest)
    if latest < desk.at.date():
        raise refused("promise-in-the-past", found=latest, today=desk.at.date())
    known = [(one.order.order.number, one.line.line.line) for one in on_order]
    fits = [one for one in known if said.order in ("", one[0]) and said.line in (None, one[1])]
    if (said.order or said.line is not None) and not fits:
        asked = f"line {said.line} of {said.order or 'any order'}" if said.line is not None else said.order
        names = ", ".join(f"{order} line {line}" for order, line in known) or "nothing is on order"
        raise refused("promise-not-on-order", job=number, found=asked, known=names)
    return Promise(
        kind=said.kind,
        job=number,
        order=said.order,
        line=said.line,
        earliest=said.earliest,
        latest=latest,
        said_by=said.said_by.strip(),
        said_at=desk.at,
        taken_by=desk.who,
        words=said.words,
    )


def _of_job(connection: Connection, number: str, today: date) -> Iterator[OpenPromise]:
    kept = promises(connection, number)
    newest = newest_quote(connection, number)
    yield from (_parts(one, today) for one in lines_on_order(connection, number) if not one.is_complete)
    yield from _machine(connection, number, kept, newest.quote if newest else None, today)
    for kind in ("core back", "goods back", "answer"):
        said = [one for one in kept if one.kind == kind]
        if said and not _kept(connection, said[-1]):
            yield _from_words(said, today)
    yield from _deposit(connection, number)
    if newest is not None:
        yield from _unanswered(connection, newest.quote, today)


def _parts(one: OnOrder, today: date) -> OpenPromise:
    line, order = one.line.line, one.order.order
    due = one.days[-1].latest if one.days else None
    left = one.line.pieces - one.came
    return OpenPromise(
        kind="parts here",
        what=f"{left} x {one.line.number} for line {line.label}",
        who=order.supplier_name,
        due=due,
        days_over=_over(due, today),
        job=line.job,
        order=order.number,
        line=line.line,
        moved=moved(one.days),
        history=one.days,
    )


def _machine(
    connection: Connection, number: str, kept: Sequence[Promise], quote: Quote | None, today: date
) -> Iterator[OpenPromise]:
    """The day the machine is to be ready: the last word of it, else the day the customer wants it back."""
    job = stored_job(connection, number)
    said = tuple(one for one in kept if one.kind == "machine ready")
    wanted = job.ready_by or (quote.ready_by if quote else None)
    due = said[-1].latest if said else wanted
    if due is None:
        return
    first_moved = bool(said and wanted and said[0].latest != wanted)
    yield OpenPromise(
        kind="machine ready",
        what=job.machine.description,
        who=job.customer.name,
        due=due,
        days_over=_over(due, today),
        job=number,
        moved=moved(said) + first_moved,
        history=said,
    )


def _kept(connection: Connection, last: Promise) -> bool:
    """Whether what was promised has happened since: an answer was recorded, or something was sent back."""
    if last.kind == "answer":
        return any(one.at >= last.said_at for _, one in approvals(connection, last.job))
    sort = "core" if last.kind == "core back" else "goods"
    numbers = {one.number for one in orders(connection, last.job)}
    return any(one.kind == sort and one.order in numbers and one.at >= last.said_at for one in goods_back(connection))


def _from_words(said: Sequence[Promise], today: date) -> OpenPromise:
    last = said[-1]
    return OpenPromise(
        kind="answer" if last.kind == "answer" else "goods back" if last.kind == "goods back" else "core back",
        what=last.words or last.kind,
        who=last.said_by,
        due=last.latest,
        days_over=_over(last.latest, today),
        job=last.job,
        order=last.order,
        line=last.line,
        moved=moved(said),
        history=tuple(said),
    )


def _deposit(connection: Connection, number: str) -> Iterator[OpenPromise]:
    kept = deposits(connection, number)
    held = deposit_held(kept, kept[0].amount.currency) if kept else None
    if held is not None and held.amount > 0:
        job = stored_job(connection, number)
        what = f"deposit for {job.machine.description}: the customer's until it is billed"
        yield OpenPromise(
            kind="deposit", what=what, who=job.customer.name, due=None, days_over=0, job=number, amount=held
        )


def _unanswered(connection: Connection, quote: Quote, today: date) -> Iterator[OpenPromise]:
    words = standing_of(connection, quote.job).words()
    waiting = [label for label, word in words.items() if word == "waiting"]
    if not waiting or quote.valid_to > today + timedelta(days=SOON_DAYS):
        return
    lines = "line" if len(waiting) == 1 else "lines"
    yield OpenPromise(
        kind="quote expires",
        what=f"revision {quote.revision}: no answer to {lines} {', '.join(waiting)}",
        who=quote.customer.name,
        due=quote.valid_to,
        days_over=_over(quote.valid_to, today),
        job=quote.job,
    )


def _to_go_back(one: GoodsBackOpen, today: date) -> OpenPromise:
    thing = "old part" if one.kind == "core" else "goods"
    sends = one.waits == "to be sent"
    return OpenPromise(
        kind=("core back" if one.kind == "core" else "goods back") if sends else "credit due",
        what=f"{one.pieces} x {one.number}, {thing} {one.waits}: {one.why}",
        who=one.supplier_name,
        due=one.due,
        days_over=_over(one.due, today),
        job=one.job,
        order=one.order,
        line=one.line,
        amount=one.expected,
    )


def _sheets(connection: Connection, today: date) -> Iterator[OpenPromise]:
    terms = terms_on(connection, today)
    for sheet in kept_sheets(connection, today):
        known = terms.get(sheet.supplier)
        if not sheet.is_newest or known is None or known.prices_hold_days is None:
            continue
        due = sheet.sheet_date + timedelta(days=known.prices_hold_days)
        if due <= today + timedelta(days=SHEET_SOON_DAYS):
            what = f"prices of {sheet.file}, {sheet.sheet_date}"
            yield OpenPromise(kind="sheet expires", what=what, who=known.name, due=due, days_over=_over(due, today))


def _over(due: date | None, today: date) -> int:
    return max((today - due).days, 0) if due else 0
