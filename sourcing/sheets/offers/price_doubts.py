"""Prices that contradict one another: a net price above the list price, breaks that rise, a discount that is not in it.

Any of these in most rows means that a column is not what its header says (a total, a per cent, a price with tax, a
year). Questions for a person, never answers; what a person has spoken of is not doubted. Common practice, no source.
"""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import pairwise

from sourcing.basics.offer import PriceBreak
from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import Column

from ..headers.column_names import CONFIRMED, name_of
from ..headers.column_values import compared, steady_ratio
from ..headers.header_words import WITH_TAX
from ..region.body import Body
from .table_reading import TableReading

LOOKED_AT = 3000
FEWEST = 2
LEAST_OF_LIST = 10
LEAST_OF_BEFORE = 3
"""A break below a third of the one before is no price of the same piece."""
YEAR = re.compile(r"(?<!\d)20[0-4]\d(?!\d)")
OURS = re.compile(
    r"ek\b|händler|haendler|dealer|dlr|your|ihr|votre|uw|su\b|cost|einkauf|inkoop|achat|wholesale|trade", re.I
)
TAXES = (Decimal("1.04"), Decimal("1.28"))
"""Between these lie the rates of value-added tax by which a price with tax is above the one without."""


def price_doubts(body: Body, reading: TableReading, place: Place) -> tuple[Problem, ...]:
    """What the prices of a table say against their headers, each once for the table."""
    prices = [column for column in body.table.columns if column.field in ("net price", "list price", "discount")]
    if not prices or all(column.why == CONFIRMED for column in prices):
        return ()
    columns = reading.columns
    rows = list(zip(columns["breaks"][:LOOKED_AT], columns["list_price"][:LOOKED_AT], strict=True))
    nets = [column for column in prices if column.field == "net price"]
    return tuple([*_by_rows(rows, nets, place), *_by_headers(body, prices, nets, place)])


def _by_rows(
    rows: Sequence[tuple[tuple[PriceBreak, ...], Decimal | None]], nets: Sequence[Column], place: Place
) -> Iterator[Problem]:
    name = name_of(nets[0]) if nets else ""
    both = [(breaks[0].price, listed) for breaks, listed in rows if breaks and listed is not None]
    above = sum(net > listed for net, listed in both)
    if nets and nets[0].why != CONFIRMED and _most(above, len(both)):
        why = f"it is above the list price in {above} of {len(both)} rows"
        yield problem("price-doubted", place=place, found=name, why=why)
    below = sum(net * LEAST_OF_LIST < listed for net, listed in both)
    if nets and nets[0].why != CONFIRMED and _most(below, len(both)):
        why = f"it is below a tenth of the list price in {below} of {len(both)} rows, so it may be a multiplier"
        yield problem("price-doubted", place=place, found=name, why=why)
    several = [[one.price for one in breaks] for breaks, _ in rows if len(breaks) > 1]
    rising = sum(any(after > before for before, after in pairwise(prices)) for prices in several)
    falling = sum(any(after * LEAST_OF_BEFORE < before for before, after in pairwise(prices)) for prices in several)
    nets = [] if nets and nets[-1].why == CONFIRMED else nets
    later = name_of(nets[-1]) if len(nets) > 1 else name
    if nets and _most(rising, len(several)):
        why = f"more pieces cost more each in {rising} of {len(several)} rows, so it may be a total, a size or a year"
        yield problem("price-doubted", place=place, found=later, why=why)
    elif nets and _most(falling, len(several)):
        why = f"it is below a third of the price before in {falling} of {len(several)} rows, so it may be a per cent"
        yield problem("price-doubted", place=place, found=later, why=why)


def _most(count: int, of: int) -> bool:
    return count >= FEWEST and 2 * count > of


def _by_headers(body: Body, prices: Sequence[Column], nets: Sequence[Column], place: Place) -> Iterator[Problem]:
    years = {year for column in prices for year in YEAR.findall(column.header) if column.why != CONFIRMED}
    if len(years) > 1:
        found = ", ".join(f"'{name_of(column)}'" for column in prices)
        yield problem("price-years-differ", place=place, found=found, column=name_of(prices[-1]))
    discounts = [column for column in prices if column.field == "discount" and column.why != CONFIRMED]
    if nets and discounts and not any(column.field == "list price" for column in prices):
        yield problem("discount-beside-net", place=place, found=name_of(discounts[0]), net=name_of(nets[0]))
    for net in nets[:1]:
        if net.why == CONFIRMED or OURS.search(net.header):
            continue
        for taxed in (column for column in body.table.columns if column.why.endswith(WITH_TAX)):
            if steady_ratio(body.first_cells(taxed.at), body.first_cells(net.at), TAXES):
                yield problem("net-of-tax", place=place, found=name_of(net), other=name_of(taxed))
                return
    if nets and discounts:
        yield from _discount_not_in(body, prices, nets[0], discounts[0], place)


def _discount_not_in(
    body: Body, prices: Sequence[Column], net: Column, discount: Column, place: Place
) -> Iterator[Problem]:
    """A net price that equals the list price in most rows although a discount is stated."""
    lists = [column for column in prices if column.field == "list price"]
    if not lists or net.why == CONFIRMED:
        return
    rows, lower, higher = compared(body.first_cells(net.at), body.first_cells(lists[0].at))
    stated = sum(bool(str(cell).strip(" 0.%")) for cell in body.first_cells(discount.at))
    if rows >= FEWEST and not lower and not higher and 2 * stated > rows:
        yield problem(
            "price-doubted", place=place, found=name_of(net), why="it equals the list price despite a discount"
        )
