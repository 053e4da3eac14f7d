"""Jobs that have approved parts of which nothing is ordered yet: they may go together in one order."""

from collections.abc import Iterator

from sqlalchemy import Connection

from ..basics.problem import Refused
from ..basics.value import Value
from ..storage.after_order import standing_on
from ..storage.jobs import job as stored_job
from ..storage.orders import jobs_with_open_yes
from .answers import standing_of
from .desk import Desk

MOST = 40
"""Jobs looked at, the newest first: an order for more is made by ticking some and ordering twice."""


class JobToOrder(Value, frozen=True, kw_only=True):
    """A job and its approved lines with a part that stand on no order yet, by label and title."""

    job: str
    customer: str
    machine: str
    lines: tuple[tuple[str, str], ...]


def jobs_to_order(desk: Desk) -> tuple[JobToOrder, ...]:
    """Those jobs, oldest number first."""
    with desk.store.reading() as connection:
        return tuple(_to_order(connection))


def job_to_order(desk: Desk, number: str) -> JobToOrder:
    """One job with what of it can still be ordered; no lines where nothing can. Refuses an unknown job."""
    with desk.store.reading() as connection:
        return _of(connection, number)


def _to_order(connection: Connection) -> Iterator[JobToOrder]:
    for number in jobs_with_open_yes(connection)[-MOST:]:
        found = _of(connection, number)
        if found.lines:
            yield found


def _of(connection: Connection, number: str) -> JobToOrder:
    job = stored_job(connection, number)
    return JobToOrder(
        job=number, customer=job.customer.name, machine=job.machine.description, lines=_lines(connection, number)
    )


def _lines(connection: Connection, number: str) -> tuple[tuple[str, str], ...]:
    try:
        standing = standing_of(connection, number)
    except Refused:  # no quote yet: nothing is approved
        return ()
    words, ordered = standing.words(), {label for label, _, _ in standing_on(connection, number)}
    return tuple(
        (line.label, line.title)
        for line in standing.quote.lines
        if line.part and words[line.label] == "approved" and line.label not in ordered
    )
