"""Reads a supplier's sheet: bytes in, offers, the count of every row, questions and problems out. The way in here."""

from collections.abc import Callable, Iterator, Sequence
from datetime import date

import msgspec
import numpy as np

from sourcing.basics.problem import Place, Problem, Refused, problem, refused
from sourcing.basics.sheet import Column, SheetSummary

from .cells.basis_cells import unread_unit_in_header
from .files.grid import read_grid
from .frame import OFFER_COLUMNS, offers_frame
from .headers.columns import PRICES, meanings_by_key, plain_key, questions
from .headers.dated_prices import later_price_notes, later_price_questions
from .headers.left_out_numbers import left_out_questions
from .headers.package_prices import package_questions
from .hints import Hints, SheetReading, Tell, silent
from .offers.currency_of import sheet_currency
from .offers.price_doubts import price_doubts
from .offers.table_reading import TableReading, read_body
from .price_lines import price_lines, with_said_lines
from .proposal import by_values, largest_shape
from .region.body import Body, Objects
from .region.table import Table, with_columns
from .region.tables import SaidColumns, tables_in
from .summary import (
    ReadWorksheet,
    accounting,
    columns_once,
    notes_on,
    region,
    stated_date,
    structure_of,
    two_worksheets,
)
from .worksheet import Cell, Worksheet

__all__ = ["Hints", "SheetReading", "Tell", "read_sheet", "silent"]

ROWS_LOOKED_AT = 2_000
"""So many rows of the numbers are looked at, to see whether they can be numbers."""


def read_sheet(data: bytes, file: str, hints: Hints) -> SheetReading:
    """What the file holds. `file` is its name, for messages only.

    A row with a number and no price is an offer without price. Every row of every worksheet is counted as offer,
    structure or problem. What a person must say first (which price a column holds, which currency) is a question: the
    sheet is read as far as it can be without the answer, and must not be kept before it. Raises Refused, in one
    sentence for each fault, where the file is no sheet or no table with numbers and prices is in it.
    """
    hints.tell(f"{file}: reading {len(data) / 1_000_000:,.1f} MB")
    worksheets = read_grid(data, file)
    if not any(worksheet.rows for worksheet in worksheets):
        raise refused("file-empty", place=Place(file=file))
    hints.tell(f"{file}: {sum(len(worksheet.rows) for worksheet in worksheets):,} rows, looking for the table")
    found = _tables(worksheets, hints)
    tables = _complete([table for some in found for table in some], worksheets, file)
    hints.tell(f"{file}: {sum(table.end - table.body for table in tables):,} rows in the table, reading the cells")
    dated = stated_date(tables)
    currency, unsure = sheet_currency([Body(table) for table in tables], file, hints.currency)
    read = [
        ReadWorksheet(
            worksheet,
            tuple((table, _read(table, currency, file, hints.dated or dated)) for table in some if table.complete),
            tuple(table for table in some if not table.complete),
        )
        for worksheet, some in zip(worksheets, found, strict=True)
    ]
    asked = (*_questions(read, tables, currency, hints, file), *unsure)
    return _reading(
        read,
        SheetSummary(
            file=file,
            columns=columns_once(tables),
            accounting=tuple(map(accounting, read)),
            problems=tuple(one for each in read for _, reading in each.tables for one in reading.problems),
            sheet_date=dated,
            currency=currency,
            regions=tuple(map(region, tables)),
            questions=asked,
            notes=(*_days_noted(tables, hints.dated or dated, file), *(n for one in read for n in notes_on(one, file))),
            reading=worksheets[0].reading,
        ),
    )


def _questions(
    read: Sequence[ReadWorksheet], tables: Sequence[Table], currency: str, hints: Hints, file: str
) -> Iterator[Problem]:
    """What a person must say of the columns, of prices that contradict one another, of worksheets and of lines."""
    dated = hints.dated or stated_date(tables)
    for table in tables:
        yield from _asked(table, file)
        yield from later_price_questions(table.columns, dated, _place(table, file))
        yield from left_out_questions(table.columns, _different(table), hints.ours, _place(table, file))
    for each in read:
        for table, reading in each.tables:
            yield from price_doubts(Body(table), reading, _place(table, file))
    yield from two_worksheets(read, file)
    for each in read:
        yield from price_lines(each, tables, currency, hints.meanings, file)


