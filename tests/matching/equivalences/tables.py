"""Tables for tests: random ones over a few numbers, and tables as the files a person edits."""

import csv
import io
import random
from collections.abc import Iterable, Mapping, Sequence
from typing import get_args

import openpyxl

from sourcing.basics.equivalence import EquivalenceTable, OurPart, Relation, Standing, Statement
from sourcing.basics.part_number import OURS, PartNumber
from sourcing.basics.value import changed
from tests.builders import number, statement

MAKERS = ("Norrowby", "Ostrevik", "Corrivane", "Dunmarrow")
Row = Sequence[object]


def table(*statements: Statement, codes: Iterable[str] = ("BELT",)) -> EquivalenceTable:
    """A table of parts with these codes."""
    return EquivalenceTable(parts=tuple(OurPart(code=code, name=code) for code in codes), statements=statements)


def ours(code: str = "BELT") -> PartNumber:
    """Our part's number."""
    return number(code, OURS)


def random_table(seed: int, numbers: int = 12, statements: int = 30, parts: int = 2) -> EquivalenceTable:
    """Statements of every relation but kits between our parts and some numbers, some of them under a condition."""
    chance = random.Random(seed)
    codes = [f"P{at}" for at in range(parts)]
    every = [*map(ours, codes), *(number(str(100 + at), chance.choice(MAKERS)) for at in range(numbers))]
    relations = [one for one in get_args(Relation) if one != "kit contains"]
    said = []
    for _ in range(statements):
        left, right = chance.sample(every, 2)
        relation = chance.choices(relations, [4, 4, 2, 1])[0]
        condition = chance.choice(["", "", "idler moved out"])
        one = statement(left, relation, right, chance.choice(get_args(Standing)), condition)
        said.append(about(one, doubt=chance.choice(["", "", "", "it slipped"])))
    return table(*said, codes=codes)


def about(said: Statement, **fields: object) -> Statement:
    """The statement with other fields."""
    return changed(said, **fields)


def workbook(sheets: Mapping[str, Sequence[Row]]) -> bytes:
    """An XLSX file of worksheets, header rows first."""
    book = openpyxl.Workbook()
    book.remove(book.active)  # type: ignore[arg-type]
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def csv_file(rows: Iterable[Row], delimiter: str = ",", encoding: str = "utf-8") -> bytes:
    """One worksheet as CSV."""
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter).writerows(rows)
    return out.getvalue().encode(encoding)
