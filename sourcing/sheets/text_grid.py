"""A delimited text file to one worksheet: encoding, delimiter, records.

The delimiter is the one that gives the best table: most known header words in one row, then most rows of one width.
"""

import csv
import io
from collections import Counter
from collections.abc import Sequence
from itertools import islice
from typing import TYPE_CHECKING, cast

from sourcing.basics.problem import Place, refused

from .header_words import known_words
from .worksheet import Cell, Worksheet, without_blank_end

DELIMITERS = (",", ";", "\t", "|")
if TYPE_CHECKING:
    from _csv import Reader as Records

SEARCHED, SAMPLE = 60, 300
"""How many records are tried with each delimiter."""
LONGEST_CELL = 1_000_000
CONTROL = bytes([*range(9), 11, *range(14, 32), 127])


def read_text(data: bytes, file: str) -> list[Worksheet]:
    """One worksheet without a name. Refuses bytes that are no text and an opening quote that is never closed."""
    text = decode(data, file)
    delimiter = best_delimiter(text)
    try:
        rows, numbers, lines = _records(text, delimiter)
        if lines != len(rows):
            _refuse_open_quote(text, delimiter, numbers, file)
    except csv.Error as error:
        raise refused("not-a-sheet", place=Place(file=file), found="text that no table can be made of") from error
    kept = without_blank_end(cast(list[list[Cell]], rows))
    return [Worksheet(name="", rows=kept, row_numbers=numbers[: len(kept)])]


def decode(data: bytes, file: str) -> str:
    """The text: byte order mark, then UTF-16 without one, then UTF-8, then cp1252 (common practice, no source)."""
    for encoding in _encodings(data):
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        text = text.removeprefix("\ufeff").rstrip("\x1a\x00")
        if text.strip() and _controls(text) * 100 <= len(text):
            return text
    raise refused("not-a-sheet", place=Place(file=file), found="bytes that are no text")


def _controls(text: str) -> int:
    """How many control characters that no text file has. Counted in bytes: a pattern takes ten times as long."""
    raw = text.encode("utf-8", "surrogatepass")
    return len(raw) - len(raw.translate(None, CONTROL))


def _encodings(data: bytes) -> tuple[str, ...]:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return ("utf-16",)
    zeros = Counter(at % 2 for at, byte in enumerate(data[:2000]) if byte == 0)
    if zeros[1] > 10 * zeros[0] + 3:
        return ("utf-16-le",)
    if zeros[0] > 10 * zeros[1] + 3:
        return ("utf-16-be",)
    return ("utf-8", "cp1252")


def best_delimiter(text: str) -> str:
    """The delimiter that gives the best table over the first records; the comma where all are equal."""
    return max(DELIMITERS, key=lambda delimiter: _table_quality(text, delimiter))


def _table_quality(text: str, delimiter: str) -> tuple[int, int]:
    try:
        rows = list(islice(_reader(text[: SAMPLE * 2000], delimiter), SAMPLE))
    except csv.Error:
        return (0, 0)
    widths = Counter(len(row) for row in rows if len(row) > 1)
    words = max((known_words(row) for row in rows[:SEARCHED]), default=0)
    return (words, max((count * (width - 1) for width, count in widths.items()), default=0))


def _reader(text: str, delimiter: str) -> "Records":
    csv.field_size_limit(LONGEST_CELL)
    return csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)


def _records(text: str, delimiter: str) -> tuple[list[list[str]], Sequence[int], int]:
    """The records, the first line of each, and how many lines there are.

    Quoted line breaks are rare: lines are counted one by one only where there are some.
    """
    reader = _reader(text, delimiter)
    rows = list(reader)
    if reader.line_num == len(rows):
        return rows, range(1, len(rows) + 1), len(rows)
    reader, numbers, first = _reader(text, delimiter), [], 1
    for _ in reader:
        numbers.append(first)
        first = reader.line_num + 1
    return rows, numbers, first - 1


def _refuse_open_quote(text: str, delimiter: str, numbers: Sequence[int], file: str) -> None:
    """A quote that opens and never closes swallows every row to the end of the file into one cell."""
    lines = io.StringIO(text, newline="").readlines()[numbers[-1] - 1 :]
    try:
        list(csv.reader(lines, delimiter=delimiter, strict=True))
    except csv.Error as error:
        if "unexpected end" in str(error):
            raise refused("quote-not-closed", place=Place(file=file, row=numbers[-1])) from error
