"""Two clocks, on plain days and on the nights on which clocks change.

Rules from memory: in the United States clocks go forward on the second Sunday of March and back on the first of
November (15 U.S.C. 260a: 8 March and 1 November 2026), in the European Union on the last Sundays of March and October
(Directive 2000/84/EC: 29 March and 25 October 2026). So Berlin is five hours ahead of New York between 8 and 29 March
and between 25 October and 1 November, and six hours at other times.
"""

from datetime import datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.landed_cost.clock import (
    before_cut_off,
    exists,
    is_doubled,
    last_moment,
    near_zones,
    on_clock,
    zone_problems,
)

NEW_YORK, BERLIN = "America/New_York", "Europe/Berlin"
MICROSECOND = timedelta(microseconds=1)


@pytest.mark.parametrize(
    ("day", "hours"),
    [((3, 2), 6), ((3, 9), 5), ((3, 30), 6), ((7, 1), 6), ((10, 26), 5), ((11, 2), 6)],
)
def test_hours_between_two_clocks(day: tuple[int, int], hours: int) -> None:
    """Ten in the morning in New York."""
    here = datetime(2026, *day, 10, 0)
    assert on_clock(here, NEW_YORK, BERLIN) == here + timedelta(hours=hours)
    assert on_clock(on_clock(here, NEW_YORK, BERLIN), BERLIN, NEW_YORK) == here


@pytest.mark.parametrize(("zone", "other"), [("", BERLIN), (BERLIN, ""), ("", ""), (BERLIN, BERLIN)])
def test_one_clock_where_no_two_are_known(zone: str, other: str) -> None:
    """A moment that exists nowhere else stays as it is."""
    assert on_clock(datetime(2026, 3, 29, 2, 30), zone, other) == datetime(2026, 3, 29, 2, 30)


def test_the_hour_that_comes_twice() -> None:
    """01:30 on 1 November 2026 in New York: first in summer time, an hour later again."""
    first, second = datetime(2026, 11, 1, 1, 30), datetime(2026, 11, 1, 1, 30, fold=1)
    assert is_doubled(first, NEW_YORK) and not is_doubled(datetime(2026, 11, 1, 2, 0), NEW_YORK)
    assert on_clock(first, NEW_YORK, BERLIN) == datetime(2026, 11, 1, 6, 30)
    assert on_clock(second, NEW_YORK, BERLIN) == datetime(2026, 11, 1, 7, 30)
    assert on_clock(datetime(2026, 11, 1, 7, 30), BERLIN, NEW_YORK).fold == 1


def test_the_hour_that_is_left_out() -> None:
    """02:30 on 8 March 2026 in New York is a clock not yet put forward: 03:30."""
    moment = datetime(2026, 3, 8, 2, 30)
    assert not exists(moment, NEW_YORK) and not is_doubled(moment, NEW_YORK)
    assert exists(datetime(2026, 3, 8, 3, 0), NEW_YORK) and exists(datetime(2026, 3, 8, 1, 59), NEW_YORK)
    assert on_clock(moment, NEW_YORK, BERLIN) == on_clock(datetime(2026, 3, 8, 3, 30), NEW_YORK, BERLIN)


def test_a_cut_off_in_the_hour_that_comes_twice_is_over_once() -> None:
    """02:30 on 25 October 2026 in Berlin, a cut-off at that minute."""
    cut_off = time(2, 30)
    assert before_cut_off(datetime(2026, 10, 25, 2, 30), cut_off, BERLIN)
    assert not before_cut_off(datetime(2026, 10, 25, 2, 31), cut_off, BERLIN)
    assert not before_cut_off(datetime(2026, 10, 25, 2, 15, fold=1), cut_off, BERLIN)
    assert before_cut_off(datetime(2026, 10, 25, 2, 15, fold=1), time(3, 0), BERLIN)
    assert before_cut_off(datetime(2026, 10, 25, 2, 15, fold=1), cut_off, "")


def test_a_cut_off_in_the_hour_that_is_left_out_is_the_jump() -> None:
    """02:30 on 29 March 2026 in Berlin never comes."""
    assert last_moment(datetime(2026, 3, 29).date(), time(2, 30), BERLIN) == datetime(2026, 3, 29, 2) - MICROSECOND
    assert before_cut_off(datetime(2026, 3, 29, 1, 59), time(2, 30), BERLIN)
    assert not before_cut_off(datetime(2026, 3, 29, 3, 0), time(2, 30), BERLIN)


@given(
    st.sampled_from([datetime(2026, 3, 8), datetime(2026, 3, 29), datetime(2026, 10, 25), datetime(2026, 11, 1)]),
    st.integers(0, 24 * 60 - 1),
    st.sampled_from([NEW_YORK, BERLIN, "Australia/Lord_Howe", ""]),
)
def test_the_last_moment_is_before_the_cut_off_and_the_next_is_not(day: datetime, minute: int, zone: str) -> None:
    """On the nights that change, in steps of real time."""
    cut_off = (day + timedelta(minutes=minute)).time()
    last = last_moment(day.date(), cut_off, zone)
    after = on_clock(on_clock(last, zone or "UTC", "UTC") + MICROSECOND, "UTC", zone or "UTC")
    assert before_cut_off(last, cut_off, zone)
    assert after.date() > day.date() or not before_cut_off(after, cut_off, zone)


@pytest.mark.parametrize("name", ["", "UTC", NEW_YORK, BERLIN, "America/Argentina/Buenos_Aires"])
def test_good_names(name: str) -> None:
    """Blank is good: one clock."""
    assert zone_problems(name, "the shop") == ()


@pytest.mark.parametrize(
    ("name", "near"),
    [
        ("berlin", BERLIN),
        ("new york", NEW_YORK),
        ("America/Chcago", "America/Chicago"),
        ("america/new_york", NEW_YORK),
        ("Halifax", "America/Halifax"),
    ],
)
def test_other_names_are_told_with_a_name_near(name: str, near: str) -> None:
    """Never taken by itself."""
    (told,) = zone_problems(name, "'kesselried'")
    assert told.suggestions[0] == near
    assert told.sentence().startswith(f"the time zone '{name}' of 'kesselried' is not an area and city")


@pytest.mark.parametrize("name", ["EST", "MST", "GMT+5", "../UTC", "/etc/localtime", "x" * 300])
def test_names_that_mean_another_clock_are_told(name: str) -> None:
    """EST keeps no summer time, which few who write it mean; the others are no names at all."""
    assert len(zone_problems(name, "the shop")) == 1


def test_near_names_are_few() -> None:
    """At most three, none for nonsense."""
    assert len(near_zones("America")) <= 3 and near_zones("qqqqqqqqqqqq") == ()
