"""What is said of a sheet beside its offers: where every row went, where the tables stand, what is to be known."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Accounting, Column, Region, StructureKind, StructureRow

from .cells.day_cells import day_in_text
from .headers.column_names import name_of
from .offers.price_bases import shown
from .offers.table_reading import TableReading
from .region.table import Table
from .worksheet import ColumnRows, Worksheet, is_blank, letter_of, line_of

LEAST_KNOWN = 3
"""Header words from which on a table that is not read is worth a note."""
MOST_NAMED = 5
LONGEST_LINE = 100


@dataclass(frozen=True)
class ReadWorksheet:
    """A worksheet with the tables read from it, and those that lack numbers or prices and were left out."""

    worksheet: Worksheet
    tables: tuple[tuple[Table, TableReading], ...]
    left_out: tuple[Table, ...]


def accounting(read: ReadWorksheet) -> Accounting:
    """Where the worksheet's rows went. What is neither an offer nor a problem is structure, and is listed as that."""
    rows = len(read.worksheet.rows)
    offers = sum(len(reading.columns["row"]) for _, reading in read.tables)
    problem_rows = sum(reading.problem_rows for _, reading in read.tables)
    structure = sum(1 for _ in structure_of(read))
    return Accounting(
        worksheet=read.worksheet.name,
        rows=rows,
        offers=offers,
        structure=structure,
        problem_rows=problem_rows,
        hidden=read.worksheet.hidden,
    )


def structure_of(read: ReadWorksheet) -> Iterator[StructureRow]:
    """Every row of the worksheet that is no offer and no problem, from the top down."""
    worksheet, done = read.worksheet, 0
    for table, reading in read.tables:
        yield from _outside(worksheet, done, table.first)
        for at in range(table.first, table.body):
            yield StructureRow(worksheet=worksheet.name, row=worksheet.row_numbers[at], kind="header")
        yield from reading.structure
        done = table.end
    yield from _outside(worksheet, done, len(worksheet.rows))


def _outside(worksheet: Worksheet, first: int, end: int) -> Iterator[StructureRow]:
    for at in range(first, end):
        kind: StructureKind = "blank" if is_blank(worksheet.rows[at]) else "outside a table"
        yield StructureRow(worksheet=worksheet.name, row=worksheet.row_numbers[at], kind=kind)


def region(table: Table) -> Region:
    """Where the table stands, in the numbers the file shows."""
    numbers = table.worksheet.row_numbers
    return Region(
        worksheet=table.worksheet.name,
        header_row=numbers[table.first] if table.body > table.first else None,
        last_header_row=numbers[table.body - 1] if table.body > table.first else None,
        last_row=numbers[table.end - 1],
        columns=table.columns,
    )


def columns_once(tables: Iterable[Table]) -> tuple[Column, ...]:
    """The columns of all tables; one that stands in several with one meaning is listed once."""
    known: dict[tuple[object, ...], Column] = {}
    for column in (column for table in tables for column in table.columns):
        known.setdefault((column.header, column.field, column.from_quantity), column)
    return tuple(known.values())


def stated_date(tables: Sequence[Table]) -> date | None:
    """The day the lines above the first tables say the prices hold from; None where they name none or several."""
    days = {
        day for table in tables[:1] for row in table.worksheet.rows[: table.first] if (day := day_in_text(line_of(row)))
    }
    return days.pop() if len(days) == 1 else None


def notes_on(read: ReadWorksheet, file: str) -> Iterator[Problem]:
    """What is to be known of the worksheet: hidden things, tables not read, cells left blank."""
    worksheet = read.worksheet
    place = Place(file=file, worksheet=worksheet.name)
    if worksheet.hidden:
        if worksheet.rows:
            yield problem("worksheet-hidden", place=place)
        return
    yield from _hidden_parts(read, place)
    for table in read.left_out:
        if (read.tables or table.known >= LEAST_KNOWN) and table.end > table.body:
            found = ", ".join(f"'{column.header}'" for column in table.columns)
            row = worksheet.row_numbers[table.first]
            yield problem("table-not-read", place=Place(file=file, worksheet=worksheet.name, row=row), found=found)
    for table, reading in read.tables:
        yield from _lines_applied(table, place)
        yield from _discount_above(table, place)
        yield from _stored_as_numbers(table, place)
        yield from reading.notes


