"""Price breaks of which each row has its own quantities: 'Qty 1, Price 1, Qty 2, Price 2'."""

from collections.abc import Sequence
from decimal import Decimal

from sourcing.basics.offer import PriceBreak
from sourcing.basics.sheet import Column

from ..cells.cell import Bad
from ..cells.quantity_cells import parse_break_quantities
from ..region.body import Objects, objects
from .column_reader import ColumnReader


def paired_breaks(reader: ColumnReader, prices: Sequence[tuple[Column, Objects]]) -> Objects:
    """The price breaks of every row, in order of quantity. A price without its quantity holds from one piece only if it

    is the row's first; a quantity without a price says nothing. Two prices from one quantity make the row a problem.
    """
    ordered = sorted(prices, key=lambda pair: (pair[0].pair or 0, pair[0].at))
    quantities = [_quantities(reader, column) for column, _ in ordered]
    rows = []
    for at in range(reader.body.height):
        found: dict[int, PriceBreak] = {}
        for place, (column, values) in enumerate(ordered):
            if not isinstance(values[at], Decimal):
                continue
            pieces = quantities[place][at] or (1 if not found else None)
            if pieces is None:
                reader.spoil(at, column.header, Bad("break-without-quantity", found=str(values[at])))
            elif pieces in found:
                reader.spoil(at, column.header, Bad("break-twice", found=str(pieces)))
            else:
                found[pieces] = PriceBreak(from_quantity=pieces, price=values[at])
        rows.append(tuple(found[pieces] for pieces in sorted(found)))
    return objects(rows, len(rows))


def _quantities(reader: ColumnReader, price: Column) -> Objects:
    """The quantities of the column paired with a price, a row a value."""
    own = [one for one in reader.body.columns("break quantity") if one.pair == price.pair and price.pair is not None]
    if not own:
        return reader.constant(None)
    values, coded = reader.parsed(own[0], parse_break_quantities)
    return coded.spread(values)
