"""List price, net price with its breaks, and for how many pieces (or feet, or metres) they are."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sourcing.basics.offer import PriceBreak
from sourcing.basics.sheet import Column

from ..cells.basis_cells import Basis, basis_in_header
from ..cells.cell import Bad
from ..cells.currency_signs import SIGNS
from ..cells.discount_cells import parse_discounts, parse_multipliers
from ..cells.money_cells import BasedPrice, parse_core_charge, parse_money
from ..cells.quantity_cells import parse_break_quantities
from ..region.body import Coded, Objects, is_none, objects
from ..worksheet import Cell, text_of
from .column_reader import ColumnReader
from .paired_breaks import paired_breaks
from .price_bases import EACH, bases_of_rows, common_basis, shown, spoil_by_text, stated_bases

Parse = Callable[[Sequence[Cell], str], Sequence[Any]]


@dataclass(frozen=True)
class Prices:
    """The price columns of a body. `priced`: whether a price could be read in the row, in any column."""

    columns: dict[str, Objects]
    priced: NDArray[np.bool_]


@dataclass(frozen=True)
class PriceColumn:
    """One column of prices, a row a value: Decimal or None. `bases`: what the cells say they are for, None mostly.

    `priced`: where there is a price.
    """

    column: Column
    values: Objects
    bases: Objects | None
    header_basis: Basis | None
    priced: NDArray[np.bool_]


def read_prices(reader: ColumnReader, packs: Objects, stated_packs: NDArray[np.bool_]) -> Prices:
    """Every price of the body. `packs`: pieces in a pack by row; `stated_packs`: where the sheet says so itself.

    Where a sheet has no net price but a list price with a multiplier or a discount, the net price is worked out,
    exactly and unrounded.
    """
    nets = [
        _price_column(reader, column)
        for column in sorted(reader.body.columns("net price"), key=lambda column: column.from_quantity or 1)
    ]
    lists = [_price_column(reader, column) for column in reader.body.columns("list price")[:1]]
    basis, sold_by = _one_basis(reader, [*nets, *lists], packs, stated_packs)
    spoil_by_text(reader, basis, sold_by)
    list_prices = lists[0].values if lists else reader.constant(None)
    if not nets and lists:
        nets = _worked_out(reader, lists[0])
    columns = {
        "list_price": list_prices,
        "breaks": _breaks(reader, nets),
        "price_basis": basis,
        "sold_by": sold_by,
        "core_charge": reader.read("core charge", lambda cells: _plain(parse_core_charge(cells, reader.currency))),
    }
    return Prices(columns, _priced(reader, [*nets, *lists]))


def _plain(values: Sequence[Any]) -> Sequence[Any]:
    """Core charges are for a piece; what states another basis is a price nobody can read that way."""
    return [
        Bad("price-unreadable", found=str(value.price)) if isinstance(value, BasedPrice) else value for value in values
    ]


def _price_column(reader: ColumnReader, column: Column) -> PriceColumn:
    values, coded = reader.parsed(
        column, lambda cells: parse_money(cells, reader.currency, lambda: reader.decimal_mark)
    )
    based = [value.basis if isinstance(value, BasedPrice) else None for value in values]
    bases = coded.spread(based) if any(based) else None
    plain = [value.price if isinstance(value, BasedPrice) else value for value in values]
    _note_other_currencies(reader, column)
    priced = np.array([value is not None for value in plain], dtype=bool)[coded.codes]
    said = dict(reader.body.table.package_bases)
    return PriceColumn(column, coded.spread(plain), bases, said.get(column.at, basis_in_header(column.header)), priced)


def _note_other_currencies(reader: ColumnReader, column: Column) -> None:
    """Cells whose number format shows another currency than the sheet's: the number alone would be taken silently."""
    table = reader.body.table
    for sign, rows in table.worksheet.currencies.get(column.at, {}).items():
        may_be = SIGNS.get(sign.casefold(), frozenset({sign.upper()}))
        if not reader.currency or reader.currency in may_be:
            continue
        for row in rows:
            if table.body <= row < table.end:
                found = f"{sign} {text_of(table.worksheet.rows[row][column.at])}"
                bad = Bad("price-other-currency", found=found, currency=reader.currency)
                reader.spoil(row - table.body, column.header, bad)


def _priced(reader: ColumnReader, columns: Sequence[PriceColumn]) -> NDArray[np.bool_]:
    found = np.zeros(reader.body.height, dtype=bool)
    for one in columns:
        found |= one.priced
    return found


def _one_basis(
    reader: ColumnReader, prices: list[PriceColumn], packs: Objects, stated_packs: NDArray[np.bool_]
) -> tuple[Objects, Objects]:
    """How many pieces the prices of each row are for, and what is counted: pieces, feet or metres.

    Where columns or cells differ in what they are for, the prices are brought to the largest of them, in place.
    """
    stated = stated_bases(reader)
    bases = [bases_of_rows(reader, one.bases, one.header_basis, stated, packs, stated_packs) for one in prices]
    if not bases or all(one is bases[0] or np.array_equal(one, bases[0]) for one in bases):
        rows = bases[0] if bases else reader.constant(EACH)
    else:
        _leave_out_unsaid(reader, prices, bases, stated)
        rows = common_basis(reader, [one.values for one in prices], bases)
    if len(set(map(id, rows))) == 1:
        return reader.constant(rows[0].count), reader.constant(rows[0].unit)
    return (
        objects((basis.count for basis in rows), len(rows)),
        objects((basis.unit for basis in rows), len(rows)),
    )


