"""Keep what an edited equivalence table changes: every change an event with who, when and why."""

from collections.abc import Iterable, Sequence

from ..basics.equivalence import MakerAlias, OurPart, Statement
from ..basics.part_number import maker_key
from ..basics.statement_history import Happening, Signed, StatementEvent
from ..basics.table_change import ChangedStatement, TableChanges
from ..basics.value import changed
from ..storage.equivalence import maker_aliases, our_parts, put_aliases, put_parts
from ..storage.statements import add_events, correct, event_of, put_in_order, set_withdrawn, state
from .desk import Pen

AT_ONCE = 20_000
"""Statements stored at a time: the rows of a million at once take more memory than everything else."""


def keep_changes(pen: Pen, changes: TableChanges) -> None:
    """Do what `compare_tables` told of a file that is taken in once: its rows and their order mean nothing later."""
    signed = Signed(at=pen.desk.at, who=pen.desk.who, file=changes.file)
    if changes.parts_added or changes.parts_changed:
        now = {part.code: part for part in our_parts(pen.connection)}
        now |= {part.code: part for part in (*changes.parts_changed, *changes.parts_added)}
        put_parts(pen.connection, tuple(now.values()))
    _keep_aliases(pen, changes)
    _state(pen, changes, signed, rows_kept=False)
    _correct(pen, changes, signed, rows_kept=False)
    _withdraw(pen, changes, signed)


def keep_shops_table(pen: Pen, changes: TableChanges, same: Sequence[Statement], parts: Sequence[OurPart]) -> None:
    """Do what `compare_tables` told of the shop's own table: its parts, rows and order are the shop's from now on."""
    signed = Signed(at=pen.desk.at, who=pen.desk.who, file=changes.file)
    put_parts(pen.connection, parts)
    _keep_aliases(pen, changes)
    new = _state(pen, changes, signed, rows_kept=True)
    _correct(pen, changes, signed, rows_kept=True)
    _withdraw(pen, changes, signed)
    correct(pen.connection, [*same, *changes.restored])  # they say what they said, perhaps in another row
    there = [*same, *changes.restored, *(one.now for one in changes.changed)]
    by_row = {one.row: one.number or 0 for one in there} | new
    put_in_order(pen.connection, [by_row[row] for row in sorted(by_row, key=lambda row: row or 0)])


def change_events(before: Statement, now: Statement, signed: Signed, reason: str) -> list[StatementEvent]:
    """What happened between the two: a doubt, another standing, other words, each an event of its own."""

    def event(what: Happening, why: str) -> StatementEvent:
        return event_of(now.number or 0, signed, what, why, before)

    events = []
    if now.doubt and now.doubt != before.doubt:
        events.append(event("doubted", now.doubt.removeprefix(f"{before.doubt}; ") if before.doubt else now.doubt))
    if before.doubt and not now.doubt:
        events.append(event("doubt answered", reason))
    if now.standing != before.standing:
        events.append(event("standing changed", f"{before.standing} to {now.standing}: {reason}"))
    told = {"doubt": before.doubt, "standing": before.standing, "row": before.row}
    if changed(now, **told) != before:
        events.append(event("changed", reason))
    return events


def _from(changes: TableChanges, statement: Statement) -> str:
    return f"{changes.file}, row {statement.row}" if statement.row is not None else changes.file


def _state(pen: Pen, changes: TableChanges, signed: Signed, rows_kept: bool) -> dict[int | None, int]:
    """Keep the new ones; their numbers by their rows."""
    new = [*changes.added, *(one.now for one in changes.replaced)]
    numbers: list[int] = []
    for start in range(0, len(new), AT_ONCE):
        some = new[start : start + AT_ONCE]
        stored = [changed(one, number=None, row=one.row if rows_kept else None) for one in some]
        numbers += state(pen.connection, stored, signed, [_from(changes, one) for one in some])
    doubts = [
        event_of(number, signed, "doubted", one.doubt) for number, one in zip(numbers, new, strict=True) if one.doubt
    ]
    add_events(pen.connection, doubts)
    _replace(pen, changes, signed, numbers[len(changes.added) :])
    return {one.row: number for one, number in zip(new, numbers, strict=True)}


def _replace(pen: Pen, changes: TableChanges, signed: Signed, by: Sequence[int]) -> None:
    old = _numbers(one.before for one in changes.replaced)
    set_withdrawn(pen.connection, old, True)
    reasons = [
        f"by statement {number}, {_from(changes, one.now)}" for one, number in zip(changes.replaced, by, strict=True)
    ]
    add_events(pen.connection, _events(old, signed, "replaced", reasons))


def _correct(pen: Pen, changes: TableChanges, signed: Signed, rows_kept: bool) -> None:
    kept = [one if rows_kept else _own_row(one) for one in changes.changed]
    correct(pen.connection, [one.now for one in kept])
    for one, told in zip(kept, changes.changed, strict=True):
        add_events(pen.connection, change_events(one.before, one.now, signed, _from(changes, told.now)))
    back = _numbers(changes.restored)
    set_withdrawn(pen.connection, back, False)
    add_events(pen.connection, _events(back, signed, "restored", [f"in {changes.file} again"] * len(back)))


def _own_row(one: ChangedStatement) -> ChangedStatement:
    """A row of a file that is taken in once says nothing later: the statement keeps the row it has."""
    return changed(one, now=changed(one.now, row=one.before.row))


def _withdraw(pen: Pen, changes: TableChanges, signed: Signed) -> None:
    gone = _numbers(changes.withdrawn)
    set_withdrawn(pen.connection, gone, True)
    add_events(pen.connection, _events(gone, signed, "withdrawn", [changes.why_withdrawn] * len(gone)))


def _numbers(statements: Iterable[Statement]) -> list[int]:
    return [one.number for one in statements if one.number is not None]


def _events(numbers: Sequence[int], signed: Signed, what: Happening, reasons: Sequence[str]) -> list[StatementEvent]:
    return [event_of(number, signed, what, reason) for number, reason in zip(numbers, reasons, strict=True)]


def _keep_aliases(pen: Pen, changes: TableChanges) -> None:
    news = (*changes.aliases_changed, *changes.aliases_added)
    if news:
        now: dict[str, MakerAlias] = {maker_key(one.alias): one for one in maker_aliases(pen.connection)}
        put_aliases(pen.connection, tuple((now | {maker_key(one.alias): one for one in news}).values()))
