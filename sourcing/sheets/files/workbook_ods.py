"""An OpenDocument spreadsheet (ODS) to worksheets, read tag by tag: OASIS OpenDocument 1.2, part 1.

Repeated cells and rows are laid out as the file counts them, but only up to the last that holds something: programs
repeat an empty row a million times. The text a number cell shows is taken where it keeps leading zeros.
"""

import re

from sourcing.basics.problem import Place, refused

from ..worksheet import Cell, Worksheet, without_blank_end
from .archive import Archive
from .workbook_formats import NumberFormat
from .workbook_found import MOST_COLUMNS, TooWide, longest_checked
from .workbook_marks import refusing
from .workbook_ods_cells import NUMBERS, cell_of, number_of, plain
from .workbook_ods_formats import OdsFormats
from .workbook_parse import LOCAL, parse

MOST_CELLS = 6_000_000
CONTENT, STYLES, MANIFEST = "content.xml", "styles.xml", "meta-inf/manifest.xml"
NOT_CELLS = frozenset({"annotation", "shapes", "frame", "custom-shape", "tracked-changes", "dde-links", "object", "g"})
"""What may hold text or tables of its own inside a worksheet."""
LONGEST_STYLE_TEXT = 200
HIDES = frozenset({"collapse", "filter"})


def read_ods(archive: Archive) -> list[Worksheet]:
    """Every worksheet, in order. Refuses what is broken, encrypted, or too much to hold."""
    if b"encryption-data" in archive.small(MANIFEST):
        raise refused("password-protected", place=Place(file=archive.file))
    reader = _Reader()
    with refusing(archive.file):
        if STYLES in archive.parts:
            parse(archive.pieces(STYLES), reader)
        parse(archive.pieces(CONTENT), reader)
    return reader.worksheets


TABLE_PROPERTIES = ("table-properties", "table-row-properties", "table-column-properties")
"""A page's header may be hidden too, which says nothing of a row."""


class _Reader:
    """Told the tags of content.xml; keeps one row at a time and lays it out when it ends."""

    def __init__(self) -> None:
        self.worksheets: list[Worksheet] = []
        self.cells = 0
        self.hiding_styles: set[str] = set()
        self.style, self.formats, self.style_text = "", OdsFormats(), ""
        self.skipping = 0
        self.sheet: _Sheet | None = None
        self.cell: dict[str, str] | None = None
        self.texts: list[str] = []
        self.length = 0

    def begin(self, name: str, attributes: dict[str, str]) -> None:
        """Opens a worksheet, row, cell or paragraph; counts itself out of what is no cell."""
        if self.skipping or name in NOT_CELLS:
            self.skipping += 1
            return
        given = {LOCAL[key]: value for key, value in attributes.items()}
        if self.cell is not None:
            self._in_cell(name, given)
        elif name in ("table-cell", "covered-table-cell") and self.sheet:
            given["tag"] = name
            self.cell, self.texts, self.length = given, [], 0
        elif name == "table":
            self.sheet = _Sheet(given, self.hiding_styles, self.formats)
        elif self.sheet:
            self.sheet.begin(name, given)
        else:
            self._style(name, given)

    def _style(self, name: str, given: dict[str, str]) -> None:
        self.style_text = ""
        self.formats.begin(name, given)
        if name == "style":
            self.style = given.get("name", "")
        sizes = (given.get("row-height", ""), given.get("column-width", ""))
        hidden = given.get("display") == "false" or any(re.fullmatch(r"0+(\.0+)?[a-z]+", size) for size in sizes)
        if hidden and name in TABLE_PROPERTIES:
            self.hiding_styles.add(self.style)

    def _in_cell(self, name: str, given: dict[str, str]) -> None:
        if name == "p":
            self.texts.append("")
        elif self.texts and name == "s":
            count = given.get("c", "1")
            spaces = int(count) if count.isdecimal() and len(count) < 9 else 1
            self.length += spaces
            longest_checked(self.length)
            self.texts[-1] += "\x00" * spaces
        elif self.texts and name in ("tab", "line-break"):
            self.texts[-1] += "\x01" if name == "tab" else "\x02"

    def text(self, text: str) -> None:
        """Text of a paragraph in a cell; anything else is only white space between tags."""
        self.length = self.length + len(text) if self.cell is not None else 0
        longest_checked(self.length)
        if self.cell is not None and self.texts and not self.skipping:
            self.texts[-1] += text
        elif self.sheet is None:
            self.style_text = (self.style_text + text)[:LONGEST_STYLE_TEXT]

    def end(self, name: str) -> None:
        """Lays out the cell or row that ends."""
        if self.skipping:
            self.skipping -= 1
        elif name in ("table-cell", "covered-table-cell") and self.cell is not None and self.sheet:
            self.cell["paragraphs"] = "1" if self.texts else ""
            texts = self.texts
            self.sheet.add(self.cell, plain(texts[0]) if len(texts) == 1 else "\n".join(map(plain, texts)))
            self.cell = None
        elif name == "table-row" and self.sheet:
            self.cells += self.sheet.end_row(MOST_CELLS - self.cells)
        elif name == "table" and self.sheet:
            self.worksheets.append(self.sheet.worksheet())
            self.sheet = None
        elif self.sheet:
            self.sheet.end(name)
        else:
            self.formats.end(name, self.style_text)


