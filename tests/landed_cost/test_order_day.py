"""On which day an order counts: two clocks, cut-off, days for orders, and both ends of the road in words."""

from datetime import date, datetime, time
from typing import Any

import pytest

from sourcing.basics.terms import CUT_OFF_NOT_KNOWN, Calendar
from sourcing.basics.value import changed
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order_day import order_day
from tests.builders import door, item, lead, offer

NEW_YORK, BERLIN, AUCKLAND = "America/New_York", "Europe/Berlin", "Pacific/Auckland"
EVERY_DAY = Calendar(week=("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"))


def between(shop: str, supplier: str, **fields: Any) -> Door:
    """A door between two clocks."""
    return changed(door(time_zone=supplier, **fields), shop_time_zone=shop)


@pytest.mark.parametrize(
    ("at", "day", "words"),
    [
        # Berlin is six hours ahead on 2 March 2026 and five on the 16th (see test_clock): 06:30 is 12:30, then 11:30.
        (datetime(2026, 3, 2, 6, 30), date(2026, 3, 3), "06:30 (12:30 there), after the 12:00 cut-off"),
        (datetime(2026, 3, 16, 6, 30), date(2026, 3, 16), "06:30 (11:30 there), before the 12:00 cut-off"),
        (datetime(2026, 3, 2, 6, 0), date(2026, 3, 2), "06:00 (12:00 there), before"),
        # In the evening it is tomorrow there, and before tomorrow's cut-off.
        (datetime(2026, 3, 2, 20, 0), date(2026, 3, 3), "20:00 (2026-03-03 02:00 there), before"),
        (datetime(2026, 3, 6, 20, 0), date(2026, 3, 9), "20:00 (2026-03-07 02:00 there), before"),
    ],
)
def test_the_cut_off_is_on_the_suppliers_clock(at: datetime, day: date, words: str) -> None:
    """A shop in New York, a supplier in Berlin who cuts off at noon."""
    found, told = order_day(between(NEW_YORK, BERLIN), at)
    assert found == day and words in told and told.endswith(f"counts on {day}")


@pytest.mark.parametrize("at", [datetime(2026, 3, 2), datetime(2026, 3, 2, 0, 1), datetime(2026, 3, 2, 23, 59)])
def test_without_a_known_cut_off_no_order_counts_on_its_own_day(at: datetime) -> None:
    """Not even at midnight, and no time is named."""
    found, told = order_day(door(cut_off=CUT_OFF_NOT_KNOWN), at)
    assert found == date(2026, 3, 3) and ", the cut-off is not known, so not that day: counts on" in told


def test_the_suppliers_day_may_be_the_day_before() -> None:
    """Tuesday morning in Auckland is Monday in New York; in stock and no day on the road, and still not here before it
    was ordered (Auckland is 18 hours ahead on 3 March 2026; from memory)."""
    at, far = datetime(2026, 3, 3, 5, 30), between(AUCKLAND, NEW_YORK, transit_days=(0, 0))
    assert order_day(far, at)[0] == date(2026, 3, 2)
    found = arrival(item(offer()), far, at)
    assert found.deliveries[0].leaves == (date(2026, 3, 2), date(2026, 3, 2))
    assert (found.earliest, found.latest) == (date(2026, 3, 3), date(2026, 3, 3))


def test_the_two_hours_of_one_name_are_told_apart() -> None:
    """01:30 comes twice on 1 November 2026 in New York: 06:30 and 07:30 in Berlin, the cut-off is at seven."""
    far = between(NEW_YORK, BERLIN, cut_off=time(7, 0), calendar=EVERY_DAY)
    first, second = datetime(2026, 11, 1, 1, 30), datetime(2026, 11, 1, 1, 30, fold=1)
    assert [order_day(far, at)[0] for at in (first, second)] == [date(2026, 11, 1), date(2026, 11, 2)]
    assert "01:30 (first of the two that night) (06:30 there)" in order_day(far, first)[1]
    latest = [arrival(item(offer()), far, at).latest for at in (first, second, first)]
    assert latest == [date(2026, 11, 3), date(2026, 11, 4), date(2026, 11, 3)]


