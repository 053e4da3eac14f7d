"""What python-calamine does not tell of an XLS workbook, read from its records before the workbook is handed over.

Hidden rows and columns, number formats that change what a number says, error cells, a password; and whether the cells
would fill the memory. Written after [MS-XLS], the published description; the record numbers are from memory, and
were checked with workbooks a spreadsheet saved. XLS keeps no formula as text, so a formula is its stored value.
"""

import struct
from collections.abc import Iterator

import numpy as np

from .workbook_formats import BUILT_IN, read_format
from .workbook_found import MOST_COLUMNS, MOST_TEXTS, Broken, Found, TooMany
from .workbook_marks import MOST_STRINGS, BookMarks, check_cells
from .workbook_ole import stream
from .workbook_xls_numbers import number_in, small_number, styles_taken_for_days

BOF, EOF, PASSWORD, SHEET, SHARED, CONTINUED, FORMAT, STYLE = 0x809, 0x0A, 0x2F, 0x85, 0xFC, 0x3C, 0x41E, 0xE0
ROW, COLUMNS, ROW_HEIGHT, EXTENT, STRING_CELL, ERROR, FORMULA = 0x208, 0x7D, 0x225, 0x200, 0xFD, 0x205, 0x06
FORMULAS = frozenset((FORMULA, 0x206, 0x406))
NUMBERS, MANY_NUMBERS = frozenset((0x203, 0x27E)), 0xBD
OTHER_CELLS = frozenset((STRING_CELL, 0x204, 0xD6))
ERRORS = {0: "#NULL!", 7: "#DIV/0!", 15: "#VALUE!", 23: "#REF!", 29: "#NAME?", 36: "#NUM!", 42: "#N/A"}
MOST_RECORDS = 8_000_000
EIGHT_BIT_LETTERS = 0x600
"""Versions below this (5 and 95) keep texts in one byte a letter."""
SHORTEST_SHARED = 3
MOST_XLS_ROWS, MOST_XLS_COLUMNS = 65_536, 256
"""The published limits. The reader takes memory for as many cells as a worksheet says it has."""
Records = Iterator[tuple[int, bytes]]


class Locked(Exception):
    """The workbook asks for a password."""


def read_xls_marks(data: bytes) -> BookMarks:
    """Looks over every worksheet; nothing is found in older formats.

    Raises Locked, Broken, TooMany, TooMuchText and TooWide.
    """
    records = stream(data, ("workbook", "book"))
    if not records:
        return BookMarks()
    book = _Book(records)
    sheets: dict[str, Found] = {}
    for name, start in book.sheets:
        sheets[name] = book.found(start)
        check_cells(sheets.values())
    return BookMarks(sheets, book.formats)


class _Book:
    """The records up to the first worksheet: names, formats, styles, shared texts."""

    def __init__(self, records: bytes) -> None:
        self.records, self.left = records, MOST_RECORDS
        self.sheets: list[tuple[str, int]] = []
        codes, styles, shared = dict[int, str](), [], []
        self.wide, before = True, 0
        for number, record in self._walk(0):
            if number == PASSWORD:
                raise Locked
            if number == BOF:
                self.wide = int.from_bytes(record[:2], "little") >= EIGHT_BIT_LETTERS
            elif number == FORMAT:
                codes[int.from_bytes(record[:2], "little")] = _text(record[2:], self.wide, 2 if self.wide else 1)
            elif number == STYLE:
                styles.append(int.from_bytes(record[2:4], "little"))
            elif number == SHEET and len(record) > 6:
                self.sheets.append((_text(record[6:], self.wide, 1), int.from_bytes(record[:4], "little")))
            elif number == SHARED or (number == CONTINUED and before == SHARED):
                shared.append(record)
            before = before if number == CONTINUED else number
        known = {number: read_format(code) for number, code in (BUILT_IN | codes).items()}
        self.days = styles_taken_for_days(codes, styles, self.wide)
        found = {at: known.get(number) for at, number in enumerate(styles)}
        self.formats = {at: one for at, one in found.items() if one and one.matters}
        if shared and int.from_bytes(shared[0][4:8], "little") * SHORTEST_SHARED > sum(map(len, shared)):
            raise Broken
        self.sizes = np.fromiter(_shared_sizes(shared), np.int64)

    def _walk(self, start: int) -> Records:
        """Number and data of each record, to the end of this part; parts within it (charts) are passed over."""
        at, depth, records = start, 0, self.records
        while at + 4 <= len(records):
            number, length = struct.unpack_from("<HH", records, at)
            at += 4
            self.left -= 1
            if at + length > len(records):
                raise Broken
            if self.left < 0:
                raise TooMany("too-many-cells", MOST_RECORDS)
            depth += 1 if number == BOF else -1 if number == EOF else 0
            if depth == 0:
                return
            if depth == 1:
                yield number, records[at : at + length]
            at += length
        raise Broken

    def found(self, start: int) -> Found:
        """Looks over one worksheet."""
        found = Found(styles=frozenset(self.formats), string_sizes=self.sizes)
        sheet = _Sheet(found, self.days)
        for number, record in self._walk(start):
            sheet.see(number, record)
        sheet.finish()
        return found


