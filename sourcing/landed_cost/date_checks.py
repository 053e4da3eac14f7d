"""What speaks against terms and calendars before a day is worked out from them: one sentence each, all at once."""

from collections.abc import Iterator
from datetime import date

from ..basics.problem import Problem, problem
from ..basics.settings import Settings
from ..basics.terms import Calendar, Terms
from .calendars import WEEK, holidays_problem
from .clock import zone_problems

FIRST_CLOSED, LAST_CLOSED = date(1970, 1, 1), date(2199, 12, 31)
"""A closing day outside of these is a slip of the pen."""
MOST_DAYS = 1000
"""Working days of dispatch or transit, about four years; more is a slip of the pen."""


def check_zone(terms: Terms, settings: Settings) -> tuple[Problem, ...]:
    """What is wrong with the supplier's time zone: an unknown name, or the shop has none to tell it by."""
    return zones_problems(terms, settings.time_zone)


def check_dates(terms: Terms) -> tuple[Problem, ...]:
    """What is wrong with what the terms say of days and clocks, beside their time zone; nothing where they can hold."""
    return tuple(_terms_problems(terms))


def check_shop_dates(settings: Settings) -> tuple[Problem, ...]:
    """What is wrong with the shop's own time zone and calendar; nothing where they can hold."""
    return (*zone_problems(settings.time_zone, "the shop"), *check_calendar(settings.calendar, "the shop"))


def check_calendar(calendar: Calendar, whose: str) -> tuple[Problem, ...]:
    """What is wrong with a calendar; `whose` is for the sentence: 'the shop', "'stonegarth'"."""
    return tuple(_calendar_problems(calendar, whose))


def zones_problems(terms: Terms, shop_zone: str) -> tuple[Problem, ...]:
    """As `check_zone`, with the name of the shop's zone."""
    found = zone_problems(terms.time_zone, f"'{terms.supplier}'")
    if terms.time_zone and not shop_zone and not found:
        return (problem("shop-without-time-zone", supplier=terms.supplier, found=terms.time_zone),)
    return found


def _calendar_problems(calendar: Calendar, whose: str) -> Iterator[Problem]:
    if not calendar.week:
        yield problem("week-without-days", whose=whose)
    for day in calendar.closed:
        if not FIRST_CLOSED <= day <= LAST_CLOSED:
            yield problem("closed-day-out-of-range", found=day, whose=whose, first=FIRST_CLOSED, last=LAST_CLOSED)
    unknown = holidays_problem(calendar)
    if unknown:
        yield unknown


def _terms_problems(terms: Terms) -> Iterator[Problem]:
    whose = f"'{terms.supplier}'"
    yield from _calendar_problems(terms.calendar, whose)
    days = {"dispatch_days": (terms.dispatch_days,), "transit_days": terms.transit_days}
    for field, range_ in days.items():
        yield from _range_problems(field, range_, whose)
    if terms.order_days and terms.calendar.week and not set(terms.order_days) & set(terms.calendar.week):
        found = ", ".join(day for day in WEEK if day in terms.order_days)
        yield problem("no-order-day", whose=whose, found=found)
    if terms.cut_off.tzinfo is not None:
        yield problem("cut-off-with-zone", whose=whose, found=terms.cut_off)


def _range_problems(field: str, days: tuple[int, ...], whose: str) -> Iterator[Problem]:
    shown = " to ".join(str(one) for one in days)
    if min(days) < 0:
        yield problem("terms-days-below-zero", field=field, whose=whose, found=shown)
    elif max(days) > MOST_DAYS:
        yield problem("days-too-many", field=field, whose=whose, found=shown, most=MOST_DAYS)
    elif days[0] > days[-1]:
        yield problem("days-falling", field=field, whose=whose, found=shown)
