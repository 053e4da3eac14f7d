"""After the bill: what must still go back to a supplier is said, and what of a line not done could."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.after_bill import left_with_suppliers
from sourcing.actions.back_list import back_list
from sourcing.actions.bill import write_bill
from sourcing.actions.goods_back import BackStep, going_back, send_back
from sourcing.actions.job_states import job_list, state_of
from sourcing.actions.margins import margins_by
from sourcing.actions.promises import open_promises
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.terms import set_terms
from sourcing.basics.bill import LeftOut
from sourcing.documents.bill_paper import bill_html
from tests.actions.billed_shop import BELT_ORDER, DELIVERY, EXTRAS_ORDER, billing, ordered, received
from tests.builders import usd
from tests.journeys.small_shop import desk_at

B_OUT = LeftOut(labels=("B",), words="the old one is sound")


def test_nothing_is_left_where_all_was_used(tmp_path: Path) -> None:
    """Nor before the bill."""
    number = received(tmp_path)
    assert left_with_suppliers(billing(tmp_path), number) == ()
    write_bill(billing(tmp_path), number, bill_html)
    assert left_with_suppliers(billing(tmp_path), number) == ()


def test_goods_of_a_line_not_done_could_go_back(tmp_path: Path) -> None:
    """By the supplier's terms where they say so; until it is sent. The idler cost 22.50; 15 % of it, 3.38, is kept."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    write_bill(desk, number, bill_html, B_OUT)
    here = f"line B was not done: 1 x NW-22203 of {EXTRAS_ORDER} is here and not used; "
    send = f": sourcing send-back {EXTRAS_ORDER} --line 2 --goods --sent"
    assert left_with_suppliers(desk, number) == (f"{here}ask Stonegarth Trade Parts whether it can go back{send}",)
    terms = {"return_terms.restocking_percent": "15", "return_terms.within_days": "14"}
    set_terms(desk, "stonegarth", {**terms, "return_terms.returnable": "true"})
    assert left_with_suppliers(desk, number) == (
        f"{here}by his terms it can go back to Stonegarth Trade Parts until 2026-03-23 for 19.12 USD of the 22.50 USD "
        f"charged{send}",
    )
    send_back(desk, EXTRAS_ORDER, BackStep(line=2, kind="goods", step="sent"))
    assert left_with_suppliers(desk, number) == (
        f"1 x NW-22203 of {EXTRAS_ORDER} waits for credit; 19.12 USD expected",
    )
    set_terms(desk, "stonegarth", {"return_terms.returnable": "false"})
    assert "takes no goods back" not in str(left_with_suppliers(desk, number))


def test_goods_of_a_line_not_done_are_listed_with_their_last_day_until_it_is_past(tmp_path: Path) -> None:
    """Came on March 9, 14 days: March 23. On every list of what goes back; before the bill on none, and not twice."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    set_terms(desk, "stonegarth", {"return_terms.restocking_percent": "15", "return_terms.within_days": "14"})
    assert back_list(desk) == going_back(desk) == ()
    write_bill(desk, number, bill_html, B_OUT)
    (one,) = back_list(desk)
    assert (one.number, one.pieces, one.due, one.expected, one.may) == (
        "NW-22203", 1, date(2026, 3, 23), usd("19.12"), True,
    )  # fmt: skip
    assert one.why == "line B was not done: it is here, not used, and can go back"
    assert going_back(desk) == (one,) and len(left_with_suppliers(desk, number)) == 1
    assert [waits.by for waits in margins_by(desk).back] == [date(2026, 3, 23)]
    assert [due.due for due in open_promises(desk) if due.kind == "goods back"] == [date(2026, 3, 23)]
    last, over = (desk_at(tmp_path, datetime(2026, 3, day, 9, 0)) for day in (23, 24))
    assert back_list(last) == (one,) and back_list(over) == ()
    send_back(desk, EXTRAS_ORDER, BackStep(line=2, kind="goods", step="sent"))
    assert [(one.waits, one.may) for one in back_list(desk)] == [("for credit", False)]


def test_goods_the_supplier_takes_no_more_or_that_were_used_are_not_listed(tmp_path: Path) -> None:
    number = received(tmp_path)
    desk = billing(tmp_path)
    set_terms(desk, "stonegarth", {"return_terms.returnable": "false", "return_terms.within_days": "14"})
    write_bill(desk, number, bill_html, B_OUT)
    assert back_list(desk) == ()


def test_what_came_damaged_must_go_back(tmp_path: Path) -> None:
    """A keeper at fault, and a good one in its place."""
    number = ordered(tmp_path)
    desk = desk_at(tmp_path, DELIVERY)
    receive(desk, BELT_ORDER, Delivery(paper="D1", freight=Decimal("9.95")))
    receive(desk, EXTRAS_ORDER, Delivery(paper="D2", freight=Decimal("14.95"), damaged={1: 1}))
    receive(desk, EXTRAS_ORDER, Delivery(paper="D3", freight=Decimal(0)))
    write_bill(billing(tmp_path), number, bill_html)
    (left,) = left_with_suppliers(billing(tmp_path), number)
    assert left == f"1 x NW-31207 of {EXTRAS_ORDER} waits to be sent; 6.40 USD expected"
    # The list of jobs does not say that nothing is left to do, and does not leave the closed job out.
    (row,) = job_list(billing(tmp_path)).jobs
    assert (row.state.words, row.state.waits_for) == ("closed", "us")
    assert "sourcing going-back" in row.state.next_step == state_of(billing(tmp_path), number).next_step


def test_freight_that_was_reckoned_and_not_charged_is_said(tmp_path: Path) -> None:
    """An invoice may follow. Once any paper charges some, no more is said."""
    ordered(tmp_path)
    desk = desk_at(tmp_path, DELIVERY)
    told = "no freight was charged yet, and 9.95 USD was reckoned with: an invoice for it may follow"
    assert told in receive(desk, BELT_ORDER, Delivery(paper="D1", freight=Decimal(0))).to_do
    first = receive(desk, EXTRAS_ORDER, Delivery(paper="D2", freight=Decimal("14.95"), quantities={1: 2}))
    second = receive(desk, EXTRAS_ORDER, Delivery(paper="D3", freight=Decimal(0)))
    assert not first.to_do and not second.to_do
