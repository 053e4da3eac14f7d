"""Pi and the arcsine in exact-decimal arithmetic, so that a length never passes through a binary number."""

from decimal import Decimal, getcontext

PI = Decimal("3.14159265358979323846264338327950288419716939937510")
"""Fifty digits."""


def arcsine(sine: Decimal) -> Decimal:
    """The angle in radians whose sine this is, 0 to 1, to the precision of the current decimal context but a few
    digits."""
    # Near 1 the series crawls: there the half angle is taken, asin(x) = pi/2 - 2 asin(sqrt((1 - x)/2)).
    if sine > Decimal("0.5"):
        return PI / 2 - 2 * arcsine(((1 - sine) / 2).sqrt())
    term = total = sine
    odd, least = 1, Decimal(10) ** -(getcontext().prec + 2)
    while term > least:
        # asin(x) = x + (1/2) x^3/3 + (1*3)/(2*4) x^5/5 + ...
        term = term * sine * sine * odd * odd / ((odd + 1) * (odd + 2))
        total += term
        odd += 2
    return total
