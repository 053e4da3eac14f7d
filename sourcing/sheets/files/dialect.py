"""How a delimited text file is written: delimiter, quote character, escapes. The csv module reads the records."""

import csv
import re
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from _csv import Reader

LONGEST_CELL = 4_000_000
"""In characters. A longer cell is no cell but a quote that takes in the rest of the file, or no table at all."""
ONE_COLUMN = "\x1f"
"""The delimiter of a file with one column: a character that no text holds."""
GAP = "\x1d"
"""Stands for two or more spaces, the delimiter of a printout in which one space belongs to the text."""
NAMES = {
    ",": "commas", ";": "semicolons", "\t": "tabs", "|": "vertical bars", ":": "colons", "^": "carets", "~": "tildes",
    " ": "spaces", GAP: "runs of spaces", ONE_COLUMN: "one column",
}  # fmt: skip
LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z")
SPACES = re.compile(r"(?:^|(?<=[\r\n])) +| +(?=[\r\n]|\Z)|( +)")
WIDE_SPACES = re.compile(r"(?:^|(?<=[\r\n])) +| +(?=[\r\n]|\Z)|( {2,})")
QUOTED_OR_SPACES = re.compile(rf"(?:^|(?<=[ \r\n]))\"[^\"\r\n]*\"(?=[ \r\n]|\Z)|{SPACES.pattern}")
OTHER_LINE_ENDS = "\v\f\x1c\x1d\x1e\x85\u2028\u2029"
"""Characters at which str.splitlines ends a line and a delimited text does not."""


@dataclass(frozen=True)
class Dialect:
    """`quote` blank: nothing is quoted. `escape`: a backslash before a quote, a delimiter or a backslash takes its
    meaning away. `spaced`: a space follows each delimiter and belongs to it. `runs`: several spaces are one delimiter,
    and spaces around a line none, as in columns set with spaces; those between quotes are left alone."""

    delimiter: str
    quote: str = '"'
    escape: bool = False
    spaced: bool = False
    runs: bool = False

    def reader(self, lines: Iterable[str], *, strict: bool = True) -> "Reader":
        """The csv module's reader of these lines. `strict`: text after a closing quote, or a quote that is still
        open at the end, raises csv.Error instead of being read as well as it goes."""
        return csv.reader(
            lines,
            delimiter=self.delimiter,
            quotechar=self.quote or None,
            quoting=csv.QUOTE_MINIMAL if self.quote else csv.QUOTE_NONE,
            escapechar="\\" if self.escape else None,
            skipinitialspace=self.spaced,
            strict=strict,
        )

    @property
    def needs_preparing(self) -> bool:
        """Whether the csv module reads the text only as `prepared` makes it."""
        return self.escape or self.runs

    def prepared(self, text: str) -> str:
        """The text with every backslash doubled that escapes nothing, so that the csv module leaves it alone, and
        with single spaces for runs of them. As many lines as before."""
        if self.delimiter == GAP:
            return WIDE_SPACES.sub(lambda found: GAP if found.group(1) else "", text)
        if self.runs:
            spaces = QUOTED_OR_SPACES if self.quote else SPACES
            return spaces.sub(lambda found: " " if found.group(1) else found.group().strip(" "), text)
        if not self.escape:
            return text
        pattern = rf"\\([\\{re.escape(self.delimiter + self.quote)}])?"
        return re.sub(pattern, lambda found: found.group() if found.group(1) else "\\\\", text)

    def plain(self, cell: str) -> str:
        """The cell without its escapes, where it was not the csv module that read it."""
        return re.sub(r"\\(.)", r"\1", cell) if self.escape else cell

    def told(self) -> str:
        """For people: 'commas and spaces, single quotes, backslash escapes'. Double quotes go without saying."""
        if self.runs:
            return "runs of spaces"
        words = [NAMES[self.delimiter] + (" and spaces" if self.spaced else "")]
        words += ["single quotes"] if self.quote == "'" else ["no quotes"] if not self.quote else []
        return ", ".join(words + (["backslash escapes"] if self.escape else []))


@contextmanager
def cell_limit() -> Iterator[None]:
    """Within it a cell longer than LONGEST_CELL raises csv.Error. The csv module keeps one limit for the process."""
    before = csv.field_size_limit(LONGEST_CELL)
    try:
        yield
    finally:
        csv.field_size_limit(before)


def split_lines(text: str) -> list[str]:
    """The lines with their ends: CR, LF or CRLF, also mixed. 'CR CR LF', a line end translated twice, is one."""
    if "\r\r\n" in text and text.count("\r\r\n") == text.count("\n"):
        text = text.replace("\r\r\n", "\r\n")
    if any(mark in text for mark in OTHER_LINE_ENDS):
        return LINE.findall(text)
    return text.splitlines(keepends=True)
