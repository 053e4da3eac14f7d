"""The shop's parts, the statements that count, and the other names of makers, as they stand now."""

from collections.abc import Sequence
from typing import Any

from sqlalchemy import Connection, delete, false, insert, select

from ..basics.asked import Asked
from ..basics.equivalence import EquivalenceTable, MakerAlias, OurPart
from ..basics.part_number import maker_key
from .rows import as_text, as_value
from .shop_tables import MAKER_ALIASES, OUR_PARTS, STATEMENTS
from .statement_rows import statement_from

PART_FIELDS = ("code", "name", "size", "category", "note")


def equivalence_table(connection: Connection) -> EquivalenceTable:
    """The table as it stands, in its order; statements carry their numbers. Empty where none was ever put."""
    current = select(STATEMENTS).where(STATEMENTS.c.withdrawn == false())
    statements = connection.execute(current.order_by(STATEMENTS.c.position, STATEMENTS.c.statement))
    return EquivalenceTable(
        parts=our_parts(connection),
        statements=tuple(statement_from(row) for row in statements),
        aliases=maker_aliases(connection),
    )


def our_parts(connection: Connection) -> tuple[OurPart, ...]:
    """The shop's parts in their order."""
    rows = connection.execute(select(OUR_PARTS).order_by(OUR_PARTS.c.position))
    return tuple(
        OurPart(**{name: row._mapping[name] for name in PART_FIELDS}, asked=as_value(row.asked, Asked)) for row in rows
    )


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
