"""Values of XLSX cells of which python-calamine reads only a part, found in the XML before it is handed over.

Of a number, a shared text's number or a yes or no it takes what stands before the first entity, comment or tag:
'<v>1&#50;</v>' would be 1. Legal, but written by nobody, so such a worksheet is refused.
"""

import re
from collections.abc import Iterable, Iterator

from .workbook_found import Broken

CUT = re.compile(rb"<(?:\w+:)?v(?:\s[^<>]*)?>[^<&]*(?:&|<(?!/))")
TEXT_CELL = re.compile(rb"""\st\s*=\s*["'](?:str|e|d|inlineStr)["']""")
BACK = 1 << 15
"""Bytes before a value in which its cell's tag stands; a formula between them has 8,192 characters at most."""


def whole_values(pieces: Iterable[bytes]) -> Iterator[bytes]:
    """The same pieces; raises Broken where a value would be read in part."""
    before = b""
    for piece in pieces:
        xml = before + piece
        check_values(xml)
        before = xml[-BACK:]
        yield piece


def check_values(xml: bytes) -> None:
    """Raises Broken where a value would be read in part. Texts may have entities, but no tags or comments."""
    for found in CUT.finditer(xml):
        if not found[0].endswith(b"&"):
            raise Broken
        first = max(0, found.start() - BACK)
        cell = xml.rfind(b"<c ", first, found.start())
        cell = cell if cell >= 0 else xml.rfind(b":c ", first, found.start())
        if cell >= 0 and not TEXT_CELL.search(xml, cell, xml.find(b">", cell)):
            raise Broken
