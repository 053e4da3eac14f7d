"""Working days of a supplier or the shop: week days worked less public holidays and own closing days.

Public holidays come from the `holidays` package by country and region; a blank country has none.
"""

from datetime import date, timedelta
from functools import lru_cache

import holidays

from ..basics.problem import refused
from ..basics.terms import Calendar

WEEK = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def is_working_day(day: date, calendar: Calendar) -> bool:
    """Whether the calendar works on that day."""
    if WEEK[day.weekday()] not in calendar.week or day in calendar.closed:
        return False
    return day not in _holidays(calendar.country, calendar.region, day.year)


def first_working_day(day: date, calendar: Calendar) -> date:
    """The day itself if it is worked, else the next one that is."""
    return add_working_days(day, 0, calendar)


def add_working_days(day: date, count: int, calendar: Calendar) -> date:
    """`count` working days after the first working day on or after `day`; 0 gives that first working day."""
    left = count
    for _ in range(20 * 366):  # a calendar that is closed for years is a mistake, not a wait
        if is_working_day(day, calendar):
            if left == 0:
                return day
            left -= 1
        day += timedelta(days=1)
    raise refused("never-open", day=day)


@lru_cache(maxsize=512)
def _holidays(country: str, region: str, year: int) -> frozenset[date]:
    if not country:
        return frozenset()
    try:
        return frozenset(holidays.country_holidays(country, subdiv=region or None, years=year))
    except NotImplementedError:
        found = f"{country} {region}".strip()
        raise refused("unknown-country", found=found) from None
