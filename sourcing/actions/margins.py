"""What jobs earned: load quotes, answers, orders and receipts, and work each job's margin out."""

from sqlalchemy import Connection

from ..basics.margin import JobMargin
from ..basics.order import PurchaseOrder
from ..margins.costs import Came, received_costs
from ..margins.job_margin import Ordered, job_margin
from ..ordering.receiving import charged
from ..storage.jobs import job as stored_job
from ..storage.jobs import jobs
from ..storage.orders import orders, receipts
from ..storage.quotes import newest_quote
from ..storage.shop import settings_on
from .answers import standing_of
from .desk import Desk


def margins(desk: Desk, number: str | None = None) -> tuple[JobMargin, ...]:
    """The margin of one job, or of every job with a quote, lowest last margin first."""
    with desk.store.reading() as connection:
        numbers = [stored_job(connection, number).number] if number else [job.number for job in jobs(connection)]
        quoted = [one for one in numbers if number or newest_quote(connection, one)]
        found = [_margin(connection, desk, one) for one in quoted]
        return tuple(sorted(found, key=_last_margin))


def _margin(connection: Connection, desk: Desk, number: str) -> JobMargin:
    settings = settings_on(connection, desk.at.date())
    standing = standing_of(connection, number)
    bought = [_ordered(connection, order, settings.currency) for order in orders(connection, number)]
    return job_margin(standing.quote, standing.words(), standing.approved, bought, settings)


def _ordered(connection: Connection, order: PurchaseOrder, currency: str) -> Ordered:
    came = [
        Came(receipt=receipt, charged={line.line: charged(order, line) for line in receipt.lines})
        for receipt in receipts(connection, order.number)
    ]
    return Ordered(order=order, received=received_costs(order, came, currency))


def _last_margin(one: JobMargin) -> tuple[float, str]:
    if not one.parts or one.parts[-1][1].margin_percent is None:
        return float("inf"), one.job
    return float(one.parts[-1][1].margin_percent), one.job  # only to sort by; nothing is computed from it
