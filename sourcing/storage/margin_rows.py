"""What margins need of many jobs at once: few columns, few fields of each kept paper, one query for each kind.

Nothing here is a rule: which answer holds is for the action to say, what a line cost for `margins/`.
"""

from collections.abc import Collection, Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import Any, NamedTuple, cast

from sqlalchemy import Column, Connection, Select, Text, func, select, type_coerce

from ..basics.margin_facts import BillFacts, OrderFacts, QuoteFacts, ReceiptFacts
from ..basics.quote import Quote
from ..basics.settings import Settings
from .after_tables import BILLS
from .job_tables import APPROVALS, PURCHASE_ORDER_LINES, PURCHASE_ORDERS, QUOTE_REVISIONS, RECEIPTS
from .rows import as_value
from .sheet_tables import OFFERS
from .shop_tables import SHOP_SETTINGS

MANY = 500
"""Jobs asked for in one query: databases limit how many values one may name."""


class AnswerRow(NamedTuple):
    """An answer: the moment it was given, as ISO 8601 text, whether it still holds, and the rest as kept."""

    approval: int
    job: str
    revision: int
    label: str
    answer: str
    at: str
    holds: str


class Answered(NamedTuple):
    """Jobs with an answer given from that moment on and before the other, whatever it was and whether it holds."""

    after: datetime
    before: datetime


Jobs = str | Answered | None
"""Which jobs: the one of that number, those answered in a time, or all."""


class ListPrice(NamedTuple):
    """What the maker or supplier lists a piece at."""

    each: Decimal
    currency: str


def newest_quotes(connection: Connection, job: Jobs) -> list[QuoteFacts]:
    """The newest revision of each of the jobs that has a quote, oldest number first."""
    table = QUOTE_REVISIONS
    newest = select(table.c.job, func.max(table.c.revision).label("revision")).group_by(table.c.job)
    newest = _of_job(newest, table.c.job, job)
    last = newest.subquery()
    same = (table.c.job == last.c.job) & (table.c.revision == last.c.revision)
    query = select(table.c.body).join(last, same).order_by(table.c.job)
    return [as_value(body, QuoteFacts) for body in connection.execute(query).scalars().all()]


def quote_light(connection: Connection, job: str, revision: int) -> QuoteFacts:
    """That revision of the job. Raises NoResultFound where there is none: a bill names one that there is."""
    table = QUOTE_REVISIONS
    query = select(table.c.body).where(table.c.job == job, table.c.revision == revision)
    return as_value(connection.execute(query).scalar_one(), QuoteFacts)


def answers_light(connection: Connection, job: Jobs) -> list[AnswerRow]:
    """Every answer, in the order recorded; of one line's the last counts, if it holds."""
    table = APPROVALS
    at = type_coerce(table.c.at, Text)
    query = select(table.c.approval, table.c.job, table.c.revision, table.c.label, table.c.answer, at, table.c.holds)
    query = query.order_by(table.c.approval)
    return [AnswerRow(*row) for row in connection.execute(_of_job(query, table.c.job, job)).all()]


def orders_light(connection: Connection, job: Jobs) -> list[OrderFacts]:
    """Orders with a line of the jobs, oldest number first."""
    table = PURCHASE_ORDERS
    query = select(table.c.body).order_by(table.c.year, table.c.serial)
    if job is not None:
        query = query.where(table.c.number.in_(_orders_of(job)))
    return [as_value(body, OrderFacts) for body in connection.execute(query).scalars().all()]


def receipts_light(connection: Connection, job: Jobs) -> dict[str, list[ReceiptFacts]]:
    """What came by order, in the order recorded. What was set aside as recorded wrongly is left out, as `receipts` in
    `storage.orders` leaves it out."""
    query = select(RECEIPTS.c.body).order_by(RECEIPTS.c.receipt)
    if job is not None:
        query = query.where(RECEIPTS.c.order.in_(_orders_of(job)))
    found: dict[str, list[ReceiptFacts]] = {}
    for body in connection.execute(query).scalars().all():
        one = as_value(body, ReceiptFacts)
        mine = found.setdefault(one.order, [])
        if one.sets_aside:
            mine[:] = [other for other in mine if other.paper != one.sets_aside]
        else:
            mine.append(one)
    return found


def full_quotes(connection: Connection, jobs: Sequence[str]) -> dict[str, dict[int, Quote]]:
    """Every revision of these jobs, whole, by job and revision."""
    found: dict[str, dict[int, Quote]] = {}
    table = QUOTE_REVISIONS
    for at in range(0, len(jobs), MANY):
        query = select(table.c.body).where(table.c.job.in_(jobs[at : at + MANY])).order_by(table.c.revision)
        for body in connection.execute(query).scalars():
            one = as_value(body, Quote)
            found.setdefault(one.job, {})[one.revision] = one
    return found


def bills_light(connection: Connection, job: Jobs) -> dict[str, BillFacts]:
    """Bills by job."""
    bodies = connection.execute(_of_job(select(BILLS.c.body), BILLS.c.job, job)).scalars().all()
    return {bill.job: bill for bill in (as_value(body, BillFacts) for body in bodies)}


def every_settings(connection: Connection) -> list[tuple[date, Settings]]:
    """All settings there ever were, with the day from which they hold, oldest first."""
    query = select(SHOP_SETTINGS.c.starts_on, SHOP_SETTINGS.c.body).order_by(SHOP_SETTINGS.c.starts_on)
    return [(row.starts_on, as_value(row.body, Settings)) for row in connection.execute(query)]


def _orders_of(job: Jobs) -> Select[tuple[str]]:
    lines = PURCHASE_ORDER_LINES.c
    return cast(Select[tuple[str]], _of_job(select(lines.order), lines.job, job))


def _of_job(query: Any, column: Column[Any], job: Jobs) -> Any:
    if isinstance(job, Answered):
        at = APPROVALS.c.at
        return query.where(column.in_(select(APPROVALS.c.job).where(at >= job.after, at < job.before)))
    return query if job is None else query.where(column == job)


def list_prices(connection: Connection, wanted: Collection[tuple[int, str]]) -> dict[tuple[int, str], ListPrice]:
    """The list price per piece, and its currency, of these supplier's numbers on these sheets, where one is stated."""
    by_sheet: dict[int, list[str]] = {}
    for sheet, number in sorted(wanted):
        by_sheet.setdefault(sheet, []).append(number)
    table, found = OFFERS, {}
    columns = (table.c.supplier_number, table.c.list_price, table.c.price_basis, table.c.currency)
    for sheet, numbers in by_sheet.items():
        for at in range(0, len(numbers), MANY):
            here = (table.c.sheet == sheet) & table.c.supplier_number.in_(numbers[at : at + MANY])
            for row in connection.execute(select(*columns).where(here, table.c.list_price.is_not(None))):
                found[sheet, row.supplier_number] = ListPrice(row.list_price / row.price_basis, row.currency)
    return found
