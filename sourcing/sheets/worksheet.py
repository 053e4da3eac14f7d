"""A worksheet as cells, and what a cell's text is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property
from typing import Any, overload

import numpy as np
from numpy.typing import NDArray

Cell = str | Decimal
"""Text as it stood in the file, or the number of a spreadsheet's number cell (its decimal mark is not in doubt)."""

AT_ONCE = 2000
"""Rows turned into columns at once: as many as stay in the processor's cache."""

MOST_EXACT_NUMBER = Decimal(10) ** 15
"""A spreadsheet keeps 15 significant digits (its published limit); longer whole numbers have lost some."""


@dataclass(frozen=True)
class Worksheet:
    """Rows of cells, up to the last row that is not blank. `row_numbers`: what the file shows for each row.

    For a text file that is the first line of the record. Rows may differ in length. `hidden`: the workbook hides it.
    `hidden_rows`, `hidden_columns`: counted from 0, as `rows` and their cells are. `merged`: first row, first column,
    last row, last column of each merged region; only its first cell is filled. `currencies`: for the number cells
    whose number format shows a currency: by column, by what the format shows ('€', '$', 'EUR'), the rows. `struck`:
    by column, the rows of cells whose font has a line through it (XLSX and XLSM only). `reading`: how a text file was
    read, for people: 'semicolons, cp1252'; blank for a workbook.
    """

    name: str
    rows: Sequence[list[Cell]]
    row_numbers: Sequence[int]
    hidden: bool = False
    hidden_rows: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    merged: tuple[tuple[int, int, int, int], ...] = ()
    currencies: Mapping[int, Mapping[str, Sequence[int]]] = field(default_factory=dict)
    struck: Mapping[int, frozenset[int]] = field(default_factory=dict)
    reading: str = ""
    memo: dict[tuple[int, ...], Any] = field(default_factory=dict, compare=False, repr=False)
    """What was worked out of the cells once, such as the different cells of a column."""

    @cached_property
    def width(self) -> int:
        """The most cells a row has."""
        rows = self.rows
        return rows.width if isinstance(rows, ColumnRows) else max(map(len, rows), default=0)

    def columns(self, first: int, end: int, width: int) -> list[NDArray[Any]]:
        """The rows `first`..`end` - 1 as `width` columns of cells, new arrays of objects; short rows are filled up."""
        if isinstance(self.rows, ColumnRows):
            return self.rows.columns(first, end, width)
        found = [np.full(end - first, "", dtype=object) for _ in range(width)]
        for start in range(first, end, AT_ONCE):
            some = self.rows[start : min(start + AT_ONCE, end)]
            blank = [""] * width
            even = [row if len(row) == width else (row + blank)[:width] for row in some]
            for column, cells in zip(found, zip(*even, strict=True), strict=False):
                column[start - first : start - first + len(some)] = cells
        return found


class ColumnRows(Sequence[list[Cell]]):
    """Rows of one width kept as columns: a long text file is read column by column and seldom looked at by row."""

    def __init__(self, columns: Sequence[NDArray[Any]]) -> None:
        self._columns, self.width = columns, len(columns)

    def __len__(self) -> int:
        return len(self._columns[0]) if self._columns else 0

    @overload
    def __getitem__(self, at: int) -> list[Cell]: ...
    @overload
    def __getitem__(self, at: slice) -> list[list[Cell]]: ...
    def __getitem__(self, at: int | slice) -> list[Cell] | list[list[Cell]]:
        if isinstance(at, slice):
            return [list(row) for row in zip(*(column[at].tolist() for column in self._columns), strict=True)]
        return [column[at] for column in self._columns]

    def without_blank_end(self) -> "ColumnRows":
        """The rows up to the last that is not blank."""
        last = len(self)
        while last and is_blank(self[last - 1]):
            last -= 1
        return ColumnRows([column[:last] for column in self._columns])

    def columns(self, first: int, end: int, width: int) -> list[NDArray[Any]]:
        """The columns of some rows; what a wider header asks for beside them is blank."""
        kept = [column[first:end].copy() for column in self._columns[:width]]
        return kept + [np.full(end - first, "", dtype=object) for _ in range(width - len(kept))]


def text_of(cell: Cell) -> str:
    """The cell as text, white space (no-break spaces too) collapsed. 40388.0 in a number cell is '40388'."""
    if isinstance(cell, str):
        return " ".join(cell.split())
    return format(cell, "f") if abs(cell) < MOST_EXACT_NUMBER else format(cell, "E")


def line_of(row: Sequence[Cell]) -> str:
    """The row's texts as one line."""
    return " ".join(text for cell in row if (text := text_of(cell)))


def filled(cells: Sequence[Cell]) -> bool:
    """Whether some cell has anything but white space. A zero in a number cell is something."""
    return any(not isinstance(cell, str) or cell.strip() for cell in cells)


def is_blank(row: Sequence[Cell]) -> bool:
    """Whether the row has no cell with anything but white space."""
    return not filled(row)


def without_blank_end(rows: list[list[Cell]]) -> list[list[Cell]]:
    """The rows up to the last that is not blank. Changes the list it is given: copies of long lists cost time."""
    last = len(rows)
    while last and is_blank(rows[last - 1]):
        last -= 1
    del rows[last:]
    return rows


def letter_of(at: int) -> str:
    """A column's letter as spreadsheets show it: 0 is A, 26 is AA."""
    letters, left = "", at + 1
    while left:
        left, digit = divmod(left - 1, 26)
        letters = chr(ord("A") + digit) + letters
    return letters


def number_of(letters: str) -> int:
    """How many columns there are up to this letter: A is 1, AA is 27."""
    count = 0
    for letter in letters:
        count = count * 26 + ord(letter) - ord("A") + 1
    return count
