"""A long worksheet's rows to columns of cells in one pass; its numbers are made exact once for each different one."""

from itertools import repeat
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ..worksheet import ColumnRows
from .workbook_numbers import value_cell

LEAST = 20_000
"""Rows from which on columns are worth it; the cells of shorter worksheets are easier to mark one by one."""
ROWS_AT_ONCE = 2048


def as_columns(rows: list[list[Any]]) -> tuple[ColumnRows, int]:
    """The reader's rows, all of one width, as columns of cells, and how many cells were no text. Empties the list."""
    columns = [np.empty(len(rows), dtype=object) for _ in rows[0]]
    for first in range(0, len(rows), ROWS_AT_ONCE):
        block = rows[first : first + ROWS_AT_ONCE]
        for column, cells in zip(columns, zip(*block, strict=True), strict=True):
            column[first : first + len(block)] = cells
    rows.clear()
    return ColumnRows(columns), sum(map(_make_exact, columns))


def _make_exact(column: NDArray[Any]) -> int:
    """Makes cells of the column's values, in place; how many were no text."""
    kinds = set(map(type, column.tolist()))
    if kinds == {str}:
        return 0
    numbers = np.fromiter(map(isinstance, column.tolist(), repeat(float)), dtype=bool, count=len(column))
    different, where = np.unique(column[numbers].astype(np.float64), return_inverse=True)
    cells = np.fromiter(map(value_cell, different.tolist()), dtype=object, count=len(different))
    column[numbers] = cells[where]
    others = [] if kinds <= {str, float} else [at for at, value in enumerate(column) if not _is_cell(value)]
    for at in others:
        column[at] = value_cell(column[at])
    return int(numbers.sum()) + len(others)


def _is_cell(value: object) -> bool:
    return isinstance(value, str) or type(value).__name__ == "Decimal"
