"""Workbooks written by hand, part by part, so that a test can write what no spreadsheet would."""

import io
import struct
import zipfile
from collections.abc import Mapping

MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006"
ODF = "urn:oasis:names:tc:opendocument:xmlns:"
TYPES = (
    f'<Types xmlns="{PACKAGE}/content-types"><Default Extension="rels" '
    'ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" '
    'ContentType="application/xml"/><Override PartName="/xl/workbook.xml" '
    'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>'
)
TOP = (
    f'<Relationships xmlns="{PACKAGE}/relationships"><Relationship Id="rId1" Type="{RELATIONS}/officeDocument" '
    'Target="xl/workbook.xml"/></Relationships>'
)
BOOK = (
    f'<workbook {MAIN} xmlns:r="{RELATIONS}"><sheets><sheet name="Prices" sheetId="1" r:id="rId1"/></sheets>'
    "{after}</workbook>"
)
LINKS = (
    f'<Relationships xmlns="{PACKAGE}/relationships">'
    f'<Relationship Id="rId1" Type="{RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/>'
    f'<Relationship Id="rId2" Type="{RELATIONS}/styles" Target="styles.xml"/>'
    f'<Relationship Id="rId3" Type="{RELATIONS}/sharedStrings" Target="sharedStrings.xml"/></Relationships>'
)


def packed(parts: dict[str, str | bytes]) -> bytes:
    """An archive of these parts."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        for name, text in parts.items():
            archive.writestr(name, text)
    return out.getvalue()


def worksheet(rows: str, before: str = "", after: str = "", start: str = '<?xml version="1.0"?>') -> str:
    """A worksheet's XML around these rows."""
    return f"{start}<worksheet {MAIN}>{before}<sheetData>{rows}</sheetData>{after}</worksheet>"


def book(
    rows: str | bytes,
    *,
    formats: str = "",
    strings: str = "",
    after: str = "",
    parts: Mapping[str, str | bytes] | None = None,
) -> bytes:
    """An XLSX of one worksheet 'Prices': its rows, or its whole XML. `formats`: one format code for style 1."""
    sheet = worksheet(rows) if isinstance(rows, str) and not rows.startswith("<?xml") else rows
    styles = (
        f'<styleSheet {MAIN}><numFmts count="1"><numFmt numFmtId="164" formatCode="{formats}"/></numFmts><cellXfs>'
        '<xf numFmtId="0"/><xf numFmtId="164" applyNumberFormat="1"/><xf numFmtId="14"/></cellXfs></styleSheet>'
    )
    return packed(
        {
            "[Content_Types].xml": TYPES,
            "_rels/.rels": TOP,
            "xl/workbook.xml": BOOK.replace("{after}", after),
            "xl/_rels/workbook.xml.rels": LINKS,
            "xl/styles.xml": styles,
            "xl/sharedStrings.xml": f"<sst {MAIN}>{strings}</sst>",
            "xl/worksheets/sheet1.xml": sheet,
        }
        | dict(parts or {})
    )


def cell(reference: str, value: str, attributes: str = "") -> str:
    """A number cell, or another by its attributes."""
    return f'<c r="{reference}"{attributes}><v>{value}</v></c>'


def ods(table: str, before: str = "", start: str = '<?xml version="1.0" encoding="UTF-8"?>') -> bytes:
    """An ODS of one table with this XML in it; `before`: its automatic styles."""
    names = " ".join(f'xmlns:{name}="{ODF}{name}:1.0"' for name in ("office", "table", "text", "style"))
    content = (
        f'{start}<office:document-content {names} office:version="1.2"><office:automatic-styles>{before}'
        "</office:automatic-styles><office:body><office:spreadsheet>"
        f'<table:table table:name="Prices">{table}</table:table></office:spreadsheet></office:body>'
        "</office:document-content>"
    )
    return packed(
        {
            "mimetype": "application/vnd.oasis.opendocument.spreadsheet",
            "META-INF/manifest.xml": f'<m:manifest xmlns:m="{ODF}manifest:1.0" m:version="1.2"/>',
            "content.xml": content,
        }
    )


def record(number: int, data: bytes = b"") -> bytes:
    """One record of an XLSB part ([MS-XLSB] 2.1.4): number and length by seven bits."""
    head = bytes([number]) if number < 128 else bytes([number & 127 | 128, number >> 7])
    length = len(data)
    size = b""
    while True:
        size += bytes([length & 127 | (128 if length > 127 else 0)])
        length >>= 7
        if not length:
            return head + size + data


def xlsb(cells: list[tuple[int, int, float]]) -> bytes:
    """An XLSB of one worksheet with number cells (row, column, value), counted from 0 and in order."""
    name, link = "Prices", "rId1"
    wide = [len(text).to_bytes(4, "little") + text.encode("utf-16-le") for text in (link, name)]
    sheet = record(129) + record(148, bytes(16)) + record(145)
    row = -1
    for at, column, value in cells:
        if at != row:
            row = at
            sheet += record(0, at.to_bytes(4, "little") + bytes(13))
        sheet += record(5, column.to_bytes(4, "little") + bytes(4) + struct.pack("<d", value))
    sheet += record(146) + record(130)
    bundle = record(156, bytes(4) + (1).to_bytes(4, "little") + wide[0] + wide[1])
    workbook = record(131) + record(143) + bundle + record(144) + record(132)
    binary = 'ContentType="application/vnd.ms-excel.sheet.binary.macroEnabled.main"/>'
    return packed(
        {
            "[Content_Types].xml": TYPES.replace("xl/workbook.xml", "xl/workbook.bin").replace(
                'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>', binary
            ),
            "_rels/.rels": TOP.replace("workbook.xml", "workbook.bin"),
            "xl/workbook.bin": workbook,
            "xl/_rels/workbook.bin.rels": LINKS.replace("sheet1.xml", "sheet1.bin").replace(".xml", ".bin"),
            "xl/worksheets/sheet1.bin": sheet,
        }
    )
