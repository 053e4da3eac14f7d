"""What follows a quote: sendings, answers taken back, ways out taken, deposits, the bill. Nothing here is changed."""

import hashlib
from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection, insert, select, update

from ..basics.alarm import Decision
from ..basics.approval import Withdrawal
from ..basics.bill import Bill as BillValue
from ..basics.bill import DepositKept, FrozenBill, GivenAway
from ..basics.problem import refused
from ..basics.value import Value
from .after_tables import BILL_LINES, BILLS, DECISIONS, DEPOSITS, GIVEN_AWAY, QUOTE_SENDINGS, WITHDRAWALS
from .job_tables import APPROVALS
from .rows import as_text, as_value


class Sending(Value, frozen=True, kw_only=True):
    """A revision given to the customer by a person: when, by whom, how, and to which number or address."""

    job: str
    revision: int
    at: datetime
    who: str
    how: str
    sent_to: str = ""


def add_sending(connection: Connection, one: Sending) -> None:
    """Keep that a revision went out. The database refuses a revision that is not there."""
    names = ("job", "revision", "at", "who", "how", "sent_to")
    connection.execute(insert(QUOTE_SENDINGS).values({name: getattr(one, name) for name in names}))


def sendings(connection: Connection, job: str) -> list[Sending]:
    """Every sending of a job's quotes, in the order recorded."""
    table = QUOTE_SENDINGS
    query = select(table).where(table.c.job == job).order_by(table.c.sending)
    return [
        Sending(job=row.job, revision=row.revision, at=row.at, who=row.who, how=row.how, sent_to=row.sent_to)
        for row in connection.execute(query)
    ]


def add_withdrawal(connection: Connection, one: Withdrawal) -> None:
    """Keep that an answer was taken back: it holds no more. The database refuses where goods stand on it."""
    row = {"approval": one.approval, "job": one.job, "body": as_text(one)}
    connection.execute(insert(WITHDRAWALS).values(row))
    table = APPROVALS
    connection.execute(update(table).where(table.c.approval == one.approval).values(holds="withdrawn"))


def withdrawals(connection: Connection, job: str) -> list[Withdrawal]:
    """Every answer of the job that was taken back, oldest answer first."""
    table = WITHDRAWALS
    query = select(table.c.body).where(table.c.job == job).order_by(table.c.approval)
    return [as_value(body, Withdrawal) for body in connection.execute(query).scalars()]


def add_decision(connection: Connection, one: Decision) -> None:
    """Keep the way out a person took for a line."""
    connection.execute(insert(DECISIONS).values({"job": one.job, "label": one.label, "body": as_text(one)}))


def decisions(connection: Connection, job: str) -> list[Decision]:
    """Every decision about the job, oldest first; of one line's the last holds."""
    query = select(DECISIONS.c.body).where(DECISIONS.c.job == job).order_by(DECISIONS.c.decision)
    return [as_value(body, Decision) for body in connection.execute(query).scalars()]


def add_deposit(connection: Connection, one: DepositKept) -> None:
    """Keep money taken (above zero) or given back (below)."""
    row = {"job": one.job, "at": one.at, "amount": one.amount.amount, "currency": one.amount.currency}
    connection.execute(insert(DEPOSITS).values({**row, "body": as_text(one)}))


def deposits(connection: Connection, job: str | None = None) -> list[DepositKept]:
    """Deposits of a job, or all, in the order recorded."""
    query = select(DEPOSITS.c.body).order_by(DEPOSITS.c.deposit)
    if job is not None:
        query = query.where(DEPOSITS.c.job == job)
    return [as_value(body, DepositKept) for body in connection.execute(query).scalars()]


def jobs_with_deposits(connection: Connection) -> list[str]:
    """Every job that money was ever taken for."""
    return list(connection.execute(select(DEPOSITS.c.job).distinct()).scalars())


def add_given_away(connection: Connection, one: GivenAway) -> None:
    """Keep an extra that was given away. The database refuses a cost that is not above zero, and an unknown job."""
    row = {"job": one.job, "at": one.at, "cost": one.cost.amount, "currency": one.cost.currency}
    connection.execute(insert(GIVEN_AWAY).values({**row, "body": as_text(one)}))


def given_away(connection: Connection, job: str | None = None) -> list[GivenAway]:
    """What was given away on a job, or on all, in the order recorded."""
    query = select(GIVEN_AWAY.c.body).order_by(GIVEN_AWAY.c.given)
    if job is not None:
        query = query.where(GIVEN_AWAY.c.job == job)
    return [as_value(body, GivenAway) for body in connection.execute(query).scalars()]


def next_bill_number(connection: Connection, year: int) -> str:
    """The number the year's next bill gets: 'B-2026-0001'. It is taken only once the bill is kept."""
    start = f"B-{year}-"
    taken = [number for number in connection.execute(select(BILLS.c.number)).scalars() if number.startswith(start)]
    return f"{start}{max((int(number[len(start) :]) for number in taken), default=0) + 1:04d}"


def add_bill(connection: Connection, frozen: FrozenBill, approval_of: Mapping[str, int]) -> None:
    """Keep a job's bill; `approval_of` names for each of its lines the stored answer that allows it.

    Refuses a job that is billed already, and a line whose answer is not given. The database itself refuses a line on
    an answer that is no yes, that was taken back, or that is of another job. Raises ValueError where the hash is not
    the paper's: that would be a slip of the program.
    """
    bill = frozen.bill
    if hashlib.sha256(frozen.paper.encode()).hexdigest() != frozen.sha256:
        raise ValueError(f"the hash of bill {bill.number} is not its paper's")
    if bill_of(connection, bill.job) is not None:
        raise refused("billed-already", job=bill.job)
    for line in bill.lines:
        if line.label not in approval_of:
            raise refused("not-approved-for-bill", job=bill.job, label=line.label, answer="waiting")
    row = {"job": bill.job, "number": bill.number, "at": bill.made_at, "who": bill.made_by, "body": as_text(bill)}
    connection.execute(insert(BILLS).values({**row, "paper": frozen.paper, "sha256": frozen.sha256}))
    held = {"job": bill.job, "answer": "approved", "holds": "yes"}
    lines = [{**held, "label": line.label, "approval": approval_of[line.label]} for line in bill.lines]
    if lines:
        connection.execute(insert(BILL_LINES), lines)


def bill_of(connection: Connection, job: str) -> FrozenBill | None:
    """The job's bill, None where it is not billed. Refuses a paper that is no longer what was given out."""
    row = connection.execute(select(BILLS).where(BILLS.c.job == job)).one_or_none()
    if row is None:
        return None
    if hashlib.sha256(row.paper.encode()).hexdigest() != row.sha256:
        raise refused("bill-damaged", job=job)
    return FrozenBill(bill=as_value(row.body, BillValue), paper=row.paper, sha256=row.sha256)


def lines_not_done(connection: Connection) -> frozenset[tuple[str, str]]:
    """Job and label of every line that was approved and left off its job's bill. Few bills have one: only those are
    read."""
    query = select(BILLS.c.body).where(BILLS.c.body.like('%"not_done":[{%'))
    found = (as_value(body, BillValue) for body in connection.execute(query).scalars())
    return frozenset((bill.job, one.label) for bill in found for one in bill.not_done)


def billed_jobs(connection: Connection) -> dict[str, datetime]:
    """Every billed job and when it was billed."""
    return {row.job: row.at for row in connection.execute(select(BILLS.c.job, BILLS.c.at))}
