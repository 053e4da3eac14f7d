"""The words for a job on its way from the counter to the bill, as they follow from deeds; the list, the whole job."""

from collections.abc import Iterator
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, withdraw
from sourcing.actions.bill import write_bill
from sourcing.actions.deposits import give_back, take_deposit
from sourcing.actions.history import history
from sourcing.actions.job_states import job_list, state_of, whole_job
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.sendings import given
from sourcing.basics.problem import Refused
from sourcing.documents.bill_paper import bill_html
from sourcing.storage.after_quote import add_deposit
from tests.actions.billed_shop import (
    BILLING,
    DELIVERY,
    EXTRAS_ORDER,
    MONDAY,
    ORDERING,
    TEAR_DOWN,
    TELEPHONE,
    agreed,
    answered,
    billing,
    received,
)  # fmt: skip
from tests.builders import usd
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in
from tests.journeys.test_worked_days import ADD_ONS, paper, yes
from tests.quoting.bill_values import deposit

BELT = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5'
ROWS = {
    "pellbrook": ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"],
    "stonegarth": [
        "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock",
        "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock",
        "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock",
    ],
}


def steps(folder: Path) -> Iterator[tuple[datetime, str, str]]:
    """Each thing done, and what the job is called after it: the moment, the words, who waits for whom."""
    desk = shop(folder, MONDAY)
    for supplier, rows in ROWS.items():
        sheet(desk, folder, supplier, "2026-03-01", rows)
    number = take_in(desk, folder, BELT)
    yield MONDAY, "taken in", "us"
    write_quote(desk, number, paper)
    yield MONDAY, "quoted", "us"
    given(desk, number, None, "in person", "")
    yield MONDAY, "waiting for answer", "the customer"
    record(desk, number, yes("agreed"))
    yield MONDAY, "approved", "us"
    place_orders(desk, [number])
    yield MONDAY, "ordered", "the supplier"
    wednesday = desk_at(folder, TEAR_DOWN)
    change_job_from(wednesday, number, job_file(folder, ADD_ONS))
    write_quote(wednesday, number, paper)
    yield TEAR_DOWN, "ordered", "us"
    given(wednesday, number, None, "text", "555-0142")
    yield TEAR_DOWN, "ordered", "the customer"
    record(desk_at(folder, TELEPHONE), number, yes("A", "B", "D", no=("C",)))
    yield TELEPHONE, "ordered in part", "us"
    place_orders(desk_at(folder, ORDERING), [number])
    yield ORDERING, "ordered", "the supplier"
    some = Delivery(paper="D1", freight=Decimal("14.95"), quantities={1: 2})
    receive(desk_at(folder, DELIVERY), EXTRAS_ORDER, some)
    yield DELIVERY, "received in part", "the supplier"
    receive(desk_at(folder, DELIVERY), "PO-2026-0001", Delivery(paper="D2", freight=Decimal("9.95")))
    receive(desk_at(folder, DELIVERY), EXTRAS_ORDER, Delivery(paper="D3", freight=Decimal(0)))
    yield DELIVERY, "all received", "us"
    write_bill(billing(folder), number, bill_html)
    yield BILLING, "closed", "nobody"


def test_the_words_follow_what_was_done(tmp_path: Path) -> None:
    """Nobody sets them; after each deed the list says where the job is."""
    for at, words, waits_for in steps(tmp_path):
        ((row,), left_out) = (listed := job_list(desk_at(tmp_path, at), closed_too=True)).jobs, listed.left_out
        assert (row.state.words, row.state.waits_for, left_out) == (words, waits_for, 0)
        assert state_of(desk_at(tmp_path, at), row.job).words == words


def test_the_list_leaves_out_what_is_closed(tmp_path: Path) -> None:
    """And says how many; one that owes the customer money stays until it is given back."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    take_deposit(desk, number, Decimal("413.19"), "cash")
    with desk.store.writing() as connection:
        add_deposit(connection, deposit("5.00"))
    write_bill(desk, number, bill_html)
    (owed,) = job_list(desk).jobs
    assert owed.state.words == "closed" and owed.state.next_step.startswith("give back 5.00 USD")
    assert state_of(desk, number) == owed.state
    give_back(desk, number, Decimal("5.00"), "cash")
    listed = job_list(desk)
    assert (listed.jobs, listed.left_out) == ((), 1)
    assert [one.state.words for one in job_list(desk, closed_too=True).jobs] == ["closed"]


def test_a_yes_taken_back_turns_the_words_back(tmp_path: Path) -> None:
    """Approved, and waiting again."""
    number = agreed(tmp_path)
    desk = desk_at(tmp_path, MONDAY)
    assert state_of(desk, number).words == "approved"
    withdraw(desk, number, TakenBack(labels=("1", "2"), who="Maud Tilbrook", how="telephone"))
    assert state_of(desk, number).words in ("quoted", "waiting for answer")


def test_everything_of_a_job_is_on_one_page(tmp_path: Path) -> None:
    """Quote, answers, papers, orders, goods, promises, deposits, deeds."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    take_deposit(desk, number, Decimal("50"), "cash")
    whole = whole_job(desk, number)
    assert whole.quote is not None and whole.quote.revision == 2 and whole.approved == usd("413.19")
    assert dict(whole.words)["C"] == "declined" and len(whole.answers) == 6
    assert [one.number for one in whole.orders] == ["PO-2026-0001", EXTRAS_ORDER]
    assert len(whole.receipts) == 2 and [one.amount for one in whole.deposits] == [usd("50.00")]
    assert (whole.bill, whole.due, whole.state.words) == ("", None, "all received")
    assert whole.deeds == history(desk, number)
    write_bill(desk, number, bill_html)
    billed = whole_job(desk, number)
    assert (billed.bill, billed.due, billed.state.words) == ("B-2026-0001", usd("363.19"), "closed")


def test_the_history_of_a_job_holds_what_was_done_about_its_orders(tmp_path: Path) -> None:
    """Even a deed that was written under the order's number alone; in the order it was done, nothing of another job."""
    number = answered(tmp_path)
    desk = desk_at(tmp_path, ORDERING)
    other = take_in(desk, tmp_path, BELT)
    with desk.writing("confirm") as pen:
        pen.note("PO-2026-0001", "Pellbrook said it is on the road")
    found = history(desk, number)
    assert found[-1].detail == "Pellbrook said it is on the road"
    assert [one.at for one in found] == sorted(one.at for one in found)
    assert all(one.subject != other for one in found)
    assert [one.deed for one in history(desk, other)] == ["take in job"]


def test_a_job_that_is_not_there_is_told(tmp_path: Path) -> None:
    """With the numbers nearest to it."""
    agreed(tmp_path)
    for look in (state_of, whole_job):
        with pytest.raises(Refused, match="Perhaps: 2026-0001"):
            look(desk_at(tmp_path, MONDAY), "2026-0002")
