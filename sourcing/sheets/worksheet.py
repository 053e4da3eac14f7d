"""A worksheet as cells, and what a cell's text is."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

Cell = str | Decimal
"""Text as it stood in the file, or the number of a spreadsheet's number cell (its decimal mark is not in doubt)."""

MOST_EXACT_NUMBER = Decimal(10) ** 15
"""A spreadsheet keeps 15 significant digits (its published limit); longer whole numbers have lost some."""


@dataclass(frozen=True)
class Worksheet:
    """Rows of cells, up to the last row that is not blank. `row_numbers`: what the file shows for each row.

    For a text file that is the first line of the record. Rows may differ in length. `hidden`: the workbook hides it.
    """

    name: str
    rows: list[list[Cell]]
    row_numbers: Sequence[int]
    hidden: bool = False


def text_of(cell: Cell) -> str:
    """The cell as text, white space (no-break spaces too) collapsed. 40388.0 in a number cell is '40388'."""
    if isinstance(cell, str):
        return " ".join(cell.split())
    return format(cell, "f") if abs(cell) < MOST_EXACT_NUMBER else format(cell, "E")


def is_blank(row: Sequence[Cell]) -> bool:
    """Whether the row has no cell with anything but white space. A zero in a number cell is not blank."""
    return not any(not isinstance(cell, str) or cell.strip() for cell in row)


def without_blank_end(rows: list[list[Cell]]) -> list[list[Cell]]:
    """The rows up to the last that is not blank. Changes the list it is given: copies of long lists cost time."""
    last = len(rows)
    while last and is_blank(rows[last - 1]):
        last -= 1
    del rows[last:]
    return rows


def letter_of(at: int) -> str:
    """A column's letter as spreadsheets show it: 0 is A, 26 is AA."""
    letters, left = "", at + 1
    while left:
        left, digit = divmod(left - 1, 26)
        letters = chr(ord("A") + digit) + letters
    return letters


def number_of(letters: str) -> int:
    """How many columns there are up to this letter: A is 1, AA is 27."""
    count = 0
    for letter in letters:
        count = count * 26 + ord(letter) - ord("A") + 1
    return count