def test_an_hour_that_is_left_out_is_said() -> None:
    """02:30 on 8 March 2026 in New York is read as 03:30, 08:30 in Berlin."""
    told = order_day(between(NEW_YORK, BERLIN), datetime(2026, 3, 8, 2, 30))[1]
    assert "02:30 (left out that night, read as a clock not yet put forward) (08:30 there)" in told


def test_a_blank_zone_is_the_shops_clock() -> None:
    """Terms kept before zones were written down mean what they meant."""
    plain, at = door(), datetime(2026, 3, 2, 12, 0)
    assert order_day(changed(plain, shop_time_zone=NEW_YORK), at) == order_day(plain, at)
    assert order_day(between(NEW_YORK, NEW_YORK), at) == order_day(plain, at)


@pytest.mark.parametrize(
    ("at", "day"),
    [
        (datetime(2026, 3, 2, 10, 0), date(2026, 3, 3)),  # Monday: Tuesday
        (datetime(2026, 3, 3, 10, 0), date(2026, 3, 3)),  # Tuesday before the cut-off
        (datetime(2026, 3, 3, 13, 0), date(2026, 3, 5)),  # Tuesday after it: Thursday
        (datetime(2026, 3, 6, 10, 0), date(2026, 3, 12)),  # Friday: Tuesday the 10th is closed, so Thursday
    ],
)
def test_orders_are_taken_on_some_days_only(at: datetime, day: date) -> None:
    """Tuesdays and Thursdays; what is sent leaves on any working day."""
    some = door(order_days=("Thu", "Tue"), calendar=Calendar(closed=(date(2026, 3, 10),)), dispatch_days=1)
    found, told = order_day(some, at)
    assert found == day and "orders are taken on Tue, Thu" in told
    leaves = arrival(item(offer()), some, at).deliveries[0].leaves[0]
    assert (leaves - day).days == 1
    assert ("2026-03-10 closed there" in told) == (day == date(2026, 3, 12))


def test_every_day_skipped_is_named_once_in_the_step_it_was_skipped_in() -> None:
    """A German supplier over Christmas 2025, an American shop: the days of both, each once."""
    calendar = Calendar(country="DE", region="BY", closed=(date(2025, 12, 24),))
    far = changed(
        between(NEW_YORK, BERLIN, calendar=calendar, transit_days=(3, 4)), shop_calendar=Calendar(country="US")
    )
    late = offer(stock=0, lead_time=lead("3-5 days", 3, 5))
    found = arrival(item(late), far, datetime(2025, 12, 23, 9, 0))
    assert found.steps == (
        "ordered 2025-12-23 09:00 (15:00 there), after the 12:00 cut-off: counts on 2025-12-29"
        " (2025-12-24 closed there; 2025-12-25 is a public holiday there: Christmas Day;"
        " 2025-12-26 is a public holiday there: Second Day of Christmas)",
        "stock 0 of 1, lead time '3-5 days': leaves 2026-01-02 to 2026-01-07"
        " (2026-01-01 is a public holiday there: New Year's Day; 2026-01-06 is a public holiday there: Epiphany)",
        "3 to 4 working days on the road",
    )
    assert (found.earliest, found.latest) == (date(2026, 1, 8), date(2026, 1, 13))


def test_the_shops_closed_days_are_told() -> None:
    """A carrier who comes on Independence Day as observed, and on a Saturday, and the shop opens on Monday."""
    shut = Calendar(country="US", closed=(date(2026, 7, 6),))
    near = changed(door(transit_days=(2, 3), calendar=EVERY_DAY), shop_calendar=shut)
    found = arrival(item(offer()), near, datetime(2026, 7, 1, 9, 0))
    assert (found.earliest, found.latest) == (date(2026, 7, 7), date(2026, 7, 7))
    assert found.steps[-2:] == (
        "the shop does not work on 2026-07-03, so 2026-07-07"
        " (2026-07-03 is a public holiday here: Independence Day (observed); 2026-07-06 closed here)",
        "the shop does not work on 2026-07-04, so 2026-07-07 (2026-07-06 closed here)",
    )
