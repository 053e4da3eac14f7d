"""Cells with line breaks and delimiters in quotes: a file that is well formed is never torn apart at them.

Reference: Python's csv module, which reads every well-formed sheet here strictly, with rows of one width.
"""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.sheets.files.grid import read_grid
from tests.sheets.sheet_files import read

SOUND = "".join(f"QZ-{at},bolt {at},{at}.50\n" for at in range(2, 10))
HEADER = "part no,description,net price\n"


def grid(text: str) -> list[list[str]]:
    """The rows of the one worksheet."""
    (worksheet,) = read_grid(text.encode(), "prices.csv")
    return [[str(cell) for cell in row] for row in worksheet.rows]


def strictly(text: str, delimiter: str = ",") -> list[list[str]]:
    """The rows as the csv module reads them."""
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))


@pytest.mark.parametrize(
    "cell", ["Shear pin, 25\nor the long one, 30", "Pin,25\nor,30", "QZ-1,25\nor the long one,30", "a,b\nc,d\n1,2"]
)
def test_a_line_of_a_quoted_cell_is_no_row(cell: str) -> None:
    text = f'{HEADER}QZ-1,"{cell}",0.50\n{SOUND}'
    assert grid(text) == strictly(text)
    semicolons = text.replace(",", ";")
    assert grid(semicolons) == strictly(semicolons, ";")


def test_a_figure_in_a_quoted_cell_is_no_price() -> None:
    offers = read(f'{HEADER}QZ-1,"Shear pin, 25\nor the long one, 30",0.50\n{SOUND}'.encode()).offers
    assert [str(breaks[0].price) for breaks in offers["breaks"]][:2] == ["0.50", "2.50"]
    assert len(offers) == 9


def test_two_stray_quotes_that_make_a_record_of_two_rows_take_in_neither() -> None:
    text = f'{HEADER}{SOUND}QZ-10,"pin,2.50\nQZ-11,long",0.50\n'
    assert grid(text)[-2:] == [["QZ-10", '"pin', "2.50"], ["QZ-11", 'long"', "0.50"]]


def test_stray_quotes_at_two_rows_do_not_take_in_rows_of_which_one_has_no_price() -> None:
    text = f'{HEADER}{SOUND}QZ-10,"pin,2.50\nQZ-11,nut,\nQZ-12,belt,4.50\nQZ-13,long",0.50\n'
    assert [row[0] for row in grid(text)[-4:]] == ["QZ-10", "QZ-11", "QZ-12", "QZ-13"]


def test_a_stray_quote_in_a_table_of_two_columns_does_not_take_in_the_next_row() -> None:
    rows = "".join(f"QZ-{at};bolt {at}\n" for at in range(2, 10))
    text = f'part no;description\n{rows}QZ-10;"bolt\nQZ-11;"8, 30; long"\nQZ-12;"a; 1/2 "belt"\n'
    assert [row[0] for row in grid(text)[-3:]] == ["QZ-10", "QZ-11", "QZ-12"]


@pytest.mark.parametrize(
    ("record", "row"),
    [
        ('QZ-1,"Shear pin, 1/2" bore, 25\nor 30",0.50\n', ["QZ-1", 'Shear pin, 1/2" bore, 25\nor 30', "0.50"]),
        ('"QZ-1,"Shear pin, 25\nor 30, or 40",0.50\n', ['"QZ-1', "Shear pin, 25\nor 30, or 40", "0.50"]),
    ],
)
def test_a_stray_quote_beside_a_cell_of_two_lines_does_not_tear_it(record: str, row: list[str]) -> None:
    assert grid(f"{HEADER}{SOUND}{record}QZ-12,bolt,12.50\n")[-2:] == [row, ["QZ-12", "bolt", "12.50"]]


WORDS = st.sampled_from(["pin", "long, ", "or 30", "25", "QZ-9", ",", ", ", "; ", "\n", "\n", " "])
PROSE = st.lists(WORDS, min_size=1, max_size=12).map(lambda words: "x" + "".join(words) + "y")


@given(st.lists(PROSE | st.just("bolt"), min_size=3, max_size=20), st.sampled_from(",;\t|"), st.integers(2, 5))
@settings(max_examples=200, deadline=None)
def test_any_well_formed_sheet_is_read_as_the_csv_module_reads_it(cells: list[str], delimiter: str, width: int) -> None:
    rows = [["part no", "description", "net price", "pack", "note"][:width]]
    rows += [[f"QZ-{at}", cell, f"{at}.50", "each", cell][:width] for at, cell in enumerate(cells)]
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter, lineterminator="\n").writerows(rows)
    assert grid(out.getvalue()) == rows


REPEATED = " ".join(["A long description of what the part does and how it is fitted, with care, by hand."] * 12)


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("lines", [2, 10])
@pytest.mark.parametrize("header", [["description", "status"], ["part no", "description", "price"]])
def test_long_prose_in_quotes_is_not_cut_at_its_spaces(header: list[str], lines: int, delimiter: str) -> None:
    prose = "\n".join([REPEATED] * lines)
    rows = [header, *([f"QZ-{at}", prose, f"{at}.50"][3 - len(header) :] for at in range(20))]
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter, lineterminator="\n").writerows(rows)
    assert grid(out.getvalue()) == rows
