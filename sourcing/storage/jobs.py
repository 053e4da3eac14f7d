"""Jobs: taken in with a number of the year, read, and changed."""

from collections.abc import Collection

from sqlalchemy import Connection, insert, select, update

from ..basics.job import Job
from ..basics.problem import refused
from ..basics.value import changed
from .job_tables import JOBS
from .numbers import nearest, next_serial
from .rows import as_text, as_value

MOST_NAMED = 500
"""More jobs than this are read all at once: databases take only so many names in one question."""


def add_job(connection: Connection, job: Job) -> Job:
    """Keep a new job and give it the next number of the year it was received in ('2026-0001')."""
    year = job.received_on.year
    serial = next_serial(connection, JOBS, year)
    numbered = changed(job, number=f"{year}-{serial:04d}")
    row = {"number": numbered.number, "year": year, "serial": serial, "body": as_text(numbered)}
    connection.execute(insert(JOBS).values(row))
    return numbered


def job(connection: Connection, number: str) -> Job:
    """The job of that number. Refuses where there is none, with the numbers nearest to it."""
    body = connection.execute(select(JOBS.c.body).where(JOBS.c.number == number)).scalar()
    if body is None:
        known = connection.execute(select(JOBS.c.number)).scalars()
        raise refused("no-such-job", found=number, suggestions=nearest(number, known))
    return as_value(body, Job)


def change_job(connection: Connection, new: Job) -> None:
    """Keep the job as it is now, under its number. Quotes already made stay as they are. Refuses an unknown number."""
    job(connection, new.number)
    connection.execute(update(JOBS).where(JOBS.c.number == new.number).values(body=as_text(new)))


def job_numbers(connection: Connection) -> list[str]:
    """The number of every job, oldest first."""
    return list(connection.execute(select(JOBS.c.number).order_by(JOBS.c.year, JOBS.c.serial)).scalars())


def jobs_but(connection: Connection, left_out: Collection[str]) -> list[Job]:
    """Every job but these, oldest number first."""
    wanted = [number for number in job_numbers(connection) if number not in left_out]
    query = select(JOBS.c.number, JOBS.c.body)
    if len(wanted) <= MOST_NAMED:
        query = query.where(JOBS.c.number.in_(wanted))
    bodies = {row.number: row.body for row in connection.execute(query)}
    return [as_value(bodies[number], Job) for number in wanted]


def jobs(connection: Connection) -> list[Job]:
    """Every job, oldest number first."""
    query = select(JOBS.c.body).order_by(JOBS.c.year, JOBS.c.serial)
    return [as_value(body, Job) for body in connection.execute(query).scalars()]
