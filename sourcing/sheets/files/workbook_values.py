"""The values of a long, regular XLSX worksheet, kept while it is looked over: it need not be read a second time.

Only what can't be misread is kept: plain texts, texts of the list all worksheets share, and numbers whose style shows
no date. A formula, a yes or no, an error: the values are given up, and python-calamine reads the worksheet as it reads
every other. A test compares what both read.
"""

import re
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Any, Protocol

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from ..worksheet import ColumnRows
from .archive import Archive
from .workbook_found import Broken, CellKind, Found, Tail
from .workbook_numbers import value_cell

LEAST_BYTES = 4_000_000
"""Bytes of XML from which on a worksheet is worth it; a row of twelve cells has some 500."""
NUMBER, INDEX = b"0123456789.eE+-", b"0123456789"
ENTITIES = {"&lt;": "<", "&gt;": ">", "&quot;": '"', "&apos;": "'", "&amp;": "&"}
ENTITY = re.compile("&(?:lt|gt|quot|apos|amp);")
SHARED = re.compile(rb"<si>(?:<t(?: xml:space=[\"']preserve[\"'])?>([^<]*)(</t></si>)|<)")
OPENS_SHARED = re.compile(rb"<(?:\w+:)?si[\s/>]")
UNSURE = (b"\r", b"_x", b"&")
INLINE = (b"<is><t>", b'<is><t xml:space="preserve">')
INLINE_END = b"</t></is>"
VALUE = b"<v>"
VALUE_END = b"</v>"
Ints = NDArray[np.int64]
Values = NDArray[Any]


class Xml(Protocol):
    """A block of XML: its bytes, where its tags open, and the first two bytes of each tag."""

    text: bytes
    opens: Ints
    two: NDArray[np.uint16]

    def says(self, at: Ints, text: bytes) -> NDArray[np.bool_]:
        """At which of the places these bytes stand."""


class LongValues:
    """Collects the cells of one worksheet by column. `plain`: the styles that show a number as a number."""

    def __init__(self, plain: frozenset[int], *, wanted: bool) -> None:
        self._plain, self.given_up = plain, not wanted
        self._kept: dict[tuple[int, CellKind], list[tuple[Ints, Values]]] = {}

    def see(self, xml: Xml, tail: Tail, tags: Ints, starts: Ints, places: tuple[Ints, Ints]) -> None:
        """Cells of one kind: the numbers of their tags, where these end, and rows and columns, from 1."""
        if self.given_up or not len(tags):
            return
        values = self._read(xml, tail, tags, starts)
        if values is None:
            self.give_up()
            return
        rows, columns = places
        order = np.argsort(columns.astype(np.int16), kind="stable")
        cuts = np.flatnonzero(np.diff(columns[order])) + 1
        for group in np.split(order, cuts):
            kept = self._kept.setdefault((int(columns[group[0]]) - 1, tail.kind), [])
            kept.append((rows[group] - 1, values[group]))

    def give_up(self) -> None:
        """Another reader must take the worksheet."""
        self.given_up = True
        self._kept.clear()

    def _read(self, xml: Xml, tail: Tail, tags: Ints, starts: Ints) -> Values | None:
        if tail.kind == CellKind.INLINE:
            return _inline_texts(xml, tags, starts)
        if tail.kind == CellKind.STRING:
            return _numbers(xml, tags, starts, INDEX)
        is_number = tail.kind == CellKind.NUMBER and tail.style in self._plain
        return _numbers(xml, tags, starts, NUMBER) if is_number else None

    def columns(self, found: Found, shared: "SharedTexts") -> ColumnRows | None:
        """The cells as columns; None where they were given up or a shared text is not as it should be."""
        if self.given_up or not found.height or found.merges:
            return None
        texts = shared.texts if any(kind == CellKind.STRING for _, kind in self._kept) else np.empty(0, dtype=object)
        kept: list[Values] = []
        for at in range(found.width):
            column = self._column(at, found.height, texts)
            if column is None:
                return None
            kept.append(column)
        return ColumnRows(kept)

    def _column(self, at: int, height: int, texts: Values) -> Values | None:
        column = np.full(height, "", dtype=object)
        seen = np.zeros(height, np.int64)
        for kind in (CellKind.NUMBER, CellKind.STRING, CellKind.INLINE):
            if not (parts := self._kept.pop((at, kind), [])):
                continue
            rows, values = (np.concatenate(arrays) for arrays in zip(*parts, strict=True))
            seen += np.bincount(rows, minlength=height)
            made: Values | None = _exact(values) if kind == CellKind.NUMBER else values
            made = _shared_texts(values, texts) if kind == CellKind.STRING else made
            if made is None:
                return None
            column[rows] = made
        if seen.max() > 1:
            raise Broken  # nobody knows which of two cells at one place was meant
        return column


