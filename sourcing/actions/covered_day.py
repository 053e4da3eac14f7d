"""The last day a customer's yes covers: by the revision she answered to, and by when she answered."""

from datetime import date

from ..landed_cost.calendars import is_working_day
from ..quoting.hold import Covered, covered_by
from ..storage.jobs import job as stored_job
from ..storage.quotes import approvals, quote
from .evaluate import Catalogue


def covered_day(found: Catalogue, job: str, approval: int) -> Covered | None:
    """The day by which the parts must be here for the stored answer of that number still to cover them.

    A yes that was carried over to a later revision covers the day of the revision it was given to, not the later one's:
    the customer has not seen that. Past the days printed no day is covered on which the job no longer wants its parts.
    None where its paper named no day.
    """
    given = next(one for number, one in approvals(found.connection, job) if number == approval)
    answered_to, wanted = quote(found.connection, job, given.revision).quote, stored_job(found.connection, job).need_by
    return covered_by(answered_to, given.at, wanted, lambda day: shop_works(found, day))


def shop_works(found: Catalogue, day: date) -> bool:
    """Whether the shop works that day by its own calendar."""
    return is_working_day(day, found.shop.settings.calendar)
