"""Rows of a whole table whose number is one of ours, by key: in one go, whatever the length of the table."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import pandas as pd

Positions = npt.NDArray[np.int64]

MOST_PAIRS_OF_A_KEY = 10_000
"""A number borne by many rows and many parts ('N/A', '1') says nothing, and its pairs would fill the memory."""


def pairs_by_key(row_keys: Sequence[str], part_keys: Sequence[str]) -> tuple[Positions, Positions]:
    """Every pair of a row and a part with the same key, by position, row by row. A blank key finds nothing.

    Nor does one with more than `MOST_PAIRS_OF_A_KEY` pairs: such a number is nobody's in particular.
    """
    part_at, known = pd.factorize(np.array(part_keys, dtype=object))
    key_at = pd.Index(known).get_indexer(np.array(row_keys, dtype=object)) if len(known) else np.full(len(row_keys), -1)
    bearing = np.bincount(part_at, minlength=len(known))
    asked = np.bincount(key_at[key_at >= 0], minlength=len(known))
    told = (asked * bearing <= MOST_PAIRS_OF_A_KEY) & (known != "")
    rows = np.flatnonzero((key_at >= 0) & told[key_at] if len(known) else key_at >= 0)
    keys = key_at[rows]
    counts = bearing[keys]
    order, starts = np.argsort(part_at, kind="stable"), np.cumsum(bearing) - bearing
    within = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    return np.repeat(rows, counts), order[np.repeat(starts[keys], counts) + within]
