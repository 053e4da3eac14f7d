"""Running numbers of a year ('2026-0001'), and the numbers nearest to one that does not exist."""

from collections.abc import Iterable

from sqlalchemy import Connection, Table, func, select

MOST_SUGGESTIONS = 5
NEAR_ENOUGH = 0.5
"""Below this share of like characters a number is no suggestion but noise."""


def next_serial(connection: Connection, table: Table, year: int) -> int:
    """The number after the year's last one, 1 for the first. Only true for a writer, whose turn it is alone."""
    last = connection.execute(select(func.max(table.c.serial)).where(table.c.year == year)).scalar()
    return int(last or 0) + 1


def nearest(wanted: str, numbers: Iterable[str]) -> tuple[str, ...]:
    """Up to five of the numbers that look most like the wanted one, nearest first, ties in order of number."""
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    pool = sorted(numbers)
    found = process.extract(
        wanted, pool, scorer=OSA.normalized_similarity, score_cutoff=NEAR_ENOUGH, limit=MOST_SUGGESTIONS
    )
    return tuple(hit[0] for hit in found)
