"""Which part a job's line needs: its evidence shown, added and taken back, with the judgement after each."""

from pathlib import Path

from ..basics.asked import Asked
from ..basics.evidence import AcceptedAnyway, Evidence
from ..basics.identity import Identity
from ..basics.job import JobLine, Machine
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..matching.equivalences.number_cells import damage_of
from ..matching.serials import serial_order
from ..storage.jobs import job as stored_job
from .desk import Desk
from .evaluate import Catalogue, catalogue, catalogue_to_read
from .files import read_toml
from .needs import identity_of, keep_line, line_with_part


class LookUp(Value, frozen=True, kw_only=True):
    """A question without a job, as a file holds it: the machine, its evidence, what is asked; `part` may be blank."""

    machine: Machine
    evidence: tuple[Evidence, ...]
    asked: Asked = Asked()
    part: str = ""


class LineIdentity(Value, frozen=True, kw_only=True):
    """A job's line, or a question without a job (`job` blank), with the judgement of which part it needs."""

    job: str
    label: str
    title: str
    asked_for: str
    machine: str
    identity: Identity
    overrides: tuple[AcceptedAnyway, ...]


def show_identity(desk: Desk, number: str, label: str) -> LineIdentity:
    """The evidence of a job's line and what follows from it."""
    with desk.store.reading() as connection:
        return _shown(catalogue_to_read(desk, connection), number, label)


def identities(desk: Desk, number: str) -> dict[str, Identity]:
    """The judgement of every line of a job that asks for a part, by label."""
    with desk.store.reading() as connection:
        job = stored_job(connection, number)
        lines = {label: line for label, line in job.labelled() if line.part}
        found = catalogue_to_read(desk, connection) if lines else None
        return {label: identity_of(found, job.machine, line) for label, line in lines.items()} if found else {}


def look_up_identity(desk: Desk, path: Path) -> LineIdentity:
    """The judgement for the machine and the evidence of a file; nothing is kept."""
    asked_for = read_toml(path, LookUp)
    for one in asked_for.evidence:
        refuse_unusable(one)
    line = JobLine(
        title="look-up",
        part=asked_for.part,
        quantity=1 if asked_for.part else 0,
        evidence=asked_for.evidence,
        asked=asked_for.asked,
    )
    with desk.store.reading() as connection:
        return _judged(catalogue_to_read(desk, connection), "", "", line, asked_for.machine)


def add_evidence(desk: Desk, number: str, label: str, evidence: Evidence) -> LineIdentity:
    """Keep one more line of evidence, with who and when where it does not say; the judgement after it.

    Refuses a damaged number, and a range of serial numbers that runs backwards.
    """
    refuse_unusable(evidence)
    with desk.writing("add evidence") as pen:
        job = stored_job(pen.connection, number)
        line = line_with_part(job, label)
        signed_by = signed(evidence, desk)
        keep_line(pen.connection, job, label, changed(line, evidence=(*line.evidence, signed_by)))
        pen.note(number, f"line {label}: {evidence.kind} says {evidence.says}")
        return _shown(catalogue(pen.connection, desk.at), number, label)


def take_evidence_back(desk: Desk, number: str, label: str, at: int, words: str) -> LineIdentity:
    """A line of evidence (counted from 1) no longer counts, with who and why; it stays to be read."""
    if not words.strip():
        raise refused("words-missing", found="taking evidence back")
    with desk.writing("take evidence back") as pen:
        job = stored_job(pen.connection, number)
        line = line_with_part(job, label)
        if not 1 <= at <= len(line.evidence) or line.evidence[at - 1].taken_back:
            raise refused("no-such-evidence", job=number, label=label, found=at)
        gone = changed(line.evidence[at - 1], taken_back=f"{desk.who} on {desk.at.date()}: {words.strip()}")
        kept = (*line.evidence[: at - 1], gone, *line.evidence[at:])
        keep_line(pen.connection, job, label, changed(line, evidence=kept))
        pen.note(number, f"line {label}: {gone.kind} ({gone.says}) taken back: {words.strip()}")
        return _shown(catalogue(pen.connection, desk.at), number, label)


def signed(evidence: Evidence, desk: Desk) -> Evidence:
    """The evidence with who and when filled in where it does not say."""
    return changed(evidence, seen_by=evidence.seen_by or desk.who, seen_on=evidence.seen_on or desk.at.date())


def refuse_unusable(evidence: Evidence) -> None:
    """Refuse a number that a spreadsheet has damaged, and a range of serial numbers that runs backwards.

    Serial numbers count as backwards as far as the two can be compared.
    """
    if why := damage_of(evidence.number.strip()):
        raise refused("evidence-number-damaged", found=evidence.number, why=why)
    low, high = evidence.serial_from, evidence.serial_to
    if low and high and serial_order(low, high) == "after":
        raise refused("evidence-backwards", found=low, to=high)


def _shown(found: Catalogue, number: str, label: str) -> LineIdentity:
    job = stored_job(found.connection, number)
    return _judged(found, number, label, line_with_part(job, label), job.machine)


def _judged(found: Catalogue, number: str, label: str, line: JobLine, machine: Machine) -> LineIdentity:
    tag = " ".join(part for part in (machine.maker, machine.model) if part)
    serial = f", serial {machine.serial}" if machine.serial else ""
    return LineIdentity(
        job=number,
        label=label,
        title=line.title,
        asked_for=line.part,
        machine=f"{machine.description}{f', {tag}' if tag else ''}{serial}",
        identity=identity_of(found, machine, line),
        overrides=line.overrides,
    )
