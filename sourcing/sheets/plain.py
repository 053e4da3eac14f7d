"""A file as plain rows of text: every row of it, or the header and body of one table and nothing else."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from sourcing.basics.problem import Place, refused
from sourcing.basics.sheet import Field

from .files.grid import read_grid
from .headers.columns import meanings_by_key
from .hints import Hints
from .reading import read_sheet
from .region.body import Body
from .region.shape import Shape, shape_of
from .region.table import Table, headers_of
from .region.tables import SaidColumns, tables_in
from .worksheet import Cell, Worksheet, is_blank

Row = Sequence[str]
ANY_LENGTH = 1_000_000


@dataclass(frozen=True)
class PlainTable:
    """A table's header (one row; several are joined; none where the file has none) and its body.

    `others`: how many more price tables the file has.
    """

    worksheet: str
    header: Row | None
    rows: Sequence[Row]
    others: int = 0

    @property
    def all_rows(self) -> Sequence[Row]:
        """The header, where there is one, and the body."""
        return [self.header, *self.rows] if self.header else self.rows


def grid_rows(data: bytes, file: str) -> Iterator[Row]:
    """Every row of every worksheet in order, as text, nothing left out or changed."""
    for worksheet in read_grid(data, file):
        for row in worksheet.rows:
            yield [plain_text(cell) for cell in row]


def plain_table(data: bytes, file: str, meanings: Mapping[str, Field]) -> PlainTable:
    """The table of a file: the price table where its headers are known, else the largest by shape.

    Blank rows, sections, totals, notes and repeated headers are left out, so is everything above and below. Of several
    price tables it is the longest. Refuses a file without any table.
    """
    worksheets = read_grid(data, file)
    known = SaidColumns(meanings_by_key(meanings), {})
    shown = [worksheet for worksheet in worksheets if not worksheet.hidden]
    tables = [table for one in shown for table in tables_in(one, known) if table.complete]
    if tables:
        found = _price_table(max(tables, key=lambda table: table.end - table.body), data, file, meanings)
        return replace(found, others=len(tables) - 1)
    shapes = [(one, shape) for one in shown if (shape := shape_of(one))]
    if not shapes:
        raise refused("no-table", place=Place(file=file))
    return _shaped(*max(shapes, key=lambda pair: (pair[1].end - pair[1].body) * pair[1].width))


def _price_table(table: Table, data: bytes, file: str, meanings: Mapping[str, Field]) -> PlainTable:
    """The rows that are offers or problems; what is structure is known only after reading."""
    reading = read_sheet(data, file, Hints(supplier="", meanings=meanings))
    name, body = table.worksheet.name, Body(table)
    left_out = {row.row for row in reading.structure if row.worksheet == name and row.kind != "price break"}
    rows = [body.row(at) for at in range(body.height) if body.row_number(at) not in left_out]
    header = _header(table.worksheet, table.first, table.body - table.first)
    return PlainTable(name, _wide(header, body.width), [_wide(row, body.width) for row in rows])


def _shaped(worksheet: Worksheet, shape: Shape) -> PlainTable:
    headers = worksheet.rows[shape.first : shape.body]
    rows = [row for row in worksheet.rows[shape.body : shape.end] if not is_blank(row) and row not in headers]
    header = _header(worksheet, shape.first, shape.body - shape.first)
    return PlainTable(
        worksheet.name, _wide(header, shape.width) if header else None, [_wide(r, shape.width) for r in rows]
    )


def _header(worksheet: Worksheet, first: int, height: int) -> Sequence[Cell]:
    """One row as it stands, several joined."""
    if height == 1:
        return worksheet.rows[first]
    return [one.shown for one in headers_of(worksheet, first, height, ANY_LENGTH)] if height else []


def _wide(row: Sequence[Cell], width: int) -> Row:
    """The row as text, filled up to the table's width; what stands beyond it stays."""
    return [*map(plain_text, row), *[""] * (width - len(row))]


def plain_text(cell: Cell) -> str:
    """The cell as it stood; the number of a spreadsheet without an exponent."""
    return format(cell, "f") if isinstance(cell, Decimal) else cell
