"""Delimited text to cells: encodings, delimiters, records; Python's csv module and pandas are the outside check."""

import csv
import io

import pandas as pd
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.sheets.files.dialect import split_lines
from sourcing.sheets.files.dialect_choice import find_shape
from sourcing.sheets.files.encoding import decode
from sourcing.sheets.files.grid import read_grid
from tests.sheets.sheet_files import HEADER, ROW, counts, csv_bytes, read

WORDS = st.text(st.characters(codec="utf-8", categories=["L", "N", "P"]), min_size=1, max_size=8)
TABLES = st.integers(2, 6).flatmap(lambda width: st.lists(st.lists(WORDS, min_size=width, max_size=width), max_size=12))


@given(TABLES, st.sampled_from(",;\t|"))
@settings(max_examples=150, deadline=None)
def test_the_cells_are_those_of_csv_and_pandas(rows: list[list[str]], delimiter: str) -> None:
    # Where every row holds another delimiter too, nobody can tell which of them divides the cells.
    others = (mark for mark in ",;\t|" if mark != delimiter)
    assume(not rows or not any(all(any(mark in cell for cell in row) for row in rows) for mark in others))
    rows = [HEADER[: len(rows[0])] if rows else HEADER, *rows]
    data = csv_bytes(rows, delimiter)
    (worksheet,) = read_grid(data, "a.csv")
    assert worksheet.rows == list(csv.reader(io.StringIO(data.decode(), newline=""), delimiter=delimiter))
    frame = pd.read_csv(io.BytesIO(data), sep=delimiter, dtype=str, keep_default_na=False, header=None)
    assert worksheet.rows == frame.to_numpy().tolist()


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16", "utf-16-le", "utf-16-be"])
@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
def test_every_encoding_and_delimiter_gives_the_same_cells(encoding: str, delimiter: str) -> None:
    rows = [["Artikel-Nr.", "Bezeichnung", "EK netto EUR"], ["KR-1", "Riemenhalter für Gehäuse", "7,80"]]
    (worksheet,) = read_grid(csv_bytes(rows, delimiter, encoding), "a.csv")
    assert worksheet.rows == rows


def test_a_euro_sign_in_cp1252_is_read_and_not_taken_for_latin_1() -> None:
    assert decode("UVP €;2".encode("cp1252"), "a.csv").text == "UVP €;2"


def best_delimiter(text: str) -> str:
    """The delimiter of the dialect that is found."""
    return find_shape(split_lines(text)).dialect.delimiter


def test_decimal_commas_do_not_make_the_comma_the_delimiter() -> None:
    assert best_delimiter("Artikel-Nr.;EK netto;UVP\n" + "KR-1;1,50;2,75\n" * 30) == ";"


def test_commas_in_descriptions_do_not_make_the_comma_the_delimiter() -> None:
    assert best_delimiter("Part No\tDescription\tNet\n" + "A1\tBelt, auger, 36 in, cogged\t1.50\n" * 30) == "\t"


def test_a_row_is_numbered_by_its_first_line_where_cells_hold_line_breaks() -> None:
    reading = read(csv_bytes([HEADER, ["A1", "X", "Belt\nauger", "2", "1.00", "", "", ""], ROW]))
    assert list(reading.offers["row"]) == [2, 4]
    assert reading.offers["description"].iloc[0] == "Belt auger"
    assert counts(reading) == [(3, 2, 1, 0)]


def test_an_opening_quote_without_its_end_costs_one_row() -> None:
    reading = read(b'Part Number,Net\nA1,1.00\nA2,"2.00\nA3,3.00\n')
    assert list(reading.offers["supplier_number"]) == ["A1", "A3"]
    assert [problem.place.row for problem in reading.summary.problems if problem.place] == [3]


def test_an_opening_quote_without_its_end_is_refused_with_its_row_where_no_table_shows_how_to_read_it() -> None:
    with pytest.raises(Refused) as refusal:
        read(b'Part Number\nA1\n"A2\nA3\n')
    assert refusal.value.problems[0].code == "quote-not-closed"
    assert refusal.value.problems[0].place is not None and refusal.value.problems[0].place.row == 3


def test_a_stray_pair_of_quotes_costs_no_row() -> None:
    data = b'Part Number,Description,Net\nA1,Belt,1.00\nA2,"36,2.00\nA3,Belt,3.00\nA4,"36,4.00\nA5,Belt,5.00\n'
    reading = read(data)
    assert list(reading.offers["supplier_number"]) == ["A1", "A2", "A3", "A4", "A5"]
    assert counts(reading) == [(6, 5, 1, 0)]


def test_an_inch_mark_inside_a_cell_is_only_an_inch_mark() -> None:
    reading = read(b'Part Number,Description,Net\nA1,Belt 36" auger,1.00\nA2,Belt 38" auger,1.00\n')
    assert list(reading.offers["description"]) == ['Belt 36" auger', 'Belt 38" auger']
