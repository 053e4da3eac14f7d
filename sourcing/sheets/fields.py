"""Every column of a table's body parsed, and the cells that could not be read."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypeVar, cast

from sourcing.basics.currency import is_currency
from sourcing.basics.offer import LeadTime, PriceBreak
from sourcing.basics.sheet import Column, Field

from .body import Body
from .cells import Bad, bad_cells, column_says_no_longer_available, parse_column, parse_texts
from .columns import name_of
from .lead_time_cells import lead_time_parser
from .money_cells import SIGNS, parse_core_charge, parse_money
from .number_cells import lost_zeros, parse_numbers, parse_superseded_by, without_float_tail
from .quantity_cells import PER_PACK, Stock, parse_basis, parse_count, parse_stock, parse_yes
from .worksheet import Cell, text_of

T = TypeVar("T")
BadCells = dict[int, list[tuple[str, Bad]]]
"""By row of the body: column header and what is wrong."""


@dataclass(frozen=True)
class Fields:
    """A table's columns parsed (see `frame.OFFER_COLUMNS`), the bad cells by row, and the rows with a price."""

    columns: dict[str, list[object]]
    bad: BadCells = field(default_factory=dict)
    priced: list[bool] = field(default_factory=list)


class Reader:
    """Parses the columns of one body and collects the bad cells."""

    def __init__(self, body: Body, currency: str) -> None:
        self.body, self.currency, self.bad = body, currency, cast(BadCells, {})
        self.blank: tuple[Cell, ...] = ("",) * len(body.rows)

    def column(self, meaning: Field) -> Column | None:
        """The column of this meaning."""
        return next(iter(self.body.table.all_at(meaning)), None)

    def cells(self, meaning: Field) -> Sequence[Cell]:
        """The cells of the column; blanks where there is no such column."""
        return self.body.cells(meaning) or self.blank

    def parsed(self, meaning: Field, parse: Callable[[Cell], T | Bad]) -> list[T]:
        """The column parsed cell by cell. What stays bad in it belongs to a row that is no offer."""
        return self.noted(self.column(meaning), parse_column(self.cells(meaning), parse))

    def text(self, meaning: Field) -> list[object]:
        """A column of text."""
        return cast(list[object], parse_texts(self.cells(meaning)))

    def noted(self, column: Column | None, values: Sequence[T | Bad], shown: str = "") -> list[T]:
        """The values, their bad cells written down under the column's header."""
        for at, bad in bad_cells(values).items():
            self.bad.setdefault(at, []).append((name_of(column) if column else shown, bad))
        return cast(list[T], values)


def read_fields(body: Body, currency: str) -> Fields:
    """All columns of the body. A row named in `bad` must not become an offer: its values may be unread cells."""
    reader = Reader(body, currency)
    net, lists = _net_prices(reader), _money(reader, "list price", parse_money)
    columns: dict[str, list[object]] = {
        **_numbers(reader),
        "maker": reader.text("maker"),
        "description": reader.text("description"),
        "note": reader.text("note"),
        "currency": reader.parsed("currency", lambda cell: _currency(cell, currency)),
        "list_price": cast(list[object], lists),
        "breaks": _breaks(net),
        "core_charge": cast(list[object], _money(reader, "core charge", parse_core_charge)),
        "order_multiple": reader.parsed("order multiple", parse_count),
        "minimum": reader.parsed("minimum", parse_count),
        **_pack_and_basis(reader),
        **_stock_and_lead_time(reader),
        "no_longer_available": _no_longer_available(reader),
    }
    return Fields(columns=columns, bad=reader.bad, priced=_priced([lists, *net.values()]))


def _priced(prices: Sequence[Sequence[object]]) -> list[bool]:
    """Whether a price could be read in the row, in any column."""
    read = [[type(price) is Decimal for price in column] for column in prices]
    return read[0] if len(read) == 1 else list(map(any, zip(*read, strict=True)))


def _numbers(reader: Reader) -> dict[str, list[object]]:
    """The numbers. A row without the supplier's own number is ordered by the maker's."""
    own = without_float_tail(parse_numbers(reader.cells("supplier number")))
    column = reader.column("supplier number")
    for at, bad in lost_zeros(own).items():
        own[at] = bad
    makers = reader.noted(reader.column("maker number"), parse_numbers(reader.cells("maker number")))
    numbers = [number or other for number, other in zip(reader.noted(column, own), makers, strict=True)]
    others = reader.parsed("superseded by", parse_superseded_by)
    return {
        "supplier_number": cast(list[object], numbers),
        "maker_number": cast(list[object], makers),
        "superseded_by": cast(list[object], others),
    }


