"""When each of our parts was looked up: one row a time, so that what is asked for often is judged first."""

from collections import Counter
from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection, insert, select

from .match_tables import PART_LOOKUPS


def add_lookup(connection: Connection, part: str, at: datetime) -> None:
    """Write down that somebody looked the part up."""
    connection.execute(insert(PART_LOOKUPS).values(part=part, at=at))


def lookups(connection: Connection) -> Mapping[str, int]:
    """On how many days each part was looked up, by code; a part nobody looked up is not among them.

    Ten look-ups of one morning are one customer's question (rule of this program).
    """
    table = PART_LOOKUPS
    rows = connection.execute(select(table.c.part, table.c.at).distinct())
    return Counter(part for part, _ in {(part, at.date()) for part, at in rows})
