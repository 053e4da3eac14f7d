"""When a machine could be ready: the first working day after all of its parts are here (common practice, no source)."""

from collections.abc import Mapping
from datetime import date, timedelta

from ..basics.landed_cost import OrderItem
from ..landed_cost.arrival import arrival
from ..landed_cost.calendars import first_working_day
from .evaluate import Catalogue
from .job_now import JobNow


def machine_ready(
    found: Catalogue, now: JobNow, items: Mapping[str, OrderItem], label: str, latest: date | None
) -> date | None:
    """The day the machine would be ready with the line's part here on `latest`, the other parts as they are on order or
    would be ordered today (`items` by label). None where the customer named no day for it, or a part's day is not
    known."""
    if now.job.ready_by is None or latest is None:
        return None
    days = [latest, *_days_of_others(found, now, items, label)]
    known = [day for day in days if day is not None]
    if len(known) < len(days):
        return None
    return first_working_day(max(known) + timedelta(days=1), found.shop.settings.calendar)


def _days_of_others(found: Catalogue, now: JobNow, items: Mapping[str, OrderItem], label: str) -> list[date | None]:
    """The last day of each other part that has not come."""
    others = [one for at, some in now.on_order.items() if at != label for one in some if not one.is_complete]
    days = [one.days[-1].latest if one.days else None for one in others]
    to_order = [item for at, item in items.items() if at != label]
    return days + [arrival(item, found.door(item.offer.supplier), found.at).latest for item in to_order]
