"""A few rows of each table of a file beside what its columns may mean: also where no table is whole enough to read."""

from collections.abc import Mapping, Sequence

from sourcing.basics.sheet import Column, Field
from sourcing.basics.sheet_sample import SheetSample

from .files.grid import read_grid
from .headers.columns import meanings_by_key
from .plain import plain_text
from .proposal import LEAST_KNOWN, by_shape, largest_shape
from .region.tables import SaidColumns, tables_in
from .worksheet import Cell, Worksheet, is_blank

MOST_TABLES, MOST_ROWS, MOST_VALUES, LOOKED_THROUGH = 4, 4, 5, 300
LONGEST = 60


def sheet_samples(data: bytes, file: str, meanings: Mapping[str, Field]) -> tuple[SheetSample, ...]:
    """The tables with known headers, the longest first; where there is none, the largest table by its shape.

    Raises Refused where the file is no sheet; () where it has no table at all.
    """
    shown = [one for one in read_grid(data, file) if not one.hidden]
    said = SaidColumns(meanings_by_key(meanings), {})
    tables = [table for one in shown for table in tables_in(one, said) if table.known >= LEAST_KNOWN]
    whole = [table for table in tables if table.complete] or tables
    if whole:
        longest = sorted(whole, key=lambda table: table.body - table.end)[:MOST_TABLES]
        return tuple(_sample(table.worksheet, table.body, table.end, table.columns) for table in longest)
    found = largest_shape(shown)
    if found is None:
        return ()
    worksheet, shape = found
    return (_sample(worksheet, shape.body, shape.end, by_shape(worksheet, shape)),)


def _sample(worksheet: Worksheet, first: int, end: int, columns: Sequence[Column]) -> SheetSample:
    looked = range(first, min(end, first + LOOKED_THROUGH))
    filled = [(worksheet.row_numbers[at], row) for at in looked if not is_blank(row := worksheet.rows[at])]
    texts = [[_cut(row, column.at) for column in columns] for _, row in filled]
    return SheetSample(
        worksheet=worksheet.name,
        columns=tuple(columns),
        rows=tuple(number for number, _ in filled[:MOST_ROWS]),
        cells=tuple(map(tuple, texts[:MOST_ROWS])),
        values=tuple(_different([row[at] for row in texts]) for at in range(len(columns))),
    )


def _cut(row: Sequence[Cell], at: int) -> str:
    text = plain_text(row[at]).strip() if at < len(row) else ""
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 1]}…"


def _different(texts: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(text for text in texts if text))[:MOST_VALUES]
