"""Working days against numpy's business-day functions and the published federal holidays of the United States."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.basics.terms import Calendar
from sourcing.landed_cost.calendars import add_working_days, first_working_day, is_working_day

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


@given(
    st.dates(date(2025, 1, 1), date(2027, 6, 30)),
    st.integers(0, 60),
    st.sets(st.dates(date(2025, 1, 1), date(2027, 12, 31)), max_size=40),
)
def test_agrees_with_numpy(start: date, days: int, closed: set[date]) -> None:
    """Reference: numpy.busday_offset, rolled forward."""
    mine = add_working_days(start, days, Calendar(closed=tuple(closed)))
    theirs = np.busday_offset(
        np.datetime64(start), days, roll="forward", holidays=[np.datetime64(day) for day in closed]
    )
    assert np.datetime64(mine) == theirs


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
    """An unknown country, a region of another country, a week without days."""
    with pytest.raises(Refused, match="no public holidays are known for 'XX'"):
        is_working_day(date(2026, 1, 6), Calendar(country="XX"))
    with pytest.raises(Refused, match="'US BY'"):
        is_working_day(date(2026, 1, 6), Calendar(country="US", region="BY"))
    with pytest.raises(Refused, match="no working day"):
        first_working_day(date(2026, 1, 6), Calendar(week=()))
