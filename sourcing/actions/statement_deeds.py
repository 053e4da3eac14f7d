"""What a person does with one statement of the table: doubt it, answer, trust it more or less, withdraw, restore."""

from sqlalchemy import Connection

from ..basics.equivalence import Standing, Statement
from ..basics.problem import refused
from ..basics.statement_history import Happening, KeptStatement, Signed
from ..basics.value import changed
from ..storage.statements import add_events, correct, event_of, kept_statement, set_withdrawn, statements_between
from .desk import Desk, Pen
from .table_compare import claim
from .table_keep import change_events


def statement_history(desk: Desk, number: int) -> KeptStatement:
    """The statement with all that happened to it. Refuses a number the table does not have."""
    with desk.store.reading() as connection:
        return kept_statement(connection, number)


def doubt_statement(desk: Desk, number: int, reason: str) -> KeptStatement:
    """Doubt it: it counts as unchecked until the doubt is answered. A second doubt stands beside the first."""
    why = _reason(reason, f"statement {number}")
    with desk.writing("doubt statement") as pen:
        before = _counting(pen.connection, number)
        doubt = f"{before.doubt}; {why}" if before.doubt else why
        return _change(pen, before, changed(before, doubt=doubt), why)


def answer_doubt(desk: Desk, number: int, reason: str, standing: Standing | None = None) -> KeptStatement:
    """Lay the doubt aside for a reason; with `standing`, the statement has that one from now on."""
    why = _reason(reason, f"statement {number}")
    with desk.writing("answer doubt") as pen:
        before = _counting(pen.connection, number)
        if not before.doubt:
            raise refused("statement-not-doubted", found=number)
        return _change(pen, before, changed(before, doubt="", standing=standing or before.standing), why)


def set_standing(desk: Desk, number: int, standing: Standing, reason: str) -> KeptStatement:
    """Trust it more or less, for a reason. A doubt stays until it is answered."""
    why = _reason(reason, f"statement {number}")
    with desk.writing("change standing") as pen:
        before = _counting(pen.connection, number)
        if before.standing == standing:
            raise refused("standing-unchanged", found=number, standing=standing)
        return _change(pen, before, changed(before, standing=standing), why)


def withdraw_statement(desk: Desk, number: int, reason: str) -> KeptStatement:
    """Let it count no more, for a reason. It stays in the table's history and can be restored."""
    why = _reason(reason, f"statement {number}")
    with desk.writing("withdraw statement") as pen:
        _counting(pen.connection, number)
        return _set_aside(pen, number, "withdrawn", why)


def restore_statement(desk: Desk, number: int, reason: str) -> KeptStatement:
    """Let a withdrawn statement count again, for a reason. Refuses where another one says the same by now."""
    why = _reason(reason, f"statement {number}")
    with desk.writing("restore statement") as pen:
        kept = kept_statement(pen.connection, number)
        if not kept.withdrawn:
            raise refused("statement-not-withdrawn", found=number)
        refuse_doubled(pen.connection, kept.statement)
        return _set_aside(pen, number, "restored", why)


def refuse_doubled(connection: Connection, statement: Statement) -> None:
    """Refuses a claim that the table has already, or that was withdrawn and is not the one with its number.

    The same numbers, relation, source and conditions are the same claim, however far it is trusted.
    """
    said = claim(statement)
    same = [
        one
        for one in statements_between(connection, {statement.left.key, statement.right.key})
        if claim(one.statement) == said and one.statement.number != statement.number
    ]
    for one in sorted(same, key=lambda one: one.withdrawn):
        if not one.withdrawn:
            raise refused("statement-there-already", number=one.statement.number, found=str(one.statement))
        if statement.number is None:
            why = one.last.reason if one.last else "no reason was kept"
            raise refused("statement-withdrawn-before", number=one.statement.number, found=why)


def _reason(reason: str, subject: str) -> str:
    if not reason.strip():
        raise refused("reason-blank", found=subject)
    return reason.strip()


def _counting(connection: Connection, number: int) -> Statement:
    """The statement, which must not be withdrawn."""
    kept = kept_statement(connection, number)
    if kept.withdrawn:
        raise refused("statement-withdrawn", found=number)
    return kept.statement


def _change(pen: Pen, before: Statement, now: Statement, why: str) -> KeptStatement:
    signed = Signed(at=pen.desk.at, who=pen.desk.who)
    correct(pen.connection, [now])
    add_events(pen.connection, change_events(before, now, signed, why))
    return _noted(pen, before.number or 0, why)


def _set_aside(pen: Pen, number: int, what: Happening, why: str) -> KeptStatement:
    set_withdrawn(pen.connection, [number], what == "withdrawn")
    add_events(pen.connection, [event_of(number, Signed(at=pen.desk.at, who=pen.desk.who), what, why)])
    return _noted(pen, number, why)


def _noted(pen: Pen, number: int, why: str) -> KeptStatement:
    kept = kept_statement(pen.connection, number)
    pen.note(f"statement {number}", f"{kept.statement.claim}: {why}")
    return kept
