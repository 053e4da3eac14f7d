"""The ledger of deeds: entries are added and read; nothing here changes or deletes one."""

from sqlalchemy import Connection, insert, select

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
