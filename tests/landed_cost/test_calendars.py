"""Working days against numpy's and pandas' business-day functions and published public holidays."""

import calendar as months
import os
import subprocess
import sys
from collections.abc import Iterator
from datetime import date, timedelta
from typing import get_args

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.basics.terms import Calendar
from sourcing.landed_cost.calendars import (
    WEEK,
    add_working_days,
    closed_between,
    closed_words,
    first_working_day,
    holidays_problem,
    is_working_day,
    working_days_between,
)

UNITED_STATES = Calendar(country="US")

# Federal holidays 2025 and 2026 as the United States Office of Personnel Management publishes them (from memory of
# the published list; 4 July 2026 is a Saturday and is observed on Friday 3 July).
FEDERAL = [
    *[date(2025, *day) for day in [(1, 1), (1, 20), (2, 17), (5, 26), (6, 19), (7, 4), (9, 1), (10, 13), (11, 11)]],
    *[date(2025, *day) for day in [(11, 27), (12, 25)]],
    *[date(2026, *day) for day in [(1, 1), (1, 19), (2, 16), (5, 25), (6, 19), (7, 3), (9, 7), (10, 12), (11, 11)]],
    *[date(2026, *day) for day in [(11, 26), (12, 25)]],
]


@pytest.mark.parametrize("day", FEDERAL)
def test_federal_holidays_are_not_worked(day: date) -> None:
    """Every published weekday holiday."""
    assert not is_working_day(day, UNITED_STATES)


def test_no_other_weekday_is_closed() -> None:
    """And none that is not published."""
    day, closed = date(2025, 1, 1), []
    while day.year < 2027:
        if day.weekday() < 5 and not is_working_day(day, UNITED_STATES):
            closed.append(day)
        day += timedelta(days=1)
    assert closed == FEDERAL


def nth(year: int, month: int, weekday: int, which: int) -> date:
    """The n-th weekday of a month (0 is Monday); -1: the last."""
    last = months.monthrange(year, month)[1]
    days = [date(year, month, day) for day in range(1, last + 1) if date(year, month, day).weekday() == weekday]
    return days[which - 1] if which > 0 else days[which]


def statute(year: int) -> Iterator[date]:
    """Legal public holidays by 5 U.S.C. 6103(a), each on the day it is observed: Saturday's on the Friday before
    (6103(b)(1)), Sunday's on the Monday after (Executive Order 11582). Wording from memory."""
    fixed = [date(year, 1, 1), date(year, 6, 19), date(year, 7, 4), date(year, 11, 11), date(year, 12, 25)]
    yield from (day + timedelta(days={5: -1, 6: 1}.get(day.weekday(), 0)) for day in fixed)
    yield from (nth(year, 1, 0, 3), nth(year, 2, 0, 3), nth(year, 5, 0, -1), nth(year, 9, 0, 1), nth(year, 10, 0, 2))
    yield nth(year, 11, 3, 4)


def closed_weekdays(calendar: Calendar, first: int, last: int) -> list[date]:
    """Monday to Friday in those years, not worked."""
    days = [date(first, 1, 1) + timedelta(days=at) for at in range((date(last + 1, 1, 1) - date(first, 1, 1)).days)]
    return [day for day in days if day.weekday() < 5 and not is_working_day(day, calendar)]


def test_the_statute_agrees_with_fourteen_years() -> None:
    """With days observed in the year before: 1 January 2028 is a Saturday."""
    rule = sorted(day for year in range(2022, 2037) for day in statute(year) if 2022 <= day.year <= 2035)
    found = closed_weekdays(UNITED_STATES, 2022, 2035)
    assert found == rule and date(2027, 12, 31) in found


def easter(year: int) -> date:
    """Easter Sunday: the anonymous Gregorian computus (Meeus, Astronomical Algorithms, ch. 8; from memory)."""
    a, (b, c) = year % 19, divmod(year, 100)
    d, e = divmod(b, 4)
    g = (8 * b + 13) // 25
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    m = (a + 11 * h) // 319
    r = (2 * e + 2 * i - k - h + m + 32) % 7
    month = (h - m + r + 90) // 25
    return date(year, month, (h - m + r + month + 19) % 32)


def bavaria(year: int) -> Iterator[date]:
    """Public holidays of Bavaria (Bavarian holidays act, Art. 1; from memory); none is moved to another day. The 15th
    of August is kept in most of its communities only, and a supplier there names it as a closing day of his own."""
    fixed = ((1, 1), (1, 6), (5, 1), (10, 3), (11, 1), (12, 25), (12, 26))
    yield from (date(year, *day) for day in fixed)
    yield from (easter(year) + timedelta(days=after) for after in (-2, 1, 39, 50, 60))


