"""Promises kept beside one another, and the list of what is open, oldest day first."""

from datetime import date, datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from sourcing.actions.answers import record
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.orders import place_orders
from sourcing.actions.promises import Said, open_promises, promise, promises_of
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.terms import set_terms
from sourcing.basics.problem import Refused
from tests.actions.test_alarms import BELT, KEEPER, LINES, MONDAY
from tests.journeys.small_shop import desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import paper, yes


def quoted(folder: Path) -> tuple[Desk, str]:
    """Belt and keepers quoted on Monday, not answered."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", [BELT, KEEPER])
    number = take_in(desk, folder, LINES)
    write_quote(desk, number, paper)
    return desk, number


def ordered(folder: Path) -> tuple[Desk, str, str]:
    """The same, approved and ordered."""
    desk, number = quoted(folder)
    record(desk, number, yes("agreed"))
    (order,) = place_orders(desk, [number]).orders
    return desk, number, order.number


def said(day: str, **fields: Any) -> Said:
    """Parts here by that day, by Stonegarth's word."""
    values: dict[str, Any] = {"kind": "parts here", "earliest": date.fromisoformat(day), "said_by": "Stonegarth"}
    return Said(**{**values, **fields})


def kinds(desk: Desk) -> list[tuple[str, str]]:
    """What is open, as kind and day."""
    return [(one.kind, str(one.due or "")) for one in open_promises(desk)]


def test_a_later_word_stands_beside_the_earlier_one(tmp_path: Path) -> None:
    """The last word holds, every word is kept, and each is a deed."""
    desk, number, order = ordered(tmp_path)
    promise(desk, number, said("2026-03-10", words="on the lorry"))
    promise(desk_at(tmp_path, MONDAY + timedelta(days=1)), number, said("2026-03-12"))
    first, second = [one for one in open_promises(desk) if one.kind == "parts here"]
    assert (first.due, first.moved, first.order) == (date(2026, 3, 12), 2, order)
    assert [one.latest.day for one in second.history] == [4, 10, 12]
    assert [one.latest.day for one in promises_of(desk, number)][-2:] == [10, 12]
    assert "Stonegarth promised parts here 2026-03-10: on the lorry" in [one.detail for one in history(desk, number)]


def test_a_word_about_one_line_moves_that_line_only(tmp_path: Path) -> None:
    """The keepers stay where they were."""
    desk, number, order = ordered(tmp_path)
    promise(desk, number, said("2026-03-18", order=order, line=1))
    assert kinds(desk)[:3] == [
        ("parts here", "2026-03-04"),
        ("parts here", "2026-03-18"),
        ("machine ready", "2026-03-20"),
    ]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"said_by": " "}, "nobody is named"),
        ({"latest": date(2026, 3, 9)}, "from 2026-03-10 to 2026-03-09"),
        ({"earliest": date(2026, 3, 1)}, "lies before 2026-03-02"),
        ({"order": "PO-2026-0009"}, "has nothing on order as PO-2026-0009"),
        ({"line": 9}, "has nothing on order as line 9 of any order; name one of: PO-2026-0001 line 1"),
    ],
)
def test_a_promise_that_can_not_hold_is_refused(tmp_path: Path, changes: dict[str, Any], words: str) -> None:
    """With one sentence, and nothing kept."""
    desk, number, _ = ordered(tmp_path)
    before = promises_of(desk, number)
    with pytest.raises(Refused, match=words):
        promise(desk, number, said("2026-03-10", **changes))
    assert promises_of(desk, number) == before


def test_what_has_come_is_waited_for_no_more(tmp_path: Path) -> None:
    """One of two keepers: the other is still open, with one piece."""
    desk, _, order = ordered(tmp_path)
    receive(desk, order, Delivery(paper="D-1", freight=Decimal(0), quantities={1: 1, 2: 1}))
    (left,) = [one for one in open_promises(desk) if one.kind == "parts here"]
    assert left.what.startswith("1 x NW-31207")


def test_days_past_are_counted_and_the_oldest_comes_first(tmp_path: Path) -> None:
    """The parts were due on Wednesday, the machine is to be ready on the 20th: on the 23rd both are late."""
    _, number, _ = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 3, 23, 9, 0))
    found = open_promises(later, number)
    assert [(one.kind, one.days_over) for one in found] == [
        ("parts here", 19),
        ("parts here", 19),
        ("machine ready", 3),
    ]


def test_a_ready_day_told_anew_counts_as_moved(tmp_path: Path) -> None:
    """She wanted it on the 20th and was told the 24th."""
    desk, number, _ = ordered(tmp_path)
    promise(desk, number, said("2026-03-24", kind="machine ready", said_by="Wickenby Yard Machine Repair"))
    (ready,) = [one for one in open_promises(desk) if one.kind == "machine ready"]
    assert (ready.due, ready.moved, ready.who) == (date(2026, 3, 24), 1, "Maud Tilbrook")


def test_a_quote_without_an_answer_is_listed_as_it_runs_out(tmp_path: Path) -> None:
    """Valid to the 9th: quiet on the 5th, listed from the 6th, over on the 11th; never an answer by itself."""
    _, number = quoted(tmp_path)
    for day, listed in ((5, []), (6, [("quote expires", "2026-03-09", 0)]), (11, [("quote expires", "2026-03-09", 2)])):
        found = open_promises(desk_at(tmp_path, datetime(2026, 3, day, 9, 0)), number)
        assert [(one.kind, str(one.due), one.days_over) for one in found if one.kind == "quote expires"] == listed
    record(desk_at(tmp_path, datetime(2026, 3, 6, 10, 0)), number, yes("agreed"))
    left = open_promises(desk_at(tmp_path, datetime(2026, 3, 8, 9, 0)))
    assert not [one for one in left if one.kind == "quote expires"]


def test_an_answer_promised_is_open_until_it_is_given(tmp_path: Path) -> None:
    """She said she would call on Thursday."""
    desk, number = quoted(tmp_path)
    promise(desk, number, said("2026-03-05", kind="answer", said_by="Maud Tilbrook", words="she will call"))
    assert ("answer", "2026-03-05") in kinds(desk)
    record(desk_at(tmp_path, datetime(2026, 3, 4, 10, 0)), number, yes("agreed"))
    assert ("answer", "2026-03-05") not in kinds(desk)


def test_a_sheet_whose_prices_run_out_is_listed(tmp_path: Path) -> None:
    """The sheet of 1 March holds 30 days: listed in the last week, and once it is over."""
    desk, _ = quoted(tmp_path)
    set_terms(desk, "stonegarth", {"prices_hold_days": "30"})
    for day, over in ((23, None), (24, 0), (31, 0)):
        found = open_promises(desk_at(tmp_path, datetime(2026, 3, day, 9, 0)))
        assert [one.days_over for one in found if one.kind == "sheet expires"] == ([] if over is None else [over])
    late = open_promises(desk_at(tmp_path, datetime(2026, 4, 2, 9, 0)))
    assert [(one.who, one.days_over) for one in late if one.kind == "sheet expires"] == [("Stonegarth Trade Parts", 2)]


def test_what_has_no_day_comes_last(tmp_path: Path) -> None:
    """Every list is in the order of its days, and nothing without a day stands before one."""
    desk, _, _ = ordered(tmp_path)
    days = [one.due for one in open_promises(desk)]
    known = [day for day in days if day is not None]
    assert days[: len(known)] == sorted(known)
