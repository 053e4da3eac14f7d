"""The body of a table as columns of cells."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from sourcing.basics.sheet import Field

from .table import Table
from .worksheet import Cell


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

    def cells_at(self, at: int) -> Sequence[Cell]:
        """The cells of a column."""
        return self._columns[at]

    def cells(self, field: Field) -> Sequence[Cell] | None:
        """The cells of the column that means `field`; None where there is no such column."""
        at = self.table.at(field)
        return None if at is None else self._columns[at]


def _filled(cells: Sequence[Cell]) -> bool:
    return any(not isinstance(cell, str) or cell.strip() for cell in cells)
