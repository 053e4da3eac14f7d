"""'Qty 1, Price 1, Qty 2, Price 2': prices from quantities that stand in each row, or headers that only look so."""

from collections.abc import Callable, Sequence

import msgspec

from sourcing.basics.sheet import Column

from .break_headers import numbered_discount, numbered_price, numbered_quantity
from .column_names import CONFIRMED
from .header_words import QUANTITY

FEWEST = 2


def with_pairs(columns: Sequence[Column]) -> list[Column]:
    """The columns with quantities and prices of one number paired; numbered quantities that are no prices are open.

    Whether such prices are net or list is asked for the first; what is said of it holds for all. Numbered discounts
    each come off what the one before leaves.
    """
    columns = [
        msgspec.structs.replace(c, pair=numbered_discount(c.header)) if c.field == "discount" else c for c in columns
    ]
    quantities = _numbered(columns, numbered_quantity, ("break quantity",))
    prices = _numbered(columns, numbered_price, ("net price",))
    both = quantities.keys() & prices.keys()
    if len(both) < FEWEST or prices.keys() - both > {1}:
        return _without_numbered(columns)
    group = [prices[number] for number in sorted(prices)]
    answer = next((column for column in group if column.field == "net price"), None)
    made: dict[int, Column] = {}
    for number in both:
        made[quantities[number].at] = _as_quantity(
            quantities[number], number, f"the quantity of '{prices[number].header}'"
        )
    for number, price in prices.items():
        made[price.at] = _as_price(price, number if number in both else None, answer, group[0])
    return [made.get(column.at, column) for column in columns]


def _numbered(
    columns: Sequence[Column], number_of: Callable[[str], int | None], fields: tuple[str, ...]
) -> dict[int, Column]:
    """The columns by the number in their header, those a person has given another meaning left out."""
    found: dict[int, Column] = {}
    for column in columns:
        number = number_of(column.header)
        if number and (column.why != CONFIRMED or column.field in fields):
            found[number] = column
    return found


def _as_quantity(column: Column, number: int, why: str) -> Column:
    return msgspec.structs.replace(
        column, field="break quantity", pair=number, why=why, suggested=None, from_quantity=None
    )


def _as_price(column: Column, number: int | None, answer: Column | None, first: Column) -> Column:
    if answer is not None:
        why = column.why if column.field == "net price" else f"as '{answer.header}'"
        return msgspec.structs.replace(column, field="net price", pair=number, why=why, suggested=None)
    if column is first:
        return msgspec.structs.replace(column, pair=number)
    return msgspec.structs.replace(column, field=None, pair=number, why=f"waits for '{first.header}'")


def _without_numbered(columns: Sequence[Column]) -> list[Column]:
    """'Qty 1', 'Qty 2' are prices from that quantity, but beside 'Price 1' or counted 1, 2 they hold quantities."""
    counts = {n for c in columns if c.why != CONFIRMED and (n := numbered_quantity(c.header))}
    prices = {n for c in columns if (n := numbered_price(c.header))}
    counted = len(counts) > 1 and counts == set(range(1, len(counts) + 1))
    doubtful = counts if counted else counts & prices
    return [
        msgspec.structs.replace(c, field=None, why=QUANTITY, suggested=None, from_quantity=None, place="")
        if c.why != CONFIRMED and numbered_quantity(c.header) in doubtful
        else c
        for c in columns
    ]
