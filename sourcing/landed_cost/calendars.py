"""Working days of a supplier or the shop: week days worked less public holidays and own closing days.

Public holidays come from the `holidays` package by country and region, with the days on which they are observed; a
blank country has none. Days are counted in lists of a year's working days, so that a long wait costs no more than a
short one.
"""

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from datetime import date
from functools import lru_cache
from typing import Any

import holidays
from rapidfuzz import fuzz, process

from ..basics.problem import Problem, Refused, problem, refused
from ..basics.terms import Calendar

WEEK = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
NO_DAY_FOR = 20
"""Years without a working day after which a calendar is a mistake, not a wait."""
YEARS_AHEAD = 100
"""How far ahead of a day others may be counted at all."""
MOST_NAMED = 4
"""Closed days named in words; the others are counted."""


def is_working_day(day: date, calendar: Calendar) -> bool:
    """Whether the calendar works on that day. Refuses a country or region of which no holidays are known."""
    days = _working_days(calendar, day.year)
    at = bisect_left(days, day)
    return at < len(days) and days[at] == day


def first_working_day(day: date, calendar: Calendar) -> date:
    """The day itself if it is worked, else the next one that is."""
    return add_working_days(day, 0, calendar)


def add_working_days(day: date, count: int, calendar: Calendar) -> date:
    """`count` working days after the first working day on or after `day`; 0 gives that first working day.

    Refuses a negative count, a calendar that is never open, and a day more than a hundred years ahead.
    """
    if count < 0:
        raise refused("days-below-zero", found=count)
    left, last_open = count, day.year
    for year in range(day.year, min(day.year + YEARS_AHEAD, date.max.year) + 1):
        days = _working_days(calendar, year)
        at = (bisect_left(days, day) if year == day.year else 0) + left
        if at < len(days):
            return days[at]
        left = at - len(days)
        last_open = year if days else last_open
        if year - last_open >= NO_DAY_FOR:
            raise refused("never-open", day=date(year, 12, 31))
    raise refused("too-far-ahead", count=count, day=day)


def working_days_between(first: date, end: date, calendar: Calendar) -> int:
    """How many working days there are from `first` on and before `end`; 0 where `end` is not after `first`."""
    if end <= first:
        return 0
    years = (_working_days(calendar, year) for year in range(first.year, end.year + 1))
    return sum(bisect_left(days, end) - bisect_left(days, first) for days in years)


def closed_between(first: date, end: date, calendar: Calendar) -> tuple[tuple[date, str], ...]:
    """The days of the week that would be worked, from `first` on and before `end`, and are not: with the holiday's
    name, or blank for an own closing day."""
    named: dict[date, str] = {day: "" for day in calendar.closed}
    for year in range(first.year, end.year + 1):
        named.update(_holidays(calendar.country, calendar.region, year))
    inside = (day for day in sorted(named) if first <= day < end and WEEK[day.weekday()] in calendar.week)
    return tuple((day, named[day]) for day in inside)


def holidays_problem(calendar: Calendar) -> Problem | None:
    """What is wrong with the calendar's country or region, with names near it; None where its holidays are known."""
    try:
        _holidays(calendar.country, calendar.region, 2026)
    except Refused as refusal:
        return refusal.problems[0]
    return None


def closed_words(closed: Sequence[tuple[date, str]], where: str) -> str:
    """' (2026-01-19 is a public holiday there: Martin Luther King Jr. Day)', at most four named; blank for none."""
    words = [f"{day} is a public holiday {where}: {name}" if name else f"{day} closed {where}" for day, name in closed]
    more = len(words) - MOST_NAMED
    shown = words[:MOST_NAMED] + ([f"{more} more closed day{'s' if more > 1 else ''} {where}"] if more > 0 else [])
    return f" ({'; '.join(shown)})" if shown else ""


@lru_cache(maxsize=2048)
def _working_days(calendar: Calendar, year: int) -> tuple[date, ...]:
    """The year's working days, rising."""
    kept, closed = _holidays(calendar.country, calendar.region, year), set(calendar.closed)
    start, end = date(year, 1, 1).toordinal(), date(year, 12, 31).toordinal()
    worked = {at for at, name in enumerate(WEEK) if name in calendar.week}
    days = (date.fromordinal(at) for at in range(start, end + 1))
    return tuple(day for day in days if day.weekday() in worked and day not in closed and day not in kept)


@lru_cache(maxsize=2048)
def _holidays(country: str, region: str, year: int) -> Mapping[date, str]:
    """The public holidays of a year with their names in English where the package has them."""
    if not country:
        return {}
    try:
        # The language is named, for else the machine's own would decide what the words say.
        found: Any = holidays.country_holidays(country, subdiv=region or None, years=year, language="en_US")
    except NotImplementedError:
        raise Refused(_unknown(country, region)) from None
    return {day: name for day, name in found.items() if day.year == year}


def _unknown(country: str, region: str) -> Problem:
    regions = holidays.list_supported_countries(include_aliases=True)
    known, word = (regions[country], region) if country in regions else (list(regions), country)
    near = process.extract(word.upper(), known, scorer=fuzz.ratio, limit=3, score_cutoff=60)
    found = f"{country} {region}".strip()
    return problem("unknown-country", found=found, suggestions=tuple(sorted(one[0] for one in near)))
