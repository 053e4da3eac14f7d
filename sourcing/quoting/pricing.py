"""The selling price from the cost: markup band, floor, ending, list-price cap, with the rule in words.

Rule: unit price = unit net cost x the band's multiplier, rounded half up to the minor unit, then times quantity. In
this order, each where the shop wants it: not below the band under it, raised to a price ending, not above list price.
Markup is on cost, margin is on price (common practice, no source).
"""

from decimal import Decimal

from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.settings import Settings
from ..basics.value import Value, changed
from .bands import band_for, bands_for, price_below, raised_to_ending


class UnitPrice(Value, frozen=True, kw_only=True):
    """The price of one piece before tax, how it came, and what the owner should be warned of.

    `before_cap` is what it would be without the list price; the same as `each` where that did not cap it.
    """

    each: Money
    rule: str
    before_cap: Money
    warnings: tuple[str, ...] = ()


def unit_price(unit_cost: Money, list_price: Money | None, settings: Settings, category: str = "") -> UnitPrice:
    """The price of one piece and how it came. Both inputs per piece in the shop's currency, not rounded before.

    `category` picks the markup bands; one without bands of its own takes the general ones.
    """
    bands = bands_for(settings, category)
    band = band_for(bands, unit_cost.amount)
    price = (unit_cost * band.multiplier).rounded()
    steps = [f"{_figure(unit_cost.amount)} x {band.multiplier}"]
    below = price_below(bands, band, unit_cost.currency)
    warnings: tuple[str, ...] = ()
    if below is not None and price < below:
        if settings.floor_bands:
            steps.append(f"{price.amount}, raised to {below.amount} where the band below ends")
            price = below
        else:
            dearer = f"a part at just under {_figure(band.from_cost)} sells for up to {below.amount}"
            warnings = (f"{steps[0]} = {price.amount}, but {dearer}: the band starts too low",)
    ended = raised_to_ending(price, settings.price_ending)
    if ended != price:
        steps.append(f"{price.amount}, raised to {ended.amount} by the price ending")
    each = ended
    if settings.cap_at_list_price and list_price is not None and list_price.rounded() < ended:
        each = list_price.rounded()
        steps.append(f"{ended.amount}, capped at list price {each.amount}")
    if not each.amount and unit_cost.amount:
        warnings += (f"{steps[0]} comes to nothing: the part would be given away",)
    return UnitPrice(each=each, rule=" = ".join(steps), before_cap=ended, warnings=warnings)


def offer_price(offer: Offer, goods_cost: Money, pieces: int, settings: Settings, category: str = "") -> UnitPrice:
    """The price of one piece of an offer: `goods_cost` is what `pieces` cost, in the shop's currency, no charges.

    A list price caps only where it stands in the shop's currency; of one in another the rule says that it did not.
    """
    is_home = offer.currency == settings.currency
    listed = offer.list_price if is_home else None
    list_price = None if listed is None else Money(amount=listed / offer.price_basis, currency=offer.currency)
    each = Money(amount=goods_cost.amount / pieces, currency=goods_cost.currency)
    priced = unit_price(each, list_price, settings, category)
    if is_home or offer.list_price is None or not settings.cap_at_list_price:
        return priced
    there = Money(amount=offer.list_price / offer.price_basis, currency=offer.currency).rounded()
    return changed(priced, rule=f"{priced.rule}; not held to the list price of {there}: it is in another currency")


def _figure(amount: Decimal) -> str:
    """At least two decimals, more only where the cost has them."""
    short = amount.normalize()
    return f"{amount:.2f}" if -short.as_tuple().exponent <= 2 else f"{short:f}"  # type: ignore[operator]