def ontario(year: int) -> Iterator[date]:
    """Public holidays of Ontario (Employment Standards Act, 2000, s. 1; from memory), none moved."""
    yield from (date(year, *day) for day in ((1, 1), (7, 1), (12, 25), (12, 26)))
    yield from (nth(year, 2, 0, 3), easter(year) - timedelta(days=2), nth(year, 9, 0, 1), nth(year, 10, 0, 2))
    yield max(date(year, 5, day) for day in range(18, 25) if date(year, 5, day).weekday() == 0)


def test_easter_of_two_years() -> None:
    """20 April 2025 and 5 April 2026 (church calendars, from memory)."""
    assert (easter(2025), easter(2026)) == (date(2025, 4, 20), date(2026, 4, 5))


def test_bavaria_over_eight_years() -> None:
    """Every weekday the act closes, and no other."""
    closed = closed_weekdays(Calendar(country="DE", region="BY"), 2023, 2030)
    assert closed == sorted(day for year in range(2023, 2031) for day in bavaria(year) if day.weekday() < 5)


def test_ontario_and_its_days_in_lieu() -> None:
    """2025, where none falls on a weekend; in 2026 Boxing Day is a Saturday and kept on Monday the 28th."""
    canada = Calendar(country="CA", region="ON")
    assert closed_weekdays(canada, 2025, 2025) == sorted(ontario(2025))
    assert date(2026, 12, 28) in closed_weekdays(canada, 2026, 2026)


DAYS = st.dates(date(2024, 1, 1), date(2028, 12, 31))
WEEKS = st.sets(st.sampled_from(WEEK), min_size=1).map(lambda days: tuple(day for day in WEEK if day in days))
CLOSED = st.sets(DAYS, max_size=60)


def mask(week: tuple[str, ...]) -> str:
    """numpy's mask of a week."""
    return "".join("1" if day in week else "0" for day in WEEK)


def test_the_week_is_the_contracts() -> None:
    """Seven names, as terms spell them."""
    spelt = get_args(get_args(Calendar.__annotations__["week"])[0])
    assert spelt == WEEK


@given(DAYS, st.integers(0, 400), WEEKS, CLOSED)
def test_agrees_with_numpy(start: date, days: int, week: tuple[str, ...], closed: set[date]) -> None:
    """Reference: numpy.busday_offset, rolled forward, on any week and any closing days."""
    calendar = Calendar(week=week, closed=tuple(closed))  # type: ignore[arg-type]
    shut = [np.datetime64(day) for day in closed]
    theirs = np.busday_offset(np.datetime64(start), days, roll="forward", weekmask=mask(week), holidays=shut)
    assert np.datetime64(add_working_days(start, days, calendar)) == theirs


@given(DAYS, DAYS, WEEKS, CLOSED)
def test_counts_as_numpy_does(first: date, end: date, week: tuple[str, ...], closed: set[date]) -> None:
    """Reference: numpy.busday_count, first day in, last day out."""
    calendar = Calendar(week=week, closed=tuple(closed))  # type: ignore[arg-type]
    shut = [np.datetime64(day) for day in closed]
    theirs = np.busday_count(np.datetime64(first), np.datetime64(end), weekmask=mask(week), holidays=shut)
    assert working_days_between(first, end, calendar) == max(0, int(theirs))


@given(DAYS, st.integers(1, 120), WEEKS, CLOSED)
def test_agrees_with_pandas(start: date, days: int, week: tuple[str, ...], closed: set[date]) -> None:
    """Reference: pandas.offsets.CustomBusinessDay, from a day that is worked."""
    calendar = Calendar(week=week, closed=tuple(closed))  # type: ignore[arg-type]
    first = first_working_day(start, calendar)
    step = pd.offsets.CustomBusinessDay(n=days, weekmask=" ".join(week), holidays=sorted(closed))
    assert pd.Timestamp(first) + step == pd.Timestamp(add_working_days(first, days, calendar))


@given(DAYS, DAYS, CLOSED)
def test_what_is_closed_is_what_is_missing(first: date, end: date, closed: set[date]) -> None:
    """Days of the week, less those named as closed, are the working days."""
    calendar = Calendar(country="US", closed=tuple(closed))
    named = closed_between(first, end, calendar)
    assert len(named) == working_days_between(first, end, Calendar()) - working_days_between(first, end, calendar)
    assert all(first <= day < end and not is_working_day(day, calendar) for day, _ in named)


