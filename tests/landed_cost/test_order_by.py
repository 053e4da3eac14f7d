"""The last moment to order, against a walk through every moment with the function that dates an order."""

from datetime import date, datetime, time, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.offer import LeadTime
from sourcing.basics.terms import Calendar, Split
from sourcing.basics.value import changed
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order_by import order_by
from tests.builders import door, item, lead, offer

MICROSECOND = timedelta(microseconds=1)
THURSDAY = date(2026, 3, 12)


def far(shop: str = "", **fields: Any) -> Door:
    """A door with the shop's zone."""
    return changed(door(**fields), shop_time_zone=shop)


@pytest.mark.parametrize(
    ("at", "expected"),
    [
        (door(), datetime(2026, 3, 10, 12, 0)),  # two days on the road: leaves Tuesday
        (door(transit_days=(1, 3)), datetime(2026, 3, 9, 12, 0)),  # the late end counts
        (door(transit_days=(0, 0)), datetime(2026, 3, 12, 12, 0)),  # on the day itself
        (door(dispatch_days=2), datetime(2026, 3, 6, 12, 0)),  # over a weekend
        (door(order_days=("Wed",)), datetime(2026, 3, 4, 12, 0)),
        (door(calendar=Calendar(closed=(date(2026, 3, 10),))), datetime(2026, 3, 9, 12, 0)),
        (far("America/New_York", time_zone="Europe/Berlin"), datetime(2026, 3, 10, 7, 0)),  # five hours that week
        (far("Pacific/Auckland", time_zone="America/New_York"), datetime(2026, 3, 11, 5, 0)),  # 17 hours that week
    ],
)
def test_by_hand(at: Door, expected: datetime) -> None:
    """In stock, wanted on Thursday 12 March 2026, asked on the 2nd."""
    assert order_by(item(offer()), at, THURSDAY, datetime(2026, 3, 2, 9, 0)) == expected


def test_too_late_or_not_known_is_no_moment() -> None:
    """Ordered on Tuesday after the cut-off; no day named; need-by in the past."""
    assert order_by(item(offer()), door(), THURSDAY, datetime(2026, 3, 10, 12, 1)) is None
    assert order_by(item(offer(stock=None)), door(), THURSDAY, datetime(2026, 3, 2, 9, 0)) is None
    assert order_by(item(offer()), door(), date(2026, 2, 1), datetime(2026, 3, 2, 9, 0)) is None


def test_the_very_last_minute() -> None:
    """At the cut-off it is now."""
    last = datetime(2026, 3, 10, 12, 0)
    assert order_by(item(offer()), door(), THURSDAY, last) == last


def test_a_day_named_by_the_supplier() -> None:
    """A backorder that leaves on the 10th is here on the 12th, whenever it is ordered until then."""
    back = item(offer(stock=0, lead_time=LeadTime(text="BO", leaves_on=date(2026, 3, 10))))
    assert order_by(back, door(), THURSDAY, datetime(2026, 3, 2, 9, 0)) == datetime(2026, 3, 10, 12, 0)
    assert order_by(back, door(), date(2026, 3, 11), datetime(2026, 3, 2, 9, 0)) is None


def test_a_supplier_behind_the_shops_day() -> None:
    """With no day on the road an order is here on the shop's own day: until its midnight."""
    there = far("Pacific/Auckland", time_zone="America/New_York", transit_days=(0, 0), cut_off=time(18, 0))
    asked = datetime(2026, 3, 2, 9, 0)
    assert order_by(item(offer()), there, THURSDAY, asked) == datetime.combine(THURSDAY, time.max)


DOORS = st.builds(
    lambda zones, cut_off, transit, dispatch, orders, closed, split: changed(
        door(
            time_zone=zones[1],
            cut_off=time(*divmod(cut_off, 60)),
            transit_days=(min(transit), max(transit)),
            dispatch_days=dispatch,
            order_days=orders,
            calendar=Calendar(closed=tuple(closed), country="US"),
            split=Split(sends=split),
        ),
        shop_time_zone=zones[0],
    ),
    st.sampled_from([
        ("", ""),
        ("America/New_York", "Europe/Berlin"),
        ("Pacific/Auckland", "America/Los_Angeles"),
        ("America/Los_Angeles", "Pacific/Auckland"),
    ]),
    st.integers(0, 24 * 60 - 1),
    st.tuples(st.integers(0, 3), st.integers(0, 3)),
    st.integers(0, 2),
    st.sampled_from([(), ("Tue", "Fri"), ("Mon",)]),
    st.sets(st.dates(date(2026, 3, 1), date(2026, 4, 20)), max_size=6),
    st.sampled_from(["together", "as ready"]),
)  # fmt: skip
OFFERS = st.one_of(
    st.builds(
        lambda stock, most: offer(stock=stock, lead_time=lead("x", 1, most)), st.integers(0, 5), st.integers(1, 6)
    ),
    st.dates(date(2026, 3, 1), date(2026, 4, 10)).map(
        lambda day: offer(stock=0, lead_time=LeadTime(text="BO", leaves_on=day))
    ),
)
STARTS = datetime(2026, 3, 2)


@settings(deadline=None, max_examples=150)
@given(DOORS, OFFERS, st.integers(0, 20 * 24 * 60), st.integers(0, 30))
def test_nothing_later_is_in_time(at: Door, of: Any, minutes: int, days: int) -> None:
    """Through the nights on which clocks change: the moment found is in time, the next and every hour after is not;
    where none is found, now is too late."""
    now = STARTS + timedelta(minutes=minutes)
    need_by, asked = now.date() + timedelta(days=days), item(of, 3)

    def in_time(moment: datetime) -> bool:
        latest = arrival(asked, at, moment).latest
        return latest is not None and latest <= need_by

    found = order_by(asked, at, need_by, now)
    if found is None:
        assert not in_time(now)
        return
    assert found >= now and in_time(found) and not in_time((found + MICROSECOND).replace(fold=found.fold))
    hours = range(1, 24 * (need_by - found.date()).days + 72, 5)
    assert not any(in_time(found + timedelta(hours=hour)) for hour in hours)


def test_a_supplier_behind_the_shops_day_and_a_day_it_does_not_work() -> None:
    """Wanted by a Saturday: until Friday's midnight in the shop, though his cut-off was the midnight before."""
    there = far("Pacific/Auckland", time_zone="America/Los_Angeles", transit_days=(0, 0), cut_off=time(3, 0))
    asked, friday = datetime(2026, 3, 2), date(2026, 3, 6)
    assert order_by(item(offer()), there, date(2026, 3, 7), asked) == datetime.combine(friday, time.max)
