"""Jobs taken in and changed at the counter, one thing at a time, by the same rules as a job file.

Whoever changes something says which job she saw: where somebody else changed that very job meanwhile, nothing is
overwritten and she is told to look first.
"""

import hashlib
from collections.abc import Callable

from sqlalchemy import Connection

from ..basics.job import Customer, Finding, Job, JobLine, Machine
from ..basics.problem import refused
from ..basics.value import Value, changed, to_json
from ..storage.after_quote import bill_of
from ..storage.deeds import deeds
from ..storage.jobs import change_job, job
from ..storage.links import label_photos
from .desk import Desk
from .evaluate import catalogue, catalogue_to_read
from .history import for_the_bench
from .jobs import check_job
from .needs import line_of
from .part_under import part_under

CHANGES = frozenset(
    (
        *("take in job", "change job", "add photo", "take photo out", "put photo back", "add evidence"),
        *("take evidence back", "accept anyway", "take acceptance back"),
    )
)
"""Deeds that change what a job says."""


class Seen(Value, frozen=True, kw_only=True):
    """The job somebody had before her when she began to type, and how it stood then (`version_of`)."""

    job: str
    version: str


def version_of(one: Job) -> str:
    """How a job stands: equal for equal jobs, another for any other."""
    return hashlib.sha256(to_json(one)).hexdigest()[:16]


def opened(desk: Desk, number: str) -> tuple[Job, Seen]:
    """The job as it stands, and what to say when it is changed."""
    with desk.store.reading() as connection:
        one = job(connection, number)
    return one, Seen(job=number, version=version_of(one))


def our_part(desk: Desk, typed: str) -> str:
    """Our code for a part named by any number; blank for blank. Refuses a number of no part, or of several."""
    if not typed.strip():
        return ""
    with desk.store.reading() as connection:
        return part_under(catalogue_to_read(desk, connection), typed.strip())


def change_facts(desk: Desk, seen: Seen, customer: Customer, machine: Machine, **fields: object) -> Job:
    """Change customer, machine, complaint and days. Refuses what `edit` does."""
    return edit(
        desk, seen, "customer, machine and days", lambda one: changed(one, customer=customer, machine=machine, **fields)
    )


def add_line(desk: Desk, seen: Seen, line: JobLine, is_add_on: bool) -> Job:
    """Add a line at the end of the agreed lines or of the add-ons. A job changed meanwhile is not in its way."""

    def added(one: Job) -> Job:
        if is_add_on:
            return changed(one, add_ons=(*one.add_ons, line))
        return changed(one, agreed=(*one.agreed, line))

    what = "add-on" if is_add_on else "agreed line"
    return edit(desk, changed(seen, version=""), f"{what} added: {line.title}", added)


def change_line(desk: Desk, seen: Seen, label: str, line: JobLine) -> Job:
    """Put the line in the place of the one with that label. Evidence and acceptances are not changed
    here: they stay while it asks for the same part. Photos stay always. Refuses what `edit` does."""

    def replaced(one: Job) -> Job:
        before = line_of(one, label)
        told = before if before.part == line.part else JobLine(title="")
        kept = {"evidence": told.evidence, "overrides": told.overrides, "photos": before.photos}
        return _with_line(one, label, changed(line, **kept))

    return edit(desk, seen, f"line {label} changed: {line.title}", replaced)


def take_line_out(desk: Desk, seen: Seen, label: str) -> Job:
    """Take a line out of the job; the labels after it move up. Quotes already made stay as they are."""

    def without(one: Job) -> Job:
        line_of(one, label)
        return _with_line(one, label, None)

    title = line_of(opened(desk, seen.job)[0], label).title
    return edit(desk, seen, f"line {label} taken out: {title}", without, out=label)


def add_finding(desk: Desk, seen: Seen, what: str) -> Job:
    """Add something seen at tear-down, with today's day and who saw it. It asks for nothing by itself."""
    new = Finding(what=what.strip(), found_on=desk.at.date(), found_by=desk.who)
    return edit(
        desk, changed(seen, version=""), f"finding: {new.what}", lambda one: changed(one, findings=(*one.findings, new))
    )


def take_finding_out(desk: Desk, seen: Seen, at: int) -> Job:
    """Take a finding out, counted from 1. Refuses what `edit` does."""

    def without(one: Job) -> Job:
        return changed(one, findings=tuple(found for place, found in enumerate(one.findings, 1) if place != at))

    said = [found.what for place, found in enumerate(opened(desk, seen.job)[0].findings, 1) if place == at]
    return edit(desk, seen, f"finding taken out: {''.join(said)}", without)


def edit(desk: Desk, seen: Seen, what: str, change: Callable[[Job], Job], out: str = "") -> Job:
    """Change a job by one step. Quotes already made stay as they are. `out`: the line taken out; the photos of the
    lines after it go with them, and its own are photos of the job.

    Refuses a billed job, one that somebody changed since it was seen (a blank version: whatever it is), and what a job
    file with it would be refused for. A change of nothing enters no deed.
    """
    with desk.writing("change job") as pen:
        before = job(pen.connection, seen.job)
        _refuse_closed(pen.connection, seen.job)
        if seen.version and seen.version != version_of(before):
            raise refused("job-changed-meanwhile", job=seen.job, last=_last_change(pen.connection, seen.job))
        new = change(before)
        if new == before:
            return before
        check_job(new, catalogue(pen.connection, desk.at), None)
        change_job(pen.connection, new)
        if out:
            label_photos(pen.connection, seen.job, _moved(before, out))
        pen.note(seen.job, what)
        return new


def _moved(before: Job, out: str) -> dict[str, str]:
    """The new label of every line from the one taken out on, by the old one; of that line none."""
    labels = [label for label, _ in before.labelled() if label.isdigit() == out.isdigit()]
    after = labels[labels.index(out) :]
    return {out: "", **dict(zip(after[1:], after, strict=False))}


def _last_change(connection: Connection, number: str) -> str:
    """Who changed the job last, when, and what."""
    some = for_the_bench(tuple(one for one in deeds(connection, number) if one.deed in CHANGES))
    return "".join(f"{one.who}, {one.at:%H:%M}: {one.detail or one.deed}" for one in some[-1:])


def _refuse_closed(connection: Connection, number: str) -> None:
    if bill_of(connection, number) is not None:
        raise refused("billed-stays", job=number, found="it is changed no more")


def _with_line(one: Job, label: str, line: JobLine | None) -> Job:
    """The job with the line in the place of that label, or with none there."""
    lines = {name: (line if name == label else kept) for name, kept in one.labelled()}
    kept = {name: each for name, each in lines.items() if each is not None}
    return changed(
        one,
        agreed=tuple(each for name, each in kept.items() if name.isdigit()),
        add_ons=tuple(each for name, each in kept.items() if not name.isdigit()),
    )
