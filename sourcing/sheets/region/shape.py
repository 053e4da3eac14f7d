"""Where a table stands by its shape alone: rows of one width, a header of words over columns of numbers.

For files whose headers no dictionary knows. Nothing is said here of what the columns mean.
"""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..worksheet import Cell, Worksheet, text_of

TYPED = re.compile(
    r"[-+(]?[$€£]?\s?\d[\d.,' ]*(?:[eE][-+]?\d+)?\)?\s?[%€$£]?"
    r"|\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}(?:[ T]\d{1,2}:\d\d(?::\d\d)?(?:\.\d+)?Z?)?"
    r"|\d{1,2}:\d\d(?::\d\d)?(?: ?[AaPp][Mm])?"
)
YEAR = re.compile(r"(?:19|20)\d\d")
MOST_HEADER_ROWS = 3
JUDGED = 1000
"""Rows from which the types of the columns are judged."""
MOSTLY = 0.7


@dataclass(frozen=True)
class Shape:
    """Header rows `first`..`body` - 1 (none where they are equal), body rows `body`..`end` - 1, from 0."""

    first: int
    body: int
    end: int
    width: int


def shape_of(worksheet: Worksheet) -> Shape | None:
    """The largest table of the worksheet; None where it has no row with a cell."""
    rows = worksheet.rows
    filled = [sum(1 for cell in row if text_of(cell)) for row in rows]
    width = _width(rows, filled)
    if not width:
        return None
    of_table = [at for at in range(len(rows)) if len(rows[at]) == width and filled[at] >= min(2, width)]
    parts = _parts(rows, filled, of_table, width)
    first, end = max(parts, key=lambda part: part[1] - part[0])
    first = _with_upper_header(rows, filled, first, width)
    end = _with_ragged_end(rows, filled, end, width)
    return Shape(first, first + _header_rows(rows, filled, first, end, width), end, width)


def _width(rows: Sequence[list[Cell]], filled: Sequence[int]) -> int:
    """The width with the most cells in rows of that width; 0 where all rows are blank."""
    counts = Counter(len(row) for row, count in zip(rows, filled, strict=True) if count)
    wide = {width: count for width, count in counts.items() if width > 1} or counts
    return max(wide, key=lambda width: (wide[width] * (width - 1 or 1), width), default=0)


def _parts(
    rows: Sequence[list[Cell]], filled: Sequence[int], of_table: Sequence[int], width: int
) -> list[tuple[int, int]]:
    """The table rows in stretches: a new one begins where, after a blank row, a row of words stands over numbers."""
    if not of_table:
        return [(0, len(rows))]
    parts, first = [], of_table[0]
    typed = _typed_columns(rows, of_table[0], of_table[-1] + 1, width)
    for before, at in pairwise(of_table):
        gap = any(not filled[between] for between in range(before + 1, at))
        if gap and typed and _is_words(rows[at], typed) and not _is_years(rows[at]):
            parts.append((first, before + 1))
            first = at
    return [*parts, (first, of_table[-1] + 1)]


def _with_upper_header(rows: Sequence[list[Cell]], filled: Sequence[int], first: int, width: int) -> int:
    """The first row, with rows of two or more words just above it that are narrower only because they end early."""
    if first > 0 and len(rows[first - 1]) == width > 1 == filled[first - 1] and not text_of(rows[first - 1][0]):
        return first - 1 if not _any_typed(rows[first - 1]) else first  # a corner without a header
    while first > 0 and filled[first - 1] > 1 and 2 * len(rows[first - 1]) > width and len(rows[first - 1]) < width:
        if any(_is_typed(text_of(cell)) for cell in rows[first - 1]):
            break
        first -= 1
    return first


def _with_ragged_end(rows: Sequence[list[Cell]], filled: Sequence[int], end: int, width: int) -> int:
    """The end, with rows just below it that have a cell or two more or less than the table and are mostly filled."""
    while end < len(rows) and 2 * filled[end] > max(width, 2) and abs(len(rows[end]) - width) < 3:
        end += 1
    return end


def _header_rows(rows: Sequence[list[Cell]], filled: Sequence[int], first: int, end: int, width: int) -> int:
    """How many rows are the header: words over columns of numbers; one row where no column holds numbers.

    A row that already has numbers where the columns have them is no header, unless they are years in order.
    """
    typed = _typed_columns(rows, min(first + MOST_HEADER_ROWS, end - 1), end, width)
    if not typed:
        return 1 if end - first > 1 or not _any_typed(rows[first]) else 0
    count = 0
    while count < min(MOST_HEADER_ROWS, end - first) and (
        _is_words(rows[first + count], typed, at_least=count > 0) or _is_years(rows[first + count])
    ):
        count += 1
    return count


def _typed_columns(rows: Sequence[list[Cell]], first: int, end: int, width: int) -> list[int]:
    """The columns in which most filled cells are numbers, days or times."""
    found = []
    for at in range(width):
        texts = [text for row in rows[first : min(end, first + JUDGED)] if at < len(row) and (text := text_of(row[at]))]
        typed = sum(1 for text in texts if _is_typed(text))
        if texts and typed >= MOSTLY * len(texts):
            found.append(at)
    return found


def _is_words(row: Sequence[Cell], typed: Sequence[int], at_least: bool = False) -> bool:
    """Whether no cell over the columns of numbers is a number. `at_least`: and half of those cells are filled."""
    texts = [text_of(row[at]) for at in typed if at < len(row)]
    words = [text for text in texts if text]
    if any(_is_typed(text) for text in words):
        return False
    return 2 * len(words) >= len(texts) if at_least else bool(words)


def _is_years(row: Sequence[Cell]) -> bool:
    """Whether the numbers of the row are years in rising or falling order, as headers of statistics have them."""
    numbers = [text for cell in row if _is_typed(text := text_of(cell))]
    if len(numbers) < 2 or not all(YEAR.fullmatch(number) for number in numbers):
        return False
    return numbers in (sorted(set(numbers)), sorted(set(numbers), reverse=True))


def _is_typed(text: str) -> bool:
    """Whether the text is a number, a day or a time; one row may be quoted otherwise than the rest."""
    return TYPED.fullmatch(text.strip("'\"")) is not None


def _any_typed(row: Sequence[Cell]) -> bool:
    return any(_is_typed(text_of(cell)) for cell in row)
