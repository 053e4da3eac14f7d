"""Lines to records: all at once where the file is well formed, else one by one, mending what is damaged."""

import csv
import gc
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from itertools import chain

from .dialect_choice import SPACED, Shape
from .dialect_fit import maybe_a_row, surely_a_row
from .dialect_repair import literal, mended, mending_work, one_row, with_another_delimiter

Rows = list[list[str]]
MOST_DELIMITER_TRIES = 2_000
LINES_LOOKED_AT = 50
MOST_ROWS = 50_000
"""Rows with a space after every delimiter are looked for in files up to this length: it costs a look at each row."""
READ_AGAIN, LEAST_BUDGET, MOST_WORK = 2, 10_000_000, 10_000_000
"""So many times its own length, and 10 million characters more, is a file read again in all for the sake of stray
quotes, and so much work is done on damaged lines, a few seconds of it; then quotes are characters."""


@dataclass
class Records:
    """The rows and the number of each one's first line. `open_quote`: the line of a quote that is never closed, where
    no table shows how the row should have been."""

    lines: Sequence[str]
    shape: Shape
    rows: Rows = field(default_factory=list)
    numbers: Sequence[int] = ()
    open_quote: int | None = None

    def read(self) -> None:
        """Fills the rows."""
        with _no_collection():
            if self._all_at_once():
                self.numbers = range(1, len(self.rows) + 1)
                self._mend_delimiters()
            else:
                self._one_by_one()

    def _all_at_once(self) -> bool:
        """Whether every line was a record of its own, without a quote out of place."""
        reader = self.shape.dialect.reader(self.lines)
        try:
            self.rows = list(reader)
        except csv.Error:
            return False
        return reader.line_num == len(self.rows)

    def _one_by_one(self) -> None:
        self.rows, self.numbers = [], (numbers := list[int]())
        budget, work = READ_AGAIN * sum(map(len, self.lines)) + LEAST_BUDGET, MOST_WORK
        at = 0
        while at < len(self.lines):
            at, failed = self._until_damaged(at, numbers)
            if at >= len(self.lines):
                break
            budget -= sum(map(len, self.lines[at:failed]))
            work -= mending_work(self.lines[at], self.shape)
            if budget < 0 or work < 0:
                self._rest_without_quotes(at, numbers)
                break
            numbers.append(at + 1)
            row, at = mended(self.lines, at, self.shape)
            self.rows.append(row)
        self._mend_delimiters()

    def _rest_without_quotes(self, at: int, numbers: list[int]) -> None:
        """Where so much is damaged that looking at each row would take minutes."""
        self.rows += replace(self.shape.dialect, quote="").reader(self.lines[at:], strict=False)
        numbers += range(at + 1, len(self.lines) + 1)

    def _until_damaged(self, start: int, numbers: list[int]) -> tuple[int, int]:
        """Reads on to the next damaged record; its first line and the line after what was read of it."""
        reader = self.shape.dialect.reader(map(self.lines.__getitem__, range(start, len(self.lines))))
        first = start
        try:
            for row in reader:
                after = start + reader.line_num
                if after - first > 1 and self._took_in_rows(first, after, row):
                    return first, after
                self.rows.append(row)
                numbers.append(first + 1)
                first = after
        except csv.Error as error:
            self._note_open_quote(first, str(error))
            return first, start + reader.line_num
        return len(self.lines), len(self.lines)

    def _took_in_rows(self, first: int, after: int, row: Sequence[str]) -> bool:
        """Whether the lines of a record are rows themselves, so that its quotes are stray.

        A record of the table's width is believed unless each of its lines has that width too and half of them, two or
        more, are rows beyond doubt; another one is not, as soon as one of the lines in it may be a row.
        """
        width = self.shape.width
        if width < 3:
            return False
        lines = self.lines[first + 1 : min(after, first + LINES_LOOKED_AT)]
        if len(row) != width:
            return any(self._is_row(line, maybe_a_row) for line in lines)
        every = [self.lines[first], *lines]
        sure = sum(self._is_row(line, surely_a_row) for line in every)
        return sure > 1 and sure * 2 >= len(every) and all(self._is_row(line, _has_width) for line in every)

    def _is_row(self, line: str, fits: Callable[[Sequence[str], Shape], bool]) -> bool:
        readings = chain(one_row(line, self.shape.dialect), [literal(line, self.shape.dialect)])
        return any(fits(row, self.shape) for row in readings)

    def _note_open_quote(self, first: int, error: str) -> None:
        takes_in_lines = "unexpected end" in error and first + 1 < len(self.lines)
        if self.shape.width < 2 and takes_in_lines and self.open_quote is None:
            self.open_quote = first + 1

    def _mend_delimiters(self) -> None:
        """Reads the rows again that were written with another delimiter than the rest."""
        usual, left = self.shape.width, MOST_DELIMITER_TRIES
        if usual < 3:
            return
        ragged = set(map(len, self.rows)) != {usual}
        for at in [at for at, row in enumerate(self.rows) if len(row) != usual] if ragged else []:
            line = self.lines[self.numbers[at] - 1]
            if not self.rows[at] or len(self.rows[at]) in self.shape.widths or not self._is_one_line(at):
                continue
            left -= 1
            if left < 0:
                break
            self.rows[at] = with_another_delimiter(line, self.shape) or self.rows[at]
        self._mend_spaces()

    def _mend_spaces(self) -> None:
        """Reads the rows again in which a space follows every delimiter, where other rows have none."""
        dialect = self.shape.dialect
        if dialect.spaced or dialect.delimiter not in SPACED or len(self.rows) > MOST_ROWS:
            return
        spaced = [at for at, row in enumerate(self.rows) if len(row) > 3 and row[1][:1] == " " == row[2][:1]]
        if len(spaced) * 10 > len(self.rows):
            return
        for at in spaced:
            if all(cell.startswith(" ") for cell in self.rows[at][1:]) and self._is_one_line(at):
                rows = one_row(self.lines[self.numbers[at] - 1], replace(dialect, spaced=True))
                self.rows[at] = next((row for row in rows if len(row) == self.shape.width), self.rows[at])

    def _is_one_line(self, at: int) -> bool:
        after = self.numbers[at + 1] if at + 1 < len(self.numbers) else len(self.lines) + 1
        return after - self.numbers[at] == 1


def _has_width(row: Sequence[str], shape: Shape) -> bool:
    return len(row) == shape.width


@contextmanager
def _no_collection() -> Iterator[None]:
    """Python's collector looks at every new list again and again, twice the time of the reading; none is garbage.

    Freezing and unfreezing makes the new lists old ones, so that the next collection does not go through them all.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if not gc.get_freeze_count():
            gc.freeze()
            gc.unfreeze()
        if was_on:
            gc.enable()
