"""Take a job in from a file, or change one that is there."""

from collections.abc import Collection, Sequence
from pathlib import Path

from ..basics.evidence import Evidence
from ..basics.job import Job, JobLine
from ..basics.problem import Place, Refused, problem, refused
from ..basics.value import changed
from ..quoting.job_checks import job_contradictions
from ..storage.after_quote import bill_of
from ..storage.jobs import add_job, change_job, job, jobs
from ..storage.links import photos
from .desk import Desk
from .evaluate import Catalogue, catalogue
from .files import read_toml
from .identity import refuse_unusable, signed
from .job_labels import as_filled_in, job_label
from .plan import job_needs


def take_in_job(desk: Desk, path: Path) -> Job:
    """Keep the job of a file and give it its number. Refuses parts that are not in the equivalence table, and with its
    place all that can't hold."""
    return take_in(desk, _read(desk, path), Place(file=path.name))


def take_in(desk: Desk, new: Job, place: Place | None = None) -> Job:
    """Keep a job and give it its number; `place` is the file it stands in. Refuses what `take_in_job` does."""
    with desk.writing("take in job") as pen:
        check_job(new, catalogue(pen.connection, desk.at), place)
        kept = add_job(pen.connection, changed(new, number=""))
        pen.note(kept.number, f"took in {kept.machine.description} of {kept.customer.name}")
        return kept


def change_job_from(desk: Desk, number: str, path: Path) -> Job:
    """Replace a job's content by a file's, after tear-down, say. Quotes already made stay as they are.

    What was recorded of a line since (evidence, photos, offers accepted in spite of what is asked) stays with the line
    of the same label, as long as it asks for the same part. Refuses a billed job.
    """
    new = changed(_read(desk, path), number=number)
    with desk.writing("change job") as pen:
        before = job(pen.connection, number)
        if bill_of(pen.connection, number) is not None:
            raise refused("billed-stays", job=number, found="a file no longer replaces it")
        new = _with_records(new, before, {one.name for one in photos(pen.connection, number)})
        check_job(new, catalogue(pen.connection, desk.at), Place(file=path.name))
        change_job(pen.connection, new)
        pen.note(number, f"the job now has {_some(new.agreed, 'agreed line')} and {_some(new.add_ons, 'add-on')}")
        return new


def _some(lines: Sequence[JobLine], word: str) -> str:
    return f"{len(lines)} {word}{'' if len(lines) == 1 else 's'}"


def all_jobs(desk: Desk) -> tuple[Job, ...]:
    """Every job, oldest first."""
    with desk.store.reading() as connection:
        return tuple(jobs(connection))


def _read(desk: Desk, path: Path) -> Job:
    """The job of a file; what a line of it contradicts in itself is told with the file too."""
    try:
        new = read_toml(path, Job)
    except Refused as refusal:
        here = Place(file=path.name)
        told = (one if one.code == "file-not-understood" else changed(one, place=here) for one in refusal.problems)
        raise Refused(*told) from None
    return _signed(desk, new)


def check_job(new: Job, found: Catalogue, place: Place | None) -> None:
    """Refuses, all at once, what can't hold in a job; then a part that is not in the equivalence table."""
    wrong = job_contradictions(new, found.shop.settings.currency)
    told = [
        problem(
            "entry-contradicts",
            place=place,
            entry="",
            field=one.field if place else job_label(one.field),
            found=one.found if place else as_filled_in(one.found),
        )
        for one in wrong
    ]
    if told:
        raise Refused(*told)
    job_needs(new, found)


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


def _with_records(new: Job, old: Job, photos: Collection[str]) -> Job:
    before = dict(old.labelled())
    lines = {label: _with_record(line, before.get(label), photos) for label, line in new.labelled()}
    return changed(
        new,
        agreed=tuple(line for label, line in lines.items() if label.isdigit()),
        add_ons=tuple(line for label, line in lines.items() if not label.isdigit()),
    )


def _with_record(line: JobLine, before: JobLine | None, photos: Collection[str]) -> JobLine:
    """Evidence recorded before comes first; a line of the file that says the same again is the same line. `photos`:
    the names of those kept at the counter, which no file need name."""
    if before is None or before.part != line.part:
        return line
    known = {_unsigned(one) for one in before.evidence}
    more = tuple(one for one in line.evidence if _unsigned(one) not in known)
    kept = tuple(name for name in before.photos if name in photos and name not in line.photos)
    return changed(line, evidence=(*before.evidence, *more), overrides=before.overrides, photos=(*kept, *line.photos))


def _unsigned(one: Evidence) -> Evidence:
    return changed(one, seen_by="", seen_on=None, taken_back="")
