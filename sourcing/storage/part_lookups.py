"""How often each of our parts was looked up: one row a time, so that what is asked for often is judged first."""

from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection, func, insert, select

from .match_tables import PART_LOOKUPS


def add_lookup(connection: Connection, part: str, at: datetime) -> None:
    """Write down that somebody looked the part up."""
    connection.execute(insert(PART_LOOKUPS).values(part=part, at=at))


def lookups(connection: Connection) -> Mapping[str, int]:
    """How often each part was looked up, by code; a part nobody looked up is not among them."""
    table = PART_LOOKUPS
    query = select(table.c.part, func.count()).group_by(table.c.part)
    return {part: int(number) for part, number in connection.execute(query)}
