"""Which answers still hold: the one word of an answer that changes, when a later word takes its place."""

from collections.abc import Sequence

from sqlalchemy import Connection, select, update

from ..basics.approval import Approval
from .job_tables import APPROVALS, PURCHASE_ORDER_LINES


def replace_earlier(connection: Connection, one: Approval) -> None:
    """Earlier answers to the same line of the same revision hold no more, but for those that goods were ordered on."""
    table, bought = APPROVALS, PURCHASE_ORDER_LINES
    same = (table.c.job == one.job) & (table.c.revision == one.revision) & (table.c.label == one.label)
    free = table.c.approval.not_in(select(bought.c.approval).where(bought.c.approval.is_not(None)))
    still = table.c.holds == "yes"
    connection.execute(update(table).where(same & still & free).values(holds="replaced"))


def mark_replaced(connection: Connection, numbers: Sequence[int]) -> None:
    """Answers that a later word of the customer took the place of, in whatever revision: they hold no more.

    The database refuses it for an answer that goods or a bill stand on.
    """
    table = APPROVALS
    if numbers:
        still = table.c.holds == "yes"
        connection.execute(update(table).where(table.c.approval.in_(numbers) & still).values(holds="replaced"))


def ordered_on(connection: Connection, job: str) -> frozenset[int]:
    """The numbers of the job's answers that goods are ordered on; a cancelled line has let go of its answer."""
    bought = PURCHASE_ORDER_LINES
    query = select(bought.c.approval).where(bought.c.job == job, bought.c.approval.is_not(None))
    return frozenset(connection.execute(query).scalars())
