"""Weights in kilograms. The pound of 1959 is 0.45359237 kg; an ounce is a sixteenth: 28.349523125 g."""

from decimal import Decimal

import pytest

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.weight_cells import parse_weights


@pytest.mark.parametrize(
    ("text", "header", "kilograms"),
    [
        ("1.2 kg", "Weight", "1.2"), ("1 lb", "Weight", "0.45359237"), ("16 oz", "Weight", "0.45359237"),
        ("1 oz", "Weight", "0.028349523125"), ("450 g", "Weight", "0.450"), ("1 lb 4 oz", "", "0.5669904625"),
        ("3", "Weight (lb)", "1.36077711"), ("3 lbs.", "Weight", "1.36077711"), ("1,5", "Gewicht kg", "1.5"),
        ("1,5", "Poids (kg)", "1.5"), ("2", "Peso (libras)", "0.90718474"), ("1.5 kg", "Weight (lb)", "1.5"),
        ("0,450", "Gewicht in kg", "0.450"), ("5#", "Wt", "2.26796185"), ("12 onzas", "Peso", "0.3401942775"),
        ("200 gramme", "Poids", "0.2"), ("1.234,5 g", "Gewicht", "1.2345"),
    ],
)  # fmt: skip
def test_a_weight(text: str, header: str, kilograms: str) -> None:
    assert parse_weights([text], header) == [Decimal(kilograms)]


def test_a_number_cell_of_a_workbook_takes_the_headers_unit() -> None:
    assert parse_weights([Decimal("1.234"), Decimal(0)], "Weight kg") == [Decimal("1.234"), None]


@pytest.mark.parametrize(
    ("text", "header", "code"),
    [
        ("1.5", "Weight", "weight-unit-unknown"), ("1.5", "Weight lb/kg", "weight-unit-unknown"),
        ("1,234", "Weight kg", "weight-unclear"), ("-1 kg", "Weight", "weight-unreadable"),
        ("heavy", "Weight kg", "weight-unreadable"), ("1.2.3 kg", "Weight", "weight-unreadable"),
        ("1 Pfund", "Gewicht", "weight-unreadable"), ("1.5²", "Weight kg", "weight-unreadable"),
    ],
)  # fmt: skip
def test_a_weight_that_is_none(text: str, header: str, code: str) -> None:
    found = parse_weights([text], header)[0]
    assert isinstance(found, Bad) and found.code == code


def test_the_column_tells_the_decimal_mark() -> None:
    assert parse_weights(["1,234", "0,5"], "Gewicht kg") == [Decimal("1.234"), Decimal("0.5")]
    assert parse_weights(["1,234", "0.5"], "Weight kg")[0] == Decimal(1234)
    column = [*(f"{n},5" for n in range(20)), "1.5"]
    assert isinstance(parse_weights(column, "Gewicht kg")[-1], Bad)


def test_a_blank_is_not_stated_and_neither_is_nothing() -> None:
    assert parse_weights(["", "-", "0", "0.00 kg"], "Weight kg") == [None] * 4
