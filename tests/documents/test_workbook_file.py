"""Workbooks: the file's own digits, text that stays text, the same bytes at any hour."""

import io
import re
import zipfile
from datetime import date
from decimal import Decimal

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.documents.csv_text import Cell
from sourcing.documents.workbook import Table, workbook_bytes
from sourcing.documents.workbook_chart import Scatter
from tests.documents.values import HOSTILE

FORMULAS = (
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    " =1",
    "=cmd|' /C calc'!A0",
    "#N/A",
    "#REF!",
    "00123",
    "1.23E+11",
    "TRUE",
)


def book(*cells: Cell) -> bytes:
    """One worksheet with one row of these cells."""
    headers = tuple(f"Column {at}" for at in range(len(cells)))
    return workbook_bytes([Table(title="Only", headers=headers, rows=(cells,))])


def second_row(data: bytes) -> str:
    """The XML of the second row as the file holds it."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        xml = archive.read("xl/worksheets/sheet1.xml").decode()
    found = re.search(r'<row r="2".*?</row>', xml)
    assert found
    return found.group()


@pytest.mark.parametrize("digits", ["0.07", "9.95", "166.60", "10.995", "-4.10", "0.00", "123456789012.99"])
def test_the_file_holds_the_decimals_own_digits(digits: str) -> None:
    assert f"<v>{digits}</v>" in second_row(book(Decimal(digits)))
    cell = openpyxl.load_workbook(io.BytesIO(book(Decimal(digits))))["Only"]["A2"]
    assert cell.data_type == "n"
    assert cell.number_format == f"#,##0.{'0' * len(digits.partition('.')[2])}"


@given(st.decimals(min_value=-(10**9), max_value=10**9, places=4))
@settings(max_examples=25, deadline=None)
def test_any_price_is_exact_in_the_file(price: Decimal) -> None:
    assert f"<v>{price:f}</v>" in second_row(book(price))


def test_a_number_longer_than_a_spreadsheet_keeps_is_text() -> None:
    cell = openpyxl.load_workbook(io.BytesIO(book(Decimal("1234567890123456.7"))))["Only"]["A2"]
    assert (cell.data_type, cell.value) == ("s", "1234567890123456.7")


@pytest.mark.parametrize("text", FORMULAS)
def test_text_stays_text(text: str) -> None:
    assert "<f>" not in second_row(book(text)) and 't="e"' not in second_row(book(text))
    cell = openpyxl.load_workbook(io.BytesIO(book(text)))["Only"]["A2"]
    assert (cell.data_type, str(cell.value).strip()) == ("s", text.strip())


def test_a_formula_stays_text_after_an_edit() -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(book("=1+1", "plain")))["Only"]
    assert sheet["A2"].quotePrefix and not sheet["B2"].quotePrefix


def test_control_characters_do_not_break_the_file() -> None:
    cell = openpyxl.load_workbook(io.BytesIO(book(HOSTILE)))["Only"]["A2"]
    assert "\ufffd0.01" in str(cell.value) and "\n" not in str(cell.value)


def test_blanks_dates_and_whole_numbers() -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(book(None, date(2026, 1, 16), 12, "")))["Only"]
    assert sheet["A2"].value is None
    assert (sheet["B2"].value.date(), sheet["B2"].number_format) == (date(2026, 1, 16), "yyyy-mm-dd")
    assert (sheet["C2"].value, sheet["C2"].number_format) == (12, "0")


def test_the_header_is_bold_and_stays_in_view() -> None:
    sheet = openpyxl.load_workbook(io.BytesIO(book("x" * 200, Decimal("1.00"))))["Only"]
    assert sheet.freeze_panes == "A2" and sheet["A1"].font.bold and not sheet["A2"].font.bold
    assert sheet.column_dimensions["A"].width == 60
    assert sheet.print_title_rows == "$1:$1"


def test_a_row_is_as_high_as_its_longest_text() -> None:
    """Else a spreadsheet that does not size rows itself prints one text over the next."""
    sheet = openpyxl.load_workbook(io.BytesIO(book("word " * 40, "short")))["Only"]
    assert sheet.row_dimensions[2].height >= 4 * 15
    assert openpyxl.load_workbook(io.BytesIO(book("short")))["Only"].row_dimensions[2].height is None


def test_a_column_without_a_header_is_not_written() -> None:
    """Numbers under nothing mean nothing."""
    with pytest.raises(ValueError, match="worksheet Only"):
        Table(title="Only", headers=("One",), rows=(("a", "b"),))


@pytest.mark.parametrize("last", [16, 17, 31])
def test_the_axis_of_days_ends_a_day_beside_the_points(last: int) -> None:
    """One point, too: left to itself a spreadsheet shows it among centuries. 2026-01-16 is day 46038 in a cell."""
    rows = ((date(2026, 1, 16), Decimal("1.00")), (date(2026, 1, last), Decimal("2.00")), (None, Decimal("3.00")))
    made = Scatter(title="Days", x="Day", x_days=True, y="Cost")
    data = workbook_bytes([Table(title="Only", headers=("Day", "Cost"), rows=rows, scatter=made)])
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        axis = archive.read("xl/charts/chart1.xml").decode().partition("<valAx>")[2].partition("</valAx>")[0]
    ends = {name: int(value) for name, value in re.findall(r'<(max|min|majorUnit) val="(\d+)', axis)}
    assert (ends["min"], ends["max"]) == (46037, 46038 + last - 16 + 1)
    assert (ends["max"] - ends["min"]) / ends["majorUnit"] <= 10


def test_no_clock_is_in_the_file() -> None:
    data = book(Decimal("1.00"), "text")
    assert book(Decimal("1.00"), "text") == data
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        assert {one.date_time for one in archive.infolist()} == {(2000, 1, 1, 0, 0, 0)}
        properties = archive.read("docProps/core.xml").decode()
        assert re.findall(r">([^<>]*T[^<>]*Z)<", properties) == ["2000-01-01T00:00:00Z"] * 2
        assert archive.testzip() is None
