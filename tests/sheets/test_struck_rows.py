"""Rows struck through in a workbook: nobody knows what that says, so such a row is held and told, never offered.

The workbooks are written by openpyxl. That suppliers strike what is gone is common practice, no source.
"""

import io
import zipfile

import openpyxl
import pytest
from openpyxl.styles import Font

from sourcing.sheets.files.workbook_grid import read_workbook
from tests.sheets.sheet_files import read, saved

HEADER = ["Part Number", "Description", "List", "Net", "Stock"]
LINE = Font(strike=True)


def workbook(*struck: str, line: Font = LINE, rows: int = 3) -> bytes:
    """Some rows of offers, with a line through these cells."""
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.append(HEADER)
    for at in range(rows):
        sheet.append([f"MR-{at}", "Shear pin", 2.5, 1.25, 40])
    for name in struck:
        sheet[name].font = line
    return saved(book)


def irregular(data: bytes) -> bytes:
    """The same workbook with a comment before its rows, which the quick reader leaves to the slow one."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name).replace(b"<sheetData>", b"<!-- rows --><sheetData>"))
    return out.getvalue()


@pytest.mark.parametrize("slow", [False, True], ids=["quick reader", "slow reader"])
@pytest.mark.parametrize("struck", [("A3",), ("B3",), ("D3",), ("A3", "B3", "C3", "D3", "E3")], ids="-".join)
def test_a_row_struck_through_is_held_and_told(struck: tuple[str, ...], slow: bool) -> None:
    data = workbook(*struck)
    reading = read(irregular(data) if slow else data)
    assert list(reading.offers["supplier_number"]) == ["MR-0", "MR-2"]
    assert [(one.code, one.place and one.place.row) for one in reading.summary.problems] == [("row-struck-through", 3)]


@pytest.mark.parametrize("struck", [(), ("C3",), ("E3",), ("C2", "C3", "C4")], ids=str)
def test_a_line_through_a_list_price_or_a_stock_holds_nothing(struck: tuple[str, ...]) -> None:
    """List prices are often struck for show, beside the price that holds."""
    reading = read(workbook(*struck))
    assert len(reading.offers) == 3 and reading.summary.problems == ()


def test_other_fonts_strike_nothing() -> None:
    assert len(read(workbook("A3", "D3", line=Font(bold=True, underline="single"))).offers) == 3


def test_cells_are_told_by_column_and_row() -> None:
    (worksheet,) = read_workbook(workbook("A3", "D2", "D4"), "prices.xlsx")
    assert worksheet.struck == {0: frozenset({2}), 3: frozenset({1, 3})}
    (worksheet,) = read_workbook(irregular(workbook("A3", "D2", "D4")), "prices.xlsx")
    assert worksheet.struck == {0: frozenset({2}), 3: frozenset({1, 3})}


def test_a_struck_heading_stays_a_heading() -> None:
    book = openpyxl.load_workbook(io.BytesIO(workbook()))
    sheet = book.worksheets[0]
    sheet.insert_rows(3)
    sheet["A3"] = "Old pins"
    sheet["A3"].font = LINE
    reading = read(saved(book))
    assert len(reading.offers) == 3 and reading.summary.problems == ()
