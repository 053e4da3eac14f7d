"""Take a job in from a file, or change one that is there."""

from pathlib import Path

from ..basics.job import Job
from ..basics.value import changed
from ..storage.jobs import add_job, change_job, job, jobs
from .desk import Desk
from .evaluate import catalogue
from .files import read_toml
from .plan import job_needs


def take_in_job(desk: Desk, path: Path) -> Job:
    """Keep the job of a file and give it its number. Refuses parts that are not in the equivalence table."""
    new = read_toml(path, Job)
    with desk.writing("take in job") as pen:
        job_needs(new, catalogue(pen.connection, desk.at))
        kept = add_job(pen.connection, changed(new, number=""))
        pen.note(kept.number, f"took in {kept.machine.description} of {kept.customer.name}")
        return kept


def change_job_from(desk: Desk, number: str, path: Path) -> Job:
    """Replace a job's content by a file's, after tear-down, say. Quotes already made stay as they are."""
    new = changed(read_toml(path, Job), number=number)
    with desk.writing("change job") as pen:
        job(pen.connection, number)
        job_needs(new, catalogue(pen.connection, desk.at))
        change_job(pen.connection, new)
        pen.note(number, f"job now has {len(new.agreed)} agreed lines and {len(new.add_ons)} add-ons")
        return new


def all_jobs(desk: Desk) -> tuple[Job, ...]:
    """Every job, oldest first."""
    with desk.store.reading() as connection:
        return tuple(jobs(connection))
