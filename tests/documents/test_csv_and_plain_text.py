"""CSV a spreadsheet can't be tricked by, and text a terminal can't be tricked by."""

import csv
import io
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.documents.csv_text import csv_text, defused
from sourcing.documents.plain_text import count, document, row, shown, table, wrapped


# Source of the list: OWASP, CSV Injection (from memory): = + - @, tab, carriage return, and full-width forms.
@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠", "  =", "\t@"])
def test_what_a_spreadsheet_would_run_is_defused(start: str) -> None:
    assert defused(f"{start}1+1").startswith("'")


@pytest.mark.parametrize("text", ["NW-40388", "00123", "a=b", "", "6203-2RS", "'quoted"])
def test_ordinary_text_is_left_alone(text: str) -> None:
    assert defused(text) == text


@given(st.lists(st.text(), min_size=1, max_size=4))
def test_any_text_reads_back_on_one_row(cells: list[str]) -> None:
    text = csv_text([f"h{at}" for at in range(len(cells))], [cells])
    _, read = csv.reader(io.StringIO(text, newline=""))
    assert read == [defused(cell) for cell in cells]
    assert not any(cell.startswith(("=", "+", "-", "@", "\t", "\r")) for cell in read)


def test_numbers_and_days_are_written_plainly() -> None:
    text = csv_text(["a", "b", "c", "d"], [[Decimal("-4.10"), 7, date(2026, 1, 16), None]])
    assert text == '"a","b","c","d"\r\n-4.10,7,"2026-01-16",""\r\n'


@given(st.text())
def test_shown_text_is_one_line_without_marks(text: str) -> None:
    out = shown(text)
    assert len(out) == len(text) and len(out.splitlines()) <= 1
    # Formatting characters by Unicode Standard Annex 9.
    assert not set(out) & set("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\x1b\x00\x7f")
    assert shown(out) == out


def test_other_scripts_stay() -> None:
    assert shown("Schneefräse 雪 שלג") == "Schneefräse 雪 שלג"


def test_nothing_is_cut_in_a_table() -> None:
    lines = row(("1", "Stonegarth Trade Parts", "9.50"), (2, 12, 6), frozenset((2,)))
    assert lines == ["1  Stonegarth     9.50", "   Trade Parts"]
    assert row(("ABCDEFGH",), (3,)) == ["ABC", "DEF", "GH"]
    assert table([("a", "b"), ("long", "1")], (10, 10)) == ["a    b", "---- -", "long 1"]


def test_wrapping_and_counting() -> None:
    assert wrapped("one two three", 2, 10) == ["  one two", "    three"]
    assert wrapped("", 2) == ["  "]
    assert [count(1, "piece"), count(1200, "piece"), count(2, "loaf", "loaves")] == [
        "1 piece",
        "1,200 pieces",
        "2 loaves",
    ]
    assert document(["a  ", "b\nc"]) == "a\nb c\n"
