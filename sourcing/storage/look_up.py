"""What stands behind a number or a name somebody looks up: along indexes, never through all offers."""

from collections.abc import Collection
from datetime import date

from sqlalchemy import Connection, exists, func, select

from ..basics.job import Job
from ..basics.value import to_json
from .after_tables import BILLS
from .job_tables import JOBS, PURCHASE_ORDERS
from .rows import as_value
from .sheet_tables import OFFERS
from .sheets import newest_sheets
from .shop_tables import MAKER_ALIASES, OUR_PARTS, STATEMENT_EVENTS, STATEMENTS


def open_jobs_with_part(connection: Connection, code: str) -> list[Job]:
    """Jobs that are not billed and have a line with that part of ours, oldest number first."""
    named = JOBS.c.body.contains(f'"part":{to_json(code).decode()}', autoescape=True)
    query = select(JOBS.c.body).where(JOBS.c.number.not_in(select(BILLS.c.job)), named)
    found = (as_value(body, Job) for body in connection.execute(query.order_by(JOBS.c.year, JOBS.c.serial)).scalars())
    return [job for job in found if any(line.part == code for _, line in job.labelled())]


def jobs_numbered(connection: Connection, numbers: Collection[str]) -> list[Job]:
    """The jobs of these numbers that there are."""
    some = sorted(numbers)
    found: list[Job] = []
    for at in range(0, len(some), 500):
        query = select(JOBS.c.body).where(JOBS.c.number.in_(some[at : at + 500]))
        found += [as_value(body, Job) for body in connection.execute(query).scalars()]
    return found


def orders_named(connection: Connection) -> dict[str, str]:
    """The supplier's short name by the number of every order, oldest number first."""
    table = PURCHASE_ORDERS
    query = select(table.c.number, table.c.supplier).order_by(table.c.year, table.c.serial)
    return {row.number: row.supplier for row in connection.execute(query)}


def job_of_bill(connection: Connection, number: str) -> str:
    """The job whose bill has that number, blank where there is none."""
    return connection.execute(select(BILLS.c.job).where(BILLS.c.number == number)).scalar() or ""


def is_on_a_sheet(connection: Connection, key: str) -> bool:
    """Whether any sheet, also an older one, has a row with that number."""
    sides = (OFFERS.c.supplier_key == key, OFFERS.c.maker_number_key == key)
    return any(connection.execute(select(exists().where(side))).scalar() for side in sides)


def are_more_offers(connection: Connection, some: int, day: date) -> bool:
    """Whether that day's newest sheets have more rows than so many; no more than those are counted."""
    rows = select(OFFERS.c.sheet).where(OFFERS.c.sheet.in_(newest_sheets(day))).limit(some + 1).subquery()
    return int(connection.execute(select(func.count()).select_from(rows)).scalar() or 0) > some


def table_marks(connection: Connection) -> tuple[int, ...]:
    """By what a change of the equivalence table is seen beside the ledger: its newest change, and how much it holds."""
    counts = (select(func.count()).select_from(table) for table in (STATEMENTS, OUR_PARTS, MAKER_ALIASES))
    newest = select(func.max(STATEMENT_EVENTS.c.event))
    return tuple(int(connection.execute(one).scalar() or 0) for one in (newest, *counts))
