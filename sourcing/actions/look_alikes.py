"""Candidates page by page and one at a time: what waits, the next one, and what stands beside it to be judged by."""

from collections.abc import Iterable, Iterator

from sqlalchemy import Connection

from ..basics.judgement import Judgement, Waiting
from ..basics.problem import refused
from ..basics.value import Value
from ..storage.candidates import CandidateRow, kept_candidates
from ..storage.judgements import judgements
from ..storage.sheets import kept_sheets
from ..storage.shop import terms_on
from .desk import Desk
from .find import size_words
from .review_queue import show
from .waiting_now import WaitingNow, waiting_now

ROWS = 20
MOST_PARTS = 8
"""Parts one row may be that are told beside the one asked about."""


class Narrowed(Value, frozen=True, kw_only=True):
    """Which candidates: of one supplier, for one part of ours (its code), only the likely ones; blank: all."""

    supplier: str = ""
    part: str = ""
    likely: bool = False


class QueuePage(Value, frozen=True, kw_only=True):
    """One page of rows that wait. `rows`, `candidates`, `likely` are of all pages; `total` of rows not narrowed."""

    rows: int
    candidates: int
    likely: int
    total: int
    page: int
    pages: int
    first: int
    last: int
    shown: tuple[Waiting, ...]
    suppliers: tuple[tuple[str, str], ...]
    not_looked_through: tuple[int, ...]
    table_changed_since: tuple[int, ...]


class OneToJudge(Value, frozen=True, kw_only=True):
    """A candidate with all there is to judge it by. `others`: what else the row may be, and waits.

    `place` counts from 1 among the `rows` that wait; None where it does not wait: then `answers` say why, or the table
    settled it. `later` is the candidate after it; None: it is the last.
    """

    waiting: Waiting
    size: str
    others: tuple[Waiting, ...]
    place: int | None
    rows: int
    later: int | None
    answers: tuple[Judgement, ...]


def queue_page(desk: Desk, narrowed: Narrowed, page: int = 1) -> QueuePage:
    """The rows that wait, most worth first; a page beyond the last is the last."""
    with desk.store.reading() as connection:
        now = waiting_now(connection, desk)
        waits = now.waits
        mine = list(_narrowed(now, waits, narrowed))
        rows = list(dict.fromkeys(one.offer for one in mine))
        pages = max(1, -(-len(rows) // ROWS))
        page = min(max(page, 1), pages)
        first = (page - 1) * ROWS
        on_page = set(rows[first : first + ROWS])
        return QueuePage(
            rows=len(rows),
            candidates=len(mine),
            likely=len({one.offer for one in mine if one.candidate in now.order.likely}),
            total=len({one.offer for one in waits}),
            page=page,
            pages=pages,
            first=first + 1,
            last=first + len(on_page),
            shown=tuple(show(now.found, [one.candidate for one in mine if one.offer in on_page])),
            suppliers=_suppliers(connection, desk),
            not_looked_through=now.not_looked_through,
            table_changed_since=now.table_changed_since,
        )


def one_to_judge(desk: Desk, candidate: int, narrowed: Narrowed) -> OneToJudge:
    """The candidate whole. Refuses a number there is none of, and one whose part is ours no longer."""
    with desk.store.reading() as connection:
        now = waiting_now(connection, desk)
        kept = kept_candidates(connection, [candidate]).get(candidate)
        if kept is None or kept.part not in now.found.side.families:
            raise refused("no-such-candidate", found=candidate)
        place = now.order.places.get(candidate)
        offer = None if place is None else now.order.every[place].offer
        waits = now.waits
        rows = list(dict.fromkeys(one.offer for one in _narrowed(now, waits, narrowed)))
        others = [one.candidate for one in waits if one.offer == offer and one.candidate != candidate]
        (waiting,) = show(now.found, [candidate])
        is_waiting = place is not None and candidate not in now.gone
        return OneToJudge(
            waiting=waiting,
            size=size_words(waiting.part, kept.offer),
            others=tuple(show(now.found, others[:MOST_PARTS])),
            place=rows.index(offer) + 1 if is_waiting and offer in rows else None,
            rows=len(rows),
            later=_after(now, place, narrowed, without=offer),
            answers=tuple(judgements(connection, candidate)),
        )


def next_to_judge(desk: Desk, narrowed: Narrowed, after: int | None = None) -> int | None:
    """The candidate to be shown next: the first that waits, or the first after that one; None where none does.

    After an answer other parts of the same row come first.
    """
    with desk.store.reading() as connection:
        now = waiting_now(connection, desk)
        return _after(now, None if after is None else now.order.places.get(after), narrowed)


def candidates_of(desk: Desk, narrowed: Narrowed, most: int) -> tuple[Waiting, ...]:
    """The candidates of so many rows, most worth first: for a file."""
    with desk.store.reading() as connection:
        now = waiting_now(connection, desk)
        mine = list(_narrowed(now, now.waits, narrowed))
        rows = set(list(dict.fromkeys(one.offer for one in mine))[:most])
        return tuple(show(now.found, [one.candidate for one in mine if one.offer in rows]))


def _after(now: WaitingNow, place: int | None, narrowed: Narrowed, without: int | None = None) -> int | None:
    """After a no other parts of the same row come next; who leaves a row for later leaves it whole (`without`)."""
    begin = 0 if place is None else place + 1
    rest = (one for one in now.order.every[begin:] if one.candidate not in now.gone and one.offer != without)
    return next((one.candidate for one in _narrowed(now, rest, narrowed)), None)


def _narrowed(now: WaitingNow, every: Iterable[CandidateRow], narrowed: Narrowed) -> Iterator[CandidateRow]:
    part, supplier = narrowed.part.casefold(), narrowed.supplier
    if narrowed.likely:
        every = (one for one in every if one.candidate in now.order.likely)
    if supplier:
        every = (one for one in every if one.keys.supplier == supplier)
    if part:
        every = (one for one in every if one.part.casefold() == part)
    return iter(every)


def suppliers_with_sheets(desk: Desk) -> tuple[tuple[str, str], ...]:
    """Every supplier with a sheet that counts: short name and name."""
    with desk.store.reading() as connection:
        return _suppliers(connection, desk)


def _suppliers(connection: Connection, desk: Desk) -> tuple[tuple[str, str], ...]:
    names = {one.supplier: one.name for one in terms_on(connection, desk.at.date()).values()}
    newest = sorted({one.supplier for one in kept_sheets(connection, desk.at.date()) if one.is_newest})
    return tuple((one, names.get(one, one)) for one in newest)
