"""The queue of candidates, remembered between two pages: an answer changes only what it is about.

Putting a hundred thousand candidates in order takes seconds. So the order is kept as long as the ledger has no deed
that may change it; after an answer only the rows that bear one of its numbers are looked at again. Deeds about jobs
and orders are let pass until the day is over: they change how often a part was asked for, and with it only the order.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from sqlalchemy import Connection

from ..basics.judgement import Judgement, RowKeys
from ..storage.candidates import CandidateRow, candidate_rows, not_looked_through
from ..storage.deeds import Since
from ..storage.judgements import judgements
from .desk import Desk
from .kept_until import KeptUntil
from .our_side import our_side
from .our_side_now import answered_in, our_side_now
from .review_queue import Review, is_likely, looked_before_a_change, queue_order, review, still_waiting
from .settled import keys_of_judgement


@dataclass(frozen=True, eq=False)
class InOrder:
    """Every candidate of the sheets that count, most worth first, with its place; and by key the rows that bear it.

    `likely`: the numbers of those that are likelier right than wrong with nothing against them.
    """

    every: Sequence[CandidateRow]
    places: Mapping[int, int]
    by_key: Mapping[str, Sequence[CandidateRow]]
    likely: frozenset[int]

    def bearing(self, answers: Iterable[RowKeys], has_rules: bool) -> dict[int, CandidateRow]:
        """The candidates on whose rows a number of the answers stands, also with what suppliers put around it."""
        wanted = {key for one in answers for key in _keys(one)}
        if has_rules:
            wanted |= {key for key in self.by_key if any(one in key or key in one for one in wanted)}
        return {one.candidate: one for key in wanted for one in self.by_key.get(key, ())}


@dataclass(frozen=True, eq=False)
class WaitingNow:
    """The queue: all in order, the numbers of those that do not wait, and those that do.

    The two last: sheets nobody has looked through, and sheets that were before the table changed.
    """

    found: Review
    order: InOrder
    gone: frozenset[int]
    waits: Sequence[CandidateRow]
    not_looked_through: tuple[int, ...]
    table_changed_since: tuple[int, ...]


def waiting_now(connection: Connection, desk: Desk) -> WaitingNow:
    """The queue as it stands in this transaction, which must not have written anything yet."""
    return _read_by(_KEPT.get(connection, desk, lambda: _all_of_it(connection, desk)), connection)


def _read_by(kept: WaitingNow, connection: Connection) -> WaitingNow:
    return replace(kept, found=replace(kept.found, connection=connection))


def _all_of_it(connection: Connection, desk: Desk) -> WaitingNow:
    found = review(connection, desk, our_side_now(connection, desk))
    rows = candidate_rows(connection, found.day)
    by_number = {one.candidate: one for one in rows}
    order = _in_order([by_number[one.candidate] for one in queue_order(found, rows)])
    waits = {one.candidate for one in still_waiting(found, rows)}
    return WaitingNow(
        found=found,
        order=order,
        gone=frozenset(by_number.keys() - waits),
        waits=[one for one in order.every if one.candidate in waits],
        not_looked_through=tuple(not_looked_through(connection, found.day)),
        table_changed_since=looked_before_a_change(connection, found.day),
    )


def _in_order(every: Sequence[CandidateRow]) -> InOrder:
    by_key: defaultdict[str, list[CandidateRow]] = defaultdict(list)
    for one in every:
        for key in _keys(one.keys):
            by_key[key].append(one)
    places = {one.candidate: place for place, one in enumerate(every)}
    return InOrder(every, places, by_key, frozenset(one.candidate for one in every if is_likely(one)))


def _after(kept: WaitingNow, connection: Connection, since: Since) -> WaitingNow | None:
    """What is left of it after these deeds."""
    answered, others = answered_in(since)
    if others:
        return None
    answers = [one for number in answered for one in judgements(connection, number)]
    return _answered(_read_by(kept, connection), answers) if answers else kept


def _answered(kept: WaitingNow, answers: Sequence[Judgement]) -> WaitingNow:
    found = kept.found
    if any(one.answer == "yes" for one in answers):  # the table has another statement, or one less
        found = replace(found, side=our_side(found.connection, found.day))
    makers, has_rules = found.side.makers, bool(found.side.known.rules)
    touched = kept.order.bearing((keys_of_judgement(one, makers) for one in answers), has_rules)
    waits = {one.candidate for one in still_waiting(found, touched.values())}
    gone = (kept.gone | touched.keys()) - waits
    return replace(kept, found=found, gone=gone, waits=[one for one in kept.order.every if one.candidate not in gone])


def _keys(keys: RowKeys) -> set[str]:
    return {keys.supplier_key, keys.maker_number_key} - {""}


_KEPT = KeptUntil(_after)