def _money(
    reader: Reader, meaning: Field, parse: Callable[[Sequence[Cell], str], list[Decimal | Bad | None]]
) -> list[Decimal | None]:
    return reader.noted(reader.column(meaning), parse(reader.cells(meaning), reader.currency))


def _net_prices(reader: Reader) -> dict[int, list[Decimal | None]]:
    """By quantity from which they hold, rising: the net price columns parsed."""
    columns = sorted(reader.body.table.all_at("net price"), key=lambda column: column.from_quantity or 1)
    return {
        column.from_quantity or 1: reader.noted(column, parse_money(reader.body.cells_at(column.at), reader.currency))
        for column in columns
    }


def _breaks(net: dict[int, list[Decimal | None]]) -> list[object]:
    """The price breaks of every row; equal rows share one tuple."""
    quantities = list(net)
    if len(net) == 1:
        # One price a row: made directly, since looking Decimals up takes longer than making the tuple.
        first = quantities[0]
        return [
            (PriceBreak(from_quantity=first, price=price),) if isinstance(price, Decimal) else ()
            for price in net[first]
        ]
    rows = list(zip(*net.values(), strict=True))
    known = {row: _breaks_of(quantities, row) for row in dict.fromkeys(rows)}
    return [known[row] for row in rows]


def _breaks_of(quantities: Sequence[int], prices: Sequence[object]) -> tuple[PriceBreak, ...]:
    pairs = zip(quantities, prices, strict=True)
    return tuple(PriceBreak(from_quantity=pieces, price=price) for pieces, price in pairs if isinstance(price, Decimal))


def _currency(cell: Cell, currency: str) -> str | Bad:
    code = text_of(cell).upper()
    if not code or code == currency or currency in SIGNS.get(code.casefold(), ()):
        return currency
    named = "row-other-currency" if is_currency(code) else "currency-cell-unreadable"
    return Bad(named, found=text_of(cell), currency=currency)


def _pack_and_basis(reader: Reader) -> dict[str, list[object]]:
    """Packs, and for how many pieces a price is. 'Per pack' needs the row's pack: without it the price is unknown."""
    packs = reader.parsed("pack", parse_count)
    bases = reader.parsed("price basis", parse_basis)
    if PER_PACK in bases:
        stated = [bool(text_of(cell)) for cell in reader.cells("pack")]
        found = [
            base if base != PER_PACK else pack if known else Bad("pack-unknown", found=text_of(cell))
            for base, pack, known, cell in zip(bases, packs, stated, reader.cells("price basis"), strict=True)
        ]
        new = [value if base == PER_PACK else 1 for value, base in zip(found, bases, strict=True)]
        reader.noted(reader.column("price basis"), new)
        bases = cast(list[int], found)
    return {"pack": cast(list[object], packs), "price_basis": cast(list[object], bases)}


def _stock_and_lead_time(reader: Reader) -> dict[str, list[object]]:
    """Pieces in stock and lead time; words for stock imply a lead time where the row states none."""
    stocks = reader.parsed("stock", parse_stock)
    column = reader.column("lead time")
    times = reader.parsed("lead time", lead_time_parser(column.header if column else ""))
    pieces = [stock.pieces if isinstance(stock, Stock) else None for stock in stocks]
    return {
        "stock": cast(list[object], pieces),
        "lead_time": [_lead(*pair) for pair in zip(times, stocks, strict=True)],
    }


def _lead(time: LeadTime | None, stock: Stock) -> LeadTime | None:
    return time or (stock.implied if isinstance(stock, Stock) else None)


def _no_longer_available(reader: Reader) -> list[object]:
    """Said by a column of its own, or by the words alone in a price, stock, lead time, note or superseded-by cell."""
    said = cast(list[object], reader.parsed("no longer available", parse_yes))
    places: tuple[Field, ...] = ("net price", "list price", "stock", "lead time", "note", "superseded by")
    for column in (column for meaning in places for column in reader.body.table.all_at(meaning)):
        if also := column_says_no_longer_available(reader.body.cells_at(column.at)):
            said = [value or more for value, more in zip(said, also, strict=True)]
    return said
