"""Where a table of a worksheet is: one to three header rows, found by how many known header words they hold."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from sourcing.basics.sheet import Column, Field

from ..cells.basis_cells import Basis
from ..cells.cell import NO_LONGER_AVAILABLE
from ..cells.money_cells import NO_PRICE
from ..cells.quantity_cells import HAS_STOCK, NO_STOCK, NOT_STATED, ON_ORDER
from ..headers.column_names import CONFIRMED
from ..headers.columns import NUMBERS, PRICES, Header, columns_of, is_open
from ..headers.header_words import break_quantity
from ..worksheet import Cell, Worksheet, text_of
from .shape import shape_of

SEARCHED, SEARCHED_ON = 200, 5
"""How many rows from the top a header is looked for in, and how many after the first complete one."""
MOST_HEADER_ROWS = 3
LONGEST_HEADER = 60
NO_HEADER = Header(shown="", readings=())
TYPED: tuple[Field, ...] = ("net price", "list price", "stock", "pack", "minimum", "order multiple", "core charge")
NO_NUMBER = NO_PRICE | NO_LONGER_AVAILABLE | HAS_STOCK | NO_STOCK | ON_ORDER | NOT_STATED
"""Words that stand for a number in the body of a table."""
UNIT = re.compile(
    r"[A-Z]{3}|[$€£]|US\$|(?:pcs?|pieces|ea|each|units?|stk|stück|st|pk|kgs?|g|lbs?|oz|mm|cm|in|inch|days?|tage|wks?|weeks?"
    r"|wochen|%|jours|días|dagen|pces?|uds?|stuks?|y/n|net|netto)",
    re.IGNORECASE,
)
FEWEST_KNOWN = 10
"""One header in so many must be known, or a few words of a wide row of the body look like a header."""
FRACTION = re.compile(r"[-+]?\d+[.,]\d+(?:[Ee][-+]?\d+)?")
AMOUNT = re.compile(r"[-+(]?[$€£]?\s*\d[\d.,' ]*\)?\s*[$€£]?")


@dataclass(frozen=True)
class Table:
    """The header rows `first`..`body` - 1 and the body `body`..`end` - 1 of a worksheet (from 0), and its columns.

    `line_bases`: lines above or between the rows of which a person has said that they say what prices are for.
    `package_bases`: price columns whose header names a package, of which a person has said what the prices are for.
    """

    worksheet: Worksheet
    first: int
    body: int
    end: int
    headers: tuple[Header, ...]
    columns: tuple[Column, ...]
    line_bases: tuple[tuple[int, Basis], ...] = ()
    package_bases: tuple[tuple[int, Basis], ...] = ()

    @property
    def known(self) -> int:
        """How many columns are known header words, those that need a person's word counted too.

        The same word over several columns counts once: it groups them, and the row below says what they are.
        """
        found = [column for column in self.columns if column.field is not None or is_open(column)]
        return len({column.header or str(column.at) for column in found})

    @property
    def complete(self) -> bool:
        """Whether there is a number and a price, or a price that needs a person's word."""
        fields = {column.field for column in self.columns}
        priced = fields.intersection(PRICES) or any(is_open(column) for column in self.columns)
        return bool(fields.intersection(NUMBERS) and priced)

    @property
    def sure(self) -> int:
        """How many different meanings are known without a person's word; price breaks count one by one."""
        return len({(one.field, one.from_quantity, one.place) for one in self.columns if one.field})

    @property
    def rank(self) -> tuple[bool, int, int, int]:
        """Which of two candidates is the header: complete, then most known words, most sure ones, fewest rows."""
        return (self.complete, self.known, self.sure, self.first - self.body)

    def at(self, field: Field) -> int | None:
        """Where the column of this meaning stands; None where there is none."""
        return next((column.at for column in self.columns if column.field == field), None)

    def all_at(self, field: Field) -> tuple[Column, ...]:
        """The columns of this meaning: net prices (quantity breaks) and stocks (warehouses) can have several."""
        return tuple(column for column in self.columns if column.field == field)