def _leave_out_unsaid(
    reader: ColumnReader, prices: Sequence[PriceColumn], bases: Sequence[Objects], stated: Objects | None
) -> None:
    """'12.50 /pk' beside a bare '15.00': for a piece or for a pack? A list price is left blank; a net price costs its

    row, as do two bases that differ. Nothing is left out where header or basis column say it of every price.
    """
    for at in range(reader.body.height):
        priced = [(one, basis[at]) for one, basis in zip(prices, bases, strict=True) if one.values[at] is not None]
        if len({basis for _, basis in priced}) < 2 or (stated is not None and stated[at] is not None):
            continue
        for one, _ in priced:
            if one.header_basis or (one.bases is not None and one.bases[at] is not None):
                continue
            other = next(basis for _, basis in priced if basis != EACH)
            bad = Bad("price-basis-unsaid", found=f"{one.values[at]}", other=shown(other))
            if one.column.field == "list price":
                reader.left_out.setdefault(at, []).append((one.column.header, bad))
                one.values[at] = None
            else:
                reader.spoil(at, one.column.header, bad)


def _breaks(reader: ColumnReader, nets: Sequence[PriceColumn]) -> Objects:
    """The price breaks of every row; equal rows share one tuple."""
    if any(one.column.pair for one in nets):
        return paired_breaks(reader, [(one.column, one.values) for one in nets])
    if reader.column("break quantity") and len(nets) == 1:
        starts = reader.read("break quantity", parse_break_quantities)
        return _from_pairs(nets[0].values, where_known(starts))
    if len(nets) == 1:
        return _single_breaks(nets[0])
    known: dict[tuple[object, ...], tuple[PriceBreak, ...]] = {}
    quantities = [one.column.from_quantity or 1 for one in nets]
    rows = list(zip(*(one.values for one in nets), strict=True)) or [()] * reader.body.height
    for row in rows:
        if row not in known:
            known[row] = _breaks_of(quantities, row)
    return objects((known[row] for row in rows), len(rows))


def where_known(starts: Objects) -> Objects:
    """The quantities, 1 where the cell is blank."""
    found: Objects = np.where(is_none(starts), 1, starts)
    return found


def _from_pairs(prices: Objects, starts: Objects) -> Objects:
    pairs = zip(prices, starts, strict=True)
    made = (() if price is None else (PriceBreak(from_quantity=start, price=price),) for price, start in pairs)
    return objects(made, len(prices))


def _single_breaks(net: PriceColumn) -> Objects:
    """One price a row. Equal prices are one object already and are told apart by it: a Decimal hashes slowly."""
    first = net.column.from_quantity or 1
    ids = np.fromiter(map(id, net.values), dtype=np.uint64, count=len(net.values))
    _, at, where = np.unique(ids, return_index=True, return_inverse=True)
    made = [() if price is None else (PriceBreak(from_quantity=first, price=price),) for price in net.values[at]]
    return Coded([], where).spread(made)


def _breaks_of(quantities: Sequence[int], prices: Sequence[object]) -> tuple[PriceBreak, ...]:
    pairs = zip(quantities, prices, strict=True)
    return tuple(PriceBreak(from_quantity=pieces, price=price) for pieces, price in pairs if isinstance(price, Decimal))


def _worked_out(reader: ColumnReader, lists: PriceColumn) -> list[PriceColumn]:
    """The net price by list price and multiplier or discount; nothing where the sheet has neither."""
    multiplier, discount = reader.column("multiplier"), reader.column("discount")
    if not multiplier and not discount:
        return []
    factors = reader.read("multiplier", parse_multipliers)
    if discount:
        factors = _one_factor(reader, factors, _discounts(reader), discount)
    pairs = zip(lists.values, factors, strict=True)
    nets = (None if price is None or factor is None else price * factor for price, factor in pairs)
    net = objects(nets, reader.body.height)
    column = Column(at=lists.column.at, header=lists.column.header, field="net price", why="list price × multiplier")
    return [PriceColumn(column, net, None, None, ~is_none(net))]


def _discounts(reader: ColumnReader) -> Objects:
    """What comes off by row; of several discounts each comes off what the one before has left."""
    left = reader.constant(None)
    for column in reader.body.columns("discount"):
        values, coded = reader.parsed(column, partial(parse_discounts, header=column.header))
        for at, off in enumerate(coded.spread(values)):
            if off is not None:
                left[at] = (1 if left[at] is None else left[at]) * (1 - off)
    return objects((None if one is None else 1 - one for one in left), reader.body.height)


def _one_factor(reader: ColumnReader, factors: Objects, offs: Objects, column: Column) -> Objects:
    """The multiplier of each row, from the discount where there is none. Two that disagree make the row a problem."""
    found = factors.copy()
    for at, off in enumerate(offs):
        if off is None:
            continue
        if factors[at] is not None and factors[at] != 1 - off:
            bad = Bad("discount-disagrees", found=f"{factors[at]} and {off}")
            reader.spoil(at, column.header, bad)
        found[at] = 1 - off
    return found
