"""The equivalence table from a workbook a person edits: worksheet 'parts' and worksheet 'statements'.

Rows that can't be understood become problems with their place; the good rows go on. Columns are found by their header,
in any order; a header nobody knows is a problem too, for it may be a slip of the pen.
"""

import io
import zipfile
from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime
from typing import Any, TypeVar, get_args

import openpyxl
from openpyxl.utils.exceptions import InvalidFileException

from ..basics.equivalence import EquivalenceTable, OurPart, Relation, Standing, Statement
from ..basics.part_number import OURS, PartNumber
from ..basics.problem import Place, Problem, Refused, problem, refused
from ..basics.value import changed

PART_COLUMNS = ("code", "name", "size", "category", "note")
STATEMENT_COLUMNS = (
    "left maker", "left number", "relation", "count", "right maker", "right number", "condition", "standing",
    "source", "stated on", "stated by",
)  # fmt: skip

Row = Mapping[str, str]
T = TypeVar("T")


def read_table(data: bytes, file: str) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    """The table and the problems of its rows. Refuses what is no workbook or lacks one of the two worksheets."""
    problems: list[Problem] = []
    book = _workbook(data, file)
    parts = list(_read(book, "parts", file, PART_COLUMNS, _part, problems))
    codes = {part.code for part in parts}
    statements = list(_read(book, "statements", file, STATEMENT_COLUMNS, _statement, problems))
    for statement in statements:
        for number in (statement.left, statement.right):
            if number.maker == OURS and number.printed not in codes:
                place = Place(file=file, worksheet="statements", row=statement.row)
                problems.append(problem("no-such-part", place=place, found=number.printed))
    return EquivalenceTable(parts=tuple(parts), statements=tuple(statements)), tuple(problems)


def _workbook(data: bytes, file: str) -> Mapping[str, list[tuple[object, ...]]]:
    try:
        book = openpyxl.load_workbook(io.BytesIO(data), data_only=True)
    except (InvalidFileException, zipfile.BadZipFile, KeyError, ValueError, OSError):
        raise refused("no-equivalence-workbook", found=file) from None
    return {sheet.title.strip().casefold(): list(sheet.iter_rows(values_only=True)) for sheet in book.worksheets}


def _read(
    book: Mapping[str, list[tuple[object, ...]]],
    name: str,
    file: str,
    columns: tuple[str, ...],
    make: Callable[[Row, int], T],
    problems: list[Problem],
) -> Iterator[T]:
    if not book.get(name):
        raise refused("worksheet-missing", found=name, file=file)
    header = [_text(cell).casefold() for cell in book[name][0]]
    for unknown in sorted(set(header) - set(columns) - {""}):
        place = Place(file=file, worksheet=name, row=1)
        problems.append(problem("unknown-table-column", place=place, found=unknown, known=", ".join(columns)))
    for at, cells in enumerate(book[name][1:], 2):
        row = {title: _text(cell) for title, cell in zip(header, cells, strict=False) if title}
        if not any(row.values()):
            continue
        try:
            yield make(row, at)
        except Refused as wrong:
            place = Place(file=file, worksheet=name, row=at)
            problems += [_placed(one, place) for one in wrong.problems]


def _placed(one: Problem, place: Place) -> Problem:
    return changed(one, place=place)


def _text(cell: object) -> str:
    if cell is None:
        return ""
    if isinstance(cell, datetime):
        return cell.date().isoformat()
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()


def _part(row: Row, at: int) -> OurPart:
    code = _asked(row, "code")
    return OurPart(
        code=code,
        name=row.get("name", ""),
        size=row.get("size", ""),
        category=row.get("category", ""),
        note=row.get("note", ""),
    )


def _statement(row: Row, at: int) -> Statement:
    statement = Statement(
        left=PartNumber(printed=_asked(row, "left number"), maker=row.get("left maker", "")),
        relation=_one_of(row, "relation", Relation),
        right=PartNumber(printed=_asked(row, "right number"), maker=row.get("right maker", "")),
        standing=_one_of(row, "standing", Standing),
        source=_asked(row, "source"),
        stated_on=_day(row),
        stated_by=_asked(row, "stated by"),
        condition=row.get("condition", ""),
        count=_count(row),
        row=at,
    )
    if statement.left.node == statement.right.node:
        raise refused("statement-about-itself", found=str(statement.left))
    for number in (statement.left, statement.right):
        if not number.key:
            raise refused("blank-number", found=number.printed)
    return statement


def _asked(row: Row, column: str) -> str:
    if not row.get(column):
        raise refused("table-cell-blank", column=column)
    return row[column]


def _one_of(row: Row, column: str, words: Any) -> Any:
    found = _asked(row, column).casefold()
    if found not in get_args(words):
        raise refused("unknown-word", found=found, column=column, known=", ".join(get_args(words)))
    return found


def _day(row: Row) -> date:
    found = _asked(row, "stated on")
    try:
        return date.fromisoformat(found)
    except ValueError:
        raise refused("no-such-day", found=found, column="stated on") from None


def _count(row: Row) -> int:
    found = row.get("count") or "1"
    if not found.isdecimal() or int(found) < 1:
        raise refused("count-below-one", found=found)
    return int(found)
