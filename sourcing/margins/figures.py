"""Margin and markup of a price over a cost. Margin is on price, markup is on cost; both are always shown together."""

from decimal import ROUND_HALF_UP, Decimal

from ..basics.margin import Margin
from ..basics.money import Money

HUNDREDTH = Decimal("0.01")


def margin(price: Money, cost: Money) -> Margin:
    """Price before tax against cost. Per cent with two decimals, half up; None where the base is zero."""
    earned = price - cost
    return Margin(
        price=price,
        cost=cost,
        earned=earned,
        margin_percent=_percent(earned, price),
        markup_percent=_percent(earned, cost),
    )


def _percent(part: Money, whole: Money) -> Decimal | None:
    return (part.amount * 100 / whole.amount).quantize(HUNDREDTH, ROUND_HALF_UP) if whole.amount else None
