"""Part in stock, the rest later; several items in one order: what leaves when, and when all of it is here.

Days by hand on the calendar of March 2026: Monday the 2nd, ordered at ten, cut-off at noon, two days on the road.
"""

from datetime import date, datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.landed_cost import Arrival, Delivery
from sourcing.basics.offer import LeadTime, Offer
from sourcing.basics.terms import Calendar, Split
from sourcing.landed_cost.arrival import Arrivals, arrival, arrivals_at, deliveries_of, latest_of, order_arrival
from sourcing.landed_cost.door import Door
from tests.builders import door, item, lead, offer

MONDAY = datetime(2026, 3, 2, 10, 0)
AS_READY, TOGETHER = Split(sends="as ready"), Split()
WEEKS = lead("2-3 weeks", 10, 15)


def march(first: int, last: int | None = None) -> tuple[date, date]:
    """A range of days in March 2026."""
    return date(2026, 3, first), date(2026, 3, last or first)


def parts(found: Arrival) -> list[tuple[int, tuple[date, date], tuple[date, date]]]:
    """Deliveries as plain tuples."""
    return [(one.pieces, one.leaves, one.arrives) for one in found.deliveries]


def sends(how: Split, **fields: Any) -> Door:
    """A door whose supplier sends like that."""
    return door(split=how, **fields)


def test_four_of_ten_in_stock_sent_as_ready() -> None:
    """The four at once, the six in two to three weeks; all of it is here with the last."""
    found = arrival(item(offer(stock=4, lead_time=WEEKS), 10), sends(AS_READY), MONDAY)
    assert parts(found) == [(4, march(2), march(4)), (6, march(16, 23), march(18, 25))]
    assert (found.earliest, found.latest) == march(18, 25)
    assert found.steps == (
        "ordered 2026-03-02 10:00, before the 12:00 cut-off: counts on 2026-03-02",
        "stock 4 of 10, lead time '2-3 weeks': leaves in parts",
        "2 working days on the road",
        "4 of 10 leave 2026-03-02 and are here 2026-03-04",
        "6 of 10 leave 2026-03-16 to 2026-03-23 and are here 2026-03-18 to 2026-03-25",
    )


def test_four_of_ten_in_stock_sent_together() -> None:
    """All ten wait for the last."""
    found = arrival(item(offer(stock=4, lead_time=WEEKS), 10), sends(TOGETHER), MONDAY)
    assert parts(found) == [(10, march(16, 23), march(18, 25))]
    assert (found.earliest, found.latest) == march(18, 25)
    assert found.steps[1] == "stock 4 of 10, lead time '2-3 weeks': leaves 2026-03-16 to 2026-03-23, all together"


def test_the_rest_on_a_day_named() -> None:
    """A backorder due on the 20th, a Friday."""
    back = offer(stock=1, lead_time=LeadTime(text="BO 20 March", leaves_on=date(2026, 3, 20)))
    found = arrival(item(back, 3), sends(AS_READY), MONDAY)
    assert parts(found) == [(1, march(2), march(4)), (2, march(20), march(24))]


def test_a_promise_sooner_than_he_sends_anything_gives_way() -> None:
    """Three days to dispatch, and a lead time of one to five."""
    late = offer(stock=0, lead_time=lead("1-5 days", 1, 5))
    assert parts(arrival(item(late), sends(TOGETHER, dispatch_days=3), MONDAY)) == [(1, march(5, 9), march(9, 11))]


def test_a_closed_day_is_named_once_for_all_parts() -> None:
    """The third is on the first part's road and in the second's wait; the twenty-fifth on the second's road only."""
    shut = Calendar(closed=(date(2026, 3, 3), date(2026, 3, 25)))
    found = arrival(item(offer(stock=4, lead_time=WEEKS), 10), sends(AS_READY, calendar=shut), MONDAY)
    assert parts(found) == [(4, march(2), march(5)), (6, march(17, 24), march(19, 27))]
    assert found.steps[1:3] == (
        "stock 4 of 10, lead time '2-3 weeks': leaves in parts (2026-03-03 closed there)",
        "2 working days on the road (2026-03-25 closed there)",
    )