def find_table(worksheet: Worksheet, meanings: Mapping[str, Field], start: int = 0) -> Table | None:
    """The best header from row `start` on: complete first, then most known words, then fewest rows, then the top.

    None where no row holds two known words. `meanings` as `columns.meanings_by_key` gives them. Rows of words just
    above that group the columns ('Prices' over 'List' and 'Net') belong to the header.
    """
    best: Table | None = None
    for at in range(start, min(len(worksheet.rows), start + SEARCHED)):
        if best and best.complete and at > best.first + SEARCHED_ON:
            break
        for height in range(1, MOST_HEADER_ROWS + 1):
            table = _candidate(worksheet, at, height, meanings)
            if table and (best is None or table.rank > best.rank):
                best = table
    if best and _has_only_letters(best):
        return _without_header(best, meanings)
    return _with_units_below(_with_groups_above(best, start, meanings), meanings) if best else None


def _with_units_below(table: Table, meanings: Mapping[str, Field]) -> Table:
    """The table with the row of units and currencies under its header: 'EUR', 'pcs', 'kg'."""
    rows, height = table.worksheet.rows, table.body - table.first + 1
    texts = [text for cell in rows[table.body] if (text := text_of(cell))] if table.body < len(rows) else []
    if height > MOST_HEADER_ROWS or len(texts) < 2 or not all(UNIT.fullmatch(text.strip("()[] .")) for text in texts):
        return table
    taller = _candidate(table.worksheet, table.first, height, meanings)
    return taller if taller and (taller.known, taller.sure) >= (table.known, table.sure) else table


def _has_only_letters(table: Table) -> bool:
    """Whether a person named the columns by letter and the row taken for the header is a row of the body."""
    row = table.worksheet.rows[table.first]
    known = [column for column in table.columns if column.field]
    return all(column.why == CONFIRMED for column in known) and not _could_be_header(row)


def _without_header(table: Table, meanings: Mapping[str, Field]) -> Table:
    """The table of a file without a header: it begins where the rows of its width begin."""
    shape = shape_of(table.worksheet)
    first = shape.body if shape and shape.body <= table.first else table.first
    headers = (NO_HEADER,) * len(table.headers)
    return replace(table, first=first, body=first, headers=headers, columns=columns_of(headers, meanings))


def _with_groups_above(table: Table, start: int, meanings: Mapping[str, Field]) -> Table:
    """The table with the rows above its header that group columns, as long as no meaning gets less sure by them."""
    while table.first > start and table.body - table.first < MOST_HEADER_ROWS and _is_group_row(table):
        taller = _candidate(table.worksheet, table.first - 1, table.body - table.first + 1, meanings)
        if taller is None or (taller.known, taller.sure) < (table.known, table.sure):
            break
        table = taller
    return table


def _is_group_row(table: Table) -> bool:
    """Whether the row above the header is words over its columns: two or more, or one merged over some of them."""
    worksheet, at = table.worksheet, table.first - 1
    filled = [column for column, cell in enumerate(worksheet.rows[at]) if text_of(cell)]
    texts = [text_of(worksheet.rows[at][column]) for column in filled]
    if any((re.search(r"\d", text) and break_quantity(text) is None) or len(text) > LONGEST_HEADER for text in texts):
        return False
    if any(text.endswith((":", ".")) for text in texts):
        return False
    if len(worksheet.rows[at]) < len(table.headers) and filled == list(range(len(filled))) and not worksheet.merged:
        return False  # a title with a delimiter in it: a row of groups is as wide as its table
    widths = _merged_widths(worksheet, at) or {}
    merged = [column for column in filled if 1 < widths.get(column, 1) < len(table.headers)]
    return bool(merged) or (len(filled) >= 2 and set(filled).issubset(_headed(table)))


def _headed(table: Table) -> set[int]:
    return {at for at, header in enumerate(table.headers) if header}


