"""What is found in a worksheet's XML beside its values, gathered while it is looked over."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

import numpy as np
import numpy.typing as npt

from .workbook_formats import NumberFormat

LONGEST_TEXT = 400_000
"""Bytes of XML between two tags. A cell holds 32,767 characters at most (the published limit of spreadsheets); each
may be written as an escape of up to ten bytes."""
MOST_MERGED = 200_000
MOST_CELLS = 7_000_000
"""Cells of the rectangles of all worksheets together: 8.9 million filled ones were measured to take 1,020 MB."""
MOST_TEXTS = 600_000
"""Error cells and formulas without a value of one worksheet; each is looked at by itself."""
MOST_ROWS, MOST_COLUMNS = 1_048_576, 16_384
"""The published limits of a worksheet."""
ZEROS = re.compile(r"0+(?:\.0*)?")
ROWS = re.compile(rb"<(?:\w+:)?sheetFormatPr\s([^>]*)>")
COLUMN = re.compile(rb"<(?:\w+:)?col\s([^>]*)>")
ATTRIBUTE = re.compile(rb"""(?:\A|\s)([A-Za-z]+)\s*=\s*["']([^"']*)["']""")
TRUE = frozenset((b"1", b"true"))


class CellKind(Enum):
    """What the XML says a cell holds (its attribute t)."""

    NUMBER = "n"
    STRING = "s"
    ERROR = "e"
    TEXT = "str"
    INLINE = "inlineStr"
    OTHER = "other"


SURE = frozenset((CellKind.NUMBER, CellKind.STRING))


@dataclass(frozen=True)
class Tail:
    """How a cell's tag ends after its reference. `filled`: there is something in the cell, the tag is not closed."""

    text: bytes
    kind: CellKind
    style: int
    filled: bool


class Broken(Exception):
    """The file is not as its format asks."""


class TooLong(Exception):
    """A text is longer than a cell can be."""


class TooMany(Exception):
    """There are more of something than a price sheet has. `code`: its kind of problem; `most`: how many may be."""

    def __init__(self, code: str, most: int) -> None:
        super().__init__()
        self.code, self.most = code, most


class TooMuchText(Exception):
    """The texts of all cells together would fill the memory; `size` in bytes."""

    def __init__(self, size: int) -> None:
        super().__init__()
        self.size = size


class TooWide(Exception):
    """The cells reach further than a worksheet can, or than the memory should hold."""

    def __init__(self, rows: int, columns: int) -> None:
        super().__init__()
        self.rows, self.columns = rows, columns


def longest_checked(length: int) -> None:
    """Raises TooLong where so many bytes between two tags are more than a cell's text can take."""
    if length > LONGEST_TEXT:
        raise TooLong


