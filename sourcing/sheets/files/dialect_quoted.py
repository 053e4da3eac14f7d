"""Cells of several lines in quotes: they tell the delimiter, since a quote opens after one and closes before one."""

import csv
from collections.abc import Sequence

from .dialect import Dialect

LEAST_ROWS = 3


def lines_of_long_cells(sample: Sequence[str], dialect: Dialect) -> Sequence[str]:
    """The lines, without a record still open at their end, where cells of several lines in quotes hold most of them,
    no record is at fault and all are of one width; else nothing."""
    if not dialect.quote or dialect.runs or dialect.escape:
        return []
    reader = dialect.reader(sample)
    widths: set[int] = set()
    rows = taken = several = 0
    try:
        for row in reader:
            lines_of_it, taken = reader.line_num - taken, reader.line_num
            if row:
                widths.add(len(row))
                rows += 1
                several += lines_of_it if lines_of_it > 1 else 0
            if len(widths) > 1:
                return []
    except csv.Error:
        # The sample was cut in a cell, or has its first stray quote here: many lines before it tell enough.
        if taken * 2 < len(sample):
            return []
    return sample[:taken] if rows >= LEAST_ROWS and max(widths) > 1 and several * 2 > taken else []
