"""The last day a customer's yes covers: by the revision she answered to, and by when she answered."""

from datetime import date

from sqlalchemy import Connection

from ..quoting.hold import promised_by
from ..storage.jobs import job as stored_job
from ..storage.quotes import approvals, quote


def covered_day(connection: Connection, job: str, approval: int) -> date | None:
    """The day by which the parts must be here for the stored answer of that number still to cover them.

    A yes that was carried over to a later revision covers the day of the revision it was given to, not the later one's:
    the customer has not seen that. Past the days printed no day is covered on which the job no longer wants its parts.
    None where its paper named no day.
    """
    given = next(one for number, one in approvals(connection, job) if number == approval)
    wanted = stored_job(connection, job).need_by
    return promised_by(quote(connection, job, given.revision).quote, given.at, wanted)
