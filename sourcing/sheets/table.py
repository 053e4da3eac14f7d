"""Where the table of a worksheet is: one or two header rows joined, found by how many known header words they hold."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sourcing.basics.sheet import Column, Field

from .columns import NUMBERS, PRICES, Header, columns_of, plain_key
from .header_words import break_quantity, header_key, is_unclear
from .worksheet import Cell, Worksheet, text_of

SEARCHED, SEARCHED_ON = 200, 5
"""How many rows from the top a header is looked for in, and how many after the first complete one."""
LONGEST_HEADER = 60


@dataclass(frozen=True)
class Table:
    """The header rows `first`..`body` - 1 (counted from 0) of a worksheet, and what its columns mean."""

    worksheet: Worksheet
    first: int
    body: int
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
        """Which of two candidates is the header: complete, then most known words, then one row rather than two."""
        return (self.complete, self.known, self.first - self.body)

    def at(self, field: Field) -> int | None:
        """Where the column of this meaning stands; None where there is none."""
        return next((column.at for column in self.columns if column.field == field), None)

    def all_at(self, field: Field) -> tuple[Column, ...]:
        """The columns of this meaning: only a net price can have several (quantity breaks)."""
        return tuple(column for column in self.columns if column.field == field)


def find_table(worksheet: Worksheet, meanings: Mapping[str, Field]) -> Table | None:
    """The best header of the worksheet: complete first, then most known words, then one row before two, then the top.

    None where no row holds two known words. `meanings` as `columns.meanings_by_key` gives them.
    """
    best: Table | None = None
    for at in range(min(len(worksheet.rows), SEARCHED)):
        if best and best.complete and at > best.first + SEARCHED_ON:
            break
        for height in (1, 2):
            table = _candidate(worksheet, at, height, meanings)
            if table and (best is None or table.rank > best.rank):
                best = table
    return best


def _candidate(worksheet: Worksheet, at: int, height: int, meanings: Mapping[str, Field]) -> Table | None:
    rows = worksheet.rows[at : at + height]
    if len(rows) < height or any(not any(text_of(cell) for cell in row) for row in rows):
        return None
    headers = single(rows[0]) if height == 1 else joined(rows[0], rows[1])
    table = Table(worksheet, at, at + height, headers, columns_of(headers, meanings))
    return table if table.known >= 2 else None


def single(row: Sequence[Cell]) -> tuple[Header, ...]:
    """The headers of one header row. A cell too long for a header is text of the preamble, so no header."""
    texts = [_header_text(cell) for cell in row]
    return tuple(Header(shown=text, readings=(text,) if text else ()) for text in texts)


def joined(upper: Sequence[Cell], lower: Sequence[Cell]) -> tuple[Header, ...]:
    """The headers of two rows. An upper cell also stands over the blank cells to its right (merged in a workbook)."""
    width = max(len(upper), len(lower))
    tops = [_header_text(cell) for cell in upper] + [""] * (width - len(upper))
    subs = [_header_text(cell) for cell in lower] + [""] * (width - len(lower))
    headers, over = [], ""
    for top, sub in zip(tops, subs, strict=True):
        over = top or (over if sub else "")
        headers.append(_join(over if sub else top, sub))
    return tuple(headers)


def _join(top: str, sub: str) -> Header:
    if not top or not sub:
        return Header(shown=top or sub, readings=(top or sub,) if top or sub else ())
    return Header(shown=f"{top} {sub}", readings=(f"{top} {sub}", f"{sub} {top}", sub))


def _header_text(cell: Cell) -> str:
    text = text_of(cell)
    return text if len(text) <= LONGEST_HEADER else ""


def repeats_header(row: Sequence[Cell], table: Table) -> bool:
    """Whether a row of the body is the header again: at least two cells and most of those filled stand in the header.

    Either row of a two-row header counts.
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
    columns = columns_of(single(row), {})
    words = {header_key(column.header) for column in columns if column.field or is_unclear(column.header)}
    return len(words) >= 3 and 2 * len(words) >= len(texts)
