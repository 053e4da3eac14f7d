"""A delimited text file to one worksheet: encoding, dialect, records. Every cell keeps every character."""

import csv
from typing import cast

from sourcing.basics.problem import Place, refused

from .dialect import ONE_COLUMN, Dialect, cell_limit, split_lines
from .dialect_choice import find_shape
from .encoding import decode
from .text_records import Records
from .worksheet import Cell, Worksheet, without_blank_end

MOST_CELLS, CELLS_OF_A_LINE = 12_600_000, 4
"""A cell takes about 60 bytes of memory, and a line as much as four cells: more than this is over 1 GiB. 800,000 rows
of 12 fit."""


def read_text(data: bytes, file: str) -> list[Worksheet]:
    """One worksheet without a name. Refuses bytes that are no text, more cells than memory should hold, and a quote
    that opens, is never closed and stands in no table that shows how its row should be read."""
    decoded = decode(data, file)
    text = decoded.text
    _refuse_too_large(text, ONE_COLUMN, file)
    lines = split_lines(text)
    shape = find_shape(lines)
    dialect = shape.dialect
    _refuse_too_large(text, dialect.delimiter, file)
    if dialect.needs_preparing:
        lines = split_lines(dialect.prepared(text))
    records = Records(lines, shape)
    try:
        with cell_limit():
            records.read()
    except csv.Error as error:
        raise refused(
            "not-a-sheet", place=Place(file=file), found="text with a cell of over 4 million characters"
        ) from error
    if records.open_quote is not None:
        raise refused("quote-not-closed", place=Place(file=file, row=records.open_quote))
    if dialect.spaced:
        _keep_inner_spaces(records, dialect)
    kept = without_blank_end(cast(list[list[Cell]], records.rows))
    reading = f"{dialect.told()}, {decoded.encoding}"
    return [Worksheet(name="", rows=kept, row_numbers=records.numbers[: len(kept)], reading=reading)]


def _refuse_too_large(text: str, delimiter: str, file: str) -> None:
    lines = max(text.count("\n"), text.count("\r")) + 1
    cells = text.count(delimiter) + lines
    if cells + (CELLS_OF_A_LINE - 1) * lines > MOST_CELLS:
        raise refused("text-too-large", place=Place(file=file), lines=lines, cells=cells)


def _keep_inner_spaces(records: Records, dialect: Dialect) -> None:
    """The csv module drops every space after a delimiter. One belongs to it; more belong to the cell."""
    plain = Dialect(dialect.delimiter, "", dialect.escape)
    for at, row in enumerate(records.rows):
        line = records.lines[records.numbers[at] - 1]
        if dialect.delimiter + "  " not in line or (dialect.quote and dialect.quote in line):
            continue
        cells = next(plain.reader([line], strict=False), [])
        if len(cells) == len(row):
            records.rows[at] = [cells[0], *(cell.removeprefix(" ") for cell in cells[1:])]
