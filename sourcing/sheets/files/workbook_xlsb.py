"""How far the cells of an XLSB workbook reach, counted before the workbook is handed to the reader.

XLSB is a row of records, each with its number, its length and its data ([MS-XLSB], published by Microsoft). The
record numbers below are written from memory; a test has the reader agree for rows and plain numbers only.
"""

from collections.abc import Iterable, Iterator

import numpy as np

from .archive import Archive
from .workbook_found import LONGEST_TEXT, MOST_COLUMNS, MOST_ROWS, Broken, Found, TooLong, TooMany
from .workbook_marks import MOST_STRINGS, check_cells, part_of
from .workbook_parse import tags_of

ROW, ITEM, SHARED = 0, 19, 7
CELLS = frozenset(range(2, 12))
"""Cells with something in them: numbers, errors, yes or no, texts, and the results of formulas."""
PASSED_OVER = frozenset((*range(12, 19), 62))
"""Cells the reader leaves out: those without a column of their own, and texts in several letterings."""
EXTENT = 148
LONGEST_RECORD = 1 << 21


def check_xlsb(archive: Archive) -> None:
    """Refuses worksheets that would fill the memory; hidden rows and number formats are not read."""
    sizes = []
    if "xl/sharedstrings.bin" in archive.parts:
        for number, record in _records(archive.pieces("xl/sharedstrings.bin")):
            if number == ITEM:
                sizes.append(len(record))
            if len(record) > LONGEST_TEXT:
                raise TooLong
            if len(sizes) > MOST_STRINGS:
                raise TooMany("too-many-cells", MOST_STRINGS)
    found = []
    linked = _linked(archive)
    for name in archive.names():
        if name in linked or (name.startswith("xl/") and name.endswith(".bin") and "sheet" in name):
            found.append(Found(string_sizes=np.array(sizes, np.int64)))
            _look_over(archive, name, found[-1])
            check_cells(found)


def _linked(archive: Archive) -> set[str]:
    """The parts that are worksheets by the workbook's relations, whatever their name."""
    tags = tags_of(archive.small("xl/_rels/workbook.bin.rels"))
    return {part_of(tag.get("Target", "")) for _, _, tag in tags if tag.get("Type", "").endswith("/worksheet")}


def _look_over(archive: Archive, name: str, found: Found) -> None:
    sizes = found.string_sizes
    assert sizes is not None
    row = 0
    for number, record in _records(archive.pieces(name)):
        if number in PASSED_OVER:
            raise Broken
        if number == EXTENT:
            _check_extent(record)
        elif number == ROW:
            row = _row_after(row, int.from_bytes(record[:4], "little") + 1)
        elif number in CELLS:
            found.see_extent(1, row, int.from_bytes(record[:4], "little") + 1)
            text = int.from_bytes(record[8:12], "little") if number == SHARED else len(sizes)
            found.string_bytes += int(sizes[text]) if text < len(sizes) else len(record)


def _check_extent(record: bytes) -> None:
    """First and last row, first and last column. A first behind the last wraps round to a huge count in the reader."""
    top, bottom, left, right = (int.from_bytes(record[at : at + 4], "little") for at in range(0, 16, 4))
    if top > bottom or left > right or bottom >= MOST_ROWS or right >= MOST_COLUMNS:
        raise Broken


def _row_after(before: int, row: int) -> int:
    """The row, counted from 1; rows that go backwards make the reader ask for more memory than there is."""
    if row <= before:
        raise Broken
    return row


def _records(pieces: Iterable[bytes]) -> Iterator[tuple[int, bytes]]:
    """Number and data of each record. Seven bits of each byte count; the eighth says that another follows."""
    rest = b""
    for piece in pieces:
        rest += piece
        at = 0
        while (header := _header(rest, at)) and header[1] + header[2] <= len(rest):
            number, start, length = header
            yield number, rest[start : start + length]
            at = start + length
        rest = rest[at:]
        if len(rest) > LONGEST_RECORD:
            raise TooLong


def _header(data: bytes, at: int) -> tuple[int, int, int] | None:
    """Number, where the data start, and their length; None where the header is not whole."""
    if at + 6 > len(data) and at + 2 > len(data):
        return None
    number = data[at]
    at += 1
    if number > 127:
        if at >= len(data):
            return None
        number = number & 127 | data[at] << 7
        at += 1
    length = shift = 0
    while at < len(data) and shift < 28:
        byte = data[at]
        at += 1
        length |= (byte & 127) << shift
        if byte < 128:
            return number, at, length
        shift += 7
    return None
