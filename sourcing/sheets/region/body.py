"""The body of a table as columns, each as its different cells and which of them stands in which row.

A column of 300,000 cells has few different packs or stocks: everything is parsed once for each different cell and
laid out over the rows by number, which is what keeps a long sheet quick.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, cast

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from sourcing.basics.sheet import Column, Field

from ..worksheet import Cell, filled, text_of
from .table import Table

LONGEST_SHOWN = 80
JUDGED = 2000
STRUCK: tuple[Field, ...] = ("supplier number", "maker number", "description", "net price")
"""Fields where a line through the cell says something of the whole row; a list price is often struck for show."""
LINE_FEED = 10
DIGIT = re.compile("[0-9]")
Objects = NDArray[Any]
"""An array of dtype object: values of Python, one a row."""


def objects(values: Iterable[object], count: int) -> Objects:
    """The values as an array of objects. numpy would make rows and columns of tuples otherwise."""
    return np.fromiter(values, dtype=object, count=count)


def is_none(values: Objects) -> NDArray[np.bool_]:
    """Where there is no value."""
    return np.fromiter((value is None for value in values), dtype=bool, count=len(values))


@dataclass(frozen=True)
class Coded:
    """A column: its different cells, and for each row which of them it holds."""

    different: list[Cell]
    codes: NDArray[np.intp]

    @cached_property
    def whole(self) -> str:
        """The different texts as one in small letters, a line each, for a quick look at all of them."""
        return "\n".join(self._texts).casefold()

    @cached_property
    def _texts(self) -> list[str]:
        """The different cells that are texts."""
        if set(map(type, self.different)) <= {str}:
            return cast(list[str], self.different)
        return [cell for cell in self.different if isinstance(cell, str)]

    @cached_property
    def without_digits(self) -> list[int]:
        """The numbers of the cells without a digit from 0 to 9. Looks at all of them as one text."""
        texts = self._texts
        if len(texts) < len(self.different):
            texts = [cell if isinstance(cell, str) else "0" for cell in self.different]
        raw = np.frombuffer(("\n".join(texts) + "\n").encode("utf-8", "surrogatepass"), dtype=np.uint8)
        ends = np.flatnonzero(raw == LINE_FEED)
        if len(ends) != len(texts):  # a line end stands in some cell
            return [number for number, text in enumerate(texts) if not DIGIT.search(text)]
        digits_before = np.cumsum((raw >= ord("0")) & (raw <= ord("9")))[ends]
        found: list[int] = np.flatnonzero(np.diff(digits_before, prepend=0) == 0).tolist()
        return found

    def spread(self, values: Sequence[object]) -> Objects:
        """One value for each different cell, laid out over the rows."""
        return objects(values, len(values))[self.codes]

    def some_rows(self, most: int) -> list[Cell]:
        """The cells of about so many rows from all over the column, or of all."""
        return [self.different[code] for code in self.codes[:: max(1, len(self.codes) // most)]]

    def rows_with(self, numbers: Iterable[int]) -> list[int]:
        """The rows that hold any of the different cells with these numbers, in order."""
        wanted = np.zeros(len(self.different), dtype=bool)
        wanted[list(numbers)] = True
        return [int(at) for at in np.flatnonzero(wanted[self.codes])]


@dataclass(frozen=True)
class Body:
    """The rows under a table's header, read column by column. Short rows are filled up with blank cells."""

    table: Table

    @cached_property
    def height(self) -> int:
        """How many rows there are."""
        return self.table.end - self.table.body

    @cached_property
    def width(self) -> int:
        """How many columns the header has."""
        return len(self.table.headers)

    def row(self, at: int) -> Sequence[Cell]:
        """A row as it stood, of any length, merged cells filled down."""
        row = self.table.worksheet.rows[self.table.body + at]
        filled_down = self._filled_down.get(at)
        if not filled_down:
            return row
        wide = [*row, *[""] * (self.width - len(row))]
        return [filled_down.get(column, cell) for column, cell in enumerate(wide)]

    @cached_property
    def _filled_down(self) -> dict[int, dict[int, Cell]]:
        """What cells merged over several rows say in their lower rows: by row and column."""
        found: dict[int, dict[int, Cell]] = {}
        rows, first = self.table.worksheet.rows, self.table.body
        for top, left, bottom, _ in self.table.worksheet.merged:
            if first <= top < bottom and left < len(rows[top]) and left < self.width:
                for at in range(top + 1, min(bottom, self.table.end - 1) + 1):
                    found.setdefault(at - first, {})[left] = rows[top][left]
        return found

    @cached_property
    def _columns(self) -> Sequence[Objects]:
        """Worked out once for a worksheet: its tables are looked at several times before they are read."""
        table, memo = self.table, self.table.worksheet.memo
        key = (table.body, table.end, self.width)
        if key not in memo:
            found = table.worksheet.columns(*key)
            for at, cells in self._filled_down.items():
                for column, cell in cells.items():
                    found[column][at] = cell
            memo[key] = found
        return cast(Sequence[Objects], memo[key])

    def coded(self, at: int) -> Coded:
        """A column by its different cells."""
        memo, key = self.table.worksheet.memo, (self.table.body, self.table.end, self.width, at)
        if key not in memo:
            codes, different = pd.factorize(self._columns[at])
            memo[key] = Coded(different.tolist(), codes)
        return cast(Coded, memo[key])

    def coded_field(self, field: Field) -> Coded | None:
        """The column that means `field`, by its different cells; None where there is no such column."""
        at = self.table.at(field)
        return None if at is None else self.coded(at)

    def columns(self, field: Field) -> tuple[Column, ...]:
        """The columns of this meaning."""
        return self.table.all_at(field)

    def first_cells(self, at: int) -> list[Cell]:
        """The first cells of a column, row by row, to judge by what it may mean."""
        return cast(list[Cell], self._columns[at][:JUDGED].tolist())

    @cached_property
    def too_wide(self) -> list[int]:
        """Rows with something right of the last header: a delimiter inside a cell has moved its neighbours."""
        rows, width = self.table.worksheet.rows, self.width
        if self.table.worksheet.width <= width:
            return []
        body = range(self.table.body, self.table.end)
        return [at - self.table.body for at in body if len(rows[at]) > width and filled(rows[at][width:])]

    @cached_property
    def swallowed(self) -> list[int]:
        """Rows with a line inside a cell that has as many delimiters as a row: a stray quote took in its neighbours."""
        numbers = self.table.worksheet.row_numbers
        if isinstance(numbers, range):
            return []
        first, most = self.table.body, self.width - 1
        spans = [at for at in range(self.height - 1) if numbers[first + at + 1] - numbers[first + at] > 1]
        return [at for at in spans if any(_holds_a_row(cell, most) for cell in self.row(at))]

    @cached_property
    def struck(self) -> list[int]:
        """Rows whose number, description or net price is struck through, as is done with what is gone."""
        first, by_column = self.table.body, self.table.worksheet.struck
        columns = (column.at for field in STRUCK for column in self.columns(field))
        rows = {at for column in columns for at in by_column.get(column, ()) if first <= at < self.table.end}
        return [at - first for at in sorted(rows)]

    def shown(self, at: int) -> str:
        """The row's filled cells, shortened, for a message."""
        text = " | ".join(text for cell in self.row(at) if (text := text_of(cell)))
        return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 1] + "…"

    def row_number(self, at: int) -> int:
        """The number the file shows for a row of the body."""
        return self.table.worksheet.row_numbers[self.table.body + at]


def _holds_a_row(cell: Cell, most: int) -> bool:
    lines = cell.splitlines()[1:] if isinstance(cell, str) else []
    return any(line.count(delimiter) >= most for line in lines for delimiter in ",;\t|")
