"""The selling price from the cost: markup band, list-price cap, with the rule in words.

Rule: unit price = unit net cost x the band's multiplier, rounded half up to the minor unit, then times quantity; not
above the list price where the shop says so. Markup is on cost, margin is on price (common practice, no source).
"""

from decimal import Decimal

from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.settings import MarkupBand, Settings
from ..basics.value import Value


class UnitPrice(Value, frozen=True, kw_only=True):
    """The price of one piece before tax, how it came, and what the owner should be warned of."""

    each: Money
    rule: str
    warnings: tuple[str, ...] = ()


def unit_price(unit_cost: Money, list_price: Money | None, settings: Settings, category: str = "") -> UnitPrice:
    """The price of one piece and how it came. Both inputs per piece in the shop's currency, not rounded before."""
    band = band_for(unit_cost.amount, settings)
    marked_up = (unit_cost * band.multiplier).rounded()
    rule = f"{_figure(unit_cost.amount)} x {band.multiplier}"
    if settings.cap_at_list_price and list_price is not None and list_price.rounded() < marked_up:
        rule = f"{rule} = {marked_up.amount}, capped at list price {list_price.rounded().amount}"
        return UnitPrice(each=list_price.rounded(), rule=rule)
    return UnitPrice(each=marked_up, rule=rule)


def offer_price(offer: Offer, goods_cost: Money, pieces: int, settings: Settings, category: str = "") -> UnitPrice:
    """The price of one piece of an offer: `goods_cost` is what `pieces` cost, in the shop's currency, no charges.

    A list price caps only where it stands in the shop's currency.
    """
    listed = offer.list_price if offer.currency == settings.currency else None
    list_price = None if listed is None else Money(amount=listed / offer.price_basis, currency=offer.currency)
    each = Money(amount=goods_cost.amount / pieces, currency=goods_cost.currency)
    return unit_price(each, list_price, settings, category)


def band_for(unit_cost: Decimal, settings: Settings) -> MarkupBand:
    """The last band whose `from_cost` the cost reaches; the first band also holds below its own start."""
    reached = [band for band in settings.markup_bands if band.from_cost <= unit_cost]
    return reached[-1] if reached else settings.markup_bands[0]


def _figure(amount: Decimal) -> str:
    """At least two decimals, more only where the cost has them."""
    short = amount.normalize()
    return f"{amount:.2f}" if -short.as_tuple().exponent <= 2 else f"{short:f}"  # type: ignore[operator]
