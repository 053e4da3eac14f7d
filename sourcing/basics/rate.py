"""Exchange rates with their date and source; currencies never mix without one."""

from datetime import date
from decimal import Decimal

from .money import Money
from .problem import refused
from .value import Value


class Rate(Value, frozen=True, kw_only=True):
    """One unit of `currency` is worth `rate` units of `into`, on `dated`, says `source`."""

    currency: str
    into: str
    rate: Decimal
    dated: date
    source: str = ""

    def convert(self, amount: Money) -> Money:
        """The amount in the other currency, rounded once to its minor unit."""
        if amount.currency != self.currency:
            raise refused("currencies-mixed", one=amount.currency, other=self.currency)
        return Money(amount=amount.amount * self.rate, currency=self.into).rounded()

    def words(self) -> str:
        """How the conversion is shown: '1 EUR = 1.09 USD on 2026-01-09'."""
        return f"1 {self.currency} = {self.rate} {self.into} on {self.dated}"


class Rates(Value, frozen=True, kw_only=True):
    """The shop's own rate table."""

    into: str
    rates: tuple[Rate, ...] = ()

    def on(self, currency: str, day: date) -> Rate:
        """The newest rate dated on or before the day. Refuses where there is none. The shop's own currency is 1."""
        if currency == self.into:
            return Rate(currency=currency, into=currency, rate=Decimal(1), dated=day, source="same currency")
        known = [rate for rate in self.rates if rate.currency == currency and rate.dated <= day]
        if not known:
            raise refused("no-rate", currency=currency, into=self.into, day=day)
        return max(known, key=lambda rate: rate.dated)
