"""Reads a supplier's sheet: bytes in, offers, the count of every row and problems out. The way into this step."""

from collections.abc import Iterable, Mapping, Sequence

from sourcing.basics.problem import Place, Problem, problem, refused
from sourcing.basics.sheet import Accounting, Column, Field, SheetSummary

from .body import Body
from .columns import meanings_by_key, refuse_unclear
from .currency_of import sheet_currency
from .frame import OFFER_COLUMNS, offers_frame
from .grid import read_grid
from .hints import Hints, SheetReading
from .offers import TableReading, read_body
from .table import Table, find_table
from .worksheet import Worksheet

__all__ = ["Hints", "SheetReading", "read_sheet"]


def read_sheet(data: bytes, file: str, hints: Hints) -> SheetReading:
    """What the file holds. `file` is its name, for messages only; the date of the sheet is not read (None).

    A row with a number and no price is an offer without price. Every row of every worksheet is counted as offer,
    structure or problem. Raises Refused, in one sentence for each fault, where the file is no sheet, has no number
    or price column, leaves open what a column means, or is in another currency than the supplier's terms.
    """
    worksheets = read_grid(data, file)
    if not any(worksheet.rows for worksheet in worksheets):
        raise refused("file-empty", place=Place(file=file))
    tables = _tables(worksheets, meanings_by_key(hints.meanings), file)
    bodies = {name: Body(table) for name, table in tables.items()}
    currency = sheet_currency(list(bodies.values()), file, hints.currency)
    readings = {name: read_body(body, currency, file) for name, body in bodies.items()}
    return SheetReading(
        summary=SheetSummary(
            file=file,
            columns=_columns(tables.values()),
            accounting=tuple(_accounting(worksheet, readings) for worksheet in worksheets),
            problems=tuple(_problems(worksheets, readings, file)),
            sheet_date=None,
            currency=currency,
        ),
        offers=offers_frame(_joined(list(readings.values()))),
    )


def _tables(worksheets: Sequence[Worksheet], meanings: Mapping[str, Field], file: str) -> dict[str, Table]:
    """The table of every worksheet that has one, by the worksheet's name. Refuses a file without any."""
    shown = [worksheet for worksheet in worksheets if not worksheet.hidden]
    found = [table for worksheet in shown if (table := find_table(worksheet, meanings))]
    complete = [table for table in found if table.complete]
    for table in complete or sorted(found, key=lambda table: -table.known)[:1]:
        refuse_unclear(table.columns, _place(table, file))
    if not complete:
        raise refused("no-table", place=Place(file=file))
    return {table.worksheet.name: table for table in complete}


def _place(table: Table, file: str) -> Place:
    worksheet = table.worksheet
    return Place(file=file, worksheet=worksheet.name, row=worksheet.row_numbers[table.first])


def _columns(tables: Iterable[Table]) -> tuple[Column, ...]:
    """The columns of all tables; one that stands in several worksheets with one meaning is listed once."""
    known = {
        (c.header, c.field, c.from_quantity): c for table in reversed(list(tables)) for c in reversed(table.columns)
    }
    return tuple(reversed(known.values()))


def _accounting(worksheet: Worksheet, readings: Mapping[str, TableReading]) -> Accounting:
    if reading := readings.get(worksheet.name):
        return reading.accounting
    rows = len(worksheet.rows)
    return Accounting(worksheet=worksheet.name, rows=rows, offers=0, structure=rows, problem_rows=0)


def _problems(worksheets: Sequence[Worksheet], readings: Mapping[str, TableReading], file: str) -> Iterable[Problem]:
    """The problems of all rows, and the hidden worksheets, which are not read."""
    for worksheet in worksheets:
        if reading := readings.get(worksheet.name):
            yield from reading.problems
        elif worksheet.hidden and worksheet.rows:
            yield problem("worksheet-hidden", place=Place(file=file, worksheet=worksheet.name))


def _joined(readings: Sequence[TableReading]) -> dict[str, list[object]]:
    if len(readings) == 1:
        return readings[0].columns
    return {name: [value for reading in readings for value in reading.columns[name]] for name in OFFER_COLUMNS}
