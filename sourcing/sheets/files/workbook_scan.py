"""The cells of an XLSX worksheet's XML, looked over by whole blocks of rows with numpy: fast, for regular XML only.

What nearly every program writes is regular: no comments, '<c r="B7" s="3" t="s">' with the reference first. Anything
else raises Irregular, and the slow reader of `workbook_parse` takes the worksheet from its start. Both find the same.
"""

import html
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from .workbook_cut_values import check_values
from .workbook_found import MOST_COLUMNS, SURE, Broken, CellKind, Found, Tail, TooLong, longest_checked
from .workbook_values import LongValues

Ints = npt.NDArray[np.int64]
Words = npt.NDArray[np.uint64]

BLOCK = 1 << 19
LONGEST_HEAD = 1 << 22
LONGEST_ROWS = 1 << 24
"""Bytes without the start of a row."""
PADDING = bytes(48)
ATTRIBUTE = re.compile(rb"""\s([a-z]+)=["']([^"']*)["']""")
ROW = re.compile(rb'<row r="(\d+)"([^>]*)>')
TAIL = re.compile(rb'(?: [a-z]+="[^"<>]*")* ?/?>')
LONGEST_TAIL = 40
MOST_TAILS = 3000
END = b"</sheetData>"
MASKS = np.array([(1 << 8 * count) - 1 for count in range(9)], np.uint64)
"""By a count of bytes: the mask that keeps so many of a word of eight."""


class Irregular(Exception):
    """The XML is not as expected here; it may be quite right."""


def _number(text: bytes) -> int:
    return int.from_bytes(text, "little")


def _word(text: bytes) -> np.uint64:
    return np.uint64(int.from_bytes(text, "little"))


def scan(pieces: Iterable[bytes], found: Found, values: LongValues | None = None) -> None:
    """Fills `found`, and `values` if wanted, from the XML of one worksheet. Raises Irregular, with both half filled."""
    parts = iter(pieces)
    head, rows = _head(parts)
    found.see_head(head)
    tail = b""
    for block in _blocks(rows, parts):
        if end := block.find(END) + 1:
            tail, block = block[end:], block[: end - 1]
        _Block(block, found, values).look()
        if tail:
            break
    found.see_tail(tail)
    for piece in parts:
        found.see_tail(piece)


def _head(parts: Iterator[bytes]) -> tuple[bytes, bytes]:
    """What stands before the rows, and the first bytes of them."""
    text = b""
    for piece in parts:
        text += piece
        if b"\x00" in text[:64]:
            raise Broken  # UTF-16: the reader of the cells would find none, and say nothing
        at = text.find(b"<sheetData")
        if at >= 0 and b"<!" not in text[:at]:
            return text[:at], text[at:]
        if at >= 0 or len(text) > LONGEST_HEAD:
            raise Irregular
    raise Irregular


def _blocks(rows: bytes, parts: Iterator[bytes]) -> Iterator[bytes]:
    """Blocks that end before a row begins; the last holds the rest of the XML read so far."""
    for piece in parts if END not in rows else ():
        rows += piece
        if len(rows) >= BLOCK and (cut := rows.rfind(b"<row ")) > 0:
            yield rows[:cut]
            rows = rows[cut:]
        if END in rows[-len(piece) - len(END) :]:
            break
        if len(rows) > LONGEST_ROWS:
            raise TooLong
    yield rows


