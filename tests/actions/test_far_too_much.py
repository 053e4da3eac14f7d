"""Amounts, counts and moments no shop can mean: a sentence, and nothing kept. Never a fault of the program."""

from collections.abc import Callable
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.deposits import deposits_of, give_back, take_deposit
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.quotes import reprint
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.money import is_amount
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from sourcing.cli.options import amount, count, desk
from sourcing.storage.orders import receipts
from tests.actions.billed_shop import BELT_ORDER, DELIVERY, ORDERING, answered
from tests.journeys.small_shop import desk_at

FAR = [Decimal("1e30"), Decimal("NaN"), Decimal("Infinity"), Decimal("1e12"), Decimal("1e-13")]
SAID: dict[str, Callable[[Decimal], Delivery]] = {
    "freight": lambda far: Delivery(paper="D", freight=far),
    "total": lambda far: Delivery(paper="D", freight=Decimal(0), supplier_total=far),
    "rate": lambda far: Delivery(paper="D", freight=Decimal(0), rate=far),
    "price": lambda far: Delivery(paper="D", freight=Decimal(0), quantities={1: 1}, prices={1: far}),
    "core": lambda far: Delivery(paper="D", freight=Decimal(0), quantities={1: 1}, cores={1: far}),
    "charge": lambda far: Delivery(paper="D", freight=Decimal(0), other_charges={"Handling": far}),
    "charged": lambda far: Delivery(paper="D", freight=Decimal(0), quantities={1: 1}, charged={1: -5}),
    "pieces charged": lambda far: Delivery(paper="D", freight=Decimal(0), quantities={1: 1}, charged={1: 10**30}),
    "pieces": lambda far: Delivery(paper="D", freight=Decimal(0), quantities={1: 10**30}),
}


def test_no_receipt_holds_what_can_not_be(tmp_path: Path) -> None:
    """Each thing said on a paper; the order stays as it was."""
    answered(tmp_path)
    desk = desk_at(tmp_path, DELIVERY)
    for what, said in SAID.items():
        for far in FAR:
            with pytest.raises(Refused):
                receive(desk, BELT_ORDER, said(far))
                pytest.fail(f"{what} of {far} was taken")
    with desk.store.reading() as connection:
        assert receipts(connection, BELT_ORDER) == []


@pytest.mark.parametrize("far", FAR)
def test_no_deposit_and_no_confirmed_price_is_so_much(tmp_path: Path, far: Decimal) -> None:
    """Refused with the kind of each."""
    number = answered(tmp_path)
    desk = desk_at(tmp_path, ORDERING)
    for deed in (take_deposit, give_back):
        with pytest.raises(Refused, match="is no amount that can be paid"):
            deed(desk, number, far, "cash")
    with pytest.raises(Refused, match="is not an amount of money"):
        confirm(desk, BELT_ORDER, Confirmation(lines=(LineEvent(line=1, unit_price=far),)))
    assert deposits_of(desk, number).kept == ()


def test_a_number_no_database_holds_is_told(tmp_path: Path) -> None:
    """A revision of thirty digits."""
    number = answered(tmp_path)
    with pytest.raises(Refused, match="a number or a day is too large to work with"):
        reprint(desk_at(tmp_path, ORDERING), number, 10**30)


@pytest.mark.parametrize("typed", ["9" * 40, "9" * 13, "NaN", "Infinity", "1e3", "0." + "1" * 13])
def test_an_amount_has_at_most_twelve_digits_on_either_side(typed: str) -> None:
    """As typed on the command line; what is too long for a sentence is cut."""
    with pytest.raises(Refused) as caught:
        amount(typed)
    assert caught.value.problems[0].code == "not-an-amount" and len(str(caught.value)) < 200


def test_the_largest_and_finest_amount_and_count_are_taken() -> None:
    """Twelve digits and twelve; nine for a count."""
    assert amount("999999999999.999999999999") == Decimal("999999999999.999999999999")
    assert is_amount(Decimal("-0.01")) and count("9" * 9) == 999_999_999
    with pytest.raises(Refused, match="at most nine digits"):
        count("9" * 5000)


@pytest.mark.parametrize("year", [1, 1969, 2200, 9999])
def test_nobody_works_at_the_end_of_all_calendars(tmp_path: Path, year: int) -> None:
    """Days are counted on from the moment of work."""
    with pytest.raises(Refused, match=f"{year:04d}-12-31 is no day to work on"):
        desk(str(tmp_path / "sourcing.db"), datetime(year, 12, 31), "")
    assert not (tmp_path / "sourcing.db").exists()
