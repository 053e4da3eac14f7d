"""Records damaged by a stray quote, an escape nobody else uses or another delimiter: other ways to read their line.

A reading is taken only where it gives a row of the table's width. Nothing is dropped: a stray quote stays a character.
"""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import replace

from .dialect import Dialect
from .dialect_cells import cell_kind, keeps_open_quote
from .dialect_choice import Shape
from .dialect_fit import begins_a_row, surely_a_row

MOST_QUOTES = 12
"""So many opening quotes of a line are tried as the stray one."""
LONGEST_LINE = 200_000
MOST_JOINED = 8
"""A damaged record with real line breaks in it is looked for over so many lines."""
OTHERS = (Dialect(";"), Dialect(","), Dialect("\t"), Dialect("|"), Dialect(",", spaced=True), Dialect(" "))
SURE = 0.7
"""So much of a row must look like its columns before it is read with another delimiter than the rest."""


def mended(lines: Sequence[str], at: int, shape: Shape) -> tuple[list[str], int]:
    """The row that begins on this line, read so that it fits the table, and the line after it.

    Where no reading fits, the row is its line alone, with quotes as characters if they do not pair.
    """
    row = _fitting(lines[at], shape)
    if row and not (keeps_open_quote(row, shape.dialect.quote) and not surely_a_row(row, shape)):
        return row, at + 1
    if joined := _joined(lines, at, shape):
        return joined
    return row or _as_it_goes(lines[at], shape), at + 1


def _joined(lines: Sequence[str], at: int, shape: Shape) -> tuple[list[str], int] | None:
    """The row that takes in the lines that follow, and the line after it; a line that is surely a row ends it."""
    text = lines[at]
    for after in range(at + 1, min(at + MOST_JOINED, len(lines))):
        text += lines[after]
        cells = literal(lines[after], shape.dialect)
        if len(text) > LONGEST_LINE or surely_a_row(cells, shape) or begins_a_row(cells, shape):
            return None
        quotes = text.count(shape.dialect.quote) if shape.dialect.quote else 0
        for stray in range(-1, quotes if quotes <= MOST_QUOTES // 2 else 0):
            row = _split(text, shape.dialect, only_odd=False, stray=stray)
            if len(row) == shape.width:
                return row, after + 1
    return None


def mending_work(line: str, shape: Shape) -> int:
    """How much work it is to mend the line, in characters looked at; every line has its share of fixed work."""
    quotes = line.count(shape.dialect.quote) if shape.dialect.quote else 0
    return 400 + len(line) * (2 + 2 * min(quotes, MOST_QUOTES))


def _fitting(line: str, shape: Shape) -> list[str] | None:
    """The reading of the table's width with the fewest quotes left in cells; then one of another usual width."""
    rows = [row for row in _readings(line, shape.dialect) if len(row) in shape.widths]
    quote = shape.dialect.quote or '"'
    return min(rows, key=lambda row: (len(row) != shape.width, sum(cell.count(quote) for cell in row)), default=None)


def _readings(line: str, dialect: Dialect) -> Iterator[list[str]]:
    """Ways to read the line alone: as it should be, with an escape, with one stray quote, with no quotes at all."""
    if len(line) <= LONGEST_LINE and dialect.quote:
        yield from one_row(line, dialect)
        if "\\" in line and not dialect.escape:
            escaped = replace(dialect, escape=True)
            yield from one_row(escaped.prepared(line), escaped)
        for only_odd in (True, False):
            for stray in range(-1, min(line.count(dialect.quote), MOST_QUOTES)):
                yield _split(line, dialect, only_odd=only_odd, stray=stray)
    yield literal(line, dialect)


def one_row(line: str, dialect: Dialect) -> Iterator[list[str]]:
    """The line as the csv module reads it strictly; nothing where it can't."""
    try:
        yield from dialect.reader([line])
    except csv.Error:
        return


def literal(line: str, dialect: Dialect) -> list[str]:
    """The line with quotes as characters like any other."""
    rows = list(replace(dialect, quote="").reader([line], strict=False))
    return rows[0] if rows else []


def _as_it_goes(line: str, shape: Shape) -> list[str]:
    if shape.width < 2 or len(line) > LONGEST_LINE or not shape.dialect.quote:
        return literal(line, shape.dialect)
    return _split(line, shape.dialect, only_odd=True) or literal(line, shape.dialect)


def _split(line: str, dialect: Dialect, *, only_odd: bool, stray: int = -1) -> list[str]:
    """The cells, where a quote closes a cell only in front of a delimiter or the end.

    `only_odd`: of several quotes in a row an even number are doubled ones and close nothing. `stray`: the opening
    quote, counted from 0, that is a character and opens nothing. Nothing where another one is never closed, or where a
    line would end in a cell without quotes.
    """
    line, quote, cells, at, opened = line.rstrip("\r\n"), dialect.quote, list[str](), 0, 0
    while True:
        if dialect.spaced and cells and line.startswith(" ", at):
            at += 1
        end = -1
        if quote and line.startswith(quote, at):
            if opened != stray:
                end = _closing(line, at + 1, dialect, only_odd)
                if end < 0:
                    return []
            opened += 1
        if end >= 0:
            cells.append(line[at + 1 : end].replace(quote * 2, quote))
            at = end + 1
        else:
            end = line.find(dialect.delimiter, at)
            cells.append(line[at:] if end < 0 else line[at:end])
            if "\n" in cells[-1]:
                return []
            at = len(line) if end < 0 else end
        if at >= len(line):
            return [dialect.plain(cell) for cell in cells]
        at += 1


def _closing(line: str, at: int, dialect: Dialect, only_odd: bool) -> int:
    """Where the quote stands that closes the cell whose text begins at `at`; -1 where none does."""
    mark = dialect.delimiter + " " * dialect.spaced
    while (at := line.find(dialect.quote, at)) >= 0:
        end = at
        while end < len(line) and line[end] == dialect.quote:
            end += 1
        closes = end == len(line) or line.startswith(mark, end)
        if closes and not (only_odd and (end - at) % 2 == 0):
            return end - 1
        at = end
    return -1


def with_another_delimiter(line: str, shape: Shape) -> list[str] | None:
    """The row read with another delimiter, where it then has the table's width and its cells look like the table's."""
    if shape.width < 3 or len(line) > LONGEST_LINE:
        return None
    for other in OTHERS:
        if other.delimiter == shape.dialect.delimiter and other.spaced == shape.dialect.spaced:
            continue
        if line.count(other.delimiter) < shape.width - 1:
            continue
        for row in one_row(line, replace(other, quote=shape.dialect.quote, escape=shape.dialect.escape)):
            if len(row) == shape.width and _looks_like(row, shape):
                return row
    return None


def _looks_like(row: Sequence[str], shape: Shape) -> bool:
    """Whether the cells are of their columns' kinds, at least one of them a figure."""
    kinds = [cell_kind(cell) for cell in row]
    same = [kind for kind, usual in zip(kinds, shape.kinds, strict=True) if kind in (usual, "blank")]
    return len(same) >= SURE * len(kinds) and bool({"number", "date", "time"} & set(same))
