"""Money paid ahead: never above the total, never given back twice, asked for by the rule frozen in the quote."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.actions.answers import record
from sourcing.actions.bill import write_bill
from sourcing.actions.deposits import deposit_warnings, deposits_of, give_back, take_deposit
from sourcing.actions.history import history
from sourcing.actions.quotes import write_quote
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.bill_paper import bill_html
from sourcing.documents.job_list import deposits_text, same_again_text
from sourcing.quoting.deposit_held import deposit_held, deposit_open
from tests.actions.billed_shop import answered, billing, received
from tests.builders import usd
from tests.journeys.small_shop import SHOP, desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import MONDAY, paper, yes
from tests.quoting.bill_values import deposit

HALF = '\ndeposit = { percent = 50, of = "parts" }\n'


def code(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The code of what was refused."""
    return caught.value.problems[0].code


def belt_and_bracket(folder: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    """Belt 139.00 and bracket 15.80 sell at 194.60 and 31.60; the shop asks half of the parts; approved."""
    monkeypatch.setattr("tests.journeys.small_shop.SHOP", SHOP.replace("\n[shop]", f"{HALF}[shop]"))
    desk = shop(folder, MONDAY)
    rows = ["NW-77120,Norrowby,Belt B88,214.00,139.00,5,", "NW-52626,Norrowby,Bracket,33.00,15.80,5,"]
    sheet(desk, folder, "stonegarth", "2026-03-01", rows)
    lines = ('[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\n'
             '[[agreed]]\ntitle = "Bracket"\npart = "BAR"\nquantity = 1\n')  # fmt: skip
    number = take_in(desk, folder, lines)
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    return number


def test_half_of_the_parts_is_asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """113.10 of 226.20; until it is taken whoever orders is told; in parts, too."""
    number = belt_and_bracket(tmp_path, monkeypatch)
    desk = desk_at(tmp_path, MONDAY)
    asked = deposits_of(desk, number)
    assert (asked.asked, asked.open, asked.held) == (usd("113.10"), usd("113.10"), usd("0.00"))
    with desk.store.reading() as connection:
        assert deposit_warnings(connection, number) == (
            f"job {number}: a deposit of 113.10 USD is asked, 113.10 USD is not taken yet",
        )
    take_deposit(desk, number, Decimal("100"), "card")
    with desk.store.reading() as connection:
        assert deposit_warnings(connection, number) == (
            f"job {number}: a deposit of 113.10 USD is asked; 100.00 USD of it is taken, 13.10 USD is not taken yet",
        )
    assert take_deposit(desk, number, Decimal("13.10"), "cash").open is None
    with desk.store.reading() as connection:
        assert deposit_warnings(connection, number) == ()


def test_who_cancels_gets_all_of_it_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """113.10 in full, and it is open again; the special order is no reason to keep any of it."""
    number = belt_and_bracket(tmp_path, monkeypatch)
    desk = desk_at(tmp_path, MONDAY)
    take_deposit(desk, number, Decimal("113.10"), "cash", "half of the parts")
    found = give_back(desk, number, Decimal("113.10"), "cash", "the date moved twice")
    assert (found.held, found.open) == (usd("0.00"), usd("113.10"))
    assert [one.amount for one in found.kept] == [usd("113.10"), usd("-113.10")]
    assert [one.detail for one in history(desk, number)][-2:] == [
        "took 113.10 USD, cash: half of the parts", "gave back 113.10 USD, cash: the date moved twice",
    ]  # fmt: skip


def test_a_deposit_is_never_more_than_all_that_is_not_declined(tmp_path: Path) -> None:
    """413.19 and no cent more, in one or several; without a quote there is nothing to pay ahead for."""
    number = answered(tmp_path)
    desk = billing(tmp_path)
    with pytest.raises(Refused) as caught:
        take_deposit(desk, number, Decimal("413.20"), "cash")
    assert code(caught) == "deposit-above-total" and "comes to 413.19 USD in all" in str(caught.value)
    take_deposit(desk, number, Decimal("413.18"), "cash")
    with pytest.raises(Refused) as caught:
        take_deposit(desk, number, Decimal("0.02"), "cash")
    assert code(caught) == "deposit-above-total"
    assert take_deposit(desk, number, Decimal("0.01"), "cash").held == usd("413.19")
    bare = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Look it over"\nhours = 0.5')
    with pytest.raises(Refused) as caught:
        take_deposit(desk, bare, Decimal("1"), "cash")
    assert code(caught) == "no-quote"


@pytest.mark.parametrize("amount", ["0", "-5", "0.001", "10.005", "NaN", "Infinity"])
def test_what_is_no_amount_is_refused(tmp_path: Path, amount: str) -> None:
    """Both ways; nothing is kept."""
    number = answered(tmp_path)
    desk = billing(tmp_path)
    for deed in (take_deposit, give_back):
        with pytest.raises(Refused) as caught:
            deed(desk, number, Decimal(amount), "cash")
        assert code(caught) == "deposit-amount"
    assert deposits_of(desk, number).kept == ()


def test_how_it_was_paid_must_be_said(tmp_path: Path) -> None:
    """Blank is not a way of paying."""
    number = answered(tmp_path)
    with pytest.raises(Refused) as caught:
        take_deposit(billing(tmp_path), number, Decimal("5"), "  ")
    assert code(caught) == "deposit-how"


def test_no_more_is_given_back_than_is_held(tmp_path: Path) -> None:
    """Not a cent, and not twice."""
    number = answered(tmp_path)
    desk = billing(tmp_path)
    take_deposit(desk, number, Decimal("50"), "cash")
    with pytest.raises(Refused) as caught:
        give_back(desk, number, Decimal("50.01"), "cash")
    assert code(caught) == "deposit-not-held"
    give_back(desk, number, Decimal("50"), "cash")
    with pytest.raises(Refused) as caught:
        give_back(desk, number, Decimal("0.01"), "cash")
    assert code(caught) == "deposit-not-held"


def test_after_the_bill_only_what_it_left_over_can_be_given_back(tmp_path: Path) -> None:
    """C was paid for ahead and then declined: 156.54 too much; the bill owes it, and it goes back once."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    take_deposit(desk, number, Decimal("413.19"), "card")
    with desk.store.writing() as connection:
        from sourcing.storage.after_quote import add_deposit

        add_deposit(connection, deposit("10.00"))
    bill = write_bill(desk, number, bill_html).bill
    assert bill.due == usd("-10.00")
    with pytest.raises(Refused) as caught:
        take_deposit(desk, number, Decimal("1"), "cash")
    assert code(caught) == "billed-already"
    with pytest.raises(Refused) as caught:
        give_back(desk, number, Decimal("10.01"), "card")
    assert code(caught) == "deposit-not-held"
    assert give_back(desk, number, Decimal("10.00"), "card").held == usd("0.00")
    assert deposits_of(desk_at(tmp_path, datetime(2027, 1, 1)), number).open is None


CENTS = st.integers(-5_000, 20_000).filter(bool)


@given(st.lists(CENTS, max_size=6), st.integers(0, 40_000))
def test_open_and_held_add_up_to_what_is_asked(amounts: list[int], asked: int) -> None:
    """To the cent, in whatever steps it was paid; nothing is open where more is held than asked."""
    kept = [deposit(str(Decimal(cents) / 100)) for cents in amounts]
    held, left = deposit_held(kept, "USD"), deposit_open(usd(str(Decimal(asked) / 100)), kept)
    assert held.minor() == sum(amounts)
    assert (left.minor() if left else 0) == max(asked - sum(amounts), 0)
    assert deposit_open(None, kept) is None


@given(st.lists(CENTS, max_size=6), st.integers(0, 40_000))
def test_a_bill_uses_up_what_is_held_and_never_owes_below_nothing(amounts: list[int], billed: int) -> None:
    """What is above the bill is the customer's."""
    kept = [deposit(str(Decimal(cents) / 100)) for cents in amounts]
    assert deposit_held(kept, "USD", usd(str(Decimal(billed) / 100))).minor() == max(sum(amounts) - billed, 0)


def test_more_than_was_asked_is_said(tmp_path: Path) -> None:
    """Taken twice, say; once it is billed the bill says what is left."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    found = take_deposit(desk, number, Decimal("38.96"), "cash")
    assert (found.asked, found.over) == (usd("0.00"), usd("38.96"))
    told = deposits_text(found.job, found.kept, found.asked, found.held, found.open, found.over)
    assert "Look at this: held 38.96 USD, though none is asked." in told
    write_bill(desk, number, bill_html)
    assert deposits_of(desk, number).over is None


def test_what_is_asked_and_no_more_needs_no_look(tmp_path: Path) -> None:
    """To the cent."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    found = changed(deposits_of(desk, number), asked=usd("38.96"), held=usd("77.86"), over=usd("38.90"))
    told = deposits_text(found.job, (), found.asked, found.held, None, found.over)
    assert "Look at this: held 38.90 USD more than is asked." in told
    assert "Look at this" not in deposits_text(found.job, (), found.asked, found.asked, None)


def test_the_same_amount_twice_on_one_day_is_taken_and_said(tmp_path: Path) -> None:
    """Two payments, or one recorded twice: who stands at the till knows. Another amount says nothing."""
    number = answered(tmp_path)
    desk = billing(tmp_path)
    assert take_deposit(desk, number, Decimal("5"), "cash").same_today == 1
    assert take_deposit(desk, number, Decimal("6"), "cash").same_today == 1
    found = take_deposit(desk, number, Decimal("5"), "cash")
    assert (found.same_today, found.held) == (2, usd("16.00"))
    assert "it is the second of 5.00 USD on 2026-" in same_again_text(found.kept, found.same_today)
    assert same_again_text(found.kept, 1) == ""
