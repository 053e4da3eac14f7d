"""Stock, over one or several warehouses, and lead time; words for stock imply a time where the row states none."""

from collections.abc import Sequence
from datetime import date

from sourcing.basics.offer import PlaceStock
from sourcing.basics.sheet import Column

from ..cells.lead_time_cells import parse_lead_times
from ..cells.quantity_cells import Stock, parse_stocks
from ..region.body import Objects, objects
from .column_reader import ColumnReader, where_none


def read_stock(reader: ColumnReader, dated: date | None) -> dict[str, Objects]:
    """Pieces in stock (None: not stated), by warehouse where the sheet says so, and the lead time."""
    columns = reader.body.columns("stock")
    read = [_one(reader, column, dated) for column in columns]
    times = _times(reader, dated)
    for _, implied in read:
        times = where_none(times, implied)
    return {"lead_time": times, **_pieces(reader, columns, [pieces for pieces, _ in read])}


def _one(reader: ColumnReader, column: Column, dated: date | None) -> tuple[Objects, Objects]:
    """Pieces and implied lead time of one column. What is not understood is not stated, with a note."""
    values, coded = reader.parsed(column, lambda cells: parse_stocks(cells, dated), costs_row=False)
    pieces = coded.spread([value.pieces if isinstance(value, Stock) else None for value in values])
    return pieces, coded.spread([value.implied if isinstance(value, Stock) else None for value in values])


def _times(reader: ColumnReader, dated: date | None) -> Objects:
    column = reader.column("lead time")
    header = column.header if column else ""
    return reader.read("lead time", lambda cells: parse_lead_times(cells, header, dated))


def _pieces(reader: ColumnReader, columns: Sequence[Column], pieces: Sequence[Objects]) -> dict[str, Objects]:
    """The whole stock: a column without a place states it; else what the warehouses state is added up."""
    placed = [(column.place, one) for column, one in zip(columns, pieces, strict=True) if column.place]
    whole = next((one for column, one in zip(columns, pieces, strict=True) if not column.place), None)
    if not placed:
        return {"stock": reader.constant(None) if whole is None else whole, "stock_places": reader.constant(())}
    rows = list(zip(*(one for _, one in placed), strict=True))
    names = [place for place, _ in placed]
    known = {row: _places(names, row) for row in dict.fromkeys(rows)}
    sums = {row: _sum(row) for row in known}
    total = objects((sums[row] for row in rows), len(rows))
    return {
        "stock": total if whole is None else where_none(whole, total),
        "stock_places": objects((known[row] for row in rows), len(rows)),
    }


def _places(names: Sequence[str], row: Sequence[int | None]) -> tuple[PlaceStock, ...]:
    return tuple(PlaceStock(place=name, pieces=pieces) for name, pieces in zip(names, row, strict=True))


def _sum(row: Sequence[int | None]) -> int | None:
    """The stated pieces together: at least that many are there. None where no warehouse states any."""
    stated = [pieces for pieces in row if pieces is not None]
    return sum(stated) if stated else None
