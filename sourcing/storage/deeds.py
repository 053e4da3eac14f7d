"""The ledger of deeds: entries are added and read; nothing here changes or deletes one."""

from typing import NamedTuple

from sqlalchemy import Connection, func, insert, select

from ..basics.deed import Deed
from .job_tables import DEEDS


def record(connection: Connection, deed: Deed) -> None:
    """Enter a deed at the end of the ledger."""
    entry = {"at": deed.at, "who": deed.who, "done": deed.deed, "subject": deed.subject, "detail": deed.detail}
    connection.execute(insert(DEEDS).values(entry))


def deeds(connection: Connection, *subjects: str) -> list[Deed]:
    """Every deed, or those about these jobs, orders or sheets, in the order they were entered."""
    query = select(DEEDS).order_by(DEEDS.c.deed)
    if subjects:
        query = query.where(DEEDS.c.subject.in_(subjects))
    return [
        Deed(at=row.at, who=row.who, deed=row.done, subject=row.subject, detail=row.detail)
        for row in connection.execute(query)
    ]


def newest_deed(connection: Connection) -> int:
    """The number of the last deed entered, 0 where there is none."""
    return int(connection.execute(select(func.max(DEEDS.c.deed))).scalar() or 0)


class Since(NamedTuple):
    """What was done by some deeds, and what they are about."""

    done: frozenset[str]
    subjects: frozenset[str]


def deeds_since(connection: Connection, number: int) -> Since:
    """Of the deeds entered after that one."""
    query = select(DEEDS.c.done, DEEDS.c.subject).where(DEEDS.c.deed > number).distinct()
    found = connection.execute(query).all()
    return Since(frozenset(row.done for row in found), frozenset(row.subject for row in found))


def first_deed(connection: Connection, job: str) -> Deed | None:
    """The first deed about a job, None where there is none."""
    query = select(DEEDS).where(DEEDS.c.subject == job).order_by(DEEDS.c.deed).limit(1)
    row = connection.execute(query).one_or_none()
    if row is None:
        return None
    return Deed(at=row.at, who=row.who, deed=row.done, subject=row.subject, detail=row.detail)