@dataclass
class Found:
    """Rows and columns count from 0, `height` and `width` are counts. Only cells with something in them count.

    `styles`: the numbers of styles whose number format matters; `styled` their number cells as pairs of arrays.
    `struck_styles`: those whose font is struck through; `struck`: where their cells stand, pairs of arrays.
    `string_sizes`: bytes of each shared string, if the text of the cells is to be summed up in `string_bytes`.
    `values`: numbers that the reader would take for days. `padded`: white space stands around a number.
    `recalculated`: the workbook asks to be calculated when
    opened, so a stored 0 of a formula is no value: programs that write workbooks without calculating put it there.
    """

    styles: frozenset[int] = frozenset()
    struck_styles: frozenset[int] = frozenset()
    string_sizes: npt.NDArray[np.int64] | None = None
    recalculated: bool = False
    height: int = 0
    width: int = 0
    cells: int = 0
    string_bytes: int = 0
    sure: int = 0
    numbers: int = 0
    sure_height: int = 0
    sure_width: int = 0
    rows_hidden: bool = False
    merges: int = 0
    hidden_rows: set[int] = field(default_factory=set)
    hidden_columns: set[int] = field(default_factory=set)
    styled: dict[int, list[tuple[npt.NDArray[np.int64], npt.NDArray[np.int64]]]] = field(default_factory=dict)
    struck: list[tuple[npt.NDArray[np.int64], npt.NDArray[np.int64]]] = field(default_factory=list)
    texts: dict[tuple[int, int], str] = field(default_factory=dict)
    values: dict[tuple[int, int], float] = field(default_factory=dict)
    odd_errors: bool = False
    padded: bool = False
    tails: list[Tail] = field(default_factory=list)

    def marked(self, formats: Mapping[int, NumberFormat]) -> bool:
        """Whether single cells must be changed: errors, formulas without a value, numbers that show more than money."""
        return bool(self.texts or self.values) or any(
            formats[style].per or not formats[style].currency for style in self.styled
        )

    def see_extent(self, count: int, row: int, column: int) -> None:
        """Counts cells that reach to this row and column, from 1. Raises TooWide beyond the end of a worksheet."""
        self.cells += count
        self.height, self.width = max(self.height, row), max(self.width, column)
        if self.width > MOST_COLUMNS or self.height > MOST_ROWS:
            raise TooWide(self.height, self.width)
        if self.cells > MOST_CELLS:
            raise TooMany("too-many-cells", MOST_CELLS)

    def see_head(self, head: bytes) -> None:
        """The columns that are hidden or have no width."""
        for text in COLUMN.findall(head):
            self.see_column(dict(ATTRIBUTE.findall(text)))
        for text in ROWS.findall(head):
            self.see_row_format(dict(ATTRIBUTE.findall(text)))

    def see_row_format(self, attributes: dict[bytes, bytes]) -> None:
        """What holds for rows that state no height of their own."""
        self.rows_hidden = self.rows_hidden or attributes.get(b"zeroHeight") in TRUE

    def see_sure(self, count: int, numbers: int, row: int, column: int) -> None:
        """Cells that hold something for sure, and how many of them are numbers: the reader must give them all."""
        self.sure += count
        self.numbers += numbers
        self.sure_height, self.sure_width = max(self.sure_height, row), max(self.sure_width, column)

    def see_column(self, attributes: dict[bytes, bytes]) -> None:
        """One statement about the columns from `min` to `max`."""
        if attributes.get(b"hidden") in TRUE or _is_zero(attributes.get(b"width")):
            first, last = (_count(attributes.get(name)) for name in (b"min", b"max"))
            self.hidden_columns.update(range(max(first, 1) - 1, min(last, MOST_COLUMNS)))

    def see_row(self, row: int, attributes: dict[bytes, bytes]) -> None:
        """One row, counted from 1: hidden by hand or by a filter, or of no height."""
        by_default = self.rows_hidden and b"ht" not in attributes and b"hidden" not in attributes
        if by_default or attributes.get(b"hidden") in TRUE or _is_zero(attributes.get(b"ht")):
            self.hidden_rows.add(row - 1)

    def see_tail(self, piece: bytes) -> None:
        """What stands after the rows: merged regions are counted. Raises TooMany where they are too many."""
        self.merges += piece.count(b"mergeCell ")
        if self.merges > MOST_MERGED:
            raise TooMany("too-many-merged", MOST_MERGED)

    def add_tail(self, text: bytes) -> int:
        """Takes in the end of a cell's tag, from after its reference to '>', and gives it a number."""
        attributes = dict(ATTRIBUTE.findall(text))
        kind = kind_of(attributes.get(b"t", b"n").decode("ascii", "replace"))
        self.tails.append(Tail(text, kind, _count(attributes.get(b"s")), not text.endswith(b"/>")))
        return len(self.tails) - 1

    def see_formula(self, at: tuple[int, int], kind: CellKind, value: str | None, formula: str | None) -> None:
        """One cell with a formula or an error. `at`: row and column from 1. None: no value or formula is stored."""
        place = (at[0] - 1, at[1] - 1)
        if len(self.texts) >= MOST_TEXTS:
            raise TooMany("too-many-errors", MOST_TEXTS)
        if formula is not None and self._not_calculated(kind, value):
            self.texts[place] = f"={formula or '…'}"
        elif kind == CellKind.ERROR and value:
            self.texts[place] = value
            self.odd_errors = self.odd_errors or value not in KNOWN_ERRORS

    def _not_calculated(self, kind: CellKind, value: str | None) -> bool:
        if value is None:
            return True
        if kind == CellKind.NUMBER:
            return not value.strip() or (self.recalculated and ZEROS.fullmatch(value) is not None)
        return False


KNOWN_ERRORS = frozenset({"#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!", "#GETTING_DATA"})


def kind_of(text: str) -> CellKind:
    """The kind by the attribute's text; 'n' where there is none."""
    return KINDS.get(text, CellKind.OTHER)


KINDS = {kind.value: kind for kind in CellKind if kind != CellKind.OTHER}


def _count(text: bytes | None) -> int:
    return int(text) if text and text.isdigit() and len(text) < 9 else 0


def _is_zero(text: bytes | None) -> bool:
    return text is not None and ZEROS.fullmatch(text.decode("ascii", "replace")) is not None
