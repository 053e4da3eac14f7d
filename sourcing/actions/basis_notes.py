"""What a result rests on that may no longer hold: an old exchange rate, a year whose holidays nobody knows."""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from ..basics.terms import Calendar
from ..basics.value import changed
from ..landed_cost.calendars import WEEK, closed_between
from ..landed_cost.door import Door

OLD_RATE_DAYS = 30
"""A rate older than this is spoken of: common practice, no source."""


def basis_notes(doors: Iterable[Door], today: date, latest: date | None) -> tuple[str, ...]:
    """Each old rate once, and each year up to `latest` of which no public holidays of a country are known."""
    every = list(doors)
    rates = {rate for door in every for rate in (door.rate, *door.other_rates)}
    old = sorted(rate.words() for rate in rates if (today - rate.dated).days > OLD_RATE_DAYS)
    ages = {rate.words(): (today - rate.dated).days for rate in rates}
    named = {calendar for door in every for calendar in (door.shop_calendar, door.terms.calendar)}
    notes = [f"the rate is {ages[words]:,} days old: {words}" for words in old]
    return (*notes, *holiday_notes(named, today, latest or today))


def holiday_notes(calendars: Iterable[Calendar], today: date, latest: date) -> Iterator[str]:
    """Each country, or region of one, and year from today's to that of `latest` without any known public holiday."""
    places = sorted({(one.country, one.region) for one in calendars if one.country})
    for country, region in places:
        for year in range(today.year, latest.year + 1):
            if not _any_holiday(Calendar(country=country, region=region), year):
                where = f"{country} {region}".strip()
                yield f"no public holidays of {where} in {year} are known: days there are counted as if it had none"


def _any_holiday(calendar: Calendar, year: int) -> bool:
    every_day = changed(calendar, week=WEEK, closed=())
    return bool(closed_between(date(year, 1, 1), date(year, 12, 31) + timedelta(days=1), every_day))
