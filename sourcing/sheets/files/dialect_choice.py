"""Which dialect a file is written in, judged by the table that each one gives.

A table is rows of one width one after another, cells that look like cells, columns of cells that look alike, quotes
that pair. Known header words speak for a reading but are not needed. No single sign decides.
"""

import csv
import math
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from ..headers.header_words import known_words
from .dialect import GAP, ONE_COLUMN, Dialect, cell_limit, split_lines
from .dialect_cells import CellKind, cell_kind, keeps_open_quote, quality
from .dialect_quoted import lines_of_long_cells

PRIORS = {",": 1.0, ";": 1.0, "\t": 1.0, "|": 1.0, "^": 0.95, "~": 0.95, GAP: 0.9, " ": 0.8, ":": 0.75}
"""How far a delimiter is trusted: a space and a colon also stand inside cells."""
SPACED = ",;|"
USUAL = ",;\t|"
BARE = f"^~ :{GAP}"
"""Delimiters that need more than a table of two columns to be believed."""
LINES, CHARACTERS, TYPED, HEADERS, WIDEST = 400, 200_000, 120, 40, 60
"""How much of a file is tried: lines, characters, rows whose cells are looked at, rows that may be the header, cells
of a row."""
MOST_FAULTS, TINY = 40, 20
CLOCK = re.compile(r"(?<![\d:])\d{1,2}:\d\d(?::\d\d)?(?![\d:])")
WHOLE = re.compile(r'(?:"(?:[^"]|"")*")?[\r\n]*')
"""A line that is one quoted cell, or blank."""
NO_TABLE = 0.05
LEAST_KNOWN = 0.2
"""So much of a header must be known words before it speaks for spaces: long prose has some of them too."""


@dataclass(frozen=True)
class Shape:
    """The dialect found and the table it gives: its usual width (0: no table), other widths that rows one after
    another have, and the kinds of cell its columns hold."""

    dialect: Dialect
    width: int = 0
    widths: frozenset[int] = frozenset()
    kinds: tuple[CellKind, ...] = ()


def find_shape(lines: Sequence[str]) -> Shape:
    """The dialect that gives the best table over the first lines, and that table's shape."""
    with cell_limit():
        return _found(_sample(lines))


def _found(sample: Sequence[str]) -> Shape:
    text = "".join(sample).replace("\r\n", "\n").replace("\r", "\n")
    if all(WHOLE.fullmatch(line) for line in sample):
        return Shape(Dialect(ONE_COLUMN))
    headed = max((_header_words(text, delimiter) for delimiter in USUAL), default=0)
    choices = [
        one
        for delimiter in PRIORS
        if (delimiter if delimiter != GAP else "  ") in text
        and (headed < 3 or _header_words(text, delimiter) >= (headed if delimiter in " :" else headed > 3))
        for one in _variants(text, delimiter)
    ]
    for one in choices:
        if one.delimiter in USUAL and (whole := lines_of_long_cells(sample, one)):
            return _shape(whole, one)
    scores = {one: _score(sample, text, one) for one in choices}
    best = max(choices, key=lambda one: scores[one], default=Dialect(ONE_COLUMN))
    if scores.get(best, 0.0) < NO_TABLE or _is_one_column(sample, best):
        return _shape(sample, _tiny(sample) or Dialect(ONE_COLUMN))
    return _shape(sample, next((one for one in choices if _quotes_fit(sample, one, best)), best))


def _quotes_fit(sample: Sequence[str], one: Dialect, best: Dialect) -> bool:
    """Whether the quotes that the best reading takes for characters make rows of one width throughout."""
    if best.quote or not one.quote or one.delimiter != best.delimiter or one.runs != best.runs:
        return False
    rows, faults = read_sample(sample, one)
    return not faults and len({len(row) for row in rows if row}) == 1 and len(rows[0]) > 1


def _tiny(sample: Sequence[str]) -> Dialect | None:
    """How a few lines of different widths are cut: at the mark that all have, or the first twice; none in prose."""
    lines = [line.strip("\r\n") for line in sample if line.strip() and not line.startswith("#")]
    if not 1 < len(lines) <= TINY:
        return None
    marks = [mark for mark in USUAL if lines[0].count(mark) > 1 or all(mark in line for line in lines)]
    marks = [mark for mark in marks if not any(f"{mark} " in line for line in lines)]
    best = max(marks, key=lambda mark: lines[0].count(mark), default="")
    return _variants("\n".join(lines), best)[0] if best else None


