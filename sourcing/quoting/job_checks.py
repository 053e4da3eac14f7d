"""What can't hold in a job file, field by field, so that the file is told all of it at once."""

import re
from collections.abc import Iterator
from decimal import Decimal

from ..basics.contradiction import Contradiction, day_faults, is_finer, number_faults
from ..basics.currency import minor_units
from ..basics.job import Job, JobLine

ADDRESS = re.compile(r"[^\s@]+@[^\s@]+")
"""One sign 'at' between two things without blanks (RFC 5321 allows quoted blanks, which nobody in a shop writes)."""


def job_contradictions(job: Job, currency: str) -> tuple[Contradiction, ...]:
    """All that can't hold. `currency` is the shop's: amounts may be no finer than its smallest coin."""
    smallest = Decimal(1).scaleb(-minor_units(currency))
    return (
        *number_faults(job),
        *_customer(job),
        *_days(job),
        *_findings(job),
        *_fees(job, smallest),
        *_lines(job, smallest),
    )


def _customer(job: Job) -> Iterator[Contradiction]:
    one = job.customer
    if not one.name.strip():
        yield Contradiction(field="customer.name", found="is blank; say whose machine it is")
    if one.email.strip() and not ADDRESS.fullmatch(one.email.strip()):
        found = f"is '{one.email[:60]}', which is no address mail could go to; write it as name@place or leave it blank"
        yield Contradiction(field="customer.email", found=found)
    if one.exempt_because.strip() and not one.tax_exempt:
        found = "is given, but tax_exempt is not true; say which of the two is meant"
        yield Contradiction(field="customer.exempt_because", found=found)
    if one.tax_exempt and not one.exempt_because.strip():
        found = "is blank, but tax_exempt is true; write what the customer's certificate says"
        yield Contradiction(field="customer.exempt_because", found=found)


def _days(job: Job) -> Iterator[Contradiction]:
    for name in ("received_on", "need_by", "ready_by"):
        yield from day_faults(getattr(job, name), name)
    if job.ready_by and job.ready_by < job.received_on:
        found = f"is {job.ready_by}, before the machine came on {job.received_on}"
        yield Contradiction(field="ready_by", found=found)
    if job.ready_by and job.need_by and job.ready_by < job.need_by:
        found = f"is {job.need_by}, after the machine is to be ready on {job.ready_by}"
        yield Contradiction(field="need_by", found=found)


def _findings(job: Job) -> Iterator[Contradiction]:
    for at, one in enumerate(job.findings, 1):
        if not one.what.strip():
            yield Contradiction(field=f"findings.{at}.what", found="is blank; say what was seen")
        yield from _photos(f"findings.{at}", one.photos)


def _photos(field: str, photos: tuple[str, ...]) -> Iterator[Contradiction]:
    for at, name in enumerate(photos, 1):
        if not name.strip():
            yield Contradiction(field=f"{field}.photos.{at}", found="is blank; write the photo's file name")
        elif name in photos[: at - 1]:
            yield Contradiction(field=f"{field}.photos.{at}", found=f"is '{name}' a second time")


def _fees(job: Job, smallest: Decimal) -> Iterator[Contradiction]:
    names = [one.name.strip().casefold() for one in job.fees]
    for at, one in enumerate(job.fees, 1):
        if not one.name.strip():
            yield Contradiction(field=f"fees.{at}.name", found="is blank; it stands on the customer's paper")
        elif names[at - 1] in names[: at - 1]:
            yield Contradiction(field=f"fees.{at}.name", found=f"is '{one.name}' a second time")
        if one.amount <= 0:
            found = f"is {one.amount}; leave the fee out where none is charged"
            yield Contradiction(field=f"fees.{at}.amount", found=found)
        yield from _too_fine(f"fees.{at}.amount", one.amount, smallest)


def _lines(job: Job, smallest: Decimal) -> Iterator[Contradiction]:
    for table, lines in (("agreed", job.agreed), ("add_ons", job.add_ons)):
        for at, line in enumerate(lines, 1):
            yield from _line(f"{table}.{at}", line, smallest)
            yield from _photos(f"{table}.{at}", line.photos)


def _line(field: str, line: JobLine, smallest: Decimal) -> Iterator[Contradiction]:
    if not line.title.strip():
        yield Contradiction(field=f"{field}.title", found="is blank; it stands on the customer's paper")
    if line.labour_rate is not None and not line.hours:
        yield Contradiction(field=f"{field}.labour_rate", found="is given, but no hours are")
    if line.labour_flat is not None:
        yield from _too_fine(f"{field}.labour_flat", line.labour_flat, smallest)
    if not line.part and line.special_order is not None:
        yield Contradiction(field=f"{field}.special_order", found="is given, but the line has no part")
    if not line.part and line.category:
        yield Contradiction(field=f"{field}.category", found="is given, but the line has no part to be priced by it")


def _too_fine(field: str, amount: Decimal, smallest: Decimal) -> Iterator[Contradiction]:
    if is_finer(amount, smallest):
        yield Contradiction(field=field, found=f"is {amount}, finer than the smallest coin, {smallest}")
