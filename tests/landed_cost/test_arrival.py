"""Promise dates, step by step, against days worked out by hand on the calendar of January and March 2026."""

from datetime import date, datetime, time
from typing import Any

import pytest

from sourcing.basics.offer import LeadTime
from sourcing.basics.terms import Calendar
from sourcing.landed_cost.arrival import arrival, latest_of
from tests.builders import door, item, lead, offer

MONDAY = datetime(2026, 3, 2, 14, 40)


@pytest.mark.parametrize(
    ("cut_off", "transit", "day"),
    [
        (time(14, 0), (2, 2), date(2026, 3, 5)),  # cut-off missed: leaves Tuesday, two days
        (time(15, 0), (3, 3), date(2026, 3, 5)),  # leaves Monday, three days
        (time(14, 40), (3, 3), date(2026, 3, 5)),  # at the cut-off counts
        (time(15, 0), (5, 5), date(2026, 3, 9)),  # over a weekend
    ],
)
def test_cut_off_and_road(cut_off: time, transit: tuple[int, int], day: date) -> None:
    """In stock, no holidays."""
    found = arrival(item(offer(stock=4)), door(cut_off=cut_off, transit_days=transit), MONDAY)
    assert (found.earliest, found.latest) == (day, day)


def test_holidays_of_both_sides() -> None:
    """Friday 16 January 2026, one day on the road: Monday 19 January is a federal holiday, so Tuesday."""
    friday = datetime(2026, 1, 16, 10, 0)
    shut = door(transit_days=(1, 1), calendar=Calendar(country="US"))
    assert arrival(item(offer()), shut, friday).latest == date(2026, 1, 20)


def test_a_lead_time_is_a_range() -> None:
    """Not in stock, '5-7 days', one day to dispatch at least, 2-3 on the road from Tuesday 13 January 2026."""
    tuesday = datetime(2026, 1, 13, 10, 15)
    late = offer(stock=0, lead_time=lead("5-7 days", 5, 7))
    found = arrival(item(late), door(dispatch_days=1, transit_days=(2, 3)), tuesday)
    assert (found.earliest, found.latest) == (date(2026, 1, 22), date(2026, 1, 27))
    assert "lead time '5-7 days'" in found.steps[1]


@pytest.mark.parametrize(
    ("named", "dispatch", "leaves", "words"),
    [
        (date(2026, 3, 12), 0, date(2026, 3, 12), "stock 0 of 1, lead time 'BO' names 2026-03-12"),
        (date(2026, 3, 14), 0, date(2026, 3, 17), "2026-03-14, a day the supplier does not work"),  # Saturday
        (date(2026, 3, 16), 0, date(2026, 3, 17), "2026-03-16, a day the supplier does not work"),  # closed that Monday
        (date(2026, 3, 3), 0, date(2026, 3, 3), "names 2026-03-03"),  # the day the order counts on
        (date(2026, 2, 27), 0, date(2026, 3, 3), "2026-02-27, which is before an order of now can leave"),
        (date(2026, 3, 4), 2, date(2026, 3, 5), "2026-03-04, which is before an order of now can leave"),
    ],
)
def test_a_lead_time_that_names_the_day(named: date, dispatch: int, leaves: date, words: str) -> None:
    """Ordered on Monday 2 March 2026 after the cut-off, so it counts on Tuesday; one to two days on the road."""
    back = offer(stock=0, lead_time=LeadTime(text="BO", leaves_on=named))
    shut = Calendar(closed=(date(2026, 3, 16),))
    found = arrival(item(back), door(transit_days=(1, 2), dispatch_days=dispatch, calendar=shut), MONDAY)
    plain = {
        date(2026, 3, 12): (13, 17),
        date(2026, 3, 17): (18, 19),
        date(2026, 3, 3): (4, 5),
        date(2026, 3, 5): (6, 9),
    }
    first, last = plain[leaves]
    assert (found.earliest, found.latest) == (date(2026, 3, first), date(2026, 3, last))
    assert words in found.steps[1] and f"leaves {leaves}" in found.steps[1]


def test_the_day_named_is_not_for_what_is_in_stock() -> None:
    """The backorder's day is about pieces that are not there."""
    there = offer(stock=3, lead_time=LeadTime(text="BO", leaves_on=date(2026, 3, 30)))
    assert arrival(item(there, needed=3), door(), MONDAY).latest == date(2026, 3, 5)
    assert arrival(item(there, needed=4), door(), MONDAY).latest == date(2026, 4, 1)


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"stock": None, "lead_time": None}, "stock not stated and no lead time"),
        ({"stock": 0, "lead_time": lead("Backorder", None, None)}, "'Backorder' names no day"),
        ({"stock": 2, "lead_time": lead("In stock", 0, 0)}, "says nothing of the rest"),
    ],
)
def test_unknown_is_said_and_never_today(fields: dict[str, Any], words: str) -> None:
    """Three pieces asked for."""
    found = arrival(item(offer(**fields), needed=3), door(), MONDAY)
    assert found.latest is None and not found.known and found.words() == "not known"
    assert words in found.steps[-1]


def test_together_means_the_latest_and_unknown_spreads() -> None:
    """An order is here when its last item is."""
    at = door()
    soon, later = (arrival(item(offer(stock=0, lead_time=lead("x", days, days))), at, MONDAY) for days in (1, 4))
    assert latest_of([soon, later]).latest == later.latest
    unknown = arrival(item(offer(stock=None)), at, MONDAY)
    assert latest_of([soon, unknown]).latest is None