def _tables(worksheets: Sequence[Worksheet], hints: Hints) -> list[list[Table]]:
    """The tables of each worksheet; a hidden one and one a person leaves out are not looked at."""
    quantities = {plain_key(header): pieces for header, pieces in hints.quantities.items()}
    said = SaidColumns(meanings_by_key(hints.meanings), quantities)
    left_out = {key for key, field in said.meanings.items() if field == "not used"}
    return [
        []
        if one.hidden or plain_key(f"worksheet {one.name}") in left_out
        else [with_said_lines(table, hints.meanings) for table in tables_in(one, said)]
        for one in worksheets
    ]


def _read(table: Table, currency: str, file: str, dated: date | None) -> TableReading:
    return read_body(Body(_without_open_prices(table)), currency, file, dated)


def _reading(read: Sequence[ReadWorksheet], summary: SheetSummary) -> SheetReading:
    readings = [reading for one in read for _, reading in one.tables]
    structure = tuple(row for one in read for row in structure_of(one))
    return SheetReading(summary=summary, offers=offers_frame(_joined(readings)), structure=structure)


def _complete(tables: Sequence[Table], worksheets: Sequence[Worksheet], file: str) -> list[Table]:
    """The tables with numbers and prices. Refuses a file without any, with what the best of the others lacks."""
    complete = [table for table in tables if table.complete]
    if complete:
        return complete
    for table in sorted(tables, key=lambda table: -table.known)[:1]:
        if lacking := questions(table.columns, _place(table, file)):
            raise Refused(*lacking)
    raise refused("no-table", place=Place(file=file), suggestions=_by_values(worksheets))


def _by_values(worksheets: Sequence[Worksheet]) -> tuple[str, ...]:
    """What the columns of a table without a known header look like, as a person would confirm it."""
    shape = largest_shape(worksheets)
    columns = by_values(*shape) if shape else ()
    found = {column.suggested: f"column {column.letter}={column.suggested}" for column in reversed(columns)}
    whole = {"supplier number", "maker number"}.intersection(found) and {"net price", "list price"}.intersection(found)
    return tuple(sorted(text for field, text in found.items() if field)) if whole else ()


def _asked(table: Table, file: str) -> tuple[Problem, ...]:
    """What a person must say about the columns: unclear ones, and those whose values contradict their header."""
    body, place = Body(table), _place(table, file)
    units = [(column, unread_unit_in_header(column.header)) for column in table.columns if column.field in PRICES]
    by_unit = [
        problem("price-unit-unread", place=place, found=column.header, unit=unit) for column, unit in units if unit
    ]
    number_at = table.at("supplier number")

    def cells_of(at: int) -> Sequence[Cell]:
        """The different cells; of the numbers some rows, for a number that comes over and over is none."""
        coded = body.coded(at)
        return coded.some_rows(ROWS_LOOKED_AT) if at == number_at else coded.different

    packs = body.coded_field("pack")
    said = [at for at, _ in table.package_bases]
    by_package = package_questions(table.columns, packs.different if packs else None, said, place)
    return (*questions(table.columns, place, cells_of), *by_unit, *by_package)


def _different(table: Table) -> Callable[[int], Sequence[Cell]]:
    body = Body(table)
    return lambda at: body.coded(at).different


def _days_noted(tables: Sequence[Table], dated: date | None, file: str) -> Iterator[Problem]:
    for table in tables:
        yield from later_price_notes(table.columns, dated, _place(table, file))


def _without_open_prices(table: Table) -> Table:
    """The table without price columns that claim one meaning together: which of them counts is a question."""
    prices = [_claim(column) for column in table.columns if column.field in PRICES]
    twice = {claim for claim in prices if prices.count(claim) > 1}
    columns = tuple(
        msgspec.structs.replace(column, field=None) if _claim(column) in twice else column for column in table.columns
    )
    return with_columns(table, columns)


def _claim(column: Column) -> tuple[str | None, int, int | None]:
    return (column.field, column.from_quantity or 1, column.pair)


def _place(table: Table, file: str) -> Place:
    worksheet = table.worksheet
    return Place(file=file, worksheet=worksheet.name, row=worksheet.row_numbers[table.first])


def _joined(readings: Sequence[TableReading]) -> dict[str, Objects]:
    if len(readings) == 1:
        return readings[0].columns
    return {name: np.concatenate([reading.columns[name] for reading in readings]) for name in OFFER_COLUMNS}
