"""Whether a row looks like the table's rows: what tells a row from a line of a longer cell."""

from collections.abc import Sequence

from .dialect_cells import CellKind, cell_kind
from .dialect_choice import Shape

SHARP: frozenset[CellKind] = frozenset({"number", "date", "time", "code"})
"""Kinds of column in which a word or a line of prose stands out."""
FIGURES: frozenset[CellKind] = frozenset({"number", "date", "time"})
LEAST_SHARP = 2
"""So many columns must speak for a row before a record that is read without a fault is taken apart for it."""


def surely_a_row(row: Sequence[str], shape: Shape) -> bool:
    """Whether every cell is like its column, and there are columns of numbers and figures to tell it by.

    Prose has a space after its comma, which a cell of this table has not.
    """
    if len(row) != shape.width or any(cell.startswith(" ") for cell in row):
        return False
    sharp = [(cell_kind(cell.strip('"')), kind) for cell, kind in zip(row, shape.kinds, strict=True) if kind in SHARP]
    enough = len(sharp) >= LEAST_SHARP and any(kind in FIGURES for _, kind in sharp)
    return enough and all(found == kind for found, kind in sharp)


def begins_a_row(row: Sequence[str], shape: Shape) -> bool:
    """Whether the first of several cells is a number or a code like those of the first column."""
    return len(row) > 1 and shape.kinds[:1] == (cell_kind(row[0]),) and shape.kinds[0] in SHARP


def maybe_a_row(row: Sequence[str], shape: Shape) -> bool:
    """Whether at least one column of figures has a figure in this row, or the table has no such column."""
    if len(row) != shape.width:
        return False
    pairs = [(cell_kind(cell.strip('"')), kind) for cell, kind in zip(row, shape.kinds, strict=True) if kind in FIGURES]
    return not pairs or any(found in FIGURES for found, _ in pairs)
