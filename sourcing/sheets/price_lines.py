"""Lines around the rows of a table that speak of its prices: 'Prices per carton', 'all list, deduct 40 %'.

Such a line can make every price below it another one, and no column says so. None is applied by guessing, but for the
one line above a table that says 'all prices per 100' (`offers.price_bases`): each is a question. The words are common
practice, no source; terms of payment and charges on an order are left aside.
"""

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Field, StructureRow

from .cells.basis_cells import Basis, basis_in_header
from .cells.basis_lines import PRICE, basis_in_line
from .headers.column_names import PRICES, plain_key
from .headers.header_keys import currencies_named
from .headers.package_prices import said_bases
from .offers.price_bases import ABOVE, basis_above
from .region.body import Body
from .region.table import Table
from .summary import ReadWorksheet, structure_of
from .worksheet import Worksheet, line_of, text_of

SPOKEN = ("outside a table", "section", "note", "total", "header")
ANSWERS = ("not used", "price basis")
SHORT = 60
MOST_LINES, MOST_ASKED, LONGEST = 3000, 12, 90

LISTED = re.compile(
    r"\b(?:msrp|rrp|srp|uvp)\b|\b(?:list|retail)\s+prices?\b(?!\s*(?:file|list|book|effective|valid|\d))|"
    r"\bprices?\b.{0,25}\b(?:are|is|:)\s+(?:all\s+|suggested\s+|mfr\.?\s+|manufacturer'?s?\s+)*(?:list|msrp|retail|rrp)\b"
    r"|\bpreise\s+sind\s+(?:unverb\w*\s+|empf\w*\s+)*(?:listenpreise|bruttopreise|uvp|verkaufspreise)"
    r"|\bprix\s+(?:publics?|catalogue|conseillés?)|\bprecios?\s+(?:de\s+venta\s+al\s+)?p[úu]blico|\badviesprijzen\b"
)
NUMBER = r"\d+(?:[.,]\d+)?\s*%"
DISCOUNTED = re.compile(
    rf"\b(?:deduct|less|minus|abzüglich|abzgl\.?|moins|menos|descontar)\s+{NUMBER}"
    rf"|{NUMBER}\s+(?:off|discount|rabatt|nachlass|de\s+remise|remise|de\s+descuento|descuento|korting)\b"
)
TERMS = re.compile(
    r"cash|prompt|pay|days|skonto|zahlung|paiement|escompte|pago|betal|contado|tage|jours|días|dagen|freight|fracht|restock"
    r"|orders?\s+(?:over|above|of|from|under)|bestell|commande|pedido|return|core"
)
SURCHARGED = re.compile(
    rf"\b(?:surcharge|zuschlag|teuerungszuschlag|supplément|surtaxe|recargo|toeslag|tariff)\w*\b.{{0,40}}\d"
    rf"|{NUMBER}.{{0,30}}\b(?:\w*surcharge|\w*zuschlag|supplément|surtaxe|recargo|\w*toeslag|tariff)"
    rf"|\badd\s+{NUMBER}"
)
OF_AN_ORDER = re.compile(
    r"small|minimum|klein|minder|credit|card|karte|hazmat|hazard|oversize|freight|fracht|fuel|express|shipping|versand"
    r"|orders?\s+(?:over|above|of|from|under)|handling"
)
TAXED = re.compile(
    r"\b(?:incl\w*\.?|inkl\w*\.?|einschl\w*\.?)\s.{0,20}\b(?:vat|tax|taxes|gst|hst|mwst|ust|tva|iva|btw|steuer)\b"
    r"|\biva\s+incluido\b|\bttc\b"
)
UNUSUAL = re.compile(
    r"\bprices?\b.{0,25}\binclud\w*\b.{0,20}\bcores?\b|\bprices?\b.{0,15}\bin\s+(?:cents|pence|thousands|hundreds)\b"
)
MONEY_WORDS = {
    re.compile(r"austral|\baussie"): {"AUD"},
    re.compile(r"new zealand|\bnz\b"): {"NZD"},
    re.compile(r"\bcdn\b|canad"): {"CAD"},
    re.compile(r"\b(?:schweizer\s+)?franken\b|\bfrancs?\b"): {"CHF"},
    re.compile(r"\bkron(?:en|or|er|a|e)\b"): {"SEK", "NOK", "DKK", "CZK", "ISK"},
    re.compile(r"\bpesos?\b"): {"MXN", "ARS", "CLP", "COP"},
    re.compile(r"\bz[lł]oty"): {"PLN"},
    re.compile(r"\byen\b"): {"JPY"},
    re.compile(r"\bd[oó]lares|\bdollars?\b"): {"USD", "CAD", "AUD", "NZD", "SGD", "HKD"},
}
"""Names of money, each with the codes of ISO 4217 it may stand for; the more outspoken first."""
MONEY_BESIDE = re.compile(
    r"dollar|dólar|dolar|fund|franken|franc|kron|peso|z[lł]oty|yen|currency|währung|devise|moneda"
)
WITHOUT = re.compile(r"\b(?:not|nicht|non|no|niet|n[ãa]o|ohne|sin|zonder|hors|excl\w*)\b")


