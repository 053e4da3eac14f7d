"""XLS workbooks (BIFF8 records in a compound file) written record by record; [MS-XLS] and [MS-CFB], from memory."""

import struct

SECTOR = 512
FREE, END, TABLE = 0xFFFFFFFF, 0xFFFFFFFE, 0xFFFFFFFD


def xls_record(number: int, *values: tuple[str, tuple[object, ...]] | bytes) -> bytes:
    """One record of these pieces: bytes, or a struct format and its values."""
    data = b"".join(one if isinstance(one, bytes) else struct.pack(f"<{one[0]}", *one[1]) for one in values)
    return struct.pack("<HH", number, len(data)) + data


def number_cell(row: int, column: int, value: float, style: int = 0) -> bytes:
    """A NUMBER record, counted from 0."""
    return xls_record(0x203, ("HHHd", (row, column, style, value)))


def sheet_extent(top: int, rows: int, left: int, columns: int) -> bytes:
    """The DIMENSIONS record: how far a worksheet says its cells reach."""
    return xls_record(0x200, ("IIHHH", (top, rows, left, columns, 0)))


def _begin(kind: int) -> bytes:
    return xls_record(0x809, ("HHHHII", (0x600, kind, 0, 0, 0, 0)))


def xls(cells: bytes, *, code: str = "General", before: bytes = b"", shared: bytes = b"") -> bytes:
    """A workbook with one worksheet 'Prices' of these records. Style 1 has the number format `code`.

    `before`: records right after the workbook's first; `shared`: the record of shared texts.
    """
    format_text = struct.pack("<HHB", 164, len(code), 0) + code.encode("latin-1")
    styles = b"".join(xls_record(0xE0, ("HH", (0, number)), bytes(16)) for number in (0, 164))
    sheet = _begin(0x10) + cells + xls_record(0x0A)
    head = _begin(5) + before + xls_record(0x42, ("H", (1200,))) + xls_record(0x41E, format_text) + styles + shared
    length = len(head) + len(xls_record(0x85, bytes(6), b"\x06\x00Prices")) + 4
    named = xls_record(0x85, ("IBB", (length, 0, 0)), b"\x06\x00Prices")
    return compound(head + named + xls_record(0x0A) + sheet)


def compound(stream: bytes) -> bytes:
    """A compound file with one stream 'Workbook': a sector of the table, one of the directory, then the stream."""
    stream = stream.ljust(max(len(stream), 4096), b"\x00")
    count = -(-len(stream) // SECTOR)
    follows = [TABLE, END, *range(3, count + 2), END]
    assert len(follows) <= SECTOR // 4
    table = struct.pack(f"<{SECTOR // 4}I", *follows, *[FREE] * (SECTOR // 4 - len(follows)))
    head = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(16) + struct.pack("<HHHHH6x", 0x3E, 3, 0xFFFE, 9, 6)
    head += struct.pack("<IIIIIIIIII", 0, 1, 1, 0, 4096, END, 0, END, 0, 0) + struct.pack("<108I", *[FREE] * 108)
    directory = _entry("Root Entry", 5, END, 0, child=1) + _entry("Workbook", 2, 2, len(stream)) + bytes(256)
    return head + table + directory + stream.ljust(count * SECTOR, b"\x00")


def _entry(name: str, kind: int, first: int, length: int, child: int = FREE) -> bytes:
    text = (name + "\x00").encode("utf-16-le")
    start = text.ljust(64, b"\x00") + struct.pack("<HBBIII", len(text), kind, 1, FREE, FREE, child)
    return start + bytes(36) + struct.pack("<IQ", first, length)
