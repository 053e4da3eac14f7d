"""A price far from what the part's other offers ask: the number may be right and the thing another, or a pack."""

from bisect import bisect_left
from collections.abc import Sequence
from decimal import Decimal

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
    counted = {offer for offer in automatic if shop.of(offer) is not None}
    prices = sorted(price for offer in automatic if (price := shop.of(offer)) is not None)

    def warned(one: Priced) -> Priced:
        own = shop.of(one.offer)
        middle = _middle_of_others(prices, own if one.offer in counted else None)
        words = _far(own, middle, shop.currency) if own is not None and middle is not None else ""
        return changed(one, warnings=(*one.warnings, words)) if words else one

    return tuple(map(warned, priced))


def _middle_of_others(prices: Sequence[Decimal], own: Decimal | None) -> Decimal | None:
    """The median of the rising prices without one of the own; None where there is no other."""
    without = bisect_left(prices, own) if own is not None else len(prices)
    count = len(prices) - (own is not None)
    if not count:
        return None
    low, high = (prices[at + (at >= without)] for at in ((count - 1) // 2, count // 2))
    return (low + high) / 2


def _far(own: Decimal, middle: Decimal, currency: str) -> str:
    if middle / FAR <= own <= middle * FAR:
        return ""
    side = "less than a quarter of" if own < middle else "more than four times"
    ours, theirs = (Money(amount=amount, currency=currency).rounded() for amount in (own, middle))
    what = f"a piece costs {ours}, {side} what the other offers ask, {theirs} in the middle"
    return f"{what}: look whether it is the same thing"
