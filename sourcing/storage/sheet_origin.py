"""When a sheet was taken in, and by whom."""

from datetime import datetime

from sqlalchemy import Connection, select

from ..basics.problem import refused
from .sheet_tables import SHEETS


def taken_in_by(connection: Connection, sheet: int) -> tuple[datetime, str]:
    """The moment and the name. Refuses an unknown sheet."""
    query = select(SHEETS.c.imported_at, SHEETS.c.imported_by).where(SHEETS.c.sheet == sheet)
    found = connection.execute(query).one_or_none()
    if found is None:
        raise refused("no-sheet-number", found=sheet)
    return found.imported_at, found.imported_by
