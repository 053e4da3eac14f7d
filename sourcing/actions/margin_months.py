"""Months of the customer's yes, by which margins are narrowed: a line's month never moves afterwards."""

import re
from datetime import date, datetime, timedelta

from ..basics.problem import refused
from ..basics.value import Value
from ..storage.margin_rows import Answered

MONTH = re.compile(r"(\d{4})-(\d{2})")
FIRST_YEAR, LAST_YEAR, DECEMBER = 1970, 2199, 12
A_WEEK = timedelta(days=7)


class Months(Value, frozen=True, kw_only=True):
    """From one month to another, both with it, as '2026-03'."""

    since: str
    until: str

    @property
    def answered(self) -> Answered:
        """The time in which a job must have been answered to have a line of these months."""
        return Answered(_start(self.since), _start(_later(self.until, 1)))

    def has(self, month: str) -> bool:
        """Whether it is one of them. Blank: of no yes that holds; it counts with its job."""
        return not month or self.since <= month <= self.until


def newest_months(today: date) -> Months:
    """Those looked at where nothing is said: this month, and in its first week the one before too."""
    return Months(since=f"{today - A_WEEK:%Y-%m}", until=f"{today:%Y-%m}")


def months_typed(since: str, until: str, today: date) -> Months:
    """The months typed; a blank one is that of `newest_months`, or the other where that comes first. Refuses what is no
    month, and an end before the beginning."""
    usual = newest_months(today)
    last = _month(until) if until else max(usual.until, _month(since) if since else "")
    first = _month(since) if since else min(usual.since, last)
    if first > last:
        raise refused("months-turned", since=first, until=last)
    return Months(since=first, until=last)


def _month(typed: str) -> str:
    found = MONTH.fullmatch(typed.strip())
    if not found or not (FIRST_YEAR <= int(found[1]) <= LAST_YEAR and 1 <= int(found[2]) <= DECEMBER):
        raise refused("not-a-month", found=typed.strip()[:30])
    return found[0]


def _later(month: str, by: int) -> str:
    year, number = divmod(int(month[:4]) * DECEMBER + int(month[5:]) - 1 + by, DECEMBER)
    return f"{year:04d}-{number + 1:02d}"


def _start(month: str) -> datetime:
    return datetime(int(month[:4]), int(month[5:]), 1)
