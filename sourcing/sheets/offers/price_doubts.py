"""Prices that contradict one another: a net price above the list price, breaks that rise, a discount that is not in it.

Any of these in most rows means that a column is not what its header says (a total, a per cent, a price with tax, a
year). Questions for a person, never answers; what a person has spoken of is not doubted, but for a discount that comes
off nothing: both words together say nothing of what is to be paid. Common practice, no source.
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

Rows = Sequence[tuple[tuple[PriceBreak, ...], Decimal | None]]
"""Net price with its breaks, and list price, of each offer."""
LOOKED_AT = 3000
FEWEST = 2
LEAST_OF_LIST, LEAST_OF_BEFORE = 10, 3
"""A net price below a tenth of the list price, a break below a third of the one before: no prices of a piece."""
YEAR = re.compile(r"(?<!\d)20[0-4]\d(?!\d)")
OURS = re.compile(
    r"ek\b|händler|haendler|dealer|dlr|your|ihr|votre|uw|su\b|cost|einkauf|inkoop|achat|wholesale|trade", re.I
)
TAXES = (Decimal("1.04"), Decimal("1.28"))
"""Between these lie the rates of value-added tax by which a price with tax is above the one without."""


def price_doubts(body: Body, reading: TableReading, place: Place) -> tuple[Problem, ...]:
    """What the prices of a table say against their headers, each once for the table."""
    prices = [column for column in body.table.columns if column.field in ("net price", "list price", "discount")]
    if not prices:
        return ()
    columns = reading.columns
    rows = list(zip(columns["breaks"][:LOOKED_AT], columns["list_price"][:LOOKED_AT], strict=True))
    nets = [column for column in prices if column.field == "net price"]
    by_list = _against_list(rows, nets[0], place) if nets and nets[0].why != CONFIRMED else ()
    by_breaks = _among_breaks(rows, nets[-1], place) if nets and nets[-1].why != CONFIRMED else ()
    return (*by_list, *by_breaks, *_by_headers(body, prices, nets, place))


def _against_list(rows: Rows, net: Column, place: Place) -> Iterator[Problem]:
    both = [(breaks[0].price, listed) for breaks, listed in rows if breaks and listed is not None]
    above = sum(net_price > listed for net_price, listed in both)
    below = sum(net_price * LEAST_OF_LIST < listed for net_price, listed in both)
    of = f"of {len(both)} rows"
    if _most(above, len(both)):
        yield _doubted(net, f"it is above the list price in {above} {of}", place)
    if _most(below, len(both)):
        yield _doubted(net, f"it is below a tenth of the list price in {below} {of}, so it may be a multiplier", place)


def _among_breaks(rows: Rows, last: Column, place: Place) -> Iterator[Problem]:
    several = [list(pairwise(one.price for one in breaks)) for breaks, _ in rows if len(breaks) > 1]
    rising = sum(any(after > before for before, after in steps) for steps in several)
    falling = sum(any(after * LEAST_OF_BEFORE < before for before, after in steps) for steps in several)
    of = f"of {len(several)} rows"
    if _most(rising, len(several)):
        yield _doubted(last, f"more pieces cost more each in {rising} {of}: it may be a total, a size or a year", place)
    elif _most(falling, len(several)):
        yield _doubted(last, f"it is below a third of the price before in {falling} {of}: it may be a per cent", place)


def _doubted(column: Column, why: str, place: Place) -> Problem:
    return problem("price-doubted", place=place, found=name_of(column), why=why)


def _most(count: int, of: int) -> bool:
    return count >= FEWEST and 2 * count > of


def _by_headers(body: Body, prices: Sequence[Column], nets: Sequence[Column], place: Place) -> Iterator[Problem]:
    years = {year for column in prices for year in YEAR.findall(column.header) if column.why != CONFIRMED}
    if len(years) > 1:
        found = ", ".join(f"'{name_of(column)}'" for column in prices)
        yield problem("price-years-differ", place=place, found=found, column=name_of(prices[-1]))
    discounts = [column for column in prices if column.field == "discount"]
    if nets and not any(column.field == "list price" for column in prices):
        for discount in discounts:
            yield problem("discount-beside-net", place=place, found=name_of(discount), net=name_of(nets[0]))
    discounts = [column for column in discounts if column.why != CONFIRMED]
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
        yield _doubted(net, "it equals the list price despite a discount", place)
