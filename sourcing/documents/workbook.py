"""Workbooks (XLSX) from tables: header row bold and frozen, numbers as numbers, hostile text as text, same bytes.

Two habits of openpyxl are mended here. It writes a Decimal through '%.16g', which turns 0.07 into
0.07000000000000001: the digits are written as they are instead. And it stamps the clock into the file: the stamps
are set to a fixed day, so that the same table gives the same bytes.
"""

import io
import re
import zipfile
from collections.abc import Sequence
from datetime import date, datetime
from decimal import Decimal

from openpyxl import Workbook
from openpyxl.cell.cell import Cell as SheetCell
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from ..basics.value import Value
from .csv_text import RISKY, Cell
from .plain_text import shown

STAMP = datetime(2000, 1, 1)
ZIP_STAMP = (2000, 1, 1, 0, 0, 0)
MOST_DIGITS = 15
"""A spreadsheet keeps 15 significant digits (IEEE 754 double); a longer number is written as text, whole."""
NARROWEST, WIDEST = 8, 60


class Table(Value, frozen=True, kw_only=True):
    """One worksheet: its title (at most 31 characters), headers, rows as long as the headers."""

    title: str
    headers: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def workbook_bytes(tables: Sequence[Table]) -> bytes:
    """The tables as the worksheets of one XLSX file."""
    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.creator = "sourcing"
    book.properties.created = STAMP
    for table in tables:
        _fill(book.create_sheet(table.title), table)
    out = io.BytesIO()
    book.save(out)
    return _stamped(out.getvalue())


def _fill(sheet: Worksheet, table: Table) -> None:
    for at, cells in enumerate((table.headers, *table.rows), 1):
        for column, value in enumerate(cells, 1):
            cell = sheet.cell(at, column)
            assert isinstance(cell, SheetCell)  # nothing is merged in a table
            _write(cell, value)
    for cell in sheet[1]:
        cell.font = Font(bold=True)
        cell.alignment = Alignment(wrap_text=True, vertical="bottom")
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions
    sheet.print_title_rows = "1:1"
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    for column, header in enumerate(table.headers, 1):
        longest = max((len(str(row[column - 1])) for row in table.rows), default=0)
        width = min(max(longest, len(header), NARROWEST) + 2, WIDEST)
        sheet.column_dimensions[get_column_letter(column)].width = width


def _write(cell: SheetCell, value: Cell) -> None:
    if value is None:
        return
    if isinstance(value, (int, Decimal)):
        _write_number(cell, Decimal(value))
    elif isinstance(value, date):
        cell.value, cell.number_format = value, "yyyy-mm-dd"
    else:
        _write_text(cell, value)


def _write_number(cell: SheetCell, value: Decimal) -> None:
    digits = f"{value:f}"
    if len(value.as_tuple().digits) > MOST_DIGITS:
        _write_text(cell, digits)
        return
    cell.value = value
    cell._value = digits  # type: ignore[attr-defined]  # past '%.16g'; a test reads the file's own digits
    decimals = len(digits.partition(".")[2])
    cell.number_format = f"#,##0.{'0' * decimals}" if decimals else "0"


def _write_text(cell: SheetCell, text: str) -> None:
    """Text stays text: neither '=1+1' a formula nor '#N/A' an error, also after somebody edits the cell."""
    cell.value = shown(text)
    cell.data_type = "s"
    cell.alignment = Alignment(wrap_text=True, vertical="top")
    if text.lstrip().startswith(RISKY):
        cell.quotePrefix = True


def _stamped(data: bytes) -> bytes:
    """The same archive with fixed stamps, in the archive and in its properties."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as made, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as fixed:
        for name in made.namelist():
            content = made.read(name)
            if name == "docProps/core.xml":
                stamp = STAMP.strftime("%Y-%m-%dT%H:%M:%SZ").encode()
                content = re.sub(rb"(<dcterms:modified[^>]*>)[^<]*", rb"\g<1>" + stamp, content)
            fixed.writestr(zipfile.ZipInfo(name, ZIP_STAMP), content, zipfile.ZIP_DEFLATED)
    return out.getvalue()