def _header_words(text: str, delimiter: str) -> int:
    """The most known header words a line has, cut at this delimiter whatever is quoted."""
    lines = text.split("\n", HEADERS)[:HEADERS]
    return max(
        (known_words([cell.strip(" \"'") for cell in line.split(delimiter)[:WIDEST]]) for line in lines), default=0
    )


def _sample(lines: Sequence[str]) -> list[str]:
    sample, left = [], CHARACTERS
    for line in lines[:LINES]:
        sample.append(line[:left])
        left -= len(line)
        if left <= 0:
            break
    return sample


def _variants(text: str, delimiter: str) -> list[Dialect]:
    """The delimiter with every quote character and escape that the text may use. The first wins where all are equal."""
    if delimiter == GAP:
        return [Dialect(GAP, "", runs=True)]
    mark = re.escape(delimiter)
    quotes = ['"']
    if re.search(rf"(?:^|{mark} ?)'", text, re.MULTILINE) and re.search(rf"'(?:$|\r|{mark})", text, re.MULTILINE):
        quotes.append("'")
    escaped = bool(re.search(rf"\\[\"'{mark}]", text))
    if '"' in text or escaped:
        quotes.append("")
    escapes = [False, True] if escaped else [False]
    runs = [Dialect(" ", '"' if '"' in text else "", runs=True)] if delimiter == " " and "  " in text else []
    return runs + [
        Dialect(delimiter, quote, escape, delimiter in SPACED and _is_spaced(text, delimiter, quote))
        for quote in quotes
        for escape in escapes
    ]


def _is_spaced(text: str, delimiter: str, quote: str) -> bool:
    """Whether a space follows nearly every delimiter between two cells: then it belongs to the delimiter."""
    mark = re.escape(delimiter)
    if quote:
        text = re.sub(rf"(^|{mark} ?){quote}[^{quote}]*{quote}", rf"\1{quote}{quote}", text, flags=re.MULTILINE)
    followed = re.findall(rf"{mark}([^{mark}\n])", text)
    return len(followed) > 1 and followed.count(" ") >= 0.9 * len(followed)


def read_sample(lines: Sequence[str], dialect: Dialect) -> tuple[list[list[str]], int]:
    """The records of these lines, and how many were at fault; a faulty one costs its first line only."""
    if dialect.needs_preparing:
        lines = split_lines(dialect.prepared("".join(lines)))
    rows: list[list[str]] = []
    at = faults = 0
    while at < len(lines) and faults < MOST_FAULTS:
        reader = dialect.reader(lines[at:])
        first = 0
        try:
            for row in reader:
                rows.append(row)
                first = reader.line_num
            break
        except csv.Error:
            faults, at = faults + 1, at + first + 1
            rows += replace(dialect, quote="").reader([lines[at - 1]], strict=False)
    return rows, faults


def _score(sample: Sequence[str], text: str, dialect: Dialect) -> float:
    """How good a table the dialect gives; 0 is none."""
    rows, faults = read_sample(sample, dialect)
    rows = [row for row in rows if row]
    table = _table_rows(rows)
    if not table or _not_believed(dialect, text, rows, table):
        return 0.0
    words = min(max((known_words(row[:WIDEST]) for row in rows[:HEADERS]), default=0), 8)
    runs = _runs(rows)
    if len(rows) > 2 and words < 2 and not any(width > 1 < count for width, count in runs):
        return 0.0
    if not dialect.quote:
        # Quotes that are never closed are no better as characters than as faults.
        faults = sum(keeps_open_quote(row[:WIDEST], '"') for row in rows)
    length = sum((count - 0.8) * math.log2(min(width, WIDEST)) for width, count in runs if width > 1)
    typed = table[:TYPED]
    cells = [quality(cell) for row in typed for cell in row[:WIDEST]]
    alike = _alike(typed)
    left_over = sum(any(cell_kind(cell) == "quoted" for cell in row[:WIDEST]) for row in typed) / len(typed)
    faulty = (1 - 0.5 * faults / len(rows)) * (1 - 0.5 * left_over)
    fit = (sum(cells) / len(cells)) ** 2 * (0.5 + 0.5 * alike) * faulty * (1 + 0.05 * words)
    return length / len(rows) * fit * PRIORS[dialect.delimiter] * _trust(dialect)


