"""Rows of a whole table whose number is one of ours, by key: one merge, whatever the length of the table."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from ..basics.part_number import maker_key, number_keys

SAME, NOT_STATED, OTHER = 0, 1, 2
"""Of the makers of a row and a part: the same, one of them not stated, two different ones."""


def maker_keys(makers: Sequence[str]) -> list[str]:
    """Each maker's key; a table names few, so each is worked out once."""
    known = {maker: maker_key(maker) for maker in set(makers)}
    return [known[maker] for maker in makers]


def rows_by_key(
    numbers: Sequence[str], makers: Sequence[str], part_keys: Sequence[str], part_makers: Sequence[str]
) -> pd.DataFrame:
    """Every pair of a row and a part with the same number key, by position, and how their makers compare.

    `numbers` and `makers` are as printed, the parts' keys ready. A blank number finds nothing. Columns: `row`, `part`,
    `maker` (one of the three levels above).
    """
    every = pd.Index(pd.unique(pd.Series([*set(makers), *set(part_makers)], dtype=object)))
    codes = dict(zip(every, maker_keys(list(every)), strict=True))
    places = {key: at for at, key in enumerate(dict.fromkeys(["", *codes.values()]))}
    rows = pd.DataFrame({"key": number_keys(numbers), "row_maker": [places[codes[one]] for one in makers]})
    rows["row"] = np.arange(len(rows))
    parts = pd.DataFrame({"key": part_keys, "part_maker": [places[codes[one]] for one in part_makers]})
    parts["part"] = np.arange(len(parts))
    found = rows.merge(parts[parts["key"] != ""], on="key", how="inner")
    row_maker, part_maker = found["row_maker"].to_numpy(), found["part_maker"].to_numpy()
    stated = (row_maker > 0) & (part_maker > 0)
    found["maker"] = np.where(stated, np.where(row_maker == part_maker, SAME, OTHER), NOT_STATED)
    return found[["row", "part", "maker"]]
