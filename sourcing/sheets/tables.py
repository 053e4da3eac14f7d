"""All tables of a worksheet, one under the other, and what stands between them."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import msgspec

from sourcing.basics.sheet import Column, Field

from .body import Body
from .columns import columns_of, name_of, plain_key
from .table import MOST_HEADER_ROWS, Table, ending_at, find_table, other_header, repeats_header, with_columns
from .worksheet import Worksheet, is_blank, text_of

@dataclass(frozen=True)
class SaidColumns:
    """What a person said of the columns, by plain key: what they mean, and from how many pieces on a price holds."""

    meanings: Mapping[str, Field]
    quantities: Mapping[str, int]


DIGIT = re.compile(r"\d").search


def tables_in(worksheet: Worksheet, said: SaidColumns) -> list[Table]:
    """Every table from the top down, also those that lack a number or a price column. Each ends where the next begins.

    A person's word is looked up first.
    """
    found: list[Table] = []
    table = find_table(worksheet, said.meanings)
    while table:
        following = _following(table, said.meanings)
        end = following.first if following else len(worksheet.rows)
        found.append(_named_by_values(ending_at(table, _without_title(table, end)), said))
        table = following
    return found


def _following(table: Table, meanings: Mapping[str, Field]) -> Table | None:
    """The next table: the first row that is another header, with the header rows just above it."""
    for at in _headings(table):
        row = table.worksheet.rows[at]
        if repeats_header(row, table) or not other_header(row):
            continue
        starts = range(max(table.body, at - MOST_HEADER_ROWS + 1), at + 1)
        tables = [find_table(table.worksheet, meanings, start) for start in starts]
        near = [one for one in tables if one and one.first <= at < one.body]
        if near:
            return max(near, key=lambda one: one.rank)
    return None


def _headings(table: Table) -> Iterator[int]:
    """The rows of the body with no digit where the number stands: only they can be a header."""
    at = table.at("supplier number")
    if at is None:
        yield from range(table.body, len(table.worksheet.rows))
        return
    coded = Body(table).coded(at)
    wordy = [number for number, cell in enumerate(coded.different) if isinstance(cell, str) and not DIGIT(cell)]
    for row in coded.rows_with(wordy):
        yield table.body + row


def _without_title(table: Table, end: int) -> int:
    """Where the body ends: blank rows and a title of one cell before the next header belong to no table."""
    rows = table.worksheet.rows
    if end == len(rows):
        return end
    while end > table.body and (is_blank(rows[end - 1]) or sum(bool(text_of(cell)) for cell in rows[end - 1]) == 1):
        end -= 1
    return end


def _named_by_values(table: Table, said: SaidColumns) -> Table:
    """The table with its columns looked at once more, with the values under the headers at hand."""
    body = Body(table)
    columns = columns_of(table.headers, said.meanings, lambda at: body.coded(at).different)
    return with_columns(table, tuple(_with_quantity(column, said.quantities) for column in columns))


def _with_quantity(column: Column, quantities: Mapping[str, int]) -> Column:
    """The column with the quantity a person gave it."""
    pieces = quantities.get(plain_key(name_of(column)))
    if column.field != "net price" or pieces is None:
        return column
    return msgspec.structs.replace(column, from_quantity=pieces)
