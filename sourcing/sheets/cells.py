"""What every kind of cell shares: a cell that can't be read, and parsing a column by its different texts."""

import unicodedata
from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from sourcing.basics.problem import Place, Problem, problem

from .worksheet import Cell, text_of

T = TypeVar("T")

NO_LONGER_AVAILABLE = frozenset(
    "nla,n.l.a,n/l/a,no longer available,discontinued,obsolete,nicht mehr lieferbar,entfällt,entfallen".split(",")
)
"""Words that say the part is no longer available, wherever they fill a price, stock, lead time or note cell."""


class Bad:
    """A cell that can't be read: the code of the problem, the text as it stood, facts for the sentence."""

    __slots__ = ("code", "facts", "found", "suggestions")

    def __init__(self, code: str, *, found: str, suggestions: tuple[str, ...] = (), **facts: str) -> None:
        self.code, self.found, self.suggestions, self.facts = code, found, suggestions, facts

    def problem(self, place: Place) -> Problem:
        """The problem at its place in the file."""
        facts: dict[str, Any] = {**self.facts, "found": self.found}
        return problem(self.code, place=place, suggestions=self.suggestions, **facts)


def parse_column(cells: Sequence[Cell], parse: Callable[[Cell], T]) -> list[T]:
    """Every cell parsed, each different text once: a column of 300,000 cells has few different stocks or packs."""
    known = {cell: parse(cell) for cell in dict.fromkeys(cells)}
    return list(map(known.__getitem__, cells))


def bad_cells(values: Sequence[object]) -> dict[int, Bad]:
    """The cells of a parsed column that could not be read, by row."""
    return {at: value for at, value in enumerate(values) if type(value) is Bad}


def words_of(cell: Cell) -> str:
    """The cell's text for comparing with words: one form of each character, lower case, single spaces."""
    text = text_of(cell)
    return (text if text.isascii() else " ".join(unicodedata.normalize("NFKC", text).split())).casefold()


def says_no_longer_available(cell: Cell) -> bool:
    """Whether the cell holds nothing but words for 'no longer available'."""
    return words_of(cell).strip(" .!*") in NO_LONGER_AVAILABLE
