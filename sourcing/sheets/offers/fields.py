"""Every column of a table's body parsed, a value a row, and the cells that could not be read."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sourcing.basics.currency import is_currency
from sourcing.basics.sheet import Field

from ..cells.cell import (
    Bad,
    column_says_no_longer_available,
    description_says_no_longer_available,
    says_only_gone,
    successors,
)
from ..cells.code_cells import parse_gtins, parse_origins, parse_tariff_codes
from ..cells.currency_signs import SIGNS
from ..cells.day_cells import parse_days
from ..cells.discount_cells import parse_discount_codes
from ..cells.flag_cells import parse_flags, parse_yes
from ..cells.number_cells import damaged_beside_others, parse_numbers, parse_superseding, without_float_tail
from ..cells.quantity_cells import parse_counts
from ..cells.weight_cells import parse_weights
from ..headers.dated_prices import held_by_header
from ..region.body import Body, Objects, objects
from ..worksheet import Cell, text_of
from .column_reader import BadCells, ColumnReader
from .package_fields import read_package
from .price_fields import read_prices
from .stock_fields import read_stock

SAID_IN: tuple[Field, ...] = ("net price", "list price", "stock", "lead time", "note")
"""Columns in which the words 'no longer available' may stand."""


@dataclass(frozen=True)
class Fields:
    """A table's columns parsed (see `frame.OFFER_COLUMNS`), the bad cells by row, and the rows with a price.

    A row named in `bad` must not become an offer: what stands in its columns is not what the sheet says.
    """

    columns: dict[str, Objects]
    bad: BadCells
    left_out: BadCells
    priced: NDArray[np.bool_]


def read_fields(body: Body, currency: str, dated: date | None) -> Fields:
    """All columns of the body. `dated`: the day of the sheet, for days without a year; None where not known."""
    reader = ColumnReader(body, currency)
    packs = reader.read("pack", parse_counts, 1)
    prices = read_prices(reader, packs, _stated(reader, "pack"))
    columns: dict[str, Objects] = {
        **_numbers(reader),
        **prices.columns,
        **{name: reader.text(name) for name in ("maker", "description", "note")},
        "pack": packs,
        "order_multiple": reader.read("order multiple", parse_counts, 1),
        "minimum": reader.read("minimum", parse_counts, 1),
        "currency": reader.read("currency", lambda cells: [_currency(cell, currency) for cell in cells], currency),
        **read_stock(reader, dated),
        **_gone(reader),
        **_beside(reader),
        **_held(reader, dated),
        **read_package(reader, packs),
    }
    return Fields(columns, reader.bad, reader.left_out, prices.priced)


def _beside(reader: ColumnReader) -> dict[str, Objects]:
    """What stands beside number and price: a cell that can't be read is left blank with a note and costs no row."""
    weight = reader.column("weight")
    weight_header = weight.header if weight else ""

    def read(meaning: Field, parse: Any, blank: object = None) -> Objects:
        return reader.read(meaning, parse, blank, costs_row=False)

    return {
        "gtin": read("gtin", parse_gtins, ""),
        "discount_code": read("discount code", parse_discount_codes, ""),
        "weight_kg": read("weight", lambda cells: parse_weights(cells, weight_header)),
        "oversize": read("oversize", parse_flags),
        "hazardous": read("hazardous", parse_flags),
        "origin": read("origin", parse_origins, ""),
        "tariff_code": read("tariff code", parse_tariff_codes, ""),
    }


def _held(reader: ColumnReader, dated: date | None) -> dict[str, Objects]:
    """From when to when the prices hold: by the row, and by the header of the prices where that is narrower."""
    start, end = held_by_header(reader.body.table.columns, dated)
    starts = reader.read("valid from", parse_days, costs_row=False)
    ends = reader.read("valid to", parse_days, costs_row=False)
    if start is not None:
        starts = objects((max(start, own or start) for own in starts), len(starts))
    if end is not None:
        ends = objects((min(end, own or end) for own in ends), len(ends))
    return {"valid_from": starts, "valid_to": ends}


def _numbers(reader: ColumnReader) -> dict[str, Objects]:
    """The numbers. A row without the supplier's own number is ordered by the maker's."""
    own = reader.read("supplier number", _own_numbers, "")
    makers = reader.read("maker number", parse_numbers, "")
    return {
        "supplier_number": np.where(np.equal(own, ""), makers, own),
        "maker_number": makers,
    }


def _own_numbers(cells: Sequence[Cell]) -> list[str | Bad]:
    numbers = without_float_tail(parse_numbers(cells))
    for at, bad in damaged_beside_others(numbers).items():
        numbers[at] = bad
    return numbers


def _stated(reader: ColumnReader, meaning: Field) -> NDArray[np.bool_]:
    """For each row whether the cell of this meaning says anything."""
    coded = reader.body.coded_field(meaning)
    if coded is None:
        return np.zeros(reader.body.height, dtype=bool)
    return np.array([bool(text_of(cell)) for cell in coded.different], dtype=bool)[coded.codes]


def _currency(cell: Cell, currency: str) -> str | Bad:
    code = text_of(cell).upper()
    if not code or code == currency or currency in SIGNS.get(code.casefold(), ()):
        return currency
    if not currency and is_currency(code):
        return code
    named = "row-other-currency" if is_currency(code) else "currency-cell-unreadable"
    return Bad(named, found=text_of(cell), currency=currency or "EUR")


def _gone(reader: ColumnReader) -> dict[str, Objects]:
    """Whether a row is no longer available, and the number that took its place.

    Said by columns of their own, by the words alone in a cell that may hold them, or in front of the description. A
    column that nobody knows ('Status') may hold them too: an offer that is not to be had must not look like one. A
    number said in words is a hint as one in its own column is, and never a statement.
    """
    gone = reader.read("no longer available", lambda cells: [parse_yes(cell) for cell in cells], False)
    instead = reader.read("superseded by", parse_superseding, "")
    for column in reader.body.table.columns:
        coded = reader.body.coded(column.at)
        if column.field == "description":
            also = description_says_no_longer_available(coded.different, coded.whole)
        elif column.field == "superseded by":
            also = [says_only_gone(cell) for cell in coded.different]
        else:
            may = column.field is None or column.field in SAID_IN
            also = column_says_no_longer_available(coded.different) if may else None
            if also and (named := successors(coded.different)):
                instead = np.where(np.equal(instead, ""), coded.spread(named), instead)
        if also:
            gone = np.where(coded.spread(also).astype(bool), True, gone)
    return {"no_longer_available": gone, "superseded_by": instead}
