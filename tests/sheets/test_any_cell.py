"""No text in a cell may crash a parser, take long, or become a price, count or day by accident."""

import time
from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Place
from sourcing.sheets.cells.basis_cells import basis_in_header, parse_basis, unread_unit_in_header
from sourcing.sheets.cells.cell import Bad, bad_cells, column_says_no_longer_available, parse_texts
from sourcing.sheets.cells.code_cells import parse_gtins, parse_origins, parse_tariff_codes
from sourcing.sheets.cells.day_cells import day_in_text, parse_days
from sourcing.sheets.cells.dimension_cells import parse_dimensions
from sourcing.sheets.cells.discount_cells import parse_discount_codes, parse_discounts, parse_multipliers
from sourcing.sheets.cells.flag_cells import parse_flags
from sourcing.sheets.cells.lead_time_cells import parse_lead_times
from sourcing.sheets.cells.length_cells import parse_lengths
from sourcing.sheets.cells.money_cells import BasedPrice, currencies_in, parse_core_charge, parse_money
from sourcing.sheets.cells.number_cells import lost_zeros, parse_numbers, without_float_tail
from sourcing.sheets.cells.quantity_cells import parse_break_quantities, parse_counts, parse_stocks
from sourcing.sheets.cells.returnable_cells import parse_returnable
from sourcing.sheets.cells.weight_cells import parse_weights
from sourcing.sheets.worksheet import Cell

Parse = Callable[[Sequence[Cell]], Sequence[Any]]
SHEET_DAY = date(2026, 11, 25)
PARSERS: dict[str, Parse] = {
    "money": lambda cells: parse_money(cells, "USD"),
    "euros": lambda cells: parse_money(cells, "EUR"),
    "core charge": lambda cells: parse_core_charge(cells, "USD"),
    "numbers": lambda cells: without_float_tail(parse_numbers(cells)),
    "bases": parse_basis,
    "counts": parse_counts,
    "breaks": parse_break_quantities,
    "stocks": lambda cells: parse_stocks(cells, SHEET_DAY),
    "lead times": lambda cells: parse_lead_times(cells, "Lead time (days)", SHEET_DAY),
    "discounts": lambda cells: parse_discounts(cells, "Discount %"),
    "multipliers": parse_multipliers,
    "discount codes": parse_discount_codes,
    "gtins": parse_gtins,
    "origins": parse_origins,
    "tariff codes": parse_tariff_codes,
    "weights": lambda cells: parse_weights(cells, "Weight (lb)"),
    "lengths": lambda cells: parse_lengths(cells, "Package length (in)"),
    "dimensions": lambda cells: parse_dimensions(cells, "L x W x H"),
    "returnable": lambda cells: parse_returnable(cells, "NCNR"),
    "days": parse_days,
    "flags": parse_flags,
    "texts": parse_texts,
}
PIECES = st.sampled_from(
    ["12", "0", "1,234", "5.", "-", "/", " ", "%", "€", "$", "Dec", "KW", "due", "kg", "lb", "m", "ft", "per", "\n",
     "²",
     "\u202f", "٣", "１", "E+", "x", "+", "(", ")", "2026", "'", "=", "½", "\x00", "ß", "İ", "ﬁ", "年"],
)  # fmt: skip
TEXT = st.one_of(st.text(max_size=12), st.lists(PIECES, max_size=6).map("".join))
CELLS = st.lists(st.one_of(TEXT, st.decimals(allow_nan=False, allow_infinity=False)), max_size=6)


@pytest.mark.parametrize("name", PARSERS)
@given(cells=CELLS)
@example(cells=[])
@settings(max_examples=40, deadline=None)
def test_any_column_is_read_or_has_problems(name: str, cells: list[Cell]) -> None:
    found = PARSERS[name](cells)
    assert len(found) == len(cells)
    for bad in bad_cells(found).values():
        assert bad.problem(Place(file="a.csv", row=1)).sentence()


@given(CELLS, TEXT)
@settings(max_examples=60, deadline=None)
def test_any_text_is_looked_at_without_a_crash(cells: list[Cell], text: str) -> None:
    basis_in_header(text)
    unread_unit_in_header(text)
    day_in_text(text)
    currencies_in(cells)
    lost_zeros(parse_numbers(cells))
    column_says_no_longer_available(cells)
    parse_discounts(["40"], text)
    parse_weights(["40"], text)
    parse_lengths(["40"], text)
    parse_dimensions(["40 x 30 x 20"], text)
    parse_returnable(["Y"], text)
    parse_lead_times(["40"], text, None)


@given(st.lists(TEXT, max_size=6))
@settings(max_examples=150, deadline=None)
def test_a_price_is_always_above_nothing_and_has_only_digits_of_its_cell(cells: list[str]) -> None:
    for cell, found in zip(cells, parse_money(cells, "EUR"), strict=True):
        amount = found.price if isinstance(found, BasedPrice) else found
        if isinstance(amount, Decimal):
            shown = "".join(sign for sign in cell if sign.isdecimal())
            digits = "".join(map(str, amount.as_tuple().digits))
            assert amount > 0 and digits.lstrip("0") in str(int(shown or 0)) + shown


@pytest.mark.parametrize("name", PARSERS)
def test_a_huge_cell_takes_no_time(name: str) -> None:
    """Eleven cells of a million characters: a pattern that tries every way would take hours."""
    started = time.process_time()
    PARSERS[name]([sign * 1_000_000 for sign in ("1", "1 ", "1,", "a", " ", "-", "1+", "Dec 5 ", "(", "12/05 ", "$")])
    assert time.process_time() - started < 3


def test_bad_cells_are_found_by_row() -> None:
    assert list(bad_cells([1, Bad("price-unreadable", found="x"), None])) == [1]


def test_a_long_text_is_cut_and_never_read_as_what_its_start_says() -> None:
    long = " " * 3 + "1" * 499 + "2"
    assert all(isinstance(found, Bad) for found in (*parse_counts([long]), *parse_money([long], "USD")))
    assert day_in_text("x" * 489 + " 12.5.2026") == date(2026, 5, 12)
    assert day_in_text("x" * 491 + " 12.5.2026") is None
    bad = parse_counts(["x" * 1000])[0]
    assert isinstance(bad, Bad) and len(bad.found) == 201
