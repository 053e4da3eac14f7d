"""Parses the columns of one body and keeps what could not be read: what costs its row, and what costs only itself."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np

from sourcing.basics.sheet import Column, Field

from ..cells.cell import Bad, parse_texts
from ..cells.money_cells import decimal_mark
from ..headers.columns import PRICES, name_of
from ..region.body import Body, Coded, Objects, is_none
from ..worksheet import Cell

BadCells = dict[int, list[tuple[str, Bad]]]
"""By row of the body: column header and what is wrong."""


@dataclass(frozen=True)
class ColumnReader:
    """One body being read. `bad`: cells that cost their row; `left_out`: cells that are left blank, with a note.

    `currency` is "" where nobody knows it: then prices are read as they stand, for a person to look at.
    """

    body: Body
    currency: str
    bad: BadCells = field(default_factory=dict)
    left_out: BadCells = field(default_factory=dict)

    @cached_property
    def decimal_mark(self) -> str:
        """The decimal mark that all price columns that show one for sure show alike; '' where they do not."""
        columns = [column for meaning in PRICES for column in self.body.columns(meaning)]
        if len(columns) < 2:
            return ""
        marks = {decimal_mark(self.body.coded(column.at).different) for column in columns} - {""}
        return marks.pop() if len(marks) == 1 and marks <= {".", ","} else ""

    def column(self, meaning: Field) -> Column | None:
        """The first column of this meaning."""
        return next(iter(self.body.columns(meaning)), None)

    def constant(self, value: object) -> Objects:
        """The same value in every row."""
        found: Objects = np.empty(self.body.height, dtype=object)
        found.fill(value)
        return found

    def parsed(
        self, column: Column, parse: Callable[[list[Cell]], Sequence[Any]], *, costs_row: bool = True
    ) -> tuple[list[Any], Coded]:
        """The column's different cells parsed, and the column. A cell that can't be read is written down and None."""
        coded = self.body.coded(column.at)
        values = list(parse(coded.different))
        if Bad not in set(map(type, values)):
            return values, coded
        self.note_bad(column, coded, values, costs_row=costs_row)
        return [None if type(value) is Bad else value for value in values], coded

    def read(
        self,
        meaning: Field,
        parse: Callable[[list[Cell]], Sequence[Any]],
        blank: object = None,
        *,
        costs_row: bool = True,
    ) -> Objects:
        """The column of this meaning, one value a row; `blank` everywhere where there is no such column.

        A cell that could not be read is `blank` too, and written down.
        """
        column = self.column(meaning)
        if column is None:
            return self.constant(blank)
        values, coded = self.parsed(column, parse, costs_row=costs_row)
        if blank is not None and type(None) in set(map(type, values)):
            values = [blank if value is None else value for value in values]
        return coded.spread(values)

    def text(self, meaning: Field) -> Objects:
        """A column of text, '' where there is none."""
        return self.read(meaning, parse_texts, "")

    def note_bad(self, column: Column, coded: Coded, values: Sequence[object], *, costs_row: bool = True) -> None:
        """Write down every row whose cell could not be read, under the column's header."""
        kept = self.bad if costs_row else self.left_out
        for number, value in enumerate(values):
            if type(value) is Bad:
                for at in coded.rows_with([number]):
                    kept.setdefault(at, []).append((name_of(column), value))

    def spoil(self, at: int, column: str, bad: Bad) -> None:
        """Write down that a row can't be an offer."""
        self.bad.setdefault(at, []).append((column, bad))


def where_none(first: Objects, second: Objects) -> Objects:
    """The first value, the second where the first is None."""
    found: Objects = np.where(is_none(first), second, first)
    return found