class _Block:
    """Whole rows of XML: where the tags are, and what the cells among them say."""

    def __init__(self, text: bytes, found: Found, values: LongValues | None) -> None:
        self.text, self.found, self.values = text, found, values
        buffer = text + PADDING
        self.eight: Words = np.ndarray((len(text) + 40,), "<u8", buffer, strides=(1,))
        letters = np.ndarray((len(text) + 46,), "<u2", buffer, strides=(1,))
        opens = np.flatnonzero(np.frombuffer(text, np.uint8) == ord("<"))
        longest_checked(int(np.diff(opens, append=len(text)).max(initial=0)))
        self.opens: Ints = np.append(opens, np.full(8, len(text)))
        self.two = letters[self.opens]
        """The first two bytes of each tag."""

    def says(self, at: Ints, text: bytes) -> npt.NDArray[np.bool_]:
        """At which of the places these bytes stand."""
        same = np.ones(len(at), np.bool_)
        for begin in range(0, len(text), 8):
            part = text[begin : begin + 8]
            same &= (self.eight[at + begin] & MASKS[len(part)]) == _word(part)
        return same

    def look(self) -> None:
        """Adds what the block holds to `found`."""
        after_values = self.two[np.flatnonzero(self.two == _number(b"<v")) + 1]
        if (self.two == _number(b"<!")).any() or (after_values != _number(b"</")).any():
            raise Irregular
        if b"&" in self.text and b"<v>" in self.text:
            check_values(self.text)
        self._look_at_rows()
        tags = np.flatnonzero(self.two == _number(b"<c"))
        if len(tags):
            self._look_at_cells(tags)

    def _look_at_rows(self) -> None:
        """Rows begin with their number, or not with '<row' ('<r>' is a run of text). Most have no other attribute."""
        tags = np.flatnonzero(self.two == _number(b"<r"))
        begins = self.eight[self.opens[tags]]
        rows = (begins & MASKS[4]) == _word(b"<row")
        if (begins[rows] != _word(b'<row r="')).any():
            raise Irregular
        longest = (self.opens[tags + 1] - self.opens[tags]).max(initial=0)
        states_more = longest > len('<row r="1048576">') and (b"hidden=" in self.text or b'ht="0' in self.text)
        if self.found.rows_hidden or states_more:
            for row, attributes in ROW.findall(self.text):
                self.found.see_row(int(row), dict(ATTRIBUTE.findall(attributes)))

    def _look_at_cells(self, tags: Ints) -> None:
        if ((self.eight[self.opens[tags]] & MASKS[6]) != _word(b'<c r="')).any():
            raise Irregular
        columns, rows, quotes = self._references(self.opens[tags] + 6)
        if (np.diff(rows * MOST_COLUMNS + columns) == 0).any():
            raise Broken
        tails = self._tails(quotes + 1)
        cells = _Cells(tags, tails, rows, columns)
        self._look_at_formulas(cells)
        for number, tail in enumerate(self.found.tails):
            here = np.flatnonzero(tails == number)
            if not tail.filled or not len(here):
                continue
            self.found.see_extent(len(here), int(rows[here].max()), int(columns[here].max()))
            if tail.style in self.found.struck_styles:
                self.found.struck.append((rows[here] - 1, columns[here] - 1))
            if tail.kind in SURE:
                self._count_sure(tail, here, cells, quotes)
            if self.values:
                here_filled = here[self.two[tags[here] + 1] != _number(b"</")]
                starts = quotes[here_filled] + 1 + len(tail.text)
                places = rows[here_filled], columns[here_filled]
                self.values.see(self, tail, tags[here_filled], starts, places)
            if tail.kind == CellKind.STRING:
                self._look_at_strings(tags[here], quotes[here] + 1 + len(tail.text))
            elif tail.kind == CellKind.NUMBER and tail.style in self.found.styles:
                self.found.styled.setdefault(tail.style, []).append((rows[here] - 1, columns[here] - 1))

    def _count_sure(self, tail: Tail, here: Ints, cells: "_Cells", quotes: Ints) -> None:
        """Cells whose tag is followed by a value that is not blank."""
        words = self.eight[quotes[here] + 1 + len(tail.text)]
        fourth = (words >> np.uint64(24)) & np.uint64(255)
        sure = here[((words & MASKS[3]) == _word(b"<v>")) & (fourth != ord("<")) & (fourth > ord(" "))]
        if len(sure):
            numbers = len(sure) if tail.kind == CellKind.NUMBER else 0
            self.found.see_sure(len(sure), numbers, int(cells.rows[sure].max()), int(cells.columns[sure].max()))

    def _references(self, at: Ints) -> tuple[Ints, Ints, Ints]:
        """Column and row of each cell, from 1, and where the quotation mark after them stands."""
        word = self.eight[at]
        letters = [(word >> np.uint64(8 * byte)).astype(np.uint8) for byte in range(3)]
        is_letter = [(letter >= ord("A")) & (letter <= ord("Z")) for letter in letters]
        if not is_letter[0].all():
            raise Irregular
        columns, digits = letters[0].astype(np.int64) - 64, at + 1
        if is_letter[1].any():
            two, three = is_letter[1], is_letter[1] & is_letter[2]
            columns = np.where(two, columns * 26 + letters[1] - 64, columns)
            columns = np.where(three, columns * 26 + letters[2] - 64, columns)
            digits = digits + two + three
        rows, lengths = self._numbers(digits, ord('"'))
        return columns, rows, digits + lengths

    def _numbers(self, at: Ints, end: int) -> tuple[Ints, Ints | int]:
        """The numbers of one to seven digits there, up to the byte `end`, and how many digits. Eight at a time:

        the lowest byte equal to `end` is found, the digits before it moved up, and pairs, fours and eights added.
        """
        word = self.eight[at]
        differs = word ^ np.uint64(end * 0x0101010101010101)
        equal = (differs - np.uint64(0x0101010101010101)) & ~differs & np.uint64(0x8080808080808080)
        below = ((equal & (~equal + np.uint64(1))) >> np.uint64(7)) - np.uint64(1)
        digits = word & below
        same = (below == below[0]).all()
        lengths: Ints | int = int(np.searchsorted(MASKS, below[0])) if same else np.searchsorted(MASKS, below)
        if np.min(lengths) < 1 or np.max(lengths) > 7:
            raise Irregular
        zeros, high = np.uint64(0x3030303030303030) & below, np.uint64(0xF0F0F0F0F0F0F0F0)
        six_more = digits + (np.uint64(0x0606060606060606) & below)  # ':' to '?' follow '9' and have its high bits
        if ((digits & high) != zeros).any() or ((six_more & high) != zeros).any():
            raise Irregular
        value = digits << np.asarray(64 - 8 * lengths, np.uint64)
        value &= np.uint64(0x0F0F0F0F0F0F0F0F)
        value = ((value * np.uint64(2561)) >> np.uint64(8)) & np.uint64(0x00FF00FF00FF00FF)
        value = ((value * np.uint64(6553601)) >> np.uint64(16)) & np.uint64(0x0000FFFF0000FFFF)
        value = (value * np.uint64(42949672960001)) >> np.uint64(32)
        return value.astype(np.int64), lengths

    def _tails(self, at: Ints) -> Ints:
        """For each cell the number in `found.tails` of what stands after its reference: ' s="3" t="s">'."""
        words = self.eight[at]
        tails: Ints = np.full(len(at), -1, np.int64)
        for number in range(len(self.found.tails)):
            self._mark(tails, words, at, number)
        while (left := np.flatnonzero(tails < 0)).size:
            first = int(at[left[0]])
            tail = TAIL.match(self.text, first)
            if not tail or len(tail[0]) > LONGEST_TAIL or len(self.found.tails) > MOST_TAILS:
                raise Irregular
            self._mark(tails, words, at, self.found.add_tail(tail[0]))
        return tails

    def _mark(self, tails: Ints, words: Words, at: Ints, number: int) -> None:
        text = self.found.tails[number].text
        same = np.flatnonzero((words & MASKS[min(len(text), 8)]) == _word(text[:8]))
        for begin in range(8, len(text), 8):
            part = text[begin : begin + 8]
            same = same[(self.eight[at[same] + begin] & MASKS[len(part)]) == _word(part)]
        tails[same] = number

    def _look_at_formulas(self, cells: "_Cells") -> None:
        """Error cells, and formulas whose value is not stored. A formula stands before its value (the schema)."""
        with_formula = self.two[cells.tags + 1] == _number(b"<f")
        errors = [at for at, tail in enumerate(self.found.tails) if tail.kind == CellKind.ERROR and tail.filled]
        chosen = with_formula | np.isin(cells.tails, errors) if errors else with_formula
        if with_formula.sum() != (self.two == _number(b"<f")).sum():
            raise Irregular
        for at in np.flatnonzero(chosen).tolist():
            tag = int(cells.tags[at]) + 1
            formula = ""
            if with_formula[at]:
                formula, closed = self._text_after(tag)
                tag += 1 if closed else 2
            value = self._text_after(tag)[0] if self.two[tag] == _number(b"<v") else None
            kind = self.found.tails[cells.tails[at]].kind
            place = (int(cells.rows[at]), int(cells.columns[at]))
            self.found.see_formula(place, kind, value, formula if with_formula[at] else None)

    def _text_after(self, tag: int) -> tuple[str, bool]:
        """The text between this tag and the next, and whether the tag is closed in itself."""
        _, _, text = self.text[self.opens[tag] : self.opens[tag + 1]].partition(b">")
        closed = self.text[self.opens[tag + 1] - len(text) - 2] == ord("/")
        return html.unescape(text.decode("utf-8", "replace")) if not closed else "", closed

    def _look_at_strings(self, tags: Ints, after: Ints) -> None:
        """Adds the size of the strings these cells show, if wanted. `after`: where their tags end; '<v>' follows.

        The reader takes the first text of all for a number it can't read, so each is looked at.
        """
        after = after[self.two[tags + 1] != _number(b"</")]
        if not len(after):
            return
        if not self.says(after, b"<v>").all():
            raise Irregular
        numbers, _ = self._numbers(after + 3, ord("<"))
        sizes = self.found.string_sizes
        if sizes is not None:
            self.found.string_bytes += int(sizes[numbers[numbers < len(sizes)]].sum())


@dataclass(frozen=True)
class _Cells:
    """Where the tags of the cells are among all tags, what they end in, and where they stand, from 1."""

    tags: Ints
    tails: Ints
    rows: Ints
    columns: Ints
