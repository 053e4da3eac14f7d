"""Markup bands: which one a cost falls in, where a dearer part would sell for less, and prices raised to an ending.

Rule of the cliff: at the start of a band a part may sell for less than a cheaper one of the band below (99.99 x 1.55 is
154.98, 100.00 x 1.40 is 140.00). The owner is warned, or lets every band start no lower than the one below ends (common
practice, no source).
"""

from collections.abc import Sequence
from decimal import ROUND_CEILING, Decimal
from itertools import pairwise

from ..basics.currency import minor_units
from ..basics.money import Money, round_half_up
from ..basics.settings import MarkupBand, PriceEnding, Settings
from ..basics.value import Value


class Cliff(Value, frozen=True, kw_only=True):
    """Where a band starts below what the bands under it sell for: prices at its start, and just under it."""

    category: str
    from_cost: Decimal
    price: Decimal
    price_below: Decimal


def bands_for(settings: Settings, category: str) -> tuple[MarkupBand, ...]:
    """The bands of a category, whatever its case; the general ones where it has none of its own."""
    wanted = category.strip().casefold()
    own = [one.bands for one in settings.category_bands if one.category.strip().casefold() == wanted]
    return own[0] if wanted and own else settings.markup_bands


def band_for(bands: Sequence[MarkupBand], unit_cost: Decimal) -> MarkupBand:
    """The last band whose `from_cost` the cost reaches; the first band also holds below its own start."""
    reached = [band for band in bands if band.from_cost <= unit_cost]
    return reached[-1] if reached else bands[0]


def price_below(bands: Sequence[MarkupBand], band: MarkupBand, currency: str) -> Money | None:
    """What a part just under the band's start sells for at most, in any band below; None for the first band."""
    tops = [upper.from_cost * lower.multiplier for lower, upper in pairwise(bands) if upper.from_cost <= band.from_cost]
    return Money(amount=max(tops), currency=currency).rounded() if tops else None


def cliffs(settings: Settings) -> tuple[Cliff, ...]:
    """Every start of a band at which a dearer part would sell for less; none where the shop floors its bands."""
    if settings.floor_bands:
        return ()
    found = []
    of_categories = ((one.category, one.bands) for one in settings.category_bands)
    for category, bands in (("", settings.markup_bands), *of_categories):
        for band in bands:
            below = price_below(bands, band, settings.currency)
            start = Money(amount=band.from_cost * band.multiplier, currency=settings.currency).rounded()
            if below is not None and start < below:
                found.append(
                    Cliff(category=category, from_cost=band.from_cost, price=start.amount, price_below=below.amount)
                )
    return tuple(found)


def raised_to_ending(price: Money, ending: PriceEnding | None) -> Money:
    """The next amount from the price on that ends as the shop wants: '0.95' repeats every 1, '9.95' every 10.

    Never lower; unchanged where there is no rule or the price is below its start.
    """
    if ending is None or price.amount < ending.from_price:
        return price
    places = minor_units(price.currency)
    raised = min(_next(price.amount, one) for one in ending.endings)
    return Money(amount=round_half_up(raised, places), currency=price.currency)


def _next(price: Decimal, ending: Decimal) -> Decimal:
    every = Decimal(1) if ending < 1 else Decimal(10) ** len(str(int(ending)))
    steps = ((price - ending) / every).to_integral_value(rounding=ROUND_CEILING)
    return ending + max(steps, Decimal(0)) * every
