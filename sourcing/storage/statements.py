"""Statements kept one by one with all that happens to them: stated, changed, withdrawn, restored, never deleted."""

from collections import defaultdict
from collections.abc import Collection, Sequence
from typing import Any

from sqlalchemy import Connection, bindparam, func, insert, or_, select, true, update

from ..basics.equivalence import Statement
from ..basics.problem import refused
from ..basics.statement_history import Happening, KeptStatement, Signed, StatementEvent
from .rows import as_text, as_value
from .shop_tables import STATEMENT_EVENTS, STATEMENTS
from .statement_rows import COLUMNS, PLAIN_FIELDS, row_of, statements_from

EVENT_FIELDS = ("statement", "at", "who", "what", "reason", "file")
KEPT = select(*COLUMNS, STATEMENTS.c.withdrawn)
CHUNK = 900
"""Numbers asked for at once: SQLite before 3.32 takes 999 values in a statement."""


def kept_statement(connection: Connection, number: int) -> KeptStatement:
    """One statement with its history. Refuses a number the table does not have."""
    found = kept_statements(connection, [number])
    if not found:
        raise refused("no-such-statement", found=number)
    return found[0]


def kept_statements(connection: Connection, numbers: Collection[int] | None = None) -> list[KeptStatement]:
    """Every statement there ever was, or those of the numbers, each with its history, in order of number."""
    if numbers is None:
        return _with_events(connection, connection.execute(KEPT).all(), None)
    wanted = sorted(set(numbers))
    found = []
    for at in range(0, len(wanted), CHUNK):
        some = wanted[at : at + CHUNK]
        rows = connection.execute(KEPT.where(STATEMENTS.c.statement.in_(some))).all()
        found += _with_events(connection, rows, some)
    return found


def statements_between(connection: Connection, keys: Collection[str]) -> list[KeptStatement]:
    """Every statement there ever was whose two numbers both have one of the keys, each with its history."""
    table = STATEMENTS
    both = select(table.c.statement).where(table.c.left_key.in_(keys), table.c.right_key.in_(keys))
    return kept_statements(connection, connection.execute(both).scalars().all())


def withdrawn_about(connection: Connection, keys: Collection[str]) -> list[KeptStatement]:
    """Every withdrawn statement one of whose numbers has one of the keys, of 400 at the most, with its history."""
    table = STATEMENTS
    some = sorted(keys)[:400]  # asked for twice, and SQLite before 3.32 takes 999 values in a statement
    either = or_(table.c.left_key.in_(some), table.c.right_key.in_(some))
    found = connection.execute(select(table.c.statement).where(table.c.withdrawn == true(), either)).scalars()
    return kept_statements(connection, found.all())


def state(connection: Connection, statements: Sequence[Statement], signed: Signed, reasons: Sequence[str]) -> list[int]:
    """Keep new statements at the end of the table, each with the reason of the same place; their numbers."""
    if not statements:
        return []
    last = connection.execute(select(func.max(STATEMENTS.c.position))).scalar()
    start = 0 if last is None else last + 1
    rows = [{"position": at, "withdrawn": False, **row_of(one)} for at, one in enumerate(statements, start)]
    connection.execute(insert(STATEMENTS), rows)
    # Asked for afterwards: SQLite returns numbers in order only where every row is a statement of its own.
    new = select(STATEMENTS.c.statement).where(STATEMENTS.c.position >= start).order_by(STATEMENTS.c.position)
    numbers = [int(number) for number in connection.execute(new).scalars()]
    add_events(
        connection,
        [event_of(number, signed, "stated", reason) for number, reason in zip(numbers, reasons, strict=True)],
    )
    return numbers


def correct(connection: Connection, statements: Sequence[Statement]) -> None:
    """Put what these statements say now in the place of what the entries of their numbers said; history is apart."""
    ends = ("left_printed", "left_maker", "left_key", "right_printed", "right_maker", "right_key")
    columns = (*ends, *PLAIN_FIELDS)
    values: dict[str, Any] = {name: bindparam(f"new_{name}") for name in columns}
    rows = [{"kept": one.number, **{f"new_{name}": value for name, value in row_of(one).items()}} for one in statements]
    _update(connection, values, rows)


def set_withdrawn(connection: Connection, numbers: Sequence[int], withdrawn: bool) -> None:
    """Say that the statements count no more, or count again; history is apart."""
    _update(connection, {"withdrawn": withdrawn}, [{"kept": number} for number in numbers])


def put_in_order(connection: Connection, numbers: Sequence[int]) -> None:
    """The order of the table: these first, in their order; all others after them as they stood."""
    first = set(numbers)
    query = select(STATEMENTS.c.statement).order_by(STATEMENTS.c.position, STATEMENTS.c.statement)
    rest = [number for number in connection.execute(query).scalars() if number not in first]
    rows = [{"kept": number, "new_position": at} for at, number in enumerate((*numbers, *rest))]
    _update(connection, {"position": bindparam("new_position")}, rows)


def last_changes(connection: Connection) -> dict[int, int]:
    """Of each statement the number of the last thing that happened to it; where nothing is written down, none.

    These numbers only grow, whatever statement they belong to.
    """
    table = STATEMENT_EVENTS
    query = select(table.c.statement, func.max(table.c.event)).group_by(table.c.statement)
    return {statement: int(event) for statement, event in connection.execute(query)}


def newest_change(connection: Connection) -> int:
    """The number of the last thing that happened to any statement; 0 where nothing ever did."""
    return int(connection.execute(select(func.max(STATEMENT_EVENTS.c.event))).scalar() or 0)


def add_events(connection: Connection, events: Sequence[StatementEvent]) -> None:
    """Write down what happened, in this order."""
    rows: list[dict[str, Any]] = [
        {
            **{name: getattr(one, name) for name in EVENT_FIELDS},
            "was": None if one.was is None else as_text(one.was),
        }
        for one in events
    ]
    if rows:
        connection.execute(insert(STATEMENT_EVENTS), rows)


def event_of(number: int, signed: Signed, what: Happening, reason: str, was: Statement | None = None) -> StatementEvent:
    """What happened to the statement, signed."""
    return StatementEvent(
        statement=number, at=signed.at, who=signed.who, what=what, reason=reason, file=signed.file, was=was
    )


def _update(connection: Connection, values: dict[str, Any], rows: list[dict[str, Any]]) -> None:
    if rows:
        by_number = update(STATEMENTS).where(STATEMENTS.c.statement == bindparam("kept"))
        connection.execute(by_number.values(values), rows)


def _with_events(connection: Connection, rows: Sequence[Any], numbers: Sequence[int] | None) -> list[KeptStatement]:
    query = select(STATEMENT_EVENTS).order_by(STATEMENT_EVENTS.c.event)
    if numbers is not None:
        query = query.where(STATEMENT_EVENTS.c.statement.in_(numbers))
    events: defaultdict[int, list[StatementEvent]] = defaultdict(list)
    for row in connection.execute(query):
        was = None if row.was is None else as_value(row.was, Statement)
        fields = {name: row._mapping[name] for name in EVENT_FIELDS}
        events[row.statement].append(StatementEvent(**fields, was=was))
    in_order = sorted(rows, key=lambda row: int(row.statement))
    return [
        KeptStatement(statement=one, withdrawn=bool(row.withdrawn), events=tuple(events[row.statement]))
        for row, one in zip(in_order, statements_from(in_order), strict=True)
    ]