def price_lines(
    read: ReadWorksheet, everywhere: Sequence[Table], currency: str, said: Mapping[str, Field], file: str
) -> tuple[Problem, ...]:
    """A question for each different line that speaks of the prices, but those a person has spoken of.

    `everywhere`: the tables of the whole file, for a worksheet of terms that has none.
    """
    worksheet = read.worksheet
    known = {plain_key(line) for line, field in said.items() if field in ANSWERS}
    found: dict[str, Problem] = {}
    for at, line in _lines(worksheet, structure_of(read)):
        shown = line[:LONGEST].rstrip()
        if plain_key(shown) in known or plain_key(shown) in found:
            continue
        if why := _speaks_of_prices(line, currency, _tables_after(read, at) or everywhere, at):
            place = Place(file=file, worksheet=worksheet.name, row=worksheet.row_numbers[at])
            found[plain_key(shown)] = problem("line-about-prices", place=place, found=shown, why=why)
        if len(found) == MOST_ASKED:
            break
    return tuple(found.values())


def with_said_lines(table: Table, said: Mapping[str, Field]) -> Table:
    """The table with the lines a person has called 'price basis': they say what the prices under them are for.

    So may a price's header that names a package. A line is left aside where a column says it of each row: that column
    is read, and the line would be said to hold and not be.
    """
    table = replace(table, package_bases=said_bases(table.columns, said))
    by_row = bool(table.all_at("price basis"))
    keys = set() if by_row else {plain_key(line) for line, field in said.items() if field == "price basis"}
    found: list[tuple[int, Basis]] = []
    for at in range(table.end) if keys else ():
        line = line_of(table.worksheet.rows[at])
        if plain_key(line[:LONGEST].rstrip()) in keys and (basis := basis_in_line(line)):
            found.append((at, basis))
    return replace(table, line_bases=tuple(found)) if found else table


def _lines(worksheet: Worksheet, structure: Iterator[StructureRow]) -> Iterator[tuple[int, str]]:
    """The rows of words beside the table's own, as text, and where they stand; headers of columns are not asked."""
    count = 0
    for row in structure:
        if row.kind not in SPOKEN or count >= MOST_LINES:
            continue
        count += 1
        at = bisect_left(worksheet.row_numbers, row.row)
        cells = worksheet.rows[at]
        if row.kind != "header" or sum(bool(text_of(cell)) for cell in cells) == 1:
            yield at, line_of(cells)


def _tables_after(read: ReadWorksheet, at: int) -> Sequence[Table]:
    """The tables a line may speak of: those it stands in or above, else all of the worksheet; none on one without."""
    tables = [table for table, _ in read.tables]
    return [table for table in tables if at < table.end] or tables


def _speaks_of_prices(written: str, currency: str, tables: Sequence[Table], at: int) -> str:
    """Why the line may change the prices, in words; '' where it does not seem to."""
    line = written.casefold()
    if (
        not all(map(_says_unit_itself, tables))
        and basis_in_line(line)
        and not any(at < table.first and _is_applied(table, line) for table in tables)
    ):
        return "it says what the prices are for"
    has_net = any(table.all_at("net price") for table in tables)
    has_list = any(table.all_at("list price") for table in tables)
    if has_net and not has_list and LISTED.search(line):
        return "it calls them list prices"
    above = any(at < table.first for table in tables)
    explained = has_list and above and ("list" in line or not has_net)
    if DISCOUNTED.search(line) and not TERMS.search(line) and not explained:
        return "it names a discount"
    if SURCHARGED.search(line) and not OF_AN_ORDER.search(line):
        return "it names a surcharge"
    if TAXED.search(line) and not WITHOUT.search(line):
        return "it says tax is in them"
    if UNUSUAL.search(line):
        return "it says what else is in them, or what they are counted in"
    return _other_currency(written, line, currency)


def _says_unit_itself(table: Table) -> bool:
    """Whether a column says what each price is for, or the headers of all prices do."""
    prices = [column for column in table.columns if column.field in PRICES]
    return bool(table.all_at("price basis")) or all(basis_in_header(column.header) for column in prices)


def _is_applied(table: Table, line: str) -> bool:
    applied = not table.all_at("price basis") and basis_above(Body(table)) is not None
    return applied and ABOVE.search(line) is not None


def _other_currency(written: str, line: str, currency: str) -> str:
    if not currency:
        return ""
    named = currencies_named(written)
    speaks = re.search(rf"\b{PRICE}\b", line) or len(line) <= SHORT
    if len(named) == 1 and currency not in named and speaks:
        return f"it names {named.pop()}, the prices are read as {currency}"
    words = next((codes for pattern, codes in MONEY_WORDS.items() if pattern.search(line)), {currency})
    if not named and currency not in words and MONEY_BESIDE.search(line) and speaks:
        return f"it names {' or '.join(sorted(words))}, the prices are read as {currency}"
    return ""
