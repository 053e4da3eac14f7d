"""Rows of a sheet for a person to look at: some as they stand, and what a row is to the shop."""

from .sheet import Column
from .value import Value


class SheetSample(Value, frozen=True, kw_only=True):
    """The first rows of one table, as text, and its columns with what each means or may mean.

    `rows` are their numbers as the file shows them, `cells` their texts in the order of `columns`. `values`: for each
    column some of its different texts, also from further down. Long texts are cut, which an ellipsis shows.
    """

    worksheet: str
    columns: tuple[Column, ...]
    rows: tuple[int, ...]
    cells: tuple[tuple[str, ...], ...]
    values: tuple[tuple[str, ...], ...]


class Concern(Value, frozen=True, kw_only=True):
    """The part of ours a row is by its numbers and the table alone, and the open jobs that call for it."""

    part: str
    jobs: tuple[str, ...]
