"""Files that are no price sheet, or not what their name says: cut off, protected, renamed."""

import struct

from tests.traps.workbook_writer import Sheet, parts_of, workbook, zipped

END, FREE, TABLE = 0xFFFFFFFE, 0xFFFFFFFF, 0xFFFFFFFD
PRICES = Sheet(
    "Prices",
    [
        ["Part Number", "Description", "Net Price"],
        ["NW-40388", "Belt auger drive", "119.00"],
        ["0031200", "Idler bearing", "11.60"],
    ],
)
PDF = (
    b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n"
    b"2 0 obj\n<< /Type /Pages /Kids [] /Count 0 >>\nendobj\ntrailer\n<< /Root 1 0 R >>\n%%EOF\n"
)
PICTURE = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010800000000"
    "3a7e9b550000000a49444154789c6360000000020001e221bc330000000049454e44ae426082"
)
PACKED = bytes.fromhex("1f8b08000000000000ff4bcbcf4f4a2ce202004b2f8cbe08000000")
PAGE = (
    b"<html><head><title>Prices</title></head><body><table>\n"
    b"<tr><th>Part Number</th><th>Net Price</th></tr>\n<tr><td>NW-40388</td><td>119.00</td></tr>\n"
    b"</table></body></html>\n"
)


def protected() -> bytes:
    """The outside of a workbook with a password: a compound file with an EncryptedPackage ([MS-OFFCRYPTO] 2.3)."""
    sector, streams = 512, ("EncryptionInfo", "EncryptedPackage")
    head = struct.pack("<8s16xHHHHH6x", bytes.fromhex("d0cf11e0a1b11ae1"), 0x3E, 3, 0xFFFE, 9, 6)
    head += struct.pack("<10I", 0, 1, 1, 0, 4096, END, 0, END, 0, 0) + struct.pack("<108I", *[FREE] * 108)
    chains = [link for start in (2, 10) for link in (*range(start + 1, start + 8), END)]
    table = struct.pack("<128I", *([TABLE, END, *chains] + [FREE] * 110))
    entries = _entry("Root Entry", 5, 1, (END, 0))
    entries += _entry(streams[0], 2, FREE, (2, 4096), right=2) + _entry(streams[1], 2, FREE, (10, 4096))
    return head + table + entries + bytes(128) + bytes(range(256)) * 2 * 16 + bytes(sector - 512)


def _entry(name: str, kind: int, child: int, where: tuple[int, int], right: int = FREE) -> bytes:
    text = name.encode("utf-16-le")
    entry = text.ljust(64, b"\0") + struct.pack("<HBBIII", len(text) + 2, kind, 1, FREE, right, child)
    return entry + bytes(16 + 4 + 8 + 8) + struct.pack("<IQ", *where)


def with_worksheet(*changes: tuple[str, str]) -> bytes:
    """The small price workbook with something changed in the text of its worksheet."""
    parts, name = parts_of(workbook(PRICES)), "xl/worksheets/sheet1.xml"
    text = parts[name].decode()
    for old, new in changes:
        text = text.replace(old, new)
    return zipped(parts | {name: text.encode()})


def broken_files() -> dict[str, bytes]:
    """Name to bytes."""
    book = workbook(PRICES)
    return {
        "empty.csv": b"",
        "cut-off.xlsx": book[: len(book) * 2 // 3],
        "password-protected.xlsx": protected(),
        "pdf-named-csv.csv": PDF,
        "picture-named-csv.csv": PICTURE,
        "packed-named-csv.csv": PACKED,
        "all-bytes-there-are.csv": bytes(range(256)) * 8,
        "web-page-named-xls.xls": PAGE,
        "workbook-named-csv.csv": book,
        "text-named-xlsx.xlsx": b"Part Number,Description,Net Price\nNW-40388,Belt auger drive,119.00\n",
        "outside-entity.xlsx": with_worksheet(
            ("<worksheet", '<!DOCTYPE worksheet [<!ENTITY x SYSTEM "file:///nowhere">]>\n<worksheet'),
            ("Idler bearing", "&x;"),
        ),
        "stray-cell-far-away.xlsx": with_worksheet(
            ("</sheetData>", '<row r="1048576"><c r="Z1048576" t="inlineStr"><is><t>x</t></is></c></row></sheetData>')
        ),
        "archive-of-other-things.xlsx": zipped({"readme.txt": "The price list follows by post.\n"}),
    }