class _Sheet:
    """A worksheet while it is laid out. Rows and columns count from 0."""

    def __init__(self, given: dict[str, str], hiding: set[str], formats: OdsFormats) -> None:
        self.name, self.hiding, self.formats = given.get("name", ""), hiding, formats
        self.column_styles: list[tuple[int, str]] = []
        self.hidden = given.get("style-name", "") in hiding
        self.rows: list[list[Cell]] = []
        self.row: list[tuple[int, Cell, str]] = []
        self.at = self.column = self.columns_seen = self.width = 0
        self.row_given: dict[str, str] = {}
        self.groups: list[bool] = []
        self.column_groups: list[bool] = []
        self.hidden_spans: list[tuple[int, int]] = []
        self.hidden_columns: set[int] = set()
        self.merged: list[tuple[int, int, int, int]] = []
        self.currencies: dict[int, dict[str, list[int]]] = {}

    def begin(self, name: str, given: dict[str, str]) -> None:
        """A column's or row's tag, or a group of rows that may be folded away."""
        if name == "table-row":
            self.row_given, self.row, self.column = given, [], 0
        elif name == "table-row-group":
            self.groups.append(given.get("display") == "false")
        elif name == "table-column-group":
            self.column_groups.append(given.get("display") == "false")
        elif name == "table-column":
            count = _count(given, "number-columns-repeated")
            self.column_styles.append((self.columns_seen + count, given.get("default-cell-style-name", "")))
            if any(self.column_groups) or self._hides(given):
                first = min(self.columns_seen, MOST_COLUMNS)
                self.hidden_columns.update(range(first, min(first + count, MOST_COLUMNS)))
            self.columns_seen += count

    def end(self, name: str) -> None:
        """A group of rows or columns ends."""
        if name == "table-row-group" and self.groups:
            self.groups.pop()
        elif name == "table-column-group" and self.column_groups:
            self.column_groups.pop()

    def _format(self, given: dict[str, str]) -> NumberFormat:
        """That of the cell, else of its row, else of its column (section 19.620 and its neighbours)."""
        style = given.get("style-name") or self.row_given.get("default-cell-style-name")
        if not style:
            style = next((name for end, name in self.column_styles if self.column < end), "")
        return self.formats.of(style)

    def _hides(self, given: dict[str, str]) -> bool:
        return given.get("visibility") in HIDES or given.get("style-name", "") in self.hiding

    def add(self, given: dict[str, str], text: str) -> None:
        """A cell with what it shows. What a merged region covers is left blank."""
        cell, shown = ("", "") if given["tag"] == "covered-table-cell" else self._cell(given, text)
        count = _count(given, "number-columns-repeated")
        if "number-rows-spanned" in given or "number-columns-spanned" in given:
            self._see_span(_count(given, "number-rows-spanned"), _count(given, "number-columns-spanned"))
        if cell != "" and count == 1 and self.column < MOST_COLUMNS:
            self.row.append((self.column, cell, shown))
        elif cell != "":
            if self.column + count > MOST_COLUMNS:
                raise TooWide(self.at + 1, self.column + count)
            self.row += [(at, cell, shown) for at in range(self.column, self.column + count)]
        self.column += count

    def _see_span(self, down: int, right: int) -> None:
        if down * right > 1:
            self.merged.append((self.at, self.column, self.at + down - 1, self.column + right - 1))

    def _cell(self, given: dict[str, str], text: str) -> tuple[Cell, str]:
        if given.get("value-type") in NUMBERS:
            return number_of(given, text, self._format(given))
        return cell_of(given, text), ""

    def end_row(self, most: int) -> int:
        """Lays the row out as often as it is repeated; how many cells that took. Raises TooWide over `most`."""
        count = _count(self.row_given, "number-rows-repeated")
        if any(self.groups) or self._hides(self.row_given):
            self.hidden_spans.append((self.at, self.at + count))
        first, self.at = self.at, self.at + count
        if not self.row:
            return 0
        before, self.width = len(self.rows) * self.width, max(self.width, self.row[-1][0] + 1)
        if self.at * self.width - before > most:
            raise TooWide(self.at, self.width)
        self.rows.extend([] for _ in range(first - len(self.rows)))
        for at in range(first, self.at):
            self.rows.append(self._laid_out(at))
        return self.at * self.width - before

    def _laid_out(self, at: int) -> list[Cell]:
        cells: list[Cell] = [""] * (self.row[-1][0] + 1)
        for column, cell, shown in self.row:
            cells[column] = cell
            if shown:
                self.currencies.setdefault(column, {}).setdefault(shown, []).append(at)
        return cells

    def worksheet(self) -> Worksheet:
        """The worksheet up to its last row that is not blank."""
        rows = without_blank_end(self.rows)
        spans = [range(first, min(last, len(rows))) for first, last in self.hidden_spans]
        return Worksheet(
            name=self.name,
            rows=rows,
            row_numbers=range(1, len(rows) + 1),
            hidden=self.hidden,
            hidden_rows=frozenset(at for span in spans for at in span),
            hidden_columns=frozenset(at for at in self.hidden_columns if at < self.width),
            merged=tuple(self.merged),
            currencies=self.currencies,
        )


def _count(given: dict[str, str], name: str) -> int:
    text = given.get(name)
    if text is None:
        return 1
    return int(text) if text.isdecimal() and 0 < len(text) < 9 and int(text) else 1
