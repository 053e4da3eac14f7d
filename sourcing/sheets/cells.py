"""What every kind of cell shares: a cell that can't be read, and parsing a column by its different texts."""

import unicodedata
from collections.abc import Callable, Sequence
from typing import Any, TypeVar, cast

from sourcing.basics.problem import Place, Problem, problem

from .worksheet import Cell, text_of

T = TypeVar("T")

OTHER_SPACES = [c for code in range(0x3001) if (c := chr(code)).isspace() and c not in " \n"]
"""Every character Python splits text at, but the space and the line feed."""


def word_set(words: str) -> frozenset[str]:
    """The words of a list with commas; a list that begins with a comma holds the blank too."""
    return frozenset(word.strip() for word in words.split(","))


NO_LONGER_AVAILABLE = word_set(
    "nla,n.l.a,n/l/a,no longer available,discontinued,obsolete,nicht mehr lieferbar,entfällt,entfallen"
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


def parse_texts(cells: Sequence[Cell]) -> list[str]:
    """A text column, white space collapsed. A column that is tidy already, as most are, is taken as it is."""
    different = dict.fromkeys(cells)
    if all(type(cell) is str for cell in different) and _is_tidy([str(cell) for cell in different]):
        return cast(list[str], list(cells))
    known = {cell: text_of(cell) for cell in different}
    return list(map(known.__getitem__, cells))


def _is_tidy(texts: Sequence[str]) -> bool:
    """Whether no text has white space other than single spaces between words. Looks at all of them as one text."""
    whole = f"\n{chr(10).join(texts)}\n"
    if whole.count("\n") != len(texts) + 1 or "\n " in whole or " \n" in whole or "  " in whole:
        return False
    return not any(space in whole for space in OTHER_SPACES)


def bad_cells(values: Sequence[object]) -> dict[int, Bad]:
    """The cells of a parsed column that could not be read, by row."""
    return {at: value for at, value in enumerate(values) if type(value) is Bad}


def words_of(cell: Cell) -> str:
    """The cell's text for comparing: one form of each character, straight apostrophes, lower case, single spaces."""
    text = text_of(cell)
    if not text.isascii():
        text = " ".join(unicodedata.normalize("NFKC", text).replace("\u2019", "'").split())
    return text.casefold()


def column_says_no_longer_available(cells: Sequence[Cell]) -> list[bool] | None:
    """For each cell whether it says so; None where none does."""
    said = {cell for cell in dict.fromkeys(cells) if type(cell) is str and not cell[:1].isdigit() and cell}
    said = {cell for cell in said if says_no_longer_available(cell)}
    return [cell in said for cell in cells] if said else None


def says_no_longer_available(cell: Cell) -> bool:
    """Whether the cell holds nothing but words for 'no longer available'."""
    return words_of(cell).strip(" .!*") in NO_LONGER_AVAILABLE
