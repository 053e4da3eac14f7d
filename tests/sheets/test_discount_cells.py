"""Discounts and multipliers. Chained discounts multiply: common practice, no source."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.discount_cells import parse_discount_codes, parse_discounts, parse_multipliers


def discount(text: str | Decimal, header: str = "Discount", *others: str) -> Decimal | str | None:
    """What the first of these cells of one column gives: a fraction, none, or the code of its problem."""
    found = parse_discounts([text, *others], header)[0]
    return found.code if isinstance(found, Bad) else found


@pytest.mark.parametrize(
    ("text", "header", "value"),
    [
        ("40%", "Discount", "0.4"), ("40 %", "Discount", "0.4"), ("12,5%", "Rabatt", "0.125"), ("40", "Disc %", "0.4"),
        ("40", "Rabatt (Prozent)", "0.4"), ("40+10", "Discount", "0.46"), ("40/10", "Discount", "0.46"),
        ("40% + 10%", "Discount", "0.46"), ("40+10+5", "Disc %", "0.487"), ("0.40", "Discount (decimal)", "0.4"),
        ("0%", "Discount", "0"), ("0", "Discount", "0"), ("12.5", "Remise %", "0.125"),
    ],
)  # fmt: skip
def test_a_discount(text: str, header: str, value: str) -> None:
    assert discount(text, header) == Decimal(value)


@pytest.mark.parametrize(
    ("text", "header"),
    [("0.40", "Discount"), ("0.40", "Discount %"), ("1", "Discount %"), ("100%", "Discount"),
     ("A", "Discount"), ("net", "Discount"), ("-40%", "Discount"), ("40", "Discount (decimal)"), ("140%", "Discount"),
     (Decimal("0.4"), "Rabatt %")],
)  # fmt: skip
def test_a_discount_that_is_unclear(text: str | Decimal, header: str) -> None:
    assert discount(text, header) == "discount-unclear"


def test_the_column_tells_that_small_numbers_are_per_cent() -> None:
    assert discount("0.5", "Discount %", "40", "25") == Decimal("0.005")


def test_a_blank_discount_is_not_stated() -> None:
    assert parse_discounts(["", "-", "n/a"], "Discount %") == [None, None, None]


def test_an_unclear_discount_shows_its_readings() -> None:
    found = parse_discounts(["0.4", "40"], "Discount")
    assert [one.suggestions for one in found if isinstance(one, Bad)] == [("40%", "0.4%"), ("40%",)]


@given(st.lists(st.integers(1, 99), min_size=2, max_size=4))
def test_a_chain_is_exact(parts: list[int]) -> None:
    left = 1
    for part in parts:
        left *= 100 - part
    assert discount("+".join(map(str, parts))) == 1 - Decimal(left) / 100 ** len(parts)


@pytest.mark.parametrize(
    ("text", "value"),
    [("0.62", "0.62"), (".62", "0.62"), ("0,62", "0.62"), ("x0.62", "0.62"), ("× 0.62", "0.62"), ("1.15", "1.15"),
     ("4.99", "4.99"), ("1", "1")],
)  # fmt: skip
def test_a_multiplier(text: str, value: str) -> None:
    assert parse_multipliers([text]) == [Decimal(value)]


@pytest.mark.parametrize("text", ["0", "-0.5", "5", "62", "62%", "A", "0.6.2"])
def test_nothing_to_multiply_with(text: str) -> None:
    found = parse_multipliers([text])[0]
    assert isinstance(found, Bad) and found.code == "multiplier-unreadable"


def test_blank_multipliers_and_codes() -> None:
    assert parse_multipliers(["", "-"]) == [None, None]
    assert parse_discount_codes(["A", "", " b2 ", "a"]) == ["A", "", "b2", "a"]
