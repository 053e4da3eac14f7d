"""Money: an exact amount in one currency, rounded half up once per line.

Rule: amounts are Decimal, never binary float. A line total is rounded half up, away from zero, to the
currency's minor unit (ISO 4217); unit prices may carry more decimals (EN 16931 caps line amounts at two
decimals, rule BR-DEC-23, and leaves the unit price open).
"""

from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Decimal

from .currency import minor_units
from .problem import refused
from .value import Value

MOST_DIGITS = 12
"""Digits of an amount before its point, and as many after it: more is a slip of the hand, and sums of such amounts
would lose digits."""


class Money(Value, frozen=True, kw_only=True):
    """An amount in one currency. Not rounded by itself: call `rounded()` once, at the line total."""

    amount: Decimal
    currency: str

    def __add__(self, other: "Money") -> "Money":
        self._same(other)
        return Money(amount=self.amount + other.amount, currency=self.currency)

    def __sub__(self, other: "Money") -> "Money":
        self._same(other)
        return Money(amount=self.amount - other.amount, currency=self.currency)

    def __neg__(self) -> "Money":
        return Money(amount=-self.amount, currency=self.currency)

    def __mul__(self, factor: int | Decimal) -> "Money":
        return Money(amount=self.amount * factor, currency=self.currency)

    def __lt__(self, other: "Money") -> bool:
        self._same(other)
        return self.amount < other.amount

    def __le__(self, other: "Money") -> bool:
        self._same(other)
        return self.amount <= other.amount

    def __str__(self) -> str:
        return f"{self.rounded().amount} {self.currency}"

    def rounded(self) -> "Money":
        """Half up (away from zero at the tie) to the currency's minor unit."""
        return Money(amount=round_half_up(self.amount, minor_units(self.currency)), currency=self.currency)

    def minor(self) -> int:
        """The amount in whole minor units (cents). Raises ValueError where a fraction of one would be lost."""
        scaled = self.amount.scaleb(minor_units(self.currency))
        if scaled != scaled.to_integral_value():
            raise ValueError(f"{self.amount} {self.currency} is not a whole number of minor units")
        return int(scaled)

    def _same(self, other: "Money") -> None:
        if self.currency != other.currency:
            raise refused("currencies-mixed", one=self.currency, other=other.currency)


def is_amount(amount: Decimal) -> bool:
    """Whether it can be an amount a person typed: finite, with at most twelve digits on either side of the point."""
    exponent = amount.as_tuple().exponent
    return isinstance(exponent, int) and exponent >= -MOST_DIGITS and amount.adjusted() < MOST_DIGITS


def zero(currency: str) -> Money:
    """Nothing, in a currency. Only where nothing is truly owed: an unknown amount is None, not this."""
    return Money(amount=Decimal(0), currency=currency).rounded()


def from_minor(count: int, currency: str) -> Money:
    """Money from whole minor units (cents)."""
    return Money(amount=Decimal(count).scaleb(-minor_units(currency)), currency=currency)


def total(amounts: Iterable[Money], currency: str) -> Money:
    """The sum; nothing at all sums to zero of `currency`."""
    result = zero(currency)
    for amount in amounts:
        result = result + amount
    return result


def round_half_up(amount: Decimal, places: int) -> Decimal:
    """Round half up, ties away from zero (0.125 to 0.13, -0.125 to -0.13)."""
    return amount.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)


def percent_of(amount: Money, percent: Decimal) -> Money:
    """That many per cent of the amount, rounded once."""
    return Money(amount=amount.amount * percent / 100, currency=amount.currency).rounded()


def share_out(amount: Money, weights: Sequence[Decimal | int]) -> list[Money]:
    """Split a rounded amount in proportion to the weights so that the shares sum to it to the cent.

    Largest remainder: everyone gets the share rounded down, the cents left over go to the largest
    remainders, ties to the earlier one. Weights are not negative; all zero means equal shares.
    """
    if not weights:
        return []
    even = not any(weights)
    scale = [Decimal(1) if even else Decimal(weight) for weight in weights]
    cents, whole = abs(amount.minor()), sum(scale)
    exact = [divmod(cents * weight, whole) for weight in scale]  # a quotient cut at its last digit would move ties
    parts = [int(share) for share, _ in exact]
    by_remainder = sorted(range(len(parts)), key=lambda at: (-exact[at][1], at))
    for at in by_remainder[: cents - sum(parts)]:
        parts[at] += 1
    sign = -1 if amount.amount < 0 else 1
    return [from_minor(sign * part, amount.currency) for part in parts]