def _candidate(worksheet: Worksheet, at: int, height: int, meanings: Mapping[str, Field]) -> Table | None:
    rows = worksheet.rows[at : at + height]
    if len(rows) < height or any(not any(text_of(cell) for cell in row) for row in rows):
        return None
    if height > 1 and any(not _could_be_header(row) for row in rows):
        return None
    headers = headers_of(worksheet, at, height)
    table = Table(worksheet, at, at + height, len(worksheet.rows), headers, columns_of(headers, meanings))
    confirmed = any(column.why == CONFIRMED for column in table.columns)
    enough = FEWEST_KNOWN * table.known >= sum(bool(header.shown) for header in headers)
    believed = confirmed or (enough and not any(map(_has_amounts, rows)))
    return table if table.known >= 2 and believed else None


def _has_amounts(row: Sequence[Cell]) -> bool:
    """Whether two cells are amounts with a decimal mark: prices or measures of the body."""
    return sum(FRACTION.fullmatch(text_of(cell)) is not None for cell in row) > 1


def _could_be_header(row: Sequence[Cell]) -> bool:
    """Whether a row may be part of a header of several rows: one with an amount that is no quantity is of the body."""
    texts = [text for cell in row if (text := text_of(cell))]
    amounts = [text for text in texts if AMOUNT.fullmatch(text)]
    quantities = [int(text) for text in amounts if text.isdigit()]
    if len(quantities) < len(amounts) or sorted(set(quantities)) != quantities:
        return False
    others = (text for text in texts if text not in amounts and re.search(r"\d", text))
    return all(break_quantity(text) is not None for text in others)


def headers_of(worksheet: Worksheet, first: int, height: int, longest: int = LONGEST_HEADER) -> tuple[Header, ...]:
    """The headers of one to three rows, joined from the top down. A text longer than `longest` is no header."""
    rows = worksheet.rows[first : first + height]
    width = max(map(len, rows))
    texts = [[header_text(cell, longest) for cell in row] + [""] * (width - len(row)) for row in rows]
    for at in range(height - 1):
        below = ["".join(cells) for cells in zip(*texts[at + 1 :], strict=True)]
        texts[at] = _spread(texts[at], below, _merged_widths(worksheet, first + at))
    return tuple(joined(parts) for parts in zip(*texts, strict=True))


def _merged_widths(worksheet: Worksheet, row: int) -> dict[int, int] | None:
    """How many columns each cell of the row is merged over; None where the worksheet tells of no merged cells."""
    if not worksheet.merged:
        return None
    return {left: right - left + 1 for top, left, bottom, right in worksheet.merged if top <= row <= bottom}


def _spread(upper: Sequence[str], lower: Sequence[str], widths: dict[int, int] | None) -> list[str]:
    """The upper row with its cells over the columns they stand for: the merged ones, or all blank ones to the right."""
    found, over, until = [], "", 0
    for at, (top, sub) in enumerate(zip(upper, lower, strict=True)):
        if top:
            width = (widths or {}).get(at, 1)
            over, until = top, at + (width if width > 1 else len(upper))
        elif not sub or at >= until:
            over = ""
        found.append(over)
    return found


def joined(parts: Sequence[str]) -> Header:
    """A header of several rows: joined, turned round, and the lower rows alone, in the order they are looked up."""
    texts = [text for at, text in enumerate(parts) if text and text not in parts[:at]]
    if not texts:
        return Header(shown="", readings=())
    shown = " ".join(texts)
    if len(texts) == 1:
        return Header(shown=shown, readings=(shown,))
    tails = [" ".join(texts[at:]) for at in range(1, len(texts))]
    return Header(shown=shown, readings=(shown, " ".join([texts[-1], *texts[:-1]]), *tails))


def header_text(cell: Cell, longest: int = LONGEST_HEADER) -> str:
    """The cell as a header's text; '' for one too long to be a header."""
    text = text_of(cell)
    return text if len(text) <= longest else ""


def ending_at(table: Table, end: int) -> Table:
    """The same table with a body that ends before row `end`."""
    return replace(table, end=end)


def with_columns(table: Table, columns: tuple[Column, ...]) -> Table:
    """The same table with columns that mean something else."""
    return replace(table, columns=columns)
