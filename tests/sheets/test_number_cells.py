"""Part numbers stay text, and what a spreadsheet made of one is a problem.

The damaged forms are those of Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016): names turned into dates such
as 2-Sep and into floating-point numbers such as 2.31E+13.
"""

from decimal import Decimal

import pytest
from babel import Locale
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Place
from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.number_cells import (
    LETTER_FIRST,
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


@given(st.one_of(st.from_regex(PLAIN, fullmatch=True), st.from_regex(LETTER_FIRST, fullmatch=True)))
@settings(max_examples=60, deadline=None)
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


def test_a_whole_column_of_floats_loses_its_tail() -> None:
    floats: list[str | Bad] = [f"{n}.0" for n in range(10, 20)]
    assert without_float_tail(floats) == [str(n) for n in range(10, 20)]
    assert without_float_tail([*floats, ""]) == [*(str(n) for n in range(10, 20)), ""]


@pytest.mark.parametrize("others", [["40389", "40390"], ["A1"], [], [Bad("number-too-long", found="x")]])
def test_where_only_some_have_the_tail_or_too_few_tell_they_are_problems(others: list[str | Bad]) -> None:
    """'40388.0' compared with its dot set aside would be another part's number."""
    found = without_float_tail(["40388.0", *others])
    assert isinstance(found[0], Bad) and found[0].suggestions == ("40388",) and found[1:] == others


def test_among_fractions_a_tail_is_what_it_seems() -> None:
    assert without_float_tail(["8.0", "8.5", "10"]) == ["8.0", "8.5", "10"]


@pytest.mark.parametrize(
    ("text", "suggestions"),
    [
        ("5-Mar", ("5-3", "3-5")), ("05.Mrz", ("5-3", "3-5")), ("mars-05", ("5-3", "3-5")), ("5-mrt", ("5-3", "3-5")),
        ("janv.-05", ("5-1", "1-5")), ("05-ene", ("5-1", "1-5")), ("5-May", ("5-5",)), ("Mar-14", ("14-3", "3-14")),
        ("2026-03-05 00:00:00", ("5-3", "3-5")), ("1.2345E+4", ("12345",)), ("1,2345E+4", ("12345",)),
        ("1.23E+11", ()), ("1,23E+11", ()), ("1.23457E+12", ()), ("1.23e+11", ()), ("1E-05", ()), ("########", ()),
    ],
)  # fmt: skip
def test_what_a_damaged_number_may_have_been(text: str, suggestions: tuple[str, ...]) -> None:
    found = parse_numbers([text])[0]
    assert isinstance(found, Bad) and (found.code, found.suggestions) == ("number-damaged", suggestions)


def test_lost_digits_are_said() -> None:
    place = Place(file="a.csv")
    lost, whole = parse_numbers(["1.23E+11", "1.2345E+4"])
    assert isinstance(lost, Bad) and "digits are lost" in lost.problem(place).what
    assert isinstance(whole, Bad) and "digits are lost" not in whole.problem(place).what


@pytest.mark.parametrize("text", ["12E5", "=A1", "-12", "+12", "@x", "1E5", "E12", "MAY-05", "5-MAR", "Mark-14"])
def test_what_only_looks_damaged_stays_text(text: str) -> None:
    assert parse_numbers([text]) == [text]


def test_among_numbers_alike_one_that_could_be_a_day_is_none() -> None:
    column = ["2024-05-01", "1044-77-21", "3044-07-21"]
    assert parse_numbers(column) == column
    assert isinstance(parse_numbers(["2024-05-01", "NW-1"])[0], Bad)
    assert all(isinstance(found, Bad) for found in parse_numbers(["2024-05-01", "2024-05-02"]))


@pytest.mark.parametrize("locale", ["en", "de", "fr", "es", "nl"])
def test_months_as_spreadsheets_shorten_them_are_known(locale: str) -> None:
    """Short month names of Unicode CLDR by way of Babel."""
    for number, name in Locale(locale).months["format"]["abbreviated"].items():
        found = parse_numbers([f"31-{name}"])[0]
        assert isinstance(found, Bad) and found.suggestions == (f"31-{number}", f"{number}-31")


@given(st.lists(st.text("AE0159-e M", min_size=0, max_size=8), max_size=12))
def test_a_column_is_read_as_its_cells_are(cells: list[str]) -> None:
    """The look at a whole column's shapes against the slow way, cell by cell."""
    for found, cell in zip(parse_numbers(cells), cells, strict=True):
        alone = cell if PLAIN.fullmatch(cell) else parse_other_number(cell)
        assert found == alone or (isinstance(found, Bad) and isinstance(alone, Bad))


@pytest.mark.parametrize(
    ("text", "number"),
    [("NW-41388", "NW-41388"), ("use NW-41388", "NW-41388"), ("ersetzt durch KR-2", "KR-2"), ("NLA", ""), ("n/a", "")],
)
def test_superseded_by(text: str, number: str) -> None:
    assert parse_superseded_by(text) == number
