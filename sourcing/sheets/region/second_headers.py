"""Rows of a table's body that are a header: the table's own once more, or one that says something else.

A second header that differs in what a price is for, or in any word over a price, is never the first one again: the rows
below it are read by its own words, or asked about.
"""

import re
from collections.abc import Sequence

from sourcing.basics.sheet import Column

from ..cells.basis_cells import basis_in_header
from ..headers.column_names import PRICES, Header, is_open, plain_key
from ..headers.columns import column_of, columns_of
from ..headers.header_words import break_quantity, header_key
from ..worksheet import Cell, text_of
from .table import NO_NUMBER, TYPED, Table, header_text, joined


def repeats_header(row: Sequence[Cell], table: Table) -> bool:
    """Whether a row of the body is the header again: at least two cells and most of those filled stand in the header.

    Any row of a header of several rows counts. A row that says otherwise over some column is not the header again.
    """
    return any(not _says_otherwise(row, header, table) for header in _near_headers(row, table))


def changes_header(row: Sequence[Cell], table: Table) -> bool:
    """Whether a row of the body is nearly the header again, and says otherwise over some column."""
    near = _near_headers(row, table)
    return bool(near) and all(_says_otherwise(row, header, table) for header in near)


def _near_headers(row: Sequence[Cell], table: Table) -> list[Sequence[Cell]]:
    """The rows of the header that the row is mostly the same as."""
    filled = [(at, plain_key(text)) for at, cell in enumerate(row) if (text := text_of(cell))]
    found: list[Sequence[Cell]] = []
    for header in table.worksheet.rows[table.first : table.body]:
        same = sum(at < len(header) and plain_key(text_of(header[at])) == text for at, text in filled)
        if same >= 2 and same * 10 >= len(filled) * 7:
            found.append(header)
    return found


def _says_otherwise(row: Sequence[Cell], header: Sequence[Cell], table: Table) -> bool:
    """Whether some cell that differs from the header's means another field, or is another word for a price."""
    columns = {column.at: column for column in table.columns}
    for at, cell in enumerate(row):
        text, above = text_of(cell), text_of(header[at]) if at < len(header) else ""
        if text and plain_key(text) != plain_key(above) and _means_otherwise(at, text, above, columns.get(at)):
            return True
    return False


def _means_otherwise(at: int, text: str, above: str, column: Column | None) -> bool:
    own = column_of(at, Header(shown=text, readings=(text,)), {})
    if own.field and (column is None or (own.field, own.from_quantity) != (column.field, column.from_quantity)):
        return True
    if is_open(own) or basis_in_header(text) != basis_in_header(above):
        return True
    priced = column is not None and (column.field in PRICES or is_open(column))
    return priced and not plain_key(above).startswith(plain_key(text).rstrip("."))


def other_header(row: Sequence[Cell]) -> bool:
    """Whether a row of the body is the header of another table: three known words, digits only where a header has them.

    A header has them in breaks ('10+') and in what a price is for ('Net / 10').
    """
    texts = [text for cell in row if (text := header_text(cell))]
    if any(re.search(r"\d", text) and break_quantity(text) is None and not basis_in_header(text) for text in texts):
        return False
    columns = columns_of(tuple(joined([text]) for text in texts), {})
    words = {header_key(column.header) for column in columns if column.field or is_open(column)}
    return len(words) >= 3 and 2 * len(words) >= len(texts)


def unknown_header(row: Sequence[Cell], table: Table) -> bool:
    """Whether a row of the body is the header of a table of other things: words alone, over two columns of numbers.

    Prices, stocks and packs that are all words at once are no part of this table.
    """
    texts = [text_of(cell) for cell in row]
    filled = [text for text in texts if text]
    if len(filled) < 3 or any(re.search(r"\d", text) for text in filled):
        return False
    typed = [column.at for column in table.columns if column.field in TYPED and column.at < len(texts)]
    wordy = [texts[at] for at in typed if len(texts[at]) > 2 and texts[at].casefold() not in NO_NUMBER]
    return len(wordy) >= 2
