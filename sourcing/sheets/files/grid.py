"""Bytes to worksheets of cells, whatever kind of file they come from. Nothing is interpreted here.

The kind of file is told by its first bytes, never by its name: a renamed file is read for what it is.
"""

import re

from sourcing.basics.problem import Place, Refused, refused

from ..worksheet import Worksheet
from .text_grid import read_text
from .workbook_grid import read_workbook

ZIP, OLE = b"PK\x03\x04", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
OTHER_FILES = (
    (b"%PDF", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"RIFF", "a picture or a recording"),
    (b"II*\x00", "a picture"),
    (b"MM\x00*", "a picture"),
    (b"{\\rtf", "a text document"),
    (b"\x1f\x8b", "a packed archive"),
    (b"7z\xbc\xaf", "a packed archive"),
    (b"Rar!", "a packed archive"),
    (b"PK\x05\x06", "an empty archive"),
)
WEB_PAGE = re.compile(rb"\s*<(!doctype|html|table|\?xml|head|body)", re.IGNORECASE)


def read_grid(data: bytes, file: str) -> list[Worksheet]:
    """The worksheets of the file; a text file is one worksheet without a name. Refuses what is not a sheet."""
    if not data.strip(b"\x00 \t\r\n\xef\xbb\xbf\xff\xfe"):
        raise refused("file-empty", place=Place(file=file))
    if data.startswith((ZIP, OLE)):
        return read_workbook(data, file)
    _refuse_other_kinds(data, file)
    return read_text(data, file)


def _refuse_other_kinds(data: bytes, file: str) -> None:
    for start, kind in OTHER_FILES:
        if data.startswith(start):
            raise not_a_sheet(file, kind)
    if WEB_PAGE.match(data.removeprefix(b"\xef\xbb\xbf")[:200]):
        raise not_a_sheet(file, "a web page or XML")


def not_a_sheet(file: str, kind: str) -> Refused:
    """The refusal that says what the file is instead."""
    return refused("not-a-sheet", place=Place(file=file), found=kind)