def test_many_offers_at_one_door_are_dated_as_each_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """Answers are kept, and let go when they are many."""
    monkeypatch.setattr("sourcing.landed_cost.arrival.MOST_KEPT", 3)
    asked = [(offer(stock=stock, lead_time=wait), 3) for stock in (0, 2, 3, 9, None) for wait in (None, WEEKS)]
    prepared, at = arrivals_at(sends(AS_READY), MONDAY), sends(AS_READY)
    assert [prepared.of(*one) for one in asked * 2] == [Arrivals(at, MONDAY).of(*one) for one in asked * 2]


@pytest.mark.parametrize("stock", [0, -3, None])
def test_without_stock_all_of_it_waits(stock: int | None) -> None:
    """None there, fewer than none promised, or not stated: one delivery, however it is sent."""
    for how in (AS_READY, TOGETHER):
        found = arrival(item(offer(stock=stock, lead_time=WEEKS), 10), sends(how), MONDAY)
        assert parts(found) == [(10, march(16, 23), march(18, 25))]


@pytest.mark.parametrize(("most", "dispatch"), [(1, 0), (1, 1), (3, 3), (2, 3)])
def test_days_no_longer_than_sending_takes_say_nothing_of_more_than_is_there(most: int, dispatch: int) -> None:
    """Common practice, no source: a list gives the days in which what is in stock is sent, not those to get more."""
    soon, longer = (offer(stock=4, lead_time=lead("x", days, days)) for days in (most, max(most, dispatch) + 1))
    found = arrival(item(soon, 10), sends(AS_READY, dispatch_days=dispatch), MONDAY)
    assert not found.known and [pieces for pieces, *_ in parts(found)] == [4]
    assert found.steps[-1] == "stock 4 of 10, and lead time 'x', no longer than sending takes, says nothing of the rest"
    assert arrival(item(longer, 10), sends(AS_READY, dispatch_days=dispatch), MONDAY).known
    assert arrival(item(soon, 4), sends(AS_READY, dispatch_days=dispatch), MONDAY).known


def test_a_rest_that_leaves_at_once_is_no_second_delivery() -> None:
    """A day is named for the rest, and it is the one on which the supplier can send what is there."""
    soon = offer(stock=4, lead_time=LeadTime(text="3 March", leaves_on=date(2026, 3, 3)))
    found = arrival(item(soon, 10), sends(AS_READY, dispatch_days=1), MONDAY)
    assert parts(found) == [(10, march(3), march(5))] and deliveries_of([found], AS_READY) == 1


def test_a_rest_nobody_dates_leaves_the_whole_unknown() -> None:
    """What is there is told where it is sent at once, and counts as a delivery of its own."""
    unknown = item(offer(stock=4, lead_time=lead("Backorder", None, None)), 10)
    ready, together = arrival(unknown, sends(AS_READY), MONDAY), arrival(unknown, sends(TOGETHER), MONDAY)
    assert not ready.known and parts(ready) == [(4, march(2), march(4))]
    assert "4 of 10 leave 2026-03-02 and are here 2026-03-04" in ready.steps
    assert ready.steps[-1] == "stock 4 of 10, lead time 'Backorder' names no day"
    assert not together.known and parts(together) == []
    assert (deliveries_of([ready], AS_READY), deliveries_of([together], TOGETHER)) == (2, 1)


@pytest.mark.parametrize(
    ("late", "words"),
    [
        (lead("99999 days", 99_999, 99_999), "longer than a wait can be"),
        (LeadTime(text="31.12.9999", leaves_on=date(9999, 12, 31)), "later than a wait can be"),
        (lead("5-3 days", 5, 3), "is no range of days (5 to 3)"),
        (lead("-2 days", -2, -2), "is no range of days (-2 to -2)"),
    ],
)
def test_a_wait_that_can_not_be_names_no_day(late: LeadTime, words: str) -> None:
    """It is said, and stops no other offer."""
    found = arrival(item(offer(stock=0, lead_time=late)), door(), MONDAY)
    assert not found.known and words in found.steps[-1]


