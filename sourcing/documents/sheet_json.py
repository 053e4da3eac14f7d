"""What reading a file gave, as JSON for another program; README documents every key.

Written piece by piece: 300,000 offers as one text would take a gigabyte.
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

import msgspec

from ..basics.problem import Place, Problem
from ..basics.sheet import Accounting, Column, Region, SheetSummary, StructureRow

if TYPE_CHECKING:
    import pandas as pd

ENCODER = msgspec.json.Encoder()


def reading_json(summary: SheetSummary, offers: "pd.DataFrame", structure: Sequence[StructureRow]) -> Iterator[bytes]:
    """The JSON text in pieces: money and weights as strings of digits, days as ISO 8601, null where nothing is said."""
    head = {
        "file": summary.file,
        "reading": summary.reading,
        "currency": summary.currency,
        "sheet_date": summary.sheet_date,
        "worksheets": [_worksheet(one, summary.regions) for one in summary.accounting],
    }
    yield ENCODER.encode(head)[:-1]
    yield from _list("offers", _offers(offers))
    yield from _list("structure", structure)
    yield from _list("problems", map(_problem, summary.problems))
    yield from _list("questions", map(_problem, summary.questions))
    yield from _list("notes", map(_problem, summary.notes))
    yield b"}\n"


def refusal_json(file: str, problems: Sequence[Problem]) -> Iterator[bytes]:
    """The same keys for a file that could not be read: what stands against it is among the questions."""
    yield ENCODER.encode({"file": file, "reading": "", "currency": "", "sheet_date": None, "worksheets": []})[:-1]
    for name in ("offers", "structure", "problems"):
        yield from _list(name, ())
    yield from _list("questions", map(_problem, problems))
    yield from _list("notes", ())
    yield b"}\n"


def _list(name: str, values: Iterable[object]) -> Iterator[bytes]:
    yield b',\n"' + name.encode() + b'":['
    for at, value in enumerate(values):
        yield (b",\n" if at else b"\n") + ENCODER.encode(value)
    yield b"]"


def _offers(offers: "pd.DataFrame") -> Iterator[dict[str, Any]]:
    names = [str(name) for name in offers.columns]
    for row in zip(*(offers[name] for name in names), strict=True):
        yield dict(zip(names, row, strict=True))


def _worksheet(account: Accounting, regions: Sequence[Region]) -> dict[str, object]:
    return {
        "name": account.worksheet,
        "hidden": account.hidden,
        "rows": account.rows,
        "offers": account.offers,
        "structure": account.structure,
        "problem_rows": account.problem_rows,
        "tables": [_table(region) for region in regions if region.worksheet == account.worksheet],
    }


def _table(region: Region) -> dict[str, object]:
    return {
        "header_row": region.header_row,
        "last_header_row": region.last_header_row,
        "last_row": region.last_row,
        "columns": [_column(column) for column in region.columns],
    }


def _column(column: Column) -> dict[str, object]:
    return {
        "column": column.letter,
        "header": column.header,
        "meaning": column.field,
        "from_quantity": column.from_quantity,
        "pair": column.pair,
        "place": column.place,
        "why": column.why,
        "suggested": column.suggested,
    }


def _problem(one: Problem) -> dict[str, object]:
    place = one.place or Place()
    return {
        "code": one.code,
        "worksheet": place.worksheet,
        "row": place.row,
        "column": place.column,
        "found": one.found,
        "what": one.what,
        "remedy": one.remedy,
        "suggestions": one.suggestions,
    }