class SharedTexts:
    """The texts all worksheets share, read when the first worksheet asks for them."""

    def __init__(self, archive: Archive, part: str) -> None:
        self._archive, self._part = archive, part

    @cached_property
    def texts(self) -> Values:
        """A text by its number; None for what is not plain text, such as a text of several runs."""
        if self._part not in self._archive.parts:
            return np.empty(0, dtype=object)
        unpacked = self._archive.unpacked
        xml = b"".join(self._archive.pieces(self._part))
        self._archive.unpacked = unpacked
        found = [plain_text(text) if whole else None for text, whole in SHARED.findall(xml)]
        count = len(OPENS_SHARED.findall(xml))
        return np.fromiter(found if len(found) == count else (), dtype=object)


def _exact(values: Values) -> Values:
    """Cells of the numbers, each different one made exact once."""
    codes, different = pd.factorize(values)
    return np.fromiter(map(value_cell, different.tolist()), dtype=object, count=len(different))[codes]


def _shared_texts(numbers: Values, texts: Values) -> Values | None:
    if numbers.max() >= len(texts):
        return None
    found = texts[numbers.astype(np.int64)]
    return None if any(text is None for text in found.tolist()) else found


def _numbers(xml: Xml, tags: Ints, starts: Ints, letters: bytes) -> Values | None:
    """Values that stand right after the cell's tag and have only these letters."""
    ends = xml.opens[tags + 2]
    if not xml.says(starts, VALUE).all() or not xml.says(ends, VALUE_END).all():
        return None
    text = xml.text
    firsts = (starts + len(VALUE)).tolist()
    numbers = [text[first:end] for first, end in zip(firsts, ends.tolist(), strict=True)]
    if b"".join(numbers).translate(None, letters):
        return None
    try:
        return np.fromiter(map(float, numbers), np.float64, len(numbers))
    except ValueError:
        return None


def _inline_texts(xml: Xml, tags: Ints, starts: Ints) -> Values | None:
    """Texts that stand in the cell itself, in one run: '<is><t>…</t></is>'."""
    ends = xml.opens[tags + 3]
    lengths = np.select([xml.says(starts, opening) for opening in INLINE], list(map(len, INLINE)), 0)
    if not lengths.all() or not xml.says(ends, INLINE_END).all():
        return None
    places = zip((starts + lengths).tolist(), ends.tolist(), strict=True)
    found = _texts_at(xml.text, places)
    return None if None in found else np.fromiter(found, dtype=object, count=len(found))


def _texts_at(xml: bytes, places: Iterable[tuple[int, int]]) -> Sequence[str | None]:
    """The texts from place to place. A block of plain letters is made text as a whole: that is four times as fast."""
    if xml.isascii() and not any(mark in xml for mark in UNSURE):
        text = xml.decode("ascii")
        return [text[first:end] for first, end in places]
    return [plain_text(xml[first:end]) for first, end in places]


def plain_text(xml: bytes) -> str | None:
    """The text these bytes of XML stand for; None where readers differ: line ends of two signs, escapes by number."""
    try:
        text = xml.decode()
    except UnicodeDecodeError:
        return None
    if "\r" in text or "_x" in text:
        return None
    if "&" not in text:
        return text
    return None if "&" in ENTITY.sub("", text) else ENTITY.sub(lambda found: ENTITIES[found[0]], text)
