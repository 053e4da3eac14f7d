"""Columns nobody knows that hold our numbers, or look like the makers' numbers: asked, never lost in silence."""

from collections.abc import Callable, Collection, Iterator, Sequence

from sourcing.basics.part_number import number_keys
from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Column

from ..worksheet import Cell, text_of
from .column_names import NOT_KNOWN, fields_of, name_of
from .header_keys import words_in
from .value_looks import agrees

SHORTEST = 4
"""A key of fewer signs may be a size or a count."""
NUMBER_WORDS = frozenset({"number", "ref", "part", "code", "item", "article", "artikel", "teil", "piece", "oem", "oe"})
Cells = Callable[[int], Sequence[Cell]]


def left_out_questions(
    columns: Sequence[Column], cells_of: Cells, ours: Collection[str], place: Place
) -> Iterator[Problem]:
    """A question for each such column. `ours`: keys of the numbers in the shop's table; `cells_of`: different cells."""
    lacks = "maker number" not in fields_of(columns)
    for column in columns:
        if column.field is not None or column.why != NOT_KNOWN or column.suggested:
            continue
        if why := _of_ours(cells_of(column.at), ours) or (_looks_so(column, cells_of(column.at)) if lacks else ""):
            yield problem("numbers-left-out", place=place, found=name_of(column), why=why)


def _of_ours(cells: Sequence[Cell], ours: Collection[str]) -> str:
    texts = [text_of(cell) for cell in cells] if ours else []
    same = [text for text, key in zip(texts, number_keys(texts), strict=True) if len(key) >= SHORTEST and key in ours]
    known = [text for text in same if any(map(str.isdigit, text))]
    if not known:
        return ""
    verb = "is" if len(known) == 1 else "are"
    return f"{len(known)} of its values {verb} in the table of same parts, such as {known[0]}"


def _looks_so(column: Column, cells: Sequence[Cell]) -> str:
    named = NUMBER_WORDS.intersection(words_in(column.header)) and agrees("supplier number", cells)
    return "its values look like part numbers, and no column is the makers' number" if named else ""
