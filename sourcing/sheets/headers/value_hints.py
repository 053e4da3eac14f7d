"""Columns that only their values tell: numbers of the same sheet, times where stock is said, the only words.

A number is asked about; what costs neither money nor identity is taken.
"""

from collections.abc import Callable, Sequence

import msgspec

from sourcing.basics.sheet import Column, Field

from ..worksheet import Cell, text_of
from .column_names import CONFIRMED, NOT_KNOWN, fields_of
from .value_looks import agrees, says_days

SAME_NUMBERS = 0.6
"""The share of a column's filled cells that are numbers of the sheet itself, from which on it is asked about."""
FEWEST = 2
CellsOf = Callable[[int], Sequence[Cell]]


def with_values(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """The columns with what their values tell. `cells_of`: the cells of the column at a place counted from 0."""
    return _time_beside_stock(_only_words(_successors(columns, cells_of), cells_of), cells_of)


def _known_as(column: Column, field: Field, why: str) -> Column:
    return msgspec.structs.replace(column, field=field, why=why, suggested=None, place="")


def _successors(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """A column nobody knows that holds numbers of the sheet: most often the numbers that took the place of others."""
    numbers = [column for column in columns if column.field == "supplier number"]
    if len(numbers) != 1 or "superseded by" in fields_of(columns):
        return list(columns)
    own = [text_of(cell) for cell in cells_of(numbers[0].at)]
    known = {text for text in own if any(map(str.isdigit, text))}

    def is_like(column: Column) -> bool:
        texts = [text_of(cell) for cell in cells_of(column.at)]
        filled = [(text, number) for text, number in zip(texts, own, strict=False) if text]
        same = sum(text in known and text != number for text, number in filled)
        return same >= FEWEST and same >= SAME_NUMBERS * len(filled)

    why = "its values are numbers of this sheet"
    return [
        msgspec.structs.replace(column, suggested="superseded by", why=why)
        if column.field is None and column.why == NOT_KNOWN and is_like(column)
        else column
        for column in columns
    ]


def _only_words(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """The one column nobody knows that holds words is the description where no other is."""
    if "description" in fields_of(columns):
        return list(columns)
    unknown = [column for column in columns if column.field is None and column.why == NOT_KNOWN]
    wordy = [column for column in unknown if agrees("description", cells_of(column.at))]
    if len(wordy) != 1:
        return list(columns)
    return [_known_as(c, "description", "the only column of words") if c is wordy[0] else c for c in columns]


def _time_beside_stock(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """'Availability' beside 'Stock' that says '1-2 weeks' is the lead time."""
    stocks = [c for c in columns if c.field == "stock" and not c.place and c.why != CONFIRMED]
    times = [c for c in stocks if _says_times(cells_of(c.at))]
    if len(stocks) < 2 or len(times) != 1 or "lead time" in fields_of(columns):
        return list(columns)
    why = f"{times[0].why}, it says times"
    return [_known_as(c, "lead time", why) if c is times[0] else c for c in columns]


def _says_times(cells: Sequence[Cell]) -> bool:
    """Words throughout, some of which say how many days or weeks."""
    texts = [text for cell in cells if (text := text_of(cell))]
    words = all(any(map(str.isalpha, text)) for text in texts)
    return words and sum(map(says_days, texts)) >= FEWEST
