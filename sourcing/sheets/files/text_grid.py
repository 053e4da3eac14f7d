"""A delimited text file to one worksheet: encoding, dialect, records. Every cell keeps every character."""

import csv
from collections.abc import Sequence
from typing import cast

from sourcing.basics.problem import Place, refused

from ..headers.header_words import known_words
from ..worksheet import Cell, Worksheet, without_blank_end
from .dialect import ONE_COLUMN, Dialect, cell_limit, split_lines
from .dialect_choice import Shape, find_shape
from .encoding import decode
from .long_text import Signs, read_long
from .text_records import Records

WRAPPED_LOOKED_AT = 200
BEGINNING = 1_000_000
"""Characters in which the dialect is looked for; more than are tried."""
MOST_CELLS, CELLS_OF_A_LINE = 12_600_000, 4
"""A cell takes about 60 bytes of memory, and a line as much as four cells: more than this is over 1 GiB. 800,000 rows
of 12 fit."""


def read_text(data: bytes, file: str) -> list[Worksheet]:
    """One worksheet without a name. Refuses bytes that are no text, more cells than memory should hold, and a quote
    that opens, is never closed and stands in no table that shows how its row should be read."""
    decoded = decode(data, file)
    text = decoded.text
    signs = Signs(text)
    _refuse_too_large(signs, ONE_COLUMN, file)
    shape = find_shape(_unwrapped(split_lines(text[:BEGINNING])))
    dialect = shape.dialect
    _refuse_too_large(signs, dialect.delimiter, file)
    kept, numbers = _long(signs, shape) or _rows(_unwrapped(split_lines(text)), shape, file)
    reading = f"{dialect.told()}, {decoded.encoding}"
    return [Worksheet(name="", rows=kept, row_numbers=numbers[: len(kept)], reading=reading)]


def _long(signs: Signs, shape: Shape) -> tuple[Sequence[list[Cell]], Sequence[int]] | None:
    """A long file without a fault in it, the quicker way; None for all others."""
    dialect = shape.dialect
    if dialect.quote == "'" or dialect.escape or dialect.spaced or dialect.runs:
        return None
    rows = read_long(signs, dialect.delimiter, dialect.quote, shape.width)
    return (rows.without_blank_end(), range(1, len(rows) + 1)) if rows else None


def _rows(lines: list[str], shape: Shape, file: str) -> tuple[Sequence[list[Cell]], Sequence[int]]:
    dialect = shape.dialect
    if dialect.needs_preparing:
        lines = split_lines(dialect.prepared("".join(lines)))
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
    return without_blank_end(cast(list[list[Cell]], records.rows)), records.numbers


def _unwrapped(lines: list[str]) -> list[str]:
    """The lines without the quotes around each whole line, as a spreadsheet saves lines it took for one cell.

    Only where what is inside is a table: a header of two known words or more, or rows of one width.
    """
    whole = [line.rstrip("\r\n") for line in lines[:WRAPPED_LOOKED_AT]]
    if len(whole) < 2 or not all(len(line) > 1 and line[0] == line[-1] == '"' for line in whole if line):
        return lines
    inside = [_inside(line) for line in lines]
    if None in inside[:WRAPPED_LOOKED_AT]:
        return lines
    heads = [line or "" for line in inside[:WRAPPED_LOOKED_AT]]
    if not any(_is_table(heads, delimiter) for delimiter in ",;\t|"):
        return lines
    return [line if new is None else new + "\n" for line, new in zip(lines, inside, strict=True)]


def _is_table(lines: Sequence[str], delimiter: str) -> bool:
    """Whether a line has two known header words, or all are rows of one width of three cells or more, as no text is:
    text has spaces after its commas."""
    if any(known_words(line.split(delimiter)) > 1 for line in lines):
        return True
    try:
        rows = [row for row in Dialect(delimiter).reader(lines) if row]
    except csv.Error:
        return False
    spaced = any(f"{delimiter} " in line for line in lines if '"' not in line)
    return len(rows) > 2 and len(rows[0]) > 2 and len({len(row) for row in rows}) == 1 and not spaced


def _inside(line: str) -> str | None:
    """What stands in the quotes around a whole line, its doubled quotes single; None where the quotes end before."""
    bare = line.rstrip("\r\n")
    if not bare:
        return ""
    inner = bare[1:-1] if len(bare) > 1 and bare[0] == bare[-1] == '"' else '"'
    return None if '"' in inner.replace('""', "") else inner.replace('""', '"')


def _refuse_too_large(signs: Signs, delimiter: str, file: str) -> None:
    lines = max(signs["\n"], signs["\r"]) + 1
    cells = signs[delimiter] + lines
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
