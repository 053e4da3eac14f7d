"""Which currency a sheet is in: what the file says, compared with what the supplier's terms say. Never assumed."""

from collections.abc import Sequence

from sourcing.basics.currency import is_currency
from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Column

from ..cells.currency_signs import SIGNS
from ..cells.money_cells import currencies_in
from ..headers.header_keys import TRADE_CURRENCIES
from ..headers.header_words import currencies_named
from ..region.body import Body
from ..region.table import Table
from ..worksheet import text_of

MONEY = ("net price", "list price", "core charge")
PREAMBLE_WORDS = (
    "price", "currency", "preis", "währung", "prix", "precio", "prijs", "prijzen", "devise", "moneda", "valuta",
    "tarif", "dollar", "effective", "sterling", "franc", "pricing", "net", "dealer", "list", "funds", "cost", "cash",
)  # fmt: skip


def sheet_currency(bodies: Sequence[Body], file: str, expected: str) -> tuple[str, tuple[Problem, ...]]:
    """The one currency of the sheet, ISO 4217, and what a person must say about it.

    Told by the headers of price columns, a preamble line about prices, a currency column with one code, codes in the
    price cells or number formats that show one; else the supplier's. None, two, and one that is not the supplier's
    are questions; where it is not known, the currency is "", which is no question where every row states its own.
    """
    place = Place(file=file)
    told = {code for body in bodies for code in _told(body)}
    if len(told) > 1:
        return "", (_mixed(bodies, told, place),)
    found = told.pop() if told else expected
    if not found and all(map(_says_in_every_row, bodies)):
        return "", ()
    if not found:
        return "", (problem("currency-not-known", place=place),)
    if found and (sign := _other_sign(bodies, found)):
        return found, (problem("currency-differs", place=place, found=sign, expected=found),)
    if expected and found != expected:
        return found, (problem("currency-differs", place=place, found=found, expected=expected),)
    return found, ()


def _mixed(bodies: Sequence[Body], told: set[str], place: Place) -> Problem:
    """Two currencies: a person can leave columns out where at most one of them is told by anything but a header."""
    named = {code: [column.header for column in _money_columns(bodies) if code in _named(column)] for code in told}
    if sum(not headers for headers in named.values()) > 1:
        return problem("currency-mixed", place=place, found=", ".join(sorted(told)))
    found = ", ".join(f"{code} in '{headers[0]}'" if headers else code for code, headers in sorted(named.items()))
    return problem("currency-by-column", place=place, found=found)


def _money_columns(bodies: Sequence[Body]) -> list[Column]:
    return [column for body in bodies for column in body.table.columns if column.field in MONEY]


def _named(column: Column) -> set[str]:
    """The currencies the column's header names."""
    return set(currencies_named(column.header))


def _other_sign(bodies: Sequence[Body], currency: str) -> str:
    """A sign in the header of a price that the currency does not have: 'Net ($)' on a sheet in EUR."""
    headers = [column.header for column in _money_columns(bodies)]
    signs = (sign for sign in "$€£¥" for header in headers if sign in header and currency not in SIGNS[sign])
    return next(signs, "")


def _told(body: Body) -> set[str]:
    """What one table says, most outspoken source first; rows of a mixed currency column are judged one by one."""
    in_header = {code for column in _money_columns([body]) for code in _named(column)}
    column = _column_codes(body)
    name = {body.table.worksheet.name.strip().upper()} & set(TRADE_CURRENCIES.split("|"))
    if said := in_header | name | _in_preamble(body.table) | (column if len(column) == 1 else set()):
        return said
    if column:
        return set()
    columns = [column for column in body.table.columns if column.field in MONEY]
    in_cells = {code for column in columns for code in currencies_in(body.coded(column.at).different)}
    return in_cells or {code for column in columns for code in _in_formats(body, column.at)}


def _in_formats(body: Body, at: int) -> set[str]:
    """The currency that the number formats of most of the column's cells show by a code or a sign of one currency."""
    shown = body.table.worksheet.currencies.get(at, {})
    for sign, rows in shown.items():
        may_be = SIGNS.get(sign.casefold(), frozenset({sign.upper()}))
        if len(may_be) == 1 and 2 * len(rows) > body.height:
            return set(may_be)
    return set()


def _in_preamble(table: Table) -> set[str]:
    """A code in a line that speaks of prices, or in a cell of its own; a line with two tells nothing for sure."""
    found: set[str] = set()
    for row in table.worksheet.rows[: table.first]:
        line = " ".join(text_of(cell) for cell in row)
        named = currencies_named(line)
        of_prices = any(word in line.casefold() for word in PREAMBLE_WORDS)
        alone = any(is_currency(text_of(cell).strip("()[]: ")) for cell in row)
        if len(named) == 1 and (of_prices or alone):
            found |= named
    return found


def _says_in_every_row(body: Body) -> bool:
    coded = body.coded_field("currency")
    if coded is None:
        return False
    blank = [number for number, cell in enumerate(coded.different) if not is_currency(text_of(cell).upper())]
    number_at = body.table.at("supplier number") or 0
    rows = coded.rows_with(blank)
    return all(not text_of(body.row(at)[number_at]) for at in rows if len(body.row(at)) > number_at)


def _column_codes(body: Body) -> set[str]:
    coded = body.coded_field("currency")
    codes = {text_of(cell).upper() for cell in (coded.different if coded else [])}
    return {code for code in codes if is_currency(code)}
