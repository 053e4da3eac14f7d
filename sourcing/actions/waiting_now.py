"""The queue of candidates, remembered between two pages: an answer changes only what it is about.

Putting a hundred thousand candidates in order takes seconds. So the order is kept as long as the ledger has no deed
that may change it; after an answer only the rows that bear one of its numbers are looked at again. Deeds about jobs
and orders are let pass until the day is over: they change how often a part was asked for, and with it only the order.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from threading import Lock
from weakref import WeakKeyDictionary

from sqlalchemy import Connection

from ..basics.judgement import Judgement, RowKeys
from ..storage.candidates import CandidateRow, candidate_rows, not_looked_through
from ..storage.database import Store
from ..storage.deeds import newest_deed, subjects_after
from ..storage.judgements import judgements
from .desk import Desk
from .our_side import our_side
from .review_queue import Review, looked_before_a_change, queue_order, review, still_waiting
from .settled import keys_of_judgement

ANSWERED = re.compile(r"candidate (\d+)")
LET_PASS = re.compile(r"(PO-)?\d{4}-\d{4,}|people")


@dataclass(frozen=True, eq=False)
class InOrder:
    """Every candidate of the sheets that count, most worth first, with its place; and by key the rows that bear it."""

    every: Sequence[CandidateRow]
    places: Mapping[int, int]
    by_key: Mapping[str, Sequence[CandidateRow]]

    def bearing(self, answers: Iterable[RowKeys], has_rules: bool) -> dict[int, CandidateRow]:
        """The candidates on whose rows a number of the answers stands, also with what suppliers put around it."""
        wanted = {key for one in answers for key in _keys(one)}
        if has_rules:
            wanted |= {key for key in self.by_key if any(one in key or key in one for one in wanted)}
        return {one.candidate: one for key in wanted for one in self.by_key.get(key, ())}


@dataclass(frozen=True, eq=False)
class WaitingNow:
    """The queue: all in order, and the numbers of those that do not wait. `newest`: the deed up to which it is true.

    The two last: sheets nobody has looked through, and sheets that were before the table changed.
    """

    found: Review
    order: InOrder
    gone: frozenset[int]
    newest: int
    not_looked_through: tuple[int, ...]
    table_changed_since: tuple[int, ...]

    def waits(self) -> Iterator[CandidateRow]:
        """Those that wait, most worth first."""
        return (one for one in self.order.every if one.candidate not in self.gone)


_KEPT: WeakKeyDictionary[Store, WaitingNow] = WeakKeyDictionary()
_LOCK = Lock()


def waiting_now(connection: Connection, desk: Desk) -> WaitingNow:
    """The queue as it stands in this transaction. One at a time: what two pages need is not worked out twice."""
    newest = newest_deed(connection)
    with _LOCK:
        kept = _KEPT.get(desk.store)
        if kept is not None and newest < kept.newest:  # begun before the last answer: sees what was, keeps nothing
            return _all_of_it(connection, desk, newest)
        if kept is None or kept.found.day != desk.at.date():
            kept = _all_of_it(connection, desk, newest)
        elif newest > kept.newest:
            kept = _after(kept, connection, desk, newest)
        _KEPT[desk.store] = kept
    return _read_by(kept, connection)


def _read_by(kept: WaitingNow, connection: Connection) -> WaitingNow:
    return replace(kept, found=replace(kept.found, connection=connection))


def _all_of_it(connection: Connection, desk: Desk, newest: int) -> WaitingNow:
    found = review(connection, desk)
    rows = candidate_rows(connection, found.day)
    by_number = {one.candidate: one for one in rows}
    every = [by_number[one.candidate] for one in queue_order(found, rows)]
    waits = {one.candidate for one in still_waiting(found, rows)}
    return WaitingNow(
        found=found,
        order=_in_order(every),
        gone=frozenset(by_number.keys() - waits),
        newest=newest,
        not_looked_through=tuple(not_looked_through(connection, found.day)),
        table_changed_since=looked_before_a_change(connection, found.day),
    )


def _in_order(every: Sequence[CandidateRow]) -> InOrder:
    by_key: defaultdict[str, list[CandidateRow]] = defaultdict(list)
    for one in every:
        for key in _keys(one.keys):
            by_key[key].append(one)
    return InOrder(every, {one.candidate: place for place, one in enumerate(every)}, by_key)


def _after(kept: WaitingNow, connection: Connection, desk: Desk, newest: int) -> WaitingNow:
    """What is left of it after the deeds since."""
    answered: list[int] = []
    for subject in subjects_after(connection, kept.newest):
        if about := ANSWERED.fullmatch(subject):
            answered.append(int(about.group(1)))
        elif not LET_PASS.fullmatch(subject):
            return _all_of_it(connection, desk, newest)
    answers = [one for number in answered for one in judgements(connection, number)]
    return replace(_answered(_read_by(kept, connection), answers), newest=newest)


def _answered(kept: WaitingNow, answers: Sequence[Judgement]) -> WaitingNow:
    found = kept.found
    if any(one.answer == "yes" for one in answers):  # the table has another statement, or one less
        found = replace(found, side=our_side(found.connection, found.day))
    makers, has_rules = found.side.makers, bool(found.side.known.rules)
    touched = kept.order.bearing((keys_of_judgement(one, makers) for one in answers), has_rules)
    waits = {one.candidate for one in still_waiting(found, touched.values())}
    return replace(kept, found=found, gone=(kept.gone | touched.keys()) - waits)


def _keys(keys: RowKeys) -> set[str]:
    return {keys.supplier_key, keys.maker_number_key} - {""}