class _Sheet:
    """Told the records of a worksheet."""

    def __init__(self, found: Found, days: frozenset[int]) -> None:
        self.found, self.days = found, days
        self.styled: dict[int, list[tuple[int, int]]] = {}
        self.stated: set[int] = set()
        self.rows_hidden = False

    def see(self, number: int, record: bytes) -> None:
        """One record; the shortest kinds of them are cut off where the file lies about their length: Broken."""
        try:
            if number in NUMBERS or number in FORMULAS or number in OTHER_CELLS or number == ERROR:
                self._cell(number, record, *struct.unpack_from("<HHH", record))
            elif number == MANY_NUMBERS:
                self._many(record)
            elif number == ROW:
                row, flags = struct.unpack_from("<H10xH", record)
                self.stated.add(row)
                self.found.see_row(row + 1, {b"hidden": b"1"} if flags & 0x20 else {})
            elif number == COLUMNS:
                self._columns(*struct.unpack_from("<HHH2xH", record))
            elif number == EXTENT:
                _check_extent(*struct.unpack_from("<IIHH" if len(record) >= 14 else "<HHHH", record))
            elif number == ROW_HEIGHT:
                self.rows_hidden = bool(record[0] & 2)
        except (struct.error, IndexError) as error:
            raise Broken from error

    def _columns(self, first: int, last: int, width: int, flags: int) -> None:
        if flags & 1 or not width:
            self.found.hidden_columns.update(range(first, min(last + 1, MOST_COLUMNS)))

    def _cell(self, number: int, record: bytes, row: int, column: int, style: int) -> None:
        self.found.see_extent(1, row + 1, column + 1)
        if number in NUMBERS:
            self.found.see_sure(1, 1, row + 1, column + 1)
            self._number(row, column, style, number_in(number, record))
        elif number == STRING_CELL:
            sizes, (at,) = self.found.string_sizes, struct.unpack_from("<I", record, 6)
            self.found.string_bytes += int(sizes[at]) if sizes is not None and at < len(sizes) else 0
        elif number == ERROR and record[7]:
            self.found.texts[row, column] = ERRORS.get(record[6], "#N/A")
        elif number in FORMULAS and record[12:14] != b"\xff\xff":
            self._number(row, column, style, number_in(number, record))
        elif number in FORMULAS and record[6] == 2:
            self.found.texts[row, column] = ERRORS.get(record[8], "#N/A")

    def _many(self, record: bytes) -> None:
        """Numbers side by side, each with its style."""
        row, column = struct.unpack_from("<HH", record)
        count = (len(record) - 6) // 6
        self.found.see_extent(count, row + 1, column + count)
        self.found.see_sure(count, count, row + 1, column + count)
        for at in range(count):
            style = int.from_bytes(record[4 + 6 * at : 6 + 6 * at], "little")
            self._number(row, column + at, style, small_number(record, 6 + 6 * at))

    def _number(self, row: int, column: int, style: int, value: float) -> None:
        if style in self.found.styles:
            self.styled.setdefault(style, []).append((row, column))
        if style in self.days:
            if len(self.found.values) >= MOST_TEXTS:
                raise TooMany("too-many-errors", MOST_TEXTS)
            self.found.values[row, column] = value

    def finish(self) -> None:
        """Hands over what could only be told once all was read."""
        if self.rows_hidden:
            self.found.hidden_rows.update(at for at in range(self.found.height) if at not in self.stated)
        for style, places in self.styled.items():
            down, across = np.array(places, np.int64).T
            self.found.styled[style] = [(down, across)]


def _check_extent(top: int, rows: int, left: int, columns: int) -> None:
    """From row and column, up to below and right of the last. A first behind the last wraps round to a huge count."""
    if rows > MOST_XLS_ROWS or columns > MOST_XLS_COLUMNS or top > rows or left > columns:
        raise Broken


def _text(data: bytes, wide: bool, size: int) -> str:
    """A text with its length in front, in `size` bytes; in the newer version a byte of flags stands between."""
    count, data = int.from_bytes(data[:size], "little"), data[size:]
    if not wide:
        return data[:count].decode("cp1252", "replace")
    return (
        data[1 : 1 + 2 * count].decode("utf-16-le", "replace")
        if data[:1] == b"\x01"
        else data[1 : 1 + count].decode("latin-1")
    )


def _shared_sizes(parts: list[bytes]) -> Iterator[int]:
    """Letters of each shared text. A text may go on in the next part, after a byte of flags of its own."""
    at, part = 8, 0
    count = 0
    while part < len(parts):
        data = parts[part]
        if at + 3 > len(data):
            part, at = part + 1, 0
            continue
        letters, flags = struct.unpack_from("<HB", data, at)
        at += 3
        runs, extra, at = _extras(data, at, flags)
        yield letters
        count += 1
        if count > MOST_STRINGS:
            raise TooMany("too-many-cells", MOST_STRINGS)
        part, at = _after(parts, part, at, letters, bool(flags & 1))
        part, at = _skipped(parts, part, at, 4 * runs + extra)


def _extras(data: bytes, at: int, flags: int) -> tuple[int, int, int]:
    runs = extra = 0
    if flags & 8:
        runs, at = int.from_bytes(data[at : at + 2], "little"), at + 2
    if flags & 4:
        extra, at = int.from_bytes(data[at : at + 4], "little"), at + 4
    return runs, extra, at


def _after(parts: list[bytes], part: int, at: int, letters: int, wide: bool) -> tuple[int, int]:
    """Where a text of so many letters ends."""
    while True:
        here = (len(parts[part]) - at) // (2 if wide else 1)
        if letters <= here:
            return part, at + letters * (2 if wide else 1)
        letters, part, at = letters - max(here, 0), part + 1, 1
        if part >= len(parts):
            return part, 0
        wide = parts[part][:1] == b"\x01"


def _skipped(parts: list[bytes], part: int, at: int, count: int) -> tuple[int, int]:
    """Where so many bytes further lie."""
    while part < len(parts) and at + count > len(parts[part]):
        count, part, at = count - max(len(parts[part]) - at, 0), part + 1, 0
    return part, at + count
