"""Take a job in from a file, or change one that is there."""

from pathlib import Path

from ..basics.evidence import Evidence
from ..basics.job import Job, JobLine
from ..basics.problem import refused
from ..basics.value import changed
from ..storage.jobs import add_job, change_job, job, jobs
from .desk import Desk
from .evaluate import catalogue
from .files import read_toml
from .identity import refuse_unusable, signed
from .plan import job_needs


def take_in_job(desk: Desk, path: Path) -> Job:
    """Keep the job of a file and give it its number. Refuses parts that are not in the equivalence table."""
    new = _signed(desk, read_toml(path, Job))
    with desk.writing("take in job") as pen:
        job_needs(new, catalogue(pen.connection, desk.at))
        kept = add_job(pen.connection, changed(new, number=""))
        pen.note(kept.number, f"took in {kept.machine.description} of {kept.customer.name}")
        return kept


def change_job_from(desk: Desk, number: str, path: Path) -> Job:
    """Replace a job's content by a file's, after tear-down, say. Quotes already made stay as they are.

    What was recorded of a line since (evidence, offers accepted in spite of what is asked) stays with the line of the
    same label, as long as it asks for the same part.
    """
    new = changed(_signed(desk, read_toml(path, Job)), number=number)
    with desk.writing("change job") as pen:
        new = _with_records(new, job(pen.connection, number))
        job_needs(new, catalogue(pen.connection, desk.at))
        change_job(pen.connection, new)
        pen.note(number, f"job now has {len(new.agreed)} agreed lines and {len(new.add_ons)} add-ons")
        return new


def all_jobs(desk: Desk) -> tuple[Job, ...]:
    """Every job, oldest first."""
    with desk.store.reading() as connection:
        return tuple(jobs(connection))


def _signed(desk: Desk, new: Job) -> Job:
    """A file's job with who and when on its evidence. Refuses an offer that a file accepts."""
    for _, line in new.labelled():
        if line.overrides:
            raise refused("accepted-in-a-file", title=line.title)
        for one in line.evidence:
            refuse_unusable(one)
    agreed, add_ons = ([_signed_line(desk, line) for line in lines] for lines in (new.agreed, new.add_ons))
    return changed(new, agreed=tuple(agreed), add_ons=tuple(add_ons))


def _signed_line(desk: Desk, line: JobLine) -> JobLine:
    return changed(line, evidence=tuple(signed(one, desk) for one in line.evidence))


def _with_records(new: Job, old: Job) -> Job:
    before = dict(old.labelled())
    lines = {label: _with_record(line, before.get(label)) for label, line in new.labelled()}
    return changed(
        new,
        agreed=tuple(line for label, line in lines.items() if label.isdigit()),
        add_ons=tuple(line for label, line in lines.items() if not label.isdigit()),
    )


def _with_record(line: JobLine, before: JobLine | None) -> JobLine:
    """Evidence recorded before comes first; a line of the file that says the same again is the same line."""
    if before is None or before.part != line.part:
        return line
    known = {_unsigned(one) for one in before.evidence}
    more = tuple(one for one in line.evidence if _unsigned(one) not in known)
    return changed(line, evidence=(*before.evidence, *more), overrides=before.overrides)


def _unsigned(one: Evidence) -> Evidence:
    return changed(one, seen_by="", seen_on=None, taken_back="")
