"""The shop's parts, the statements that count, and the other names of makers, as they stand now."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import chain
from typing import Any, TypeVar

from sqlalchemy import Connection, Row, delete, false, insert, select, union

from ..basics.asked import Asked
from ..basics.equivalence import EquivalenceTable, MakerAlias, OurPart
from ..basics.part_number import maker_key, number_keys
from .rows import as_text, as_value
from .shop_tables import MAKER_ALIASES, OUR_PARTS, STATEMENTS
from .statement_rows import COLUMNS, statements_from

V = TypeVar("V")

PART_FIELDS = ("code", "name", "size", "category", "note")
IN_FORCE = select(*COLUMNS).where(STATEMENTS.c.withdrawn == false())
CHUNK = 400
"""Keys asked for at once, each twice: SQLite before 3.32 takes 999 values in a statement."""
FETCHED = 10_000
"""Rows taken from the driver at once: one at a time takes a third longer over a long table."""
TIE = ("statement", "left_maker", "left_key", "relation", "right_maker", "right_key")


def equivalence_table(connection: Connection) -> EquivalenceTable:
    """The table as it stands, in its order; statements carry their numbers. Empty where none was ever put."""
    query = IN_FORCE.order_by(STATEMENTS.c.position, STATEMENTS.c.statement)
    statements = chain.from_iterable(connection.execute(query).partitions(FETCHED))
    return EquivalenceTable(
        parts=our_parts(connection),
        statements=tuple(statements_from(statements)),
        aliases=maker_aliases(connection),
    )


def ties_of_keys(connection: Connection, keys: Sequence[str]) -> Iterator[tuple[Any, ...]]:
    """What the statements in force tie, as `TIE` names it, where the number of either side has one of the keys.

    Each once, in no order: a few columns along the two indexes, without the words of the statements.
    """
    table, seen = STATEMENTS, set[int]()
    for some in _chunks(keys):
        sides = (table.c.left_key.in_(some), table.c.right_key.in_(some))
        every = (select(*(table.c[name] for name in TIE)).where(table.c.withdrawn == false(), side) for side in sides)
        for row in connection.execute(union(*every)):
            if row[0] not in seen:
                seen.add(row[0])
                yield tuple(row)


def table_of(connection: Connection, statements: Collection[int], codes: Collection[str]) -> EquivalenceTable:
    """A part of the table, in its order: these statements in force, and the parts whose codes have these keys."""
    rows: list[Row[Any]] = []
    for some in _chunks(sorted(statements)):
        query = select(*COLUMNS, STATEMENTS.c.position).where(STATEMENTS.c.withdrawn == false())
        rows += connection.execute(query.where(STATEMENTS.c.statement.in_(some)))
    rows.sort(key=lambda row: (row.position, row.statement))
    return EquivalenceTable(
        parts=_parts_with(connection, codes),
        statements=tuple(statements_from(rows)),
        aliases=maker_aliases(connection),
    )


def printed_numbers(connection: Connection) -> set[str]:
    """Every number a statement in force names, and every code of our parts, as printed."""
    table = STATEMENTS
    rows = connection.execute(select(table.c.left_printed, table.c.right_printed).where(table.c.withdrawn == false()))
    numbers = {printed for row in rows for printed in row}
    return numbers.union(connection.execute(select(OUR_PARTS.c.code)).scalars())


def our_parts(connection: Connection) -> tuple[OurPart, ...]:
    """The shop's parts in their order."""
    return _parts(connection.execute(select(OUR_PARTS).order_by(OUR_PARTS.c.position)))


def put_parts(connection: Connection, parts: Sequence[OurPart]) -> None:
    """Make these the shop's parts, in this order; the ones before go. Each code once."""
    connection.execute(delete(OUR_PARTS))
    rows: list[dict[str, Any]] = [
        {"position": position, "asked": as_text(part.asked), **{name: getattr(part, name) for name in PART_FIELDS}}
        for position, part in enumerate(parts)
    ]
    if rows:
        connection.execute(insert(OUR_PARTS), rows)


def maker_aliases(connection: Connection) -> tuple[MakerAlias, ...]:
    """Other names of makers, in the order they were put."""
    rows = connection.execute(select(MAKER_ALIASES).order_by(MAKER_ALIASES.c.position))
    return tuple(MakerAlias(alias=row.alias, maker=row.maker) for row in rows)


def put_aliases(connection: Connection, aliases: Sequence[MakerAlias]) -> None:
    """Make these the other names of makers; the ones before go. One name stands for one maker, whatever its case."""
    connection.execute(delete(MAKER_ALIASES))
    rows: list[dict[str, Any]] = [
        {"alias_key": maker_key(one.alias), "alias": one.alias, "maker": one.maker, "position": position}
        for position, one in enumerate(aliases)
    ]
    if rows:
        connection.execute(insert(MAKER_ALIASES), rows)


def _parts_with(connection: Connection, codes: Collection[str]) -> tuple[OurPart, ...]:
    every = connection.execute(select(OUR_PARTS.c.code)).scalars().all()
    found = [code for code, key in zip(every, number_keys(every), strict=True) if key in codes]
    rows: list[Row[Any]] = []
    for some in _chunks(found):
        rows += connection.execute(select(OUR_PARTS).where(OUR_PARTS.c.code.in_(some)))
    return _parts(sorted(rows, key=lambda row: int(row.position)))


def _parts(rows: Iterable[Row[Any]]) -> tuple[OurPart, ...]:
    asked: dict[str, Asked] = {}  # most parts ask nothing, and what is asked comes again and again
    found = []
    for row in rows:
        if row.asked not in asked:
            asked[row.asked] = as_value(row.asked, Asked)
        found.append(OurPart(**{name: row._mapping[name] for name in PART_FIELDS}, asked=asked[row.asked]))
    return tuple(found)


def _chunks(values: Sequence[V]) -> Iterator[Sequence[V]]:
    return (values[at : at + CHUNK] for at in range(0, len(values), CHUNK))
