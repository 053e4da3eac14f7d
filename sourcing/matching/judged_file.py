"""The queue of candidates as a workbook a person fills in: its columns, and the answers read back row by row.

Only 'answer' and 'words' are hers; 'candidate', 'number' and 'our part' are read to notice a row that was edited or
sorted apart. Rows that can't be understood become problems with their place; the good rows go on.
"""

import io
import re
import zipfile
from collections.abc import Iterator, Sequence
from typing import Any

import openpyxl
from openpyxl.utils.exceptions import InvalidFileException

from ..basics.judgement import Answer, Trust
from ..basics.problem import Place, Problem, problem, refused
from ..basics.value import Value

READ = ("candidate", "answer", "words", "number", "our part")
"""Columns that are read back, by their header."""

ANSWERS: dict[str, tuple[Answer, Trust]] = {
    "yes fitted": ("yes", "fitted"),
    "yes": ("yes", "unchecked"),
    "no": ("no", "unchecked"),
}
"""What may stand in the column 'answer', beside nothing at all."""


class AnsweredRow(Value, frozen=True, kw_only=True):
    """One row with an answer; `number` and `part` as they stand in the file now."""

    row: int
    candidate: int
    answer: Answer
    standing: Trust
    words: str
    number: str
    part: str


def read_answers(data: bytes, file: str) -> tuple[tuple[AnsweredRow, ...], tuple[int, int], tuple[Problem, ...]]:
    """The answers, how many rows have none yet and how many of those have words, and the problems.

    Refuses what is no such workbook.
    """
    rows = _rows(data, file)
    header = [_text(cell).casefold() for cell in rows[0]] if rows else []
    for name in READ:
        if name not in header:
            raise refused("judged-column-missing", file=file, found=name)
    at = {name: header.index(name) for name in READ}
    answered, blank, noted, problems = list[AnsweredRow](), 0, 0, list[Problem]()
    for number, cells in enumerate(rows[1:], 2):
        texts = {name: _text(cells[place]) if place < len(cells) else "" for name, place in at.items()}
        if not texts["answer"]:
            blank += bool(texts["candidate"])
            noted += bool(texts["candidate"] and texts["words"])
            continue
        one = _answer(texts, number, file)
        if isinstance(one, Problem):
            problems.append(one)
        else:
            answered.append(one)
    return tuple(answered), (blank, noted), tuple(problems)


def twice(answered: Sequence[AnsweredRow], file: str) -> Iterator[tuple[AnsweredRow, Problem]]:
    """Rows whose candidate is answered in another row too: which answer is meant is not for the program to say."""
    rows: dict[int, list[AnsweredRow]] = {}
    for one in answered:
        rows.setdefault(one.candidate, []).append(one)
    for some in rows.values():
        if len(some) > 1:
            yield from (
                (one, problem("candidate-twice", place=place_of(one, file), found=one.candidate)) for one in some
            )


def place_of(one: AnsweredRow, file: str) -> Place:
    """Where the answer stands."""
    return Place(file=file, row=one.row)


def _answer(texts: dict[str, str], row: int, file: str) -> AnsweredRow | Problem:
    words = " ".join(re.split(r"[\s,]+", texts["answer"].casefold())).strip()
    if words not in ANSWERS:
        return problem("unknown-answer", place=Place(file=file, row=row, column="answer"), found=texts["answer"])
    number = texts["candidate"].removesuffix(".0")
    if not (number.isascii() and number.isdecimal() and len(number) < 16):
        place = Place(file=file, row=row, column="candidate")
        return problem("candidate-number-unclear", place=place, found=texts["candidate"])
    answer, standing = ANSWERS[words]
    return AnsweredRow(
        row=row,
        candidate=int(number),
        answer=answer,
        standing=standing,
        words=texts["words"],
        number=texts["number"],
        part=texts["our part"],
    )


def _rows(data: bytes, file: str) -> list[tuple[Any, ...]]:
    try:
        book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=True)
        return list(book.worksheets[0].iter_rows(values_only=True)) if book.worksheets else []
    except (InvalidFileException, zipfile.BadZipFile, KeyError, ValueError, OSError, SyntaxError, EOFError):
        raise refused("no-judged-workbook", found=file) from None  # xml's ParseError is a SyntaxError


def _text(cell: object) -> str:
    """The cell as text, on one line: a number that a spreadsheet has changed then differs from the one kept."""
    return "" if cell is None else " ".join(str(cell).split())
