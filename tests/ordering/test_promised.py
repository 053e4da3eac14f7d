"""Promised days of ordered goods: whose word it was, which goods it is about, and how often it moved."""

from datetime import date, datetime

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.order import LineEvent, OrderEvent
from sourcing.basics.promise import Promise
from sourcing.basics.value import changed
from sourcing.ordering.order_now import order_now
from sourcing.ordering.promised import AT_THE_EARLIEST, days_of, moved, promises_from_event, promises_from_order
from tests.ordering.placed_order import ORDER, PLACED

DAY = date(2026, 3, 18)


def event(*lines: LineEvent, said_by: str = "", at: datetime = datetime(2026, 3, 4, 9, 0)) -> OrderEvent:
    """The supplier's word."""
    return OrderEvent(
        order="PO-2026-0001", what="confirmed", at=at, who="Greta Lindqvare", said_by=said_by, lines=lines
    )


def word(latest: date, **fields: object) -> Promise:
    """A promise as a person keeps it."""
    values: dict[str, object] = {
        "kind": "parts here",
        "job": "2026-0001",
        "earliest": latest,
        "latest": latest,
        "said_by": "Stonegarth",
        "said_at": datetime(2026, 3, 5, 9, 0),
        "taken_by": "Greta Lindqvare",
    }
    return Promise(**{**values, **fields})  # type: ignore[arg-type]


def test_what_was_reckoned_is_not_put_in_the_suppliers_mouth() -> None:
    """The day expected by sheet and terms is the shop's own word, line by line."""
    kept = promises_from_order(ORDER)
    assert [(one.job, one.line, one.said_by) for one in kept] == [
        ("2026-0001", 1, "Wickenby Yard Machine Repair"),
        ("2026-0001", 2, "Wickenby Yard Machine Repair"),
        ("2026-0002", 3, "Wickenby Yard Machine Repair"),
    ]
    assert all("the supplier has not said it" in one.words and one.said_at == PLACED for one in kept)
    assert promises_from_order(changed(ORDER, expected=None)) == ()


def test_only_lines_with_a_day_are_promised() -> None:
    """A price confirmed promises nothing; one day stands for both; the first day alone is at the earliest."""
    said = event(
        LineEvent(line=1, number="NW-77121"),
        LineEvent(line=2, earliest=DAY),
        LineEvent(line=3, latest=DAY),
        LineEvent(line=9, latest=DAY),
    )
    second, third = promises_from_event(ORDER, said)
    assert (second.line, second.earliest, second.latest, second.words) == (2, DAY, DAY, AT_THE_EARLIEST)
    assert (third.job, third.line, third.said_by, third.words) == ("2026-0002", 3, "Stonegarth Trade Parts", "")


def test_the_word_of_a_person_is_named() -> None:
    """Who at the supplier's said it."""
    (one,) = promises_from_event(ORDER, event(LineEvent(line=1, latest=DAY), said_by="Piet Halloway-Rusk"))
    assert (one.said_by, one.taken_by) == ("Piet Halloway-Rusk", "Greta Lindqvare")


def test_a_day_kept_twice_is_told_once() -> None:
    """What the event says and the promise kept from it are one word."""
    said = event(LineEvent(line=1, latest=DAY))
    now = order_now(ORDER, [said])
    days = days_of(now.lines[0], ORDER, [*promises_from_order(ORDER), *promises_from_event(ORDER, said)])
    assert [one.latest for one in days] == [date(2026, 3, 4), DAY]
    assert [one.latest for one in days_of(now.lines[0], ORDER, [])] == [date(2026, 3, 4), DAY]


def test_a_word_about_other_goods_is_not_this_lines() -> None:
    """Another job, order, line or kind of promise; one that names no order is about all of the job's goods."""
    others = [
        word(DAY, job="2026-0002"),
        word(DAY, order="PO-2026-0009"),
        word(DAY, order="PO-2026-0001", line=2),
        word(DAY, kind="machine ready"),
    ]
    line = order_now(ORDER).lines[0]
    assert [one.latest for one in days_of(line, ORDER, others)] == [date(2026, 3, 4)]
    for mine in (word(DAY), word(DAY, order="PO-2026-0001"), word(DAY, order="PO-2026-0001", line=1)):
        assert days_of(line, ORDER, [mine])[-1].latest == DAY


@given(st.lists(st.integers(0, 3), max_size=8))
def test_no_word_is_lost_and_each_change_of_day_counts(steps: list[int]) -> None:
    """Any sequence of words: all are there in order, and the day moved as often as two neighbours differ."""
    words = [
        word(date(2026, 3, 10 + step), said_at=datetime(2026, 3, 5, 9, minute)) for minute, step in enumerate(steps)
    ]
    days = days_of(order_now(ORDER).lines[0], ORDER, words)
    assert days[1:] == tuple(words)
    last = [date(2026, 3, 4), *(one.latest for one in words)]
    assert moved(days) == sum(last[at] != last[at + 1] for at in range(len(last) - 1))