def test_a_long_wait_is_counted() -> None:
    """Twenty thousand working days, about eighty years, against numpy."""
    start = date(2026, 3, 2)
    assert add_working_days(start, 20_000, Calendar()) == np.busday_offset(np.datetime64(start), 20_000).astype(date)


def test_closed_days_in_words() -> None:
    """Observed holidays by name, own closing days, none of the weekend; four are named."""
    calendar = Calendar(country="US", closed=(date(2026, 7, 6), date(2026, 7, 5)))
    named = closed_between(date(2026, 7, 1), date(2026, 7, 8), calendar)
    assert named == ((date(2026, 7, 3), "Independence Day (observed)"), (date(2026, 7, 6), ""))
    words = " (2026-07-03 is a public holiday there: Independence Day (observed); 2026-07-06 closed there)"
    assert closed_words(named, "there") == words and closed_words((), "there") == ""
    six = closed_between(date(2026, 1, 1), date(2026, 7, 4), UNITED_STATES)
    assert len(six) == 6 and closed_words(six, "here").endswith("; 2 more closed days here)")


def test_words_are_the_same_in_any_language_of_the_machine() -> None:
    """The package would name days by the machine's language."""
    code = (
        "from datetime import date\n"
        "from sourcing.basics.terms import Calendar\n"
        "from sourcing.landed_cost.calendars import closed_between\n"
        "print(closed_between(date(2026, 12, 25), date(2026, 12, 26), Calendar(country='DE'))[0][1])"
    )
    machine = {**os.environ, "LANGUAGE": "de", "LANG": "de_DE.UTF-8", "LC_ALL": "de_DE.UTF-8"}
    done = subprocess.run([sys.executable, "-c", code], env=machine, capture_output=True, text=True, check=True)
    assert done.stdout == "Christmas Day\n"


def test_a_week_of_other_days() -> None:
    """A shop that works Tuesday to Saturday."""
    calendar = Calendar(week=("Tue", "Wed", "Thu", "Fri", "Sat"))
    assert first_working_day(date(2026, 1, 11), calendar) == date(2026, 1, 13)
    assert add_working_days(date(2026, 1, 16), 2, calendar) == date(2026, 1, 20)


def test_regions_count() -> None:
    """Epiphany is kept in Bavaria and not in Berlin (Bavarian and Berlin holiday laws, from memory)."""
    assert not is_working_day(date(2026, 1, 6), Calendar(country="DE", region="BY"))
    assert is_working_day(date(2026, 1, 6), Calendar(country="DE", region="BE"))


def test_what_can_not_be_is_told() -> None:
    """An unknown country, a region of another country, a week without days, years of closing days."""
    with pytest.raises(Refused, match="no public holidays are known for 'XX'"):
        is_working_day(date(2026, 1, 6), Calendar(country="XX"))
    with pytest.raises(Refused, match="'US BY'"):
        is_working_day(date(2026, 1, 6), Calendar(country="US", region="BY"))
    with pytest.raises(Refused, match="no working day"):
        first_working_day(date(2026, 1, 6), Calendar(week=()))
    mondays = tuple(date(2026, 1, 5) + timedelta(days=7 * at) for at in range(22 * 53))
    with pytest.raises(Refused, match="no working day"):
        add_working_days(date(2026, 1, 6), 3, Calendar(week=("Mon",), closed=mondays))


def test_days_that_are_no_wait_are_refused() -> None:
    """Fewer than none, and more than a hundred years."""
    with pytest.raises(Refused, match="-1 days are less than none"):
        add_working_days(date(2026, 1, 6), -1, Calendar())
    with pytest.raises(Refused, match="more than a hundred years ahead"):
        add_working_days(date(2026, 1, 6), 99_999, Calendar())
    with pytest.raises(Refused, match="ahead"):
        add_working_days(date(9999, 12, 31), 1, Calendar())


def test_a_country_written_otherwise_is_told_with_names_near_it() -> None:
    """Small letters, and a region beside its right spelling."""
    small = holidays_problem(Calendar(country="us"))
    assert small and "US" in small.suggestions
    region = holidays_problem(Calendar(country="DE", region="BYE"))
    assert region and "BY" in region.suggestions
    assert holidays_problem(Calendar(country="US")) is None and holidays_problem(Calendar()) is None
