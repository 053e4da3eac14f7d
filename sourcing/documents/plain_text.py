"""Text from outside made harmless to look at, and simple tables and wrapped lines for a terminal 100 columns wide.

Why: a supplier's description or a customer's name may carry a terminal's escape codes, a line end that would forge
a line of ours, or a mark that turns the reading direction so that a number reads backwards (Unicode Standard
Annex 9, bidirectional formatting characters). Such characters are shown as U+FFFD, never obeyed and never dropped
in silence.
"""

import textwrap
import unicodedata
from collections.abc import Iterable, Sequence

WIDTH = 100
REPLACED = "\N{REPLACEMENT CHARACTER}"
DIRECTION_MARKS = frozenset(
    "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"  # UAX 9, table of formatting characters
)
HIDDEN_KINDS = frozenset(("Cc", "Cs", "Co", "Cn"))


def shown(text: str) -> str:
    """The text on one line: line ends and tabs become a space, other control and direction marks U+FFFD."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_shown_character(character) for character in text)


def _shown_character(character: str) -> str:
    if character.isascii() and character.isprintable():
        return character
    if character in "\t\n\r\v\f\u0085\u2028\u2029":
        return " "
    hidden = character in DIRECTION_MARKS or unicodedata.category(character) in HIDDEN_KINDS
    return REPLACED if hidden else character


def document(lines: Iterable[str]) -> str:
    """Lines as one text that ends with a line end; each made harmless, no blanks at line ends."""
    return "".join(f"{shown(line).rstrip()}\n" for line in lines)


def wrapped(text: str, indent: int = 0, width: int = WIDTH) -> list[str]:
    """The text in lines of at most `width` columns, all but the first indented by two more. Words stay whole."""
    start = " " * indent
    return textwrap.wrap(
        shown(text), width, initial_indent=start, subsequent_indent=f"{start}  ", break_on_hyphens=False
    ) or [start]


def row(cells: Sequence[str], widths: Sequence[int], right: frozenset[int] = frozenset()) -> list[str]:
    """A table row in columns of those widths, one blank between; a cell too long goes on below, nothing is cut.

    `right` are the columns set flush right (figures).
    """
    columns = [_cell_lines(shown(cell), width) for cell, width in zip(cells, widths, strict=True)]
    height = max((len(column) for column in columns), default=0)
    return [_row_line(columns, at, widths, right) for at in range(max(height, 1))]


def _cell_lines(text: str, width: int) -> list[str]:
    return [text] if len(text) <= width else textwrap.wrap(text, width, break_on_hyphens=False)


def _row_line(columns: list[list[str]], at: int, widths: Sequence[int], right: frozenset[int]) -> str:
    parts = []
    for number, (column, width) in enumerate(zip(columns, widths, strict=True)):
        text = column[at] if at < len(column) else ""
        parts.append(text.rjust(width) if number in right else text.ljust(width))
    return " ".join(parts).rstrip()


def widths_for(cells: Sequence[Sequence[str]], most: Sequence[int]) -> list[int]:
    """For each column the length of its longest cell over all rows (the header is a row too), at most `most`."""
    columns = zip(*cells, strict=True)
    return [min(limit, max(len(shown(cell)) for cell in column)) for limit, column in zip(most, columns, strict=True)]


def underline(widths: Sequence[int]) -> str:
    """The rule under a table's header."""
    return " ".join("-" * width for width in widths)


def table(rows: Sequence[Sequence[str]], most: Sequence[int], right: frozenset[int] = frozenset()) -> list[str]:
    """A table whose first row is its header, underlined; columns at most `most` wide."""
    widths = widths_for(rows, most)
    lines = [line for cells in rows[1:] for line in row(cells, widths, right)]
    return [*row(rows[0], widths, right), underline(widths), *lines]


def yes_no(value: bool | None, unknown: str = "") -> str:
    """'yes', 'no', or the word for not known."""
    if value is None:
        return unknown
    return "yes" if value else "no"


def count(number: int, one: str, many: str = "") -> str:
    """'1 piece', '3 pieces'."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"