def _trust(dialect: Dialect) -> float:
    """Usual quoting is believed first where two readings give the same table."""
    quotes = {'"': 1.0, "'": 0.99, "": 0.98}[dialect.quote]
    return quotes * (0.999 if dialect.escape else 1.0)


def _runs(rows: Sequence[Sequence[str]]) -> list[tuple[int, int]]:
    """The width of rows that stand one after another, and how many they are."""
    return [(width, sum(1 for _ in group)) for width, group in groupby(len(row) for row in rows)]


def _table_rows(rows: Sequence[list[str]]) -> list[list[str]]:
    """The rows of the width that holds most cells."""
    counts = Counter(len(row) for row in rows if len(row) > 1)
    if not counts:
        return []
    width = max(counts, key=lambda width: (counts[width] * math.log2(width), width))
    return [row for row in rows if len(row) == width]


def _not_believed(dialect: Dialect, text: str, rows: Sequence[list[str]], table: Sequence[list[str]]) -> bool:
    """Spaces and colons stand in prose and in times too: they need quotes that keep them out of cells, or three
    columns with figures, or two columns of nothing else."""
    delimiter, share = dialect.delimiter, len(table) / len(rows)
    if delimiter == GAP:
        return len(table) < 2 or share < (0.6 if len(table[0]) > 2 else 1)
    if delimiter not in BARE or (delimiter in "^~" and share >= 0.8):
        return False
    if delimiter == ":" and ":" not in CLOCK.sub("", text):
        return True
    if share > 0.9 and _keeps_out(text, delimiter):
        return not dialect.quote
    if known_words(table[0]) > max(1, LEAST_KNOWN * len(table[0])):
        return share < 0.5 or len(table) < 2
    kinds = Counter(cell_kind(cell) for row in table[:TYPED] for cell in row[:WIDEST])
    figures = (kinds["number"] + kinds["date"] + kinds["time"] + kinds["quoted"]) / kinds.total()
    if len(table[0]) == 2:
        dates_with_times = kinds["date"] and kinds["date"] == kinds["time"]
        others = any(len(row) != 2 and not row[0].startswith("#") for row in rows)
        return delimiter == ":" or others or len(table) < 5 or figures < 0.8 or bool(dates_with_times)
    enough = 0.9 if delimiter == ":" else 0.5
    return len(table) < 2 or share < enough or figures < 0.2 or kinds["blank"] > 0.5 * kinds.total()


def _keeps_out(text: str, delimiter: str) -> bool:
    """Whether there are cells that are quoted because this delimiter stands in them."""
    mark = re.escape(delimiter)
    pattern = rf"(?:^|{mark})([\"'])(?:(?!\1).)*{mark}(?:(?!\1).)*\1(?:$|{mark})"
    return re.search(pattern, text, re.MULTILINE) is not None


def _alike(rows: Sequence[list[str]]) -> float:
    """0 to 1: how far the cells of a column are of one kind, over all columns; the first row may be a header."""
    body = rows[1:] or rows
    shares = []
    for column in list(zip(*body, strict=True))[:WIDEST]:
        kinds = Counter(kind for cell in column if (kind := cell_kind(cell)) != "blank")
        shares.append(max(kinds.values()) / kinds.total() if kinds else 0.5)
    return sum(shares) / len(shares)


def _is_one_column(sample: Sequence[str], best: Dialect) -> bool:
    """Whether the lines are whole: dates with times, or figures with a decimal comma under a header of one word."""
    whole = [line.strip() for line in sample if line.strip()]
    if not all(cell_kind(line) in ("number", "date", "time") for line in whole[1:]):
        return False
    if len(whole) < 2 or any(mark in whole[0] and mark in whole[1] for mark in USUAL):
        return False
    return best.delimiter not in whole[0] and best.delimiter in ", :"


def _shape(sample: Sequence[str], dialect: Dialect) -> Shape:
    rows = [row for row in read_sample(sample, dialect)[0] if row]
    table = _table_rows(rows)
    if not table:
        return Shape(dialect)
    columns = zip(*(table[1 : TYPED + 1] or table), strict=True)
    kinds = tuple(Counter(map(cell_kind, column)).most_common(1)[0][0] for column in columns)
    widths = frozenset(width for width, count in _runs(rows) if width > 1 and count > 2)
    return Shape(dialect, len(table[0]), widths | {len(table[0])}, kinds)
