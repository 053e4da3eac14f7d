"""Where every job is, and everything of one job. Words follow from what happened; nobody sets them."""

from collections import Counter
from typing import cast

from sqlalchemy import Connection

from ..basics.approval import GivenBy, GivenOut
from ..basics.job import Job
from ..basics.job_state import JobFacts, JobRow, JobState, WholeJob
from ..basics.value import Value, changed
from ..quoting.states import job_state
from ..storage.after_order import promises
from ..storage.after_quote import bill_of, billed_jobs, deposits, given_away, sendings
from ..storage.jobs import job as stored_job
from ..storage.jobs import jobs
from ..storage.orders import orders, receipts
from ..storage.quotes import approvals, newest_quote
from .alarms import alarms
from .answers import standing_of
from .desk import Desk
from .goods_back import going_back
from .history import deeds_of
from .job_facts import job_facts, money_held


class JobList(Value, frozen=True, kw_only=True):
    """Jobs, oldest number first, and how many closed ones are left out."""

    jobs: tuple[JobRow, ...]
    left_out: int


def job_list(desk: Desk, closed_too: bool = False) -> JobList:
    """Every job that is not closed, or every job. One closed with money or goods to give back is never left out."""
    back = _waiting_back(desk)
    with desk.store.reading() as connection:
        billed, held = billed_jobs(connection), money_held(connection)
        found, left_out = [], 0
        for job in jobs(connection):
            if job.number in billed and job.number not in {*held, *back} and not closed_too:
                left_out += 1
                continue
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
                facts = job_facts(connection, job)
            found.append(_row(job, job_state(facts, desk.at.date())))
        return JobList(jobs=tuple(found), left_out=left_out)


def state_of(desk: Desk, number: str) -> JobState:
    """Where one job is."""
    back = _waiting_back(desk)
    with desk.store.reading() as connection:
        facts = changed(job_facts(connection, stored_job(connection, number)), waiting_back=back[number])
        return job_state(facts, desk.at.date())


def _waiting_back(desk: Desk) -> Counter[str]:
    """How many old parts and goods of each job wait to be sent back, or for their credit."""
    return Counter(one.job for one in going_back(desk))


def whole_job(desk: Desk, number: str) -> WholeJob:
    """Everything of one job. Alarms are looked for on the day of the desk."""
    back = _waiting_back(desk)
    with desk.store.reading() as connection:
        job = stored_job(connection, number)
        facts = changed(job_facts(connection, job), waiting_back=back[number])
        bought = orders(connection, number)
        whole = WholeJob(
            job=job,
            state=job_state(facts, desk.at.date()),
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
