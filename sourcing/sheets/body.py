"""The body of a table as columns of cells."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from sourcing.basics.sheet import Field

from .table import Table
from .worksheet import Cell, text_of

LONGEST_SHOWN = 80


@dataclass(frozen=True)
class Body:
    """The rows under a table's header, read column by column. Short rows are filled up with blank cells."""

    table: Table

    @cached_property
    def rows(self) -> list[list[Cell]]:
        """The rows as they stood, of any length."""
        return self.table.worksheet.rows[self.table.body :]

    @cached_property
    def width(self) -> int:
        """How many columns the header has."""
        return len(self.table.headers)

    @cached_property
    def _columns(self) -> list[tuple[Cell, ...]]:
        width, blank = self.width, [""] * self.width
        rows: list[list[Cell]] = [row if len(row) == width else (row + blank)[:width] for row in self.rows]
        return list(zip(*rows, strict=True)) if rows else [()] * width

    @cached_property
    def too_wide(self) -> list[int]:
        """Rows with something right of the last header: a delimiter inside a cell has moved its neighbours."""
        width = self.width
        return [at for at, row in enumerate(self.rows) if len(row) > width and _filled(row[width:])]

    @cached_property
    def swallowed(self) -> list[int]:
        """Rows with a line inside a cell that has as many delimiters as a row: a stray quote took in its neighbours."""
        numbers = self.table.worksheet.row_numbers
        if isinstance(numbers, range):
            return []
        first, most = self.table.body, self.width - 1
        spans = [at for at in range(len(self.rows) - 1) if numbers[first + at + 1] - numbers[first + at] > 1]
        return [at for at in spans if any(_holds_a_row(cell, most) for cell in self.rows[at])]

    def shown(self, at: int) -> str:
        """The row's filled cells, shortened, for a message."""
        text = " | ".join(text for cell in self.rows[at] if (text := text_of(cell)))
        return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 1] + "…"

    def cells_at(self, at: int) -> Sequence[Cell]:
        """The cells of a column."""
        return self._columns[at]

    def cells(self, field: Field) -> Sequence[Cell] | None:
        """The cells of the column that means `field`; None where there is no such column."""
        at = self.table.at(field)
        return None if at is None else self._columns[at]


def _holds_a_row(cell: Cell, most: int) -> bool:
    lines = cell.splitlines()[1:] if isinstance(cell, str) else []
    return any(line.count(delimiter) >= most for line in lines for delimiter in ",;\t|")


def _filled(cells: Sequence[Cell]) -> bool:
    return any(not isinstance(cell, str) or cell.strip() for cell in cells)