def two_worksheets(read: Sequence[ReadWorksheet], file: str) -> Iterator[Problem]:
    """Numbers that stand on two worksheets with different prices: last year's beside this year's, two currencies."""
    known: dict[str, dict[str, object]] = {}
    with_tables = [one for one in read if one.tables]
    for one in with_tables if len(with_tables) > 1 else ():
        prices: dict[str, object] = {}
        for _, reading in one.tables:
            columns = reading.columns
            prices |= zip(
                columns["supplier_number"], zip(columns["breaks"], columns["list_price"], strict=True), strict=True
            )
        for name, others in known.items():
            differ = [number for number in prices.keys() & others.keys() if prices[number] != others[number]]
            if differ:
                place = Place(file=file, worksheet=one.worksheet.name)
                first = min(differ)
                yield problem(
                    "two-worksheets", place=place, found=one.worksheet.name, other=name, count=len(differ), first=first
                )
        if prices:
            known[one.worksheet.name] = prices


DISCOUNT_LINE = re.compile(
    r"\d\s*%.{0,40}\b(?:off|discount|rabatt|remise|descuento|dto|korting)\b"
    r"|\b(?:discount|rabatt|remise|descuento|dto|korting)\b.{0,40}\d\s*%",
    re.IGNORECASE,
)


def _lines_applied(table: Table, place: Place) -> Iterator[Problem]:
    for at, basis in table.line_bases:
        line = line_of(table.worksheet.rows[at])
        where = Place(file=place.file, worksheet=place.worksheet, row=table.worksheet.row_numbers[at])
        yield problem("line-applied", place=where, found=line, basis=shown(basis))
    names = {column.at: name_of(column) for column in table.columns}
    for at, basis in table.package_bases:
        yield problem("package-price-said", place=place, found=names[at], basis=shown(basis))


def _discount_above(table: Table, place: Place) -> Iterator[Problem]:
    """A line above a table of list prices alone that names a discount."""
    if table.all_at("net price") or table.all_at("discount") or table.all_at("multiplier"):
        return
    for at in range(table.first):
        line = line_of(table.worksheet.rows[at])
        if DISCOUNT_LINE.search(line):
            where = Place(file=place.file, worksheet=place.worksheet, row=table.worksheet.row_numbers[at])
            yield problem("discount-above", place=where, found=line[:LONGEST_LINE])
            return


def _stored_as_numbers(table: Table, place: Place) -> Iterator[Problem]:
    """Columns of part numbers of which half or more are a workbook's numbers, which have no zeros before them.

    A number whose format shows such zeros was read as text with them.
    """
    if isinstance(table.worksheet.rows, ColumnRows):  # a text file, where all is text
        return
    body = table.worksheet.rows[table.body : table.end]
    for column in (*table.all_at("supplier number"), *table.all_at("maker number")):
        cells = [row[column.at] for row in body if len(row) > column.at and row[column.at] != ""]
        count = sum(isinstance(cell, Decimal) for cell in cells)
        if count and 2 * count >= len(cells):
            yield problem("numbers-without-zeros", place=place, count=count, rows=len(cells), found=column.header)


def _hidden_parts(read: ReadWorksheet, place: Place) -> Iterator[Problem]:
    """Hidden rows and columns of the tables: they are read like all others, and said."""
    worksheet = read.worksheet
    bodies = [range(table.body, table.end) for table, _ in read.tables]
    rows = [at for at in sorted(worksheet.hidden_rows) if any(at in body for body in bodies)]
    width = max((len(table.headers) for table, _ in read.tables), default=0)
    columns = [at for at in sorted(worksheet.hidden_columns) if at < width]
    if rows:
        numbers = [str(worksheet.row_numbers[at]) for at in rows[:MOST_NAMED]]
        yield problem("rows-hidden", place=place, found=_some(numbers, len(rows)))
    if columns:
        letters = [letter_of(at) for at in columns[:MOST_NAMED]]
        yield problem("columns-hidden", place=place, found=_some(letters, len(columns)))


def _some(named: Sequence[str], count: int) -> str:
    return ", ".join(named) + (" and more" if count > len(named) else "")
