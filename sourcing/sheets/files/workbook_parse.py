"""XML read tag by tag with expat, the standard library's parser: any legal XML, slower than `workbook_scan`.

A document type declaration is refused as soon as it begins: it could name files, or unfold a few bytes into
gigabytes, and no spreadsheet writes one.
"""

import re
from collections.abc import Callable, Iterable
from typing import Protocol
from xml.parsers import expat

import numpy as np

from .workbook_found import SURE, Broken, CellKind, Found, kind_of, longest_checked


class Declared(Exception):
    """The XML has a document type declaration."""


class Reader(Protocol):
    """What is told the tags. Names come without their prefix; attributes as they stand."""

    def begin(self, name: str, attributes: dict[str, str]) -> None:
        """A tag opens."""

    def end(self, name: str) -> None:
        """A tag closes."""

    def text(self, text: str) -> None:
        """Text between tags, in pieces."""


def parse(pieces: Iterable[bytes], reader: Reader) -> None:
    """Tells the reader every tag and text. Raises Declared, Broken and what the reader raises."""
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartDoctypeDeclHandler = _declared
    parser.StartElementHandler = _without_prefix(reader.begin)
    parser.EndElementHandler = lambda name: reader.end(LOCAL[name])
    parser.CharacterDataHandler = reader.text
    try:
        for piece in pieces:
            parser.Parse(piece)
        parser.Parse(b"", True)
    except (expat.ExpatError, ValueError, LookupError) as error:  # the last two: an encoding nobody knows
        raise Broken from error


def _declared(*_: object) -> None:
    raise Declared


def _without_prefix(begin: Callable[[str, dict[str, str]], None]) -> Callable[[str, dict[str, str]], None]:
    return lambda name, attributes: begin(LOCAL[name], attributes)


class _LocalNames(dict[str, str]):
    """Names without their prefix, worked out once each; a file of ever new names does not fill it."""

    def __missing__(self, name: str) -> str:
        local = name.rpartition(":")[2]
        if len(self) < MOST_NAMES:
            self[name] = local
        return local


SHARED_NUMBER = re.compile("[0-9]{1,7}")
WHITE_SPACE = " \t\r\n"
MOST_NAMES = 5_000
LOCAL = _LocalNames()


class SheetReader:
    """Fills `found` from the tags of an XLSX worksheet, as `workbook_scan` does."""

    def __init__(self, found: Found) -> None:
        self.found = found
        self.styled: dict[int, list[tuple[int, int]]] = {}
        self.struck: list[tuple[int, int]] = []
        self.row = self.column = 0
        self.attributes: dict[str, str] = {}
        self.formula: str | None = None
        self.value: str | None = None
        self.filled = False
        self.length = 0
        self.taking: list[str] | None = None

    def begin(self, name: str, attributes: dict[str, str]) -> None:
        """Rows and cells without a reference stand after the one before."""
        if name == "c":
            column, row = _reference(attributes.get("r", ""))
            place = (row or self.row, column or self.column + 1)
            if place == (self.row, self.column):
                raise Broken
            self.row, self.column = place
            self.attributes, self.formula, self.value, self.filled = attributes, None, None, False
        elif name == "row":
            number = attributes.get("r", "")
            self.row, self.column = int(number) if number.isdecimal() else self.row + 1, 0
            self.found.see_row(self.row, _as_bytes(attributes))
        elif name in ("f", "v", "is"):
            self.taking, self.filled = [], True
        elif name == "col":
            self.found.see_column(_as_bytes(attributes))
        elif name == "sheetFormatPr":
            self.found.see_row_format(_as_bytes(attributes))
        elif name == "mergeCell":
            self.found.see_tail(b"mergeCell ")
        self.length = 0

    def text(self, text: str) -> None:
        """Raises TooLong for more than a cell can hold."""
        self.length += len(text)
        longest_checked(self.length)
        if self.taking is not None:
            self.taking.append(text)

    def end(self, name: str) -> None:
        """Keeps formula and value, and looks at the cell once it is whole."""
        if name == "f" and self.taking is not None:
            self.formula, self.taking = "".join(self.taking), None
        elif name == "v" and self.taking is not None:
            self.value, self.taking = "".join(self.taking), None
        elif name == "is":
            self.taking = None
        elif name == "c" and self.filled:
            self._cell()

    def _cell(self) -> None:
        found, kind = self.found, kind_of(self.attributes.get("t", "n"))
        found.see_extent(1, self.row, self.column)
        if self.formula is not None or kind == CellKind.ERROR:
            found.see_formula((self.row, self.column), kind, self.value, self.formula)
        if kind in SURE and self.formula is None and (self.value or "").strip():
            found.see_sure(1, kind == CellKind.NUMBER, self.row, self.column)
        if kind in SURE and self.value and self.value != self.value.strip(WHITE_SPACE):
            found.padded = True
        style = self.attributes.get("s", "0")
        if style.isdecimal() and int(style) in found.struck_styles:
            self.struck.append((self.row - 1, self.column - 1))
        if kind == CellKind.NUMBER:
            if style.isdecimal() and int(style) in found.styles:
                self.styled.setdefault(int(style), []).append((self.row - 1, self.column - 1))
        elif kind == CellKind.STRING and self.value:
            if not SHARED_NUMBER.fullmatch(self.value.strip(WHITE_SPACE)):
                raise Broken  # the reader would take the first text of all
            number, sizes = int(self.value), found.string_sizes
            found.string_bytes += int(sizes[number]) if sizes is not None and number < len(sizes) else 0

    def finish(self) -> None:
        """Hands over the number cells whose style matters, and the cells struck through, once all are read."""
        for style, places in self.styled.items():
            down, across = np.array(places, np.int64).T
            self.found.styled[style] = [(down, across)]
        if self.struck:
            down, across = np.array(self.struck, np.int64).T
            self.found.struck.append((down, across))


def _reference(text: str) -> tuple[int, int]:
    """Column and row of 'B7', from 1; 0 for what is not stated."""
    letters = text.rstrip("0123456789")
    column = 0
    for letter in letters[:4]:
        column = column * 26 + ord(letter) - ord("A") + 1
    digits = text[len(letters) :]
    return max(column, 0), int(digits) if digits and len(digits) < 9 else 0


def _as_bytes(attributes: dict[str, str]) -> dict[bytes, bytes]:
    return {name.encode(): value.encode() for name, value in attributes.items()}


class TagList:
    """Keeps every tag with the tag it stands in: for small parts only."""

    def __init__(self) -> None:
        self.open: list[str] = []
        self.tags: list[tuple[str, str, dict[str, str]]] = []

    def begin(self, name: str, attributes: dict[str, str]) -> None:
        """Kept as (tag it stands in, name, attributes without the prefix of their names)."""
        parent = self.open[-1] if self.open else ""
        self.tags.append((parent, name, {key.rpartition(":")[2]: value for key, value in attributes.items()}))
        self.open.append(name)

    def end(self, name: str) -> None:
        """The tag it stands in is the one before again."""
        self.open.pop()

    def text(self, text: str) -> None:
        """Text is not kept."""


def tags_of(xml: bytes) -> list[tuple[str, str, dict[str, str]]]:
    """(tag it stands in, name, attributes) of every tag of a small part, in order; none of an empty one."""
    reader = TagList()
    if xml:
        parse([xml], reader)
    return reader.tags
