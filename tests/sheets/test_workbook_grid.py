"""Workbooks to cells; openpyxl, another reader, is the outside check."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.files import workbook_grid
from sourcing.sheets.files.grid import read_grid
from sourcing.sheets.worksheet import letter_of, number_of, text_of
from tests.sheets.sheet_files import HEADER, ROW, codes, counts, ods_bytes, only, read, saved, xlsx_bytes, zip_bytes

DEMO = Path(__file__).resolve().parents[2] / "demo_prices"
WORKBOOKS = sorted(DEMO.glob("*/*.xlsx"))


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.name)
def test_the_cells_are_those_openpyxl_reads(path: Path) -> None:
    book = openpyxl.load_workbook(path, data_only=True)
    for worksheet in read_grid(path.read_bytes(), path.name):
        for at, row in enumerate(worksheet.rows):
            for column, cell in enumerate(row):
                value = book[worksheet.name].cell(at + 1, column + 1).value
                expected = "" if value is None else value
                assert (cell if isinstance(expected, str) else float(cell)) == expected


def test_there_are_workbooks_to_compare() -> None:
    assert len(WORKBOOKS) >= 2


def test_a_number_cell_keeps_its_digits_and_is_no_float() -> None:
    data = xlsx_bytes(Prices=[["Part Number", "Net"], [40388, 0.1 + 0.2], ["00123", 1249]])
    offers = read(data).offers
    assert list(offers["supplier_number"]) == ["40388", "00123"]
    assert [breaks[0].price for breaks in offers["breaks"]] == [Decimal("0.3"), Decimal(1249)]


def test_three_decimals_in_a_number_cell_are_not_in_doubt() -> None:
    data = xlsx_bytes(Prices=[["Part Number", "Net"], ["A1", 1.234]])
    assert only(read(data).offers)["breaks"][0].price == Decimal("1.234")


@pytest.mark.parametrize("value", [datetime(2026, 3, 5), date(2026, 3, 5), 6203.5, 1.23456789012e17, True])
def test_a_number_a_spreadsheet_changed_is_a_problem(value: object) -> None:
    reading = read(xlsx_bytes(Prices=[["Part Number", "Net"], [value, 1.5], ["A2", 1.5]]))
    assert codes(reading) == ["number-damaged"]
    assert list(reading.offers["supplier_number"]) == ["A2"]


def test_blank_rows_above_count_and_rows_are_numbered_as_shown() -> None:
    reading = read(xlsx_bytes(Prices=[[], [], HEADER, ROW]))
    assert only(reading.offers)["row"] == 4
    assert counts(reading) == [(4, 1, 3, 0)]


def test_a_hidden_worksheet_is_not_read_and_says_so() -> None:
    book = openpyxl.Workbook()
    first, second = book.worksheets[0], book.create_sheet("Old")
    for worksheet in (first, second):
        worksheet.append(HEADER)
        worksheet.append(ROW)
    second.sheet_state = "hidden"
    reading = read(saved(book))
    assert counts(reading) == [(2, 1, 1, 0), (2, 0, 2, 0)]
    assert codes(reading) == [] and [one.code for one in reading.summary.notes] == ["worksheet-hidden"]


def test_an_opendocument_spreadsheet_is_read() -> None:
    reading = read(ods_bytes([["Part Number", "Net"], ["00123", "1.50"]]))
    assert only(reading.offers)["supplier_number"] == "00123"


def test_a_stray_cell_far_off_is_refused_before_it_takes_the_memory() -> None:
    """Two cells, one in the last row of the last column: the reader would lay out 17 thousand million cells."""
    book = openpyxl.Workbook()
    book.worksheets[0]["A1"] = "Part Number"
    book.worksheets[0]["XFD1048576"] = "x"
    with pytest.raises(Refused, match="1048576 rows and 16384 columns"):
        read(saved(book))


def test_an_archive_that_unpacks_far_beyond_its_size_is_refused() -> None:
    parts = {"xl/workbook.xml": b"<workbook/>", "xl/worksheets/sheet1.xml": b" " * 60_000_000}
    with pytest.raises(Refused, match="unpacks to 60 MB"):
        read(zip_bytes(parts))


def test_the_readers_own_failure_is_one_sentence_and_an_interrupt_is_not(monkeypatch: pytest.MonkeyPatch) -> None:
    failure = type("PanicException", (BaseException,), {})

    def fail(*_: object) -> None:
        raise failure("index out of bounds")

    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(workbook_grid, "_worksheets", fail)
    with pytest.raises(Refused, match="damaged"):
        read(xlsx_bytes(Prices=[HEADER, ROW]))
    monkeypatch.setattr(workbook_grid, "_worksheets", interrupt)
    with pytest.raises(KeyboardInterrupt):
        read(xlsx_bytes(Prices=[HEADER, ROW]))


@pytest.mark.parametrize(("at", "letter"), [(0, "A"), (25, "Z"), (26, "AA"), (701, "ZZ"), (16383, "XFD")])
def test_column_letters(at: int, letter: str) -> None:
    """XFD is the last column of a worksheet: 16,384 columns (published limit of the file format's programs)."""
    assert letter_of(at) == letter
    assert number_of(letter) == at + 1


def test_text_of_a_cell() -> None:
    assert text_of(" a\u00a0 b\n") == "a b"
    assert text_of(Decimal(100)) == "100"
