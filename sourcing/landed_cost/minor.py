"""Whole minor units (cents): how amounts are counted where an order is worked out, so that sums are exact.

One rule of rounding: half up, away from zero at the tie, once per named amount.
"""

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from ..basics.currency import minor_units


def whole(amount: Decimal) -> int:
    """Half up to a whole number, away from zero at the tie. The amount is already in minor units."""
    return int(amount.to_integral_value(ROUND_HALF_UP))


def counted(amount: Decimal, currency: str) -> int:
    """An amount of money in whole minor units of its currency, rounded half up."""
    return whole(amount.scaleb(minor_units(currency)))


def reached_from(limit: Decimal, currency: str) -> int:
    """The least whole number of minor units that is not below the limit."""
    return int(limit.scaleb(minor_units(currency)).to_integral_value(ROUND_CEILING))
