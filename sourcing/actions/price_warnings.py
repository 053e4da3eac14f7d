"""A price far from what the part's other offers ask: the number may be right and the thing another, or a pack."""

from collections.abc import Sequence
from decimal import Decimal
from statistics import median

from ..basics.choice import Priced
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.value import changed
from .shop_prices import ShopPrices

FAR = 4
"""So many times dearer or cheaper than the middle of the others is far (common practice, no source)."""


def with_price_warnings(priced: Sequence[Priced], automatic: Sequence[Offer], shop: ShopPrices) -> tuple[Priced, ...]:
    """The same offers, those with a price far from the others' warned of.

    `automatic`: every offer of the part that matches by itself, ranked or not. A price for a piece is the net price
    from the smallest quantity on, in the shop's currency; offers without one are left aside.
    """
    prices = [(offer, price) for offer in automatic if (price := shop.of(offer)) is not None]

    def warned(one: Priced) -> Priced:
        own = shop.of(one.offer)
        others = [price for offer, price in prices if offer != one.offer]
        words = _far(own, others, shop.currency) if own is not None and others else ""
        return changed(one, warnings=(*one.warnings, words)) if words else one

    return tuple(map(warned, priced))


def _far(own: Decimal, others: Sequence[Decimal], currency: str) -> str:
    middle = median(others)
    if middle / FAR <= own <= middle * FAR:
        return ""
    side = "less than a quarter of" if own < middle else "more than four times"
    ours, theirs = (Money(amount=amount, currency=currency).rounded() for amount in (own, middle))
    what = f"a piece costs {ours}, {side} what the other offers ask, {theirs} in the middle"
    return f"{what}: look whether it is the same thing"
