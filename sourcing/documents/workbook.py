"""Workbooks (XLSX) from tables: header row bold and frozen, numbers as numbers, hostile text as text, same bytes.

Two habits of openpyxl are mended here. It writes a Decimal through '%.16g', which turns 0.07 into
0.07000000000000001: the digits are written as they are instead. And it stamps the clock into the file: the stamps
are set to a fixed day, so that the same table gives the same bytes.
"""

import io
import re
import textwrap
import zipfile
from collections.abc import Sequence
from copy import copy
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from openpyxl import Workbook
from openpyxl.cell.cell import Cell as SheetCell
from openpyxl.cell.cell import WriteOnlyCell
from openpyxl.styles import Alignment, Font
from openpyxl.styles.cell_style import StyleArray
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.properties import PageSetupProperties

from ..basics.value import Value
from .csv_text import RISKY, Cell
from .plain_text import shown
from .workbook_bars import Bars, add_bars
from .workbook_chart import Scatter, add_scatter

STAMP = datetime(2000, 1, 1)
ZIP_STAMP = (2000, 1, 1, 0, 0, 0)
MOST_DIGITS = 15
"""A spreadsheet keeps 15 significant digits (IEEE 754 double); a longer number is written as text, whole."""
NARROWEST, WIDEST = 8, 60
LINE_HIGH, MOST_LINES = 15, 27
"""A line of text in points, and the lines a row can show: a spreadsheet's row is at most 409 points high."""
TOP, TOP_WRAPPED = Alignment(vertical="top"), Alignment(wrap_text=True, vertical="top")


class Table(Value, frozen=True, kw_only=True):
    """One worksheet: its title (at most 31 characters), headers, rows as long as the headers, a chart of them."""

    title: str
    headers: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    scatter: Scatter | None = None
    bars: Bars | None = None

    def __post_init__(self) -> None:
        if any(len(row) != len(self.headers) for row in self.rows):
            raise ValueError(f"worksheet {self.title}: a row is not as long as the headers")


def workbook_bytes(tables: Sequence[Table]) -> bytes:
    """The tables as the worksheets of one XLSX file."""
    book = Workbook(write_only=True)
    book.properties.creator = "sourcing"
    book.properties.created = STAMP
    for table in tables:
        _fill(book.create_sheet(table.title), table)
    out = io.BytesIO()
    book.save(out)
    return _stamped(out.getvalue())


def _fill(sheet: Any, table: Table) -> None:
    """Rows go straight to the file, so what is said of the whole worksheet is said first."""
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = f"A1:{get_column_letter(max(len(table.headers), 1))}{len(table.rows) + 1}"
    sheet.print_title_rows = "1:1"
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    widths = [_width(table, column) for column in range(len(table.headers))]
    for column, width in enumerate(widths, 1):
        sheet.column_dimensions[get_column_letter(column)].width = width
    _heights(sheet, table, widths)
    looks = _Looks(sheet)
    sheet.append([looks.header(text) for text in table.headers])
    for row in table.rows:
        sheet.append([looks.cell(value) for value in row])
    if table.scatter:
        add_scatter(sheet, table.headers, table.rows, table.scatter)
    if table.bars and table.rows:
        add_bars(sheet, table.headers, len(table.rows), table.bars)


def _width(table: Table, column: int) -> int:
    longest = max((len(str(row[column])) for row in table.rows), default=0)
    return min(max(longest, len(table.headers[column]), NARROWEST) + 2, WIDEST)


def _heights(sheet: Any, table: Table, widths: Sequence[int]) -> None:
    """Rows with a text too long for its column are made as high as its lines: not every spreadsheet does it itself."""
    tight = [column for column, width in enumerate(widths) if width == WIDEST]
    for at, row in enumerate(table.rows if tight else (), 2):
        texts = [text for column in tight if isinstance(text := row[column], str) and len(text) > WIDEST - 2]
        if texts:
            lines = max(len(textwrap.wrap(shown(text), WIDEST - 4)) for text in texts)
            sheet.row_dimensions[at].height = LINE_HIGH * min(lines, MOST_LINES)


class _Looks:
    """Makes cells. A style is made once and copied: making it for each cell takes most of the time of a long table."""

    def __init__(self, sheet: Any) -> None:
        self._sheet = sheet
        self._styles: dict[object, StyleArray] = {}

    def header(self, text: str) -> SheetCell:
        """A cell of the header row."""
        return self._text(text, Alignment(wrap_text=True, vertical="bottom"), Font(bold=True))

    def cell(self, value: Cell) -> SheetCell | None:
        """A cell of the body; a long number is text."""
        if value is None:
            return None
        if isinstance(value, (int, Decimal)):
            return self._number(Decimal(value))
        if isinstance(value, date):
            return self._styled(_new(self._sheet, value), "date", number_format="yyyy-mm-dd", alignment=TOP)
        return self._text(value, TOP_WRAPPED, None)

    def _number(self, value: Decimal) -> SheetCell:
        digits = f"{value:f}"
        if len(value.as_tuple().digits) > MOST_DIGITS:
            return self._text(digits, TOP_WRAPPED, None)
        cell = _new(self._sheet, value)
        cell._value = digits  # type: ignore[attr-defined]  # past '%.16g'; a test reads the file's own digits
        decimals = len(digits.partition(".")[2])
        shape = f"#,##0.{'0' * decimals}" if decimals else "0"
        return self._styled(cell, decimals, number_format=shape, alignment=TOP)

    def _text(self, text: str, alignment: Alignment, font: Font | None) -> SheetCell:
        """Text stays text: neither '=1+1' a formula nor '#N/A' an error, also after somebody edits the cell."""
        cell = _new(self._sheet, shown(text))
        cell.data_type = "s"
        risky = text.lstrip().startswith(RISKY)
        kept = {"alignment": alignment} | ({"font": font} if font else {}) | ({"quotePrefix": True} if risky else {})
        return self._styled(cell, (risky, font is None), **kept)

    def _styled(self, cell: SheetCell, key: object, **looks: object) -> SheetCell:
        if key not in self._styles:
            for name, value in looks.items():
                setattr(cell, name, value)
            self._styles[key] = cell._style  # type: ignore[attr-defined]
        cell._style = copy(self._styles[key])  # type: ignore[attr-defined]
        return cell


def _new(sheet: Any, value: object) -> SheetCell:
    cell: SheetCell = WriteOnlyCell(sheet, value)  # type: ignore[arg-type]
    return cell


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
