"""All tables of a worksheet, one under the other, and what stands between them."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import msgspec

from sourcing.basics.sheet import Column, Field

from ..headers.columns import columns_of, name_of, plain_key
from ..worksheet import Worksheet, is_blank, text_of
from .body import Body
from .second_headers import changes_header, other_header, repeats_header, unknown_header
from .table import MOST_HEADER_ROWS, Table, ending_at, find_table, headers_of, with_columns


@dataclass(frozen=True)
class SaidColumns:
    """What a person said of the columns, by plain key: what they mean, and from how many pieces on a price holds."""

    meanings: Mapping[str, Field]
    quantities: Mapping[str, int]


def tables_in(worksheet: Worksheet, said: SaidColumns) -> list[Table]:
    """Every table from the top down, also those that lack a number or a price column. Each ends where the next begins.

    A person's word is looked up first.
    """
    found: list[Table] = []
    table = find_table(worksheet, said.meanings)
    while table:
        next_at = _next_header(table)
        following = None
        if next_at is not None:
            near = find_table(worksheet, said.meanings, next_at)
            following = near if near and near.first == next_at else _unnamed(worksheet, next_at)
            following = _with_rows_above(following, table.body, said)
        end = following.first if following else len(worksheet.rows)
        found.append(_named_by_values(ending_at(table, _without_title(table, end)), said))
        table = following
    return found


def _next_header(table: Table) -> int | None:
    """The first row of the body that is the header of another table."""
    rows = table.worksheet.rows
    for at in _headings(table):
        row = rows[at]
        if repeats_header(row, table):
            continue
        if changes_header(row, table) or other_header(row) or (is_blank(rows[at - 1]) and unknown_header(row, table)):
            return at
    return None


def _unnamed(worksheet: Worksheet, at: int) -> Table:
    """A table of which no header word is known, so that its rows are not taken for the table's above."""
    headers = headers_of(worksheet, at, 1)
    return Table(worksheet, at, at + 1, len(worksheet.rows), headers, columns_of(headers, {}))


def _with_rows_above(table: Table, lowest: int, said: SaidColumns) -> Table:
    """The table with the upper rows of its header, which stand above the row it was recognised by."""
    taller = find_table(table.worksheet, said.meanings, max(lowest, table.first - MOST_HEADER_ROWS + 1))
    return taller if taller and taller.first < table.first < taller.body else table


def _headings(table: Table) -> Iterator[int]:
    """The rows of the body with no digit where the number stands: only they can be a header."""
    at = table.at("supplier number")
    if at is None:
        yield from range(table.body, len(table.worksheet.rows))
        return
    coded = Body(table).coded(at)
    wordy = [number for number in coded.without_digits if isinstance(coded.different[number], str)]
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
    columns = columns_of(table.headers, said.meanings, body.first_cells)
    return with_columns(table, tuple(_with_quantity(column, said.quantities) for column in columns))


def _with_quantity(column: Column, quantities: Mapping[str, int]) -> Column:
    """The column with the quantity a person gave it."""
    pieces = quantities.get(plain_key(name_of(column)))
    if column.field != "net price" or pieces is None:
        return column
    return msgspec.structs.replace(column, from_quantity=pieces)
