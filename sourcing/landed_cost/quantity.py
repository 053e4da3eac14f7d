"""How many pieces must be ordered for a need, and the price break that then holds.

Goods come in whole packs and whole order multiples, at least the minimum (common practice, no source).
"""

from decimal import Decimal
from math import lcm

from ..basics.money import Money
from ..basics.offer import Offer, PriceBreak


def pieces_to_order(offer: Offer, needed: int) -> int:
    """The fewest pieces that cover the need: at least the minimum, in whole packs and order multiples."""
    step = lcm(offer.pack, offer.order_multiple)
    wanted = max(needed, offer.minimum, offer.breaks[0].from_quantity if offer.breaks else 1)
    return -(-wanted // step) * step


def break_at(offer: Offer, pieces: int) -> PriceBreak:
    """The break that holds for all pieces of an order of that many: the last one they reach.

    Raises ValueError for an offer without a net price: such an offer has no cost and must be set aside before.
    """
    reached = [step for step in offer.breaks if step.from_quantity <= pieces]
    if not reached:
        raise ValueError(f"{offer.supplier_number} has no net price for {pieces}")
    return reached[-1]


def goods_at(offer: Offer, pieces: int) -> Money:
    """Price times pieces over the price basis, rounded half up once (EN 16931: at the line total)."""
    amount = break_at(offer, pieces).price * pieces / Decimal(offer.price_basis)
    return Money(amount=amount, currency=offer.currency).rounded()


def sensible_quantities(offer: Offer, needed: int) -> tuple[int, ...]:
    """The quantities worth considering: the fewest pieces, and each higher break that makes the goods cheaper."""
    fewest = pieces_to_order(offer, needed)
    best, result = goods_at(offer, fewest), [fewest]
    for step in offer.breaks:
        pieces = pieces_to_order(offer, max(needed, step.from_quantity))
        if pieces > result[-1] and goods_at(offer, pieces) < best:
            best = goods_at(offer, pieces)
            result.append(pieces)
    return tuple(result)


def unit_cost(goods_cost: Money, pieces: int) -> Money:
    """Cost of one piece, not rounded: a price per hundred may carry parts of a cent."""
    return Money(amount=goods_cost.amount / Decimal(pieces), currency=goods_cost.currency)
