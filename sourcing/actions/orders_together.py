"""Jobs that share an order: by when the parts are needed, and which other job's parts had better go with it."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.plan import PlannedOrder
from ..basics.problem import Refused
from ..basics.terms import Calendar
from ..landed_cost.calendars import is_working_day
from ..storage.jobs import job as stored_job
from ..storage.orders import jobs_with_open_yes
from .evaluate import Catalogue
from .order_lines import lines_to_order, ready_items
from .plan import land

MOST_CLOSED_DAYS = 60
"""How far back a day of work is looked for before the shop's calendar is taken as a mistake."""


def needed_by(found: Catalogue, jobs: Iterable[str]) -> date | None:
    """The first day on which any of the jobs needs its parts; None where none of them says a day."""
    calendar = found.shop.settings.calendar
    days = [parts_needed(stored_job(found.connection, job), calendar) for job in jobs]
    return min((day for day in days if day), default=None)


def parts_needed(job: Job, calendar: Calendar) -> date | None:
    """The day by which a job's parts must be in the shop: the day it says, and where the machine is to be ready on a
    day, a day of work before (common practice, no source); the earlier where both are said."""
    days = [job.need_by] if job.need_by else []
    if job.ready_by:
        days.append(_bench_day(job.ready_by, calendar))
    return min(days, default=None)


def better_together(found: Catalogue, planned: PlannedOrder, jobs: Iterable[str]) -> tuple[str, ...]:
    """Other jobs with approved parts of the same supplier that would make charges less or the order possible."""
    landed = planned.landed
    saves = landed.refusal or landed.missing or any(not one.is_goods and one.amount.amount > 0 for one in landed.lines)
    if not saves:
        return ()
    others = [one for one in jobs_with_open_yes(found.connection) if one not in set(jobs)]
    return tuple(words for job in others for words in _with_job(found, planned, job))


def _with_job(found: Catalogue, planned: PlannedOrder, job: str) -> Iterator[str]:
    landed = planned.landed
    theirs = _items_at(found, job, landed.supplier)
    if not theirs:
        return
    alone = land(found, theirs).landed
    both = land(found, [*(one.item for one in landed.items), *theirs]).landed
    waits = f"job {job} also waits for parts of {landed.supplier_name}"
    if both.refusal or both.missing:
        return
    if landed.refusal or landed.missing:
        yield f"{waits}: ordered together the order can be placed"
        return
    saved = landed.total + alone.total - both.total
    if alone.refusal or alone.missing:
        yield f"{waits}, which can't be ordered alone; orders can't be joined once they are sent"
    elif saved.amount > 0:
        yield f"{waits}: ordered together {saved} is saved; orders can't be joined once they are sent"


def _items_at(found: Catalogue, job: str, supplier: str) -> list[OrderItem]:
    """What the job could order of that supplier now; nothing where anything about the job is in the way."""
    try:
        items = ready_items(found, lines_to_order(found, [job])).items
    except Refused:
        return []
    return [item for item in items.values() if item.offer.supplier == supplier]


def _bench_day(ready_by: date, calendar: Calendar) -> date:
    day = ready_by - timedelta(days=1)
    for _ in range(MOST_CLOSED_DAYS):
        if is_working_day(day, calendar):
            return day
        day -= timedelta(days=1)
    return ready_by - timedelta(days=1)
