"""Which currency a sheet is in: what the file says, compared with what the supplier's terms say. Never assumed."""

from collections.abc import Sequence

from sourcing.basics.currency import is_currency
from sourcing.basics.problem import Place, refused

from .body import Body
from .header_words import currencies_named
from .money_cells import currencies_in
from .table import Table
from .worksheet import text_of

MONEY = ("net price", "list price", "core charge")
PREAMBLE_WORDS = ("price", "currency", "preis", "währung")


def sheet_currency(bodies: Sequence[Body], file: str, expected: str) -> str:
    """The one currency of the sheet, ISO 4217.

    Told by the headers of price columns, a preamble line about prices, a currency column with one code, or codes in
    the price cells; else the supplier's. Refuses none, two, and one that is not the supplier's.
    """
    place = Place(file=file)
    told = {code for body in bodies for code in _told(body)}
    if len(told) > 1:
        raise refused("currency-mixed", place=place, found=", ".join(sorted(told)))
    found = told.pop() if told else expected
    if not found:
        raise refused("currency-not-known", place=place)
    if expected and found != expected:
        raise refused("currency-differs", place=place, found=found, expected=expected)
    return found


def _told(body: Body) -> set[str]:
    """What one table says, most outspoken source first; rows of a mixed currency column are judged one by one."""
    in_header = {
        code for column in body.table.columns if column.field in MONEY for code in currencies_named(column.header)
    }
    column = _column_codes(body)
    if said := in_header | _in_preamble(body.table) | (column if len(column) == 1 else set()):
        return said
    if column:
        return set()
    return {code for c in body.table.columns if c.field in MONEY for code in currencies_in(body.cells_at(c.at))}


def _in_preamble(table: Table) -> set[str]:
    """A code in a line that speaks of prices; a line that names two tells nothing for sure."""
    found: set[str] = set()
    for row in table.worksheet.rows[: table.first]:
        line = " ".join(text_of(cell) for cell in row)
        named = currencies_named(line)
        if len(named) == 1 and any(word in line.casefold() for word in PREAMBLE_WORDS):
            found |= named
    return found


def _column_codes(body: Body) -> set[str]:
    cells = body.cells("currency")
    codes = {text_of(cell).upper() for cell in dict.fromkeys(cells or [])}
    return {code for code in codes if is_currency(code)}
