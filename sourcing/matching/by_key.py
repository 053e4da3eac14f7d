"""Rows of a whole table whose number is one of ours, by key: one merge, whatever the length of the table."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import pandas as pd

from ..basics.part_number import maker_key, number_keys

Positions = npt.NDArray[np.int64]

SAME, NOT_STATED, OTHER = 0, 1, 2
"""Of the makers of a row and a part: the same, one of them not stated, two different ones."""

MOST_PAIRS_OF_A_KEY = 10_000
"""A number borne by many rows and many parts ('N/A', '1') says nothing, and its pairs would fill the memory."""


def maker_keys(makers: Sequence[str]) -> list[str]:
    """Each maker's key; a table names few, so each is worked out once."""
    known = {maker: maker_key(maker) for maker in set(makers)}
    return [known[maker] for maker in makers]


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


def rows_by_key(
    numbers: Sequence[str], makers: Sequence[str], part_keys: Sequence[str], part_makers: Sequence[str]
) -> pd.DataFrame:
    """The pairs of `pairs_by_key`, and how their makers compare.

    `numbers` and `makers` are as printed, the parts' keys ready. Columns: `row`, `part`, `maker` (one of the three
    levels above).
    """
    every = dict.fromkeys((*set(makers), *set(part_makers)))
    places: dict[str, int] = {"": 0}
    codes = {one: places.setdefault(maker_key(one), len(places)) for one in every}
    row, part = pairs_by_key(number_keys(numbers), part_keys)
    row_maker, part_maker = (
        np.fromiter(map(codes.__getitem__, some), dtype=np.int64, count=len(some))[at]
        for some, at in ((makers, row), (part_makers, part))
    )
    stated = (row_maker > 0) & (part_maker > 0)
    maker = np.where(stated, np.where(row_maker == part_maker, SAME, OTHER), NOT_STATED)
    return pd.DataFrame({"row": row, "part": part, "maker": maker})
