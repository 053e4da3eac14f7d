"""How many pieces must be ordered for a need, and what they cost by the sheet's price breaks.

Goods come in whole packs and whole order multiples, at least the minimum (common practice, no source). The terms say
whether a break's price holds for all pieces of the line or only for those from the break on.
"""

from collections.abc import Iterator
from decimal import Decimal
from math import lcm
from typing import Literal

from ..basics.currency import minor_units
from ..basics.money import Money, from_minor, round_half_up
from ..basics.offer import Offer, PriceBreak
from .minor import whole

BreakRule = Literal["all pieces", "pieces above"]
"""The word of `Terms.breaks`."""


def pieces_to_order(offer: Offer, needed: int) -> int:
    """The fewest pieces that cover the need: at least the minimum, in whole packs and order multiples."""
    step = offer.pack if offer.order_multiple == 1 else lcm(offer.pack, offer.order_multiple)
    wanted = max(needed, offer.minimum, offer.breaks[0].from_quantity if offer.breaks else 1)
    return -(-wanted // step) * step


def break_at(offer: Offer, pieces: int) -> PriceBreak:
    """The last break that so many pieces reach: its price is the last piece's.

    Raises ValueError for an offer without a net price: such an offer has no cost and must be set aside before.
    """
    for step in reversed(offer.breaks):
        if step.from_quantity <= pieces:
            return step
    raise ValueError(f"{offer.supplier_number} has no net price for {pieces}")


def parts_of(offer: Offer, pieces: int, breaks: BreakRule) -> tuple[tuple[int, Decimal], ...]:
    """The pieces by the price they cost (per the price basis): one part, or several where breaks are for those above.

    The first break's price holds from the first piece on, even where the sheet sells no fewer than a larger number.
    """
    if breaks == "all pieces":
        return ((pieces, break_at(offer, pieces).price),)
    break_at(offer, pieces)
    return tuple(_above(offer, pieces))


def goods_minor(offer: Offer, pieces: int, breaks: BreakRule) -> int:
    """What the pieces cost before discount, in minor units of the sheet's currency, rounded half up once per line."""
    if breaks == "all pieces":
        amount = break_at(offer, pieces).price * pieces
    else:
        amount = sum((price * count for count, price in parts_of(offer, pieces, breaks)), Decimal(0))
    if offer.price_basis != 1:
        amount = amount / offer.price_basis
    return whole(amount.scaleb(minor_units(offer.currency)))


def goods_at(offer: Offer, pieces: int, breaks: BreakRule) -> Money:
    """Price times pieces over the price basis, rounded half up once (EN 16931: at the line total)."""
    return from_minor(goods_minor(offer, pieces, breaks), offer.currency)


def price_each(offer: Offer, pieces: int, breaks: BreakRule) -> Decimal:
    """The price per price basis that, times the pieces, gives the goods of the line.

    The break's as printed; where several prices mix, their average with four decimals more than the currency has.
    """
    parts = parts_of(offer, pieces, breaks)
    if len(parts) == 1:
        return parts[0][1]
    average = sum((price * count for count, price in parts), Decimal(0)) / pieces
    return round_half_up(average, minor_units(offer.currency) + 4)


def sensible_quantities(offer: Offer, needed: int, breaks: BreakRule) -> tuple[int, ...]:
    """The quantities worth considering: the fewest pieces, and each higher break that makes the goods cheaper."""
    fewest = pieces_to_order(offer, needed)
    best, result = goods_minor(offer, fewest, breaks), [fewest]
    for step in offer.breaks:
        pieces = pieces_to_order(offer, max(needed, step.from_quantity))
        if pieces > result[-1] and goods_minor(offer, pieces, breaks) < best:
            best = goods_minor(offer, pieces, breaks)
            result.append(pieces)
    return tuple(result)


def _above(offer: Offer, pieces: int) -> Iterator[tuple[int, Decimal]]:
    starts = [1, *(step.from_quantity for step in offer.breaks[1:]), pieces + 1]
    for step, first, following in zip(offer.breaks, starts[:-1], starts[1:], strict=True):
        count = min(following, pieces + 1) - first
        if count > 0:
            yield count, step.price
