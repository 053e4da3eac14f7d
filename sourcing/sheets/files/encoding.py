"""Bytes to text, without being told the encoding.

In this order: byte order mark; UTF-16 and UTF-32 by where the zero bytes stand; UTF-8; UTF-8 with a few damaged bytes;
a single-byte code page by what its high bytes mean as letters of words (code_pages). Line ends stay as they are.
"""

import codecs
from dataclasses import dataclass

from sourcing.basics.problem import Place, refused

from .code_pages import best_code_page, decoding_table

BOMS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
NAMES = {
    "utf-8": "UTF-8", "utf-16-le": "UTF-16", "utf-16-be": "UTF-16", "utf-32-le": "UTF-32", "utf-32-be": "UTF-32",
    "mac-roman": "Mac Roman",
}  # fmt: skip
"""What people call an encoding; a code page keeps its short name."""
CONTROL = bytes([*range(9), 11, *range(14, 32), 127])
LOOKED_AT = 4000
"""So many bytes tell where zero bytes stand."""
LEAST_ZEROS = 3
"""Fewer are stray ones, however short the file."""
BEFORE, AFTER = 4_000_000, 1_000_000
CONTINUED = bytes(range(0x80, 0xC0))
"""Bytes that go on with a UTF-8 character."""
MOST_DAMAGED, AT_ONCE = 20_000, 4_000_000


@dataclass(frozen=True)
class Decoded:
    """The text without byte order mark and zero characters, and the name of its encoding for people."""

    text: str
    encoding: str


def decode(data: bytes, file: str) -> Decoded:
    """The text. Refuses bytes that are no text (more than one control character in a hundred)."""
    text, encoding = _decoded(data)
    text = text.removeprefix("\ufeff").rstrip("\x1a\x00")
    zeros = text.count("\x00")
    if zeros:
        text = text.replace("\x00", "")
    # In UTF-8 the sign for a lost character was written by whoever saved the file; in the others it was put in here.
    lost = text.count("\ufffd") if encoding.startswith("utf-") and encoding != "utf-8" else 0
    if not text.strip() or zeros * 4 > len(text) or (_controls(text) + lost) * 100 > len(text):
        raise refused("not-a-sheet", place=Place(file=file), found="bytes that are no text")
    return Decoded(text, NAMES.get(encoding, encoding))


def _controls(text: str) -> int:
    """How many control characters that no text file has. Counted in bytes: a pattern takes ten times as long."""
    count = 0
    for at in range(0, len(text), AT_ONCE):
        raw = text[at : at + AT_ONCE].encode("utf-8", "surrogatepass")
        count += len(raw) - len(raw.translate(None, CONTROL))
    return count


def _decoded(data: bytes) -> tuple[str, str]:
    wide = _wide_encoding(data)
    if wide:
        unit = 4 if "32" in wide else 2
        return data[: len(data) // unit * unit].decode(wide, "replace"), wide
    try:
        return data.decode("utf-8"), "utf-8"
    except UnicodeDecodeError as error:
        return _not_quite_utf_8(data, error.start)


def _wide_encoding(data: bytes) -> str:
    """UTF-16 or UTF-32 by mark or by its zero bytes; blank where it is neither."""
    for mark, name in BOMS:
        if data.startswith(mark) and ("32" not in name or len(data) % 4 == 0):
            return "" if name == "utf-8" else name
    start = data[:LOOKED_AT]
    if start.count(0) < LEAST_ZEROS:
        return ""
    zeros = [start[at::4].count(0) * 4 / max(len(start), 4) for at in range(4)]
    if min(zeros[2:]) > 0.9 and zeros[0] < 0.1:
        return "utf-32-le"
    if min(zeros[:2]) > 0.9 and zeros[3] < 0.1:
        return "utf-32-be"
    even, odd = zeros[0] + zeros[2], zeros[1] + zeros[3]
    if max(even, odd) < 0.3 or len(start) < 6 or min(even, odd) * 10 > max(even, odd):
        return ""
    return "utf-16-le" if odd > even else "utf-16-be"


def _not_quite_utf_8(data: bytes, error: int) -> tuple[str, str]:
    """UTF-8 where it explains at least as many high characters as it leaves unexplained, else a code page.

    In a code page two or more high bytes that happen to be one UTF-8 character are rare; so a file with some is UTF-8
    with damage (a cell pasted from elsewhere, a cut in the middle of a character). Judged around the first `error`.
    """
    around = data[max(0, error - BEFORE) : error + AFTER].lstrip(CONTINUED if error > BEFORE else b"")
    good, read = codecs.utf_8_decode(around, "ignore", False)
    characters = len(good) - len(good.encode("ascii", "ignore"))
    damaged = read - len(good.encode("utf-8"))
    if characters and characters >= damaged and (text := _damaged_utf_8(data)) is not None:
        return text, "utf-8"
    page = best_code_page(data)
    return codecs.charmap_decode(data, "strict", decoding_table(page))[0], page


def _damaged_utf_8(data: bytes) -> str | None:
    """The text with each damaged byte read as cp1252, as it most often is (common practice, no source); None where
    there are too many."""
    table, view, parts, at = decoding_table("cp1252"), memoryview(data), list[str](), 0
    for _ in range(MOST_DAMAGED):
        try:
            return "".join([*parts, str(view[at:], "utf-8")])
        except UnicodeDecodeError as error:
            start, end = at + error.start, at + error.end
            parts += [str(view[at:start], "utf-8"), *(table[byte] for byte in data[start:end])]
            at = end
    return None
