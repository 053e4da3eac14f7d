"""Part numbers stay text, and what a spreadsheet made of one is a problem.

The damaged forms are those of Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016): names turned into dates such
as 2-Sep and into floating-point numbers such as 2.31E+13.
"""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.sheets.cells import Bad
from sourcing.sheets.number_cells import (
    PLAIN,
    lost_zeros,
    parse_number,
    parse_numbers,
    parse_other_number,
    parse_superseded_by,
    without_float_tail,
)


@pytest.mark.parametrize(
    "text",
    ["00123", "NW-40388", "OV 20 417", "KR-204.0388", "6203-2RS", "123E5", "4L390", "B36", "DEC-14", "5/8-18", "1.10",
     "+44123", "12,345", "MAR14", "a-1", "#40", "10-12"],
)  # fmt: skip
def test_a_number_stays_as_it_is(text: str) -> None:
    assert parse_number(text) == text
    assert parse_numbers([text]) == [text]


@pytest.mark.parametrize(
    "text",
    ["1.23E+11", "2.31E+13", "1E+11", "1E-123", "5-Mar", "2-Sep", "Mar-14", "05. Mrz", "5-Mar-26",
     "2026-03-05 00:00:00", "2026-03-05", "03/05/2026", "05.03.2026", "#REF!", "#N/A", "#####", "TRUE"],
)  # fmt: skip
def test_a_damaged_number_is_a_problem(text: str) -> None:
    found = parse_number(text)
    assert isinstance(found, Bad) and found.code == "number-damaged"
    assert isinstance(parse_numbers([text])[0], Bad)


@given(st.from_regex(PLAIN, fullmatch=True))
def test_the_short_way_for_common_numbers_gives_what_the_long_way_gives(text: str) -> None:
    assert parse_other_number(text) == text


def test_a_number_cell() -> None:
    assert parse_number(Decimal(40388)) == "40388"
    assert all(isinstance(parse_number(Decimal(cell)), Bad) for cell in ("6203.5", "-5", "1E+15"))


def test_the_wrapping_that_keeps_spreadsheets_away_is_taken_off() -> None:
    assert parse_number('="00123"') == "00123"
    assert parse_number("'00123") == "00123"


def test_a_zero_lost_where_the_others_have_theirs() -> None:
    numbers: list[str | Bad] = [f"{n:07d}" for n in range(1, 12)]
    found = lost_zeros([*numbers, "12345"])
    assert list(found) == [11] and found[11].suggestions == ("0012345",)
    assert lost_zeros([*numbers, "123456789"]) == {}
    assert lost_zeros(["0012345", "12345", "123"]) == {}
    assert lost_zeros(["12345", "123"]) == {}


def test_a_whole_column_of_floats_loses_its_tail_and_a_mixed_one_keeps_its_text() -> None:
    floats: list[str | Bad] = [f"{n}.0" for n in range(10, 20)]
    assert without_float_tail(floats) == [str(n) for n in range(10, 20)]
    assert without_float_tail([*floats, "A1"]) == [*floats, "A1"]


@pytest.mark.parametrize(
    ("text", "number"),
    [("NW-41388", "NW-41388"), ("use NW-41388", "NW-41388"), ("ersetzt durch KR-2", "KR-2"), ("NLA", ""), ("n/a", "")],
)
def test_superseded_by(text: str, number: str) -> None:
    assert parse_superseded_by(text) == number