def test_an_order_sent_together_leaves_with_its_last() -> None:
    """One piece in stock, one in a week, one in one to two."""
    offers = [offer(), offer(stock=0, lead_time=lead("x", 5, 5)), offer(stock=0, lead_time=lead("y", 3, 8))]
    found = latest_of([arrival(item(one), sends(TOGETHER), MONDAY) for one in offers], TOGETHER)
    assert parts(found) == [(3, march(9, 12), march(11, 16))]
    assert (found.earliest, found.latest) == march(11, 16)


def test_an_order_sent_as_ready_has_a_delivery_for_each_range_of_days() -> None:
    """Two items leave at once, in one; the third a week later."""
    offers = [offer(), offer(number="X-2"), offer(stock=0, lead_time=lead("x", 5, 5))]
    arrivals = [arrival(item(one, 2), sends(AS_READY), MONDAY) for one in offers]
    found = latest_of(arrivals, AS_READY)
    assert parts(found) == [(4, march(2), march(4)), (2, march(9), march(11))]
    assert (found.earliest, found.latest) == march(11)
    assert deliveries_of(arrivals, AS_READY) == 2 and deliveries_of(arrivals, TOGETHER) == 1


def test_an_unknown_item_is_one_more_delivery() -> None:
    """What is known is still told."""
    arrivals = [arrival(item(one), sends(AS_READY), MONDAY) for one in (offer(), offer(stock=None))]
    found = latest_of(arrivals, AS_READY)
    assert not found.known and parts(found) == [(1, march(2), march(4))] and deliveries_of(arrivals, AS_READY) == 2
    assert deliveries_of([arrivals[1]], AS_READY) == 1
    assert latest_of(arrivals, TOGETHER).deliveries == ()


def test_needs_share_the_stock_of_one_offer() -> None:
    """Four in stock, three wanted for each of two jobs: two of the six wait."""
    shared = offer(stock=4, lead_time=lead("a week", 5, 5))
    items = [item(shared, 3, need="1"), item(shared, 3, need="2")]
    assert all(arrival(one, sends(AS_READY), MONDAY).latest == date(2026, 3, 4) for one in items)
    assert parts(order_arrival(items, sends(AS_READY), MONDAY)) == [(4, march(2), march(4)), (2, march(9), march(11))]
    assert parts(order_arrival(items, sends(TOGETHER), MONDAY)) == [(6, march(9), march(11))]


OFFERS = st.builds(
    lambda stock, days: offer(stock=stock, lead_time=lead("x", *days)),
    st.one_of(st.none(), st.integers(-2, 12)),
    st.tuples(st.integers(0, 9), st.integers(0, 9)).map(lambda two: (min(two), max(two))),
)
ITEMS = st.lists(st.tuples(OFFERS, st.integers(1, 12)), min_size=1, max_size=5)


@given(ITEMS, st.integers(0, 3))
def test_all_pieces_are_sent_and_all_are_here_by_the_last_day(asked: list[tuple[Offer, int]], dispatch: int) -> None:
    """Whatever is in stock, in both ways of sending; as ready is never later, and never fewer deliveries."""
    items = [item(one, pieces) for one, pieces in asked]
    found: dict[str, tuple[Arrival, int]] = {}
    for how in (TOGETHER, AS_READY):
        at = sends(how, dispatch_days=dispatch)
        arrivals = [arrival(one, at, MONDAY) for one in items]
        found[how.sends] = latest_of(arrivals, how), deliveries_of(arrivals, how)
    (whole, one), (ready, several) = found["together"], found["as ready"]
    assert (whole.earliest, whole.latest) == (ready.earliest, ready.latest)
    assert one == 1 <= several
    if whole.known:
        assert sum(part.pieces for part in ready.deliveries) == sum(pieces for _, pieces in asked)
        assert several == len(ready.deliveries) == len({part.leaves for part in ready.deliveries})
        assert max(part.arrives[1] for part in ready.deliveries) == ready.latest
        assert whole.deliveries == (Delivery(pieces=sum(p for _, p in asked), leaves=last(ready), arrives=here(whole)),)


def last(found: Arrival) -> tuple[date, date]:
    """The latest of each end of leaving."""
    return max(one.leaves[0] for one in found.deliveries), max(one.leaves[1] for one in found.deliveries)


def here(found: Arrival) -> tuple[date, date]:
    """The range, of an arrival that is known."""
    assert found.earliest and found.latest
    return found.earliest, found.latest
