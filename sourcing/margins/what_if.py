"""Approved lines of past jobs priced by other markup bands: what would have changed, by band and in all.

Costs stay as they were quoted; only the price before tax changes. What customers would have answered is not known.
"""

from collections.abc import Sequence
from decimal import Decimal

from ..basics.margin import BandChange, WhatIf
from ..basics.money import Money
from ..basics.value import Value
from .figures import margin
from .minor import money, part_of


class Repriced(Value, frozen=True, kw_only=True):
    """A line in whole minor units: `cost` is landed, `before` and `after` are prices with its share of the freight
    billed on a line of its own, of which `freight` is the price and `freight_cost` the cost. `band` is the new one, in
    words; `band_order` where it stands among them."""

    job: str
    band: str
    band_order: tuple[str, Decimal]
    cost: int
    before: int
    after: int
    capped: bool
    floor_percent: Decimal
    freight: int = 0
    freight_cost: int = 0


def what_if(lines: Sequence[Repriced], not_repriced: int, bands: str, currency: str) -> WhatIf:
    """The lines added up. `not_repriced` are those whose price is not by bands, or whose cost is not known."""
    by_band: dict[tuple[tuple[str, Decimal], str], list[Repriced]] = {}
    for line in lines:
        by_band.setdefault((line.band_order, line.band), []).append(line)
    changed = [line for line in lines if line.before != line.after]
    return WhatIf(
        currency=currency,
        bands=bands,
        jobs=len({line.job for line in lines}),
        jobs_changed=len({line.job for line in changed}),
        lines=len(lines),
        lines_changed=len(changed),
        not_repriced=not_repriced,
        capped=sum(line.capped for line in lines),
        by_band=tuple(_band(name, some, currency) for (_, name), some in sorted(by_band.items())),
        before=margin(money(sum(one.before for one in lines), currency), _cost(lines, currency)),
        after=margin(money(sum(one.after for one in lines), currency), _cost(lines, currency)),
        under_floor_before=sum(_under(one, one.before) for one in lines),
        under_floor_after=sum(_under(one, one.after) for one in lines),
        notes=("the customers' answers might have been others at other prices",),
    )


def _cost(lines: Sequence[Repriced], currency: str) -> Money:
    return money(sum(one.cost for one in lines), currency)


def _band(name: str, lines: Sequence[Repriced], currency: str) -> BandChange:
    cost = _cost(lines, currency)
    return BandChange(
        band=name,
        lines=len(lines),
        changed=sum(one.before != one.after for one in lines),
        before=margin(money(sum(one.before for one in lines), currency), cost),
        after=margin(money(sum(one.after for one in lines), currency), cost),
    )


def _under(line: Repriced, price: int) -> bool:
    """By itself, without freight billed apart."""
    over, under = line.floor_percent.as_integer_ratio()
    price, cost = price - line.freight, line.cost - line.freight_cost
    return price - cost < part_of(price, over, under * 100)
