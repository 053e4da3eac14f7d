"""When a sheet was taken in and by whom, which counted at a moment, and what was worked out from it."""

from datetime import datetime

from sqlalchemy import Connection, func, select

from ..basics.order import PurchaseOrder
from ..basics.problem import refused
from .after_tables import BILLS
from .job_tables import PURCHASE_ORDERS, QUOTE_REVISIONS
from .rows import as_value
from .sheet_tables import SHEETS


def taken_in_by(connection: Connection, sheet: int) -> tuple[datetime, str]:
    """The moment and the name. Refuses an unknown sheet."""
    query = select(SHEETS.c.imported_at, SHEETS.c.imported_by).where(SHEETS.c.sheet == sheet)
    found = connection.execute(query).one_or_none()
    if found is None:
        raise refused("no-sheet-number", found=sheet)
    return found.imported_at, found.imported_by


def counted_at(connection: Connection, supplier: str, at: datetime) -> int | None:
    """The number of the supplier's sheet that counted at that moment, of those there are; None where none did."""
    table = SHEETS
    there = (table.c.supplier == supplier) & (table.c.sheet_date <= at.date()) & (table.c.imported_at <= at)
    query = select(table.c.sheet).where(there).order_by(table.c.sheet_date.desc(), table.c.sheet.desc()).limit(1)
    return connection.execute(query).scalar()


def orders_placed_on(connection: Connection, supplier: str, sheet: int) -> list[PurchaseOrder]:
    """The orders at the supplier's that were placed while this sheet of his counted, oldest first."""
    since, _who = taken_in_by(connection, sheet)
    table = PURCHASE_ORDERS
    later = select(table.c.body, table.c.placed_at).where(table.c.supplier == supplier, table.c.placed_at >= since)
    found = connection.execute(later.order_by(table.c.year, table.c.serial)).all()
    return [
        as_value(row.body, PurchaseOrder) for row in found if counted_at(connection, supplier, row.placed_at) == sheet
    ]


def jobs_quoted_from(connection: Connection, sheet: int) -> list[str]:
    """Jobs that are not billed and whose newest quote names the sheet, oldest number first."""
    table = QUOTE_REVISIONS
    newest = select(table.c.job, func.max(table.c.revision).label("revision")).group_by(table.c.job).subquery()
    mine = (table.c.job == newest.c.job) & (table.c.revision == newest.c.revision)
    named = table.c.body.contains(f'"sheet":{sheet},', autoescape=True)
    query = select(table.c.job).join(newest, mine).where(named, table.c.job.not_in(select(BILLS.c.job)))
    return list(connection.execute(query.order_by(table.c.job)).scalars())


def sheet_numbers(connection: Connection) -> set[int]:
    """The numbers of all sheets there are."""
    return set(connection.execute(select(SHEETS.c.sheet)).scalars())
