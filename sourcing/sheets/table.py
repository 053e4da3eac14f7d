"""Where the tables of a worksheet are: up to three header rows joined, found by how many known header words they hold."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from sourcing.basics.sheet import Column, Field

from .columns import NUMBERS, PRICES, Header, columns_of, plain_key
from .header_words import break_quantity, header_key, is_unclear
from .worksheet import Cell, Worksheet, text_of

SEARCHED, SEARCHED_ON = 200, 5
"""How many rows from the top a header is looked for in, and how many after the first complete one."""
MOST_HEADER_ROWS = 3
LONGEST_HEADER = 60
AMOUNT = re.compile(r"[-+(]?[$€£]?\s*\d[\d.,' ]*\)?\s*[$€£]?")


@dataclass(frozen=True)
class Table:
    """The header rows `first`..`body` - 1 and the body `body`..`end` - 1 of a worksheet (from 0), and its columns."""

    worksheet: Worksheet
    first: int
    body: int
    end: int
    headers: tuple[Header, ...]
    columns: tuple[Column, ...]

    @property
    def known(self) -> int:
        """How many columns are known header words, those that need a person's word counted too."""
        return sum(column.field is not None or is_unclear(column.header) for column in self.columns)

    @property
    def complete(self) -> bool:
        """Whether there is a number and a price, or a price that needs a person's word."""
        fields = {column.field for column in self.columns}
        priced = fields.intersection(PRICES) or any(is_unclear(column.header) for column in self.columns)
        return bool(fields.intersection(NUMBERS) and priced)

    @property
    def rank(self) -> tuple[bool, int, int]:
        """Which of two candidates is the header: complete, then most known words, then fewer rows."""
        return (self.complete, self.known, self.first - self.body)

    def at(self, field: Field) -> int | None:
        """Where the column of this meaning stands; None where there is none."""
        return next((column.at for column in self.columns if column.field == field), None)

    def all_at(self, field: Field) -> tuple[Column, ...]:
        """The columns of this meaning: net prices (quantity breaks) and stocks (warehouses) can have several."""
        return tuple(column for column in self.columns if column.field == field)


def find_table(worksheet: Worksheet, meanings: Mapping[str, Field], start: int = 0) -> Table | None:
    """The best header from row `start` on: complete first, then most known words, then fewest rows, then the top.

    None where no row holds two known words. `meanings` as `columns.meanings_by_key` gives them.
    """
    best: Table | None = None
    for at in range(start, min(len(worksheet.rows), start + SEARCHED)):
        if best and best.complete and at > best.first + SEARCHED_ON:
            break
        for height in range(1, MOST_HEADER_ROWS + 1):
            table = _candidate(worksheet, at, height, meanings)
            if table and (best is None or table.rank > best.rank):
                best = table
    return best


def _candidate(worksheet: Worksheet, at: int, height: int, meanings: Mapping[str, Field]) -> Table | None:
    rows = worksheet.rows[at : at + height]
    if len(rows) < height or any(not any(text_of(cell) for cell in row) for row in rows):
        return None
    if any(not _could_be_header(row) for row in rows[1:]):
        return None
    headers = headers_of(worksheet, at, height)
    table = Table(worksheet, at, at + height, len(worksheet.rows), headers, columns_of(headers, meanings))
    return table if table.known >= 2 else None


def _could_be_header(row: Sequence[Cell]) -> bool:
    """Whether a row may be the lower part of a header. A row with an amount that is no quantity is a row of the body."""
    texts = [text for cell in row if (text := text_of(cell))]
    amounts = [text for text in texts if AMOUNT.fullmatch(text)]
    quantities = [int(text) for text in amounts if text.isdigit()]
    if len(quantities) < len(amounts) or sorted(set(quantities)) != quantities:
        return False
    others = (text for text in texts if text not in amounts and re.search(r"\d", text))
    return all(break_quantity(text) is not None for text in others)


def headers_of(worksheet: Worksheet, first: int, height: int, longest: int = LONGEST_HEADER) -> tuple[Header, ...]:
    """The headers of one to three rows, joined from the top down. A text longer than `longest` is no header."""
    rows = worksheet.rows[first : first + height]
    width = max(map(len, rows))
    texts = [[_header_text(cell, longest) for cell in row] + [""] * (width - len(row)) for row in rows]
    for at in range(height - 1):
        texts[at] = _spread(texts[at], texts[at + 1], _merged_widths(worksheet, first + at))
    return tuple(_joined(parts) for parts in zip(*texts, strict=True))


def _merged_widths(worksheet: Worksheet, row: int) -> dict[int, int] | None:
    """How many columns each cell of the row is merged over; None where the worksheet tells of no merged cells."""
    if not worksheet.merged:
        return None
    return {left: right - left + 1 for top, left, bottom, right in worksheet.merged if top <= row <= bottom}


def _spread(upper: Sequence[str], lower: Sequence[str], widths: dict[int, int] | None) -> list[str]:
    """The upper row with its cells over the columns they stand for: the merged ones, or all blank ones to the right."""
    found, over, until = [], "", 0
    for at, (top, sub) in enumerate(zip(upper, lower, strict=True)):
        if top:
            over, until = top, at + (widths.get(at, 1) if widths is not None else len(upper))
        elif not sub or at >= until:
            over = ""
        found.append(over)
    return found


def _joined(parts: Sequence[str]) -> Header:
    """A header of several rows: joined, turned round, and the lower rows alone, in the order they are looked up."""
    texts = [text for at, text in enumerate(parts) if text and text not in parts[:at]]
    if not texts:
        return Header(shown="", readings=())
    shown = " ".join(texts)
    if len(texts) == 1:
        return Header(shown=shown, readings=(shown,))
    tails = [" ".join(texts[at:]) for at in range(1, len(texts))]
    return Header(shown=shown, readings=(shown, " ".join([texts[-1], *texts[:-1]]), *tails))


def _header_text(cell: Cell, longest: int = LONGEST_HEADER) -> str:
    text = text_of(cell)
    return text if len(text) <= longest else ""


def repeats_header(row: Sequence[Cell], table: Table) -> bool:
    """Whether a row of the body is the header again: at least two cells and most of those filled stand in the header.

    Any row of a header of several rows counts.
    """
    filled = [(at, plain_key(text)) for at, cell in enumerate(row) if (text := text_of(cell))]
    for header in table.worksheet.rows[table.first : table.body]:
        same = sum(at < len(header) and plain_key(text_of(header[at])) == text for at, text in filled)
        if same >= 2 and same * 10 >= len(filled) * 7:
            return True
    return False


def other_header(row: Sequence[Cell]) -> bool:
    """Whether a row of the body is the header of another table: three known words and no digits but in breaks."""
    texts = [text for cell in row if (text := _header_text(cell))]
    if any(re.search(r"\d", text) and break_quantity(text) is None for text in texts):
        return False
    columns = columns_of(tuple(_joined([text]) for text in texts), {})
    words = {header_key(column.header) for column in columns if column.field or is_unclear(column.header)}
    return len(words) >= 3 and 2 * len(words) >= len(texts)


def ending_at(table: Table, end: int) -> Table:
    """The same table with a body that ends before row `end`."""
    return replace(table, end=end)


def with_columns(table: Table, columns: tuple[Column, ...]) -> Table:
    """The same table with columns that mean something else."""
    return replace(table, columns=columns)
