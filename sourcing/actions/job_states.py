"""Where every job is, and everything of one job. Words follow from what happened; nobody sets them."""

from collections import Counter
from collections.abc import Mapping, Sequence
from functools import partial
from typing import NamedTuple, cast

from sqlalchemy import Connection

from ..basics.approval import GivenBy, GivenOut
from ..basics.job import Job
from ..basics.job_state import JobFacts, JobRow, JobState, WholeJob
from ..basics.money import Money
from ..basics.value import Value, changed
from ..quoting.states import job_state
from ..storage.after_order import promises
from ..storage.after_quote import bill_of, billed_jobs, deposits, given_away, jobs_with_deposits, sendings
from ..storage.jobs import job as stored_job
from ..storage.jobs import jobs_but
from ..storage.orders import orders, receipts
from ..storage.quotes import approvals, newest_quote
from .alarms import alarms
from .answers import standing_of
from .desk import Desk
from .goods_back import waiting_of_orders
from .held_lines import said_since, with_held
from .history import deeds_of
from .job_facts import job_facts, money_held
from .remembered import Remembered, with_remembered


class JobList(Value, frozen=True, kw_only=True):
    """Jobs, oldest number first, and how many closed ones are left out."""

    jobs: tuple[JobRow, ...]
    left_out: int


class Listed(NamedTuple):
    """A job as a list shows it, and what happened to it."""

    row: JobRow
    facts: JobFacts


def job_list(desk: Desk, closed_too: bool = False) -> JobList:
    """Every job that is not closed, or every job. One closed with money or goods to give back is never left out."""
    found, left_out = roughly(desk, closed_too)
    return JobList(jobs=as_they_stand(desk, found), left_out=left_out)


def roughly(desk: Desk, closed_too: bool = False) -> tuple[list[Listed], int]:
    """The same jobs, and how many are left out; quick for any number of jobs. Who is waited for is right, but what is
    next for a job with a part to be ordered only as if nothing held it back: `as_they_stand` looks at those shown."""
    day = desk.at.date()
    with desk.store.reading() as connection:
        work_out = partial(_of_all, desk, connection, closed_too)
        found, left_out = with_remembered(desk.store, connection, day, work_out)
        held = with_held(desk, connection, {facts.job: facts for _, facts in found if said_since(facts)})
    listed = [Listed(_row(job, job_state(held.get(facts.job, facts), day)), facts) for job, facts in found]
    return listed, left_out


def as_they_stand(desk: Desk, some: Sequence[Listed]) -> tuple[JobRow, ...]:
    """These jobs with what is truly next for each: a line that is not as approved waits for a decision."""
    with desk.store.reading() as connection:
        facts = with_held(desk, connection, {one.row.job: one.facts for one in some})
    return tuple(changed(one.row, state=job_state(facts[one.row.job], desk.at.date())) for one in some)


def _of_all(
    desk: Desk, connection: Connection, closed_too: bool, kept: Remembered, orders: Mapping[str, set[str]]
) -> tuple[list[tuple[Job, JobFacts]], int]:
    back = _back_by_job(desk, connection, kept, orders)
    billed, held = billed_jobs(connection), _held(connection, kept)
    left_out: set[str] = set() if closed_too else {job for job in billed if held.get(job) is None and not back[job]}
    found = []
    for job in jobs_but(connection, left_out):
        if job.number in billed:
            facts = JobFacts(
                job=job.number,
                customer=job.customer.name,
                taken_in_at=billed[job.number],
                billed_at=billed[job.number],
                held=held.get(job.number),
                waiting_back=back[job.number],
            )
        else:
            if job.number not in kept.facts:
                kept.facts[job.number] = job_facts(connection, job)
            facts = kept.facts[job.number]
        found.append((job, facts))
    return found, len(left_out)


def _held(connection: Connection, kept: Remembered) -> dict[str, Money | None]:
    """What is left of the deposits of every job that has some."""
    for job in jobs_with_deposits(connection):
        if job not in kept.held:
            kept.held[job] = money_held(connection, job)
    return kept.held


def _back_by_job(desk: Desk, connection: Connection, kept: Remembered, orders: Mapping[str, set[str]]) -> Counter[str]:
    """How many old parts and goods of each job wait to be sent back, or for their credit."""
    missing = [order for order in orders if order not in kept.back]
    if missing:
        kept.back |= waiting_of_orders(connection, desk, missing)
    return Counter(one.job for waiting in kept.back.values() for one in waiting)


def state_of(desk: Desk, number: str) -> JobState:
    """Where one job is."""
    with desk.store.reading() as connection:
        job = stored_job(connection, number)
        return job_state(_facts(desk, connection, job), desk.at.date())


def _facts(desk: Desk, connection: Connection, job: Job) -> JobFacts:
    facts = changed(job_facts(connection, job), waiting_back=_waiting_back(connection, desk, job.number))
    return with_held(desk, connection, {job.number: facts})[job.number]


def _waiting_back(connection: Connection, desk: Desk, number: str) -> int:
    """How many old parts and goods of a job wait to be sent back, or for their credit."""
    of_job = [one.number for one in orders(connection, number)]
    waiting = waiting_of_orders(connection, desk, of_job).values()
    return sum(one.job == number for some in waiting for one in some)


def whole_job(desk: Desk, number: str) -> WholeJob:
    """Everything of one job. Alarms are looked for on the day of the desk."""
    with desk.store.reading() as connection:
        job = stored_job(connection, number)
        bought = orders(connection, number)
        whole = WholeJob(
            job=job,
            state=job_state(_facts(desk, connection, job), desk.at.date()),
            given=_given(connection, number),
            orders=tuple(bought),
            receipts=tuple(receipt for one in bought for receipt in receipts(connection, one.number)),
            promises=tuple(promises(connection, number)),
            deposits=tuple(deposits(connection, number)),
            given_away=tuple(given_away(connection, number)),
            deeds=deeds_of(connection, number),
        )
        whole = _with_quote(connection, whole)
    return changed(whole, alarms=_alarms(desk, number))


def _row(job: Job, state: JobState) -> JobRow:
    return JobRow(job=job.number, customer=job.customer.name, machine=job.machine.description, state=state)


def _given(connection: Connection, number: str) -> tuple[GivenOut, ...]:
    return tuple(
        GivenOut(
            job=one.job, revision=one.revision, at=one.at, who=one.who, how=cast(GivenBy, one.how), sent_to=one.sent_to
        )
        for one in sendings(connection, number)
    )


def _with_quote(connection: Connection, whole: WholeJob) -> WholeJob:
    number = whole.job.number
    if newest_quote(connection, number) is None:
        return whole
    standing, bill = standing_of(connection, number), bill_of(connection, number)
    return changed(
        whole,
        quote=standing.quote,
        words=standing.answers.by_label,
        approved=standing.approved.total,
        answers=tuple(one for _, one in approvals(connection, number)),
        bill=bill.bill.number if bill else "",
        due=bill.bill.due if bill else None,
        off=bill.bill.off if bill else (),
    )


def _alarms(desk: Desk, number: str) -> tuple[str, ...]:
    return tuple(f"line {one.label}: {differs.words}" for one in alarms(desk, number) for differs in one.differs)
