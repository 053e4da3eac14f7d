"""The shop's parts and statements. A statement that leaves the table is withdrawn, not forgotten."""

from collections import defaultdict
from collections.abc import Sequence
from typing import Any

from sqlalchemy import Connection, Row, bindparam, delete, false, insert, select, update

from ..basics.equivalence import EquivalenceTable, OurPart, Statement
from ..basics.part_number import PartNumber
from ..basics.value import changed
from .shop_tables import OUR_PARTS, STATEMENTS

PART_FIELDS = ("code", "name", "size", "category", "note")
PLAIN_FIELDS = ("relation", "standing", "source", "stated_on", "stated_by", "condition", "count", "row")


def replace_table(connection: Connection, table: EquivalenceTable) -> None:
    """Make this the shop's table. Statements that stood there already keep their entry; those gone are withdrawn."""
    _replace_parts(connection, table.parts)
    standing = _standing(connection)
    new: list[dict[str, Any]] = []
    kept: list[dict[str, Any]] = []
    for position, statement in enumerate(table.statements):
        same = standing[changed(statement, row=None)]
        if same:
            kept.append({"kept": same.pop(0), "position": position, "row": statement.row})
        else:
            new.append(_row(statement, position))
    _withdraw(connection, [number for numbers in standing.values() for number in numbers])
    if kept:
        by_number = STATEMENTS.c.statement == bindparam("kept")
        places: dict[str, Any] = {"position": bindparam("position"), "row": bindparam("row")}
        connection.execute(update(STATEMENTS).where(by_number).values(places), kept)
    if new:
        connection.execute(insert(STATEMENTS), new)


def equivalence_table(connection: Connection) -> EquivalenceTable:
    """The table as it stands, parts and statements in the order given; nothing where none was ever put."""
    parts = connection.execute(select(OUR_PARTS).order_by(OUR_PARTS.c.position))
    return EquivalenceTable(
        parts=tuple(OurPart(**{name: row._mapping[name] for name in PART_FIELDS}) for row in parts),
        statements=tuple(_statement(row) for row in _current(connection)),
    )


def _current(connection: Connection) -> Sequence[Row[Any]]:
    current = select(STATEMENTS).where(STATEMENTS.c.withdrawn == false())
    return connection.execute(current.order_by(STATEMENTS.c.position)).all()


def _standing(connection: Connection) -> defaultdict[Statement, list[int]]:
    """Numbers of the current entries by what they state, wherever they stood: the same line may be there twice."""
    found: defaultdict[Statement, list[int]] = defaultdict(list)
    for row in _current(connection):
        found[changed(_statement(row), row=None)].append(row.statement)
    return found


def _withdraw(connection: Connection, numbers: Sequence[int]) -> None:
    if numbers:
        gone = update(STATEMENTS).where(STATEMENTS.c.statement == bindparam("gone")).values(withdrawn=True)
        connection.execute(gone, [{"gone": number} for number in numbers])


def _replace_parts(connection: Connection, parts: Sequence[OurPart]) -> None:
    connection.execute(delete(OUR_PARTS))
    rows = [
        {"position": position, **{name: getattr(part, name) for name in PART_FIELDS}}
        for position, part in enumerate(parts)
    ]
    if rows:
        connection.execute(insert(OUR_PARTS), rows)


def _row(statement: Statement, position: int) -> dict[str, Any]:
    return {
        "position": position,
        "left_printed": statement.left.printed,
        "left_maker": statement.left.maker,
        "right_printed": statement.right.printed,
        "right_maker": statement.right.maker,
        "withdrawn": False,
        **{name: getattr(statement, name) for name in PLAIN_FIELDS},
    }


def _statement(row: Row[Any]) -> Statement:
    return Statement(
        left=PartNumber(printed=row.left_printed, maker=row.left_maker),
        right=PartNumber(printed=row.right_printed, maker=row.right_maker),
        **{name: row._mapping[name] for name in PLAIN_FIELDS},
    )
