"""What stands between a supplier and the shop's door: his terms, the rate of his currency, the shop's own rates."""

from decimal import Decimal

from ..basics.later_word import LaterWord
from ..basics.money import Money
from ..basics.problem import refused
from ..basics.rate import Rate
from ..basics.terms import Calendar, Terms
from ..basics.value import Value


class Door(Value, frozen=True, kw_only=True):
    """Everything landed cost and date need beside the offer.

    `mileage_rate` is per mile (0: not stated), `rate_per_km` per km (None: not stated; 0 is stated), `driver_cost` per
    hour (0: not stated), all in the shop's currency. `other_rates` are those of currencies the terms name beside the
    supplier's (entry fees). `shop_time_zone` is an IANA name, blank where both clocks agree; a supplier with a zone
    needs it. `later_words`: what he said of goods on order, which counts before an older sheet.
    """

    terms: Terms
    rate: Rate
    mileage_rate: Decimal = Decimal(0)
    driver_cost: Decimal = Decimal(0)
    shop_calendar: Calendar = Calendar()
    rate_per_km: Decimal | None = None
    other_rates: tuple[Rate, ...] = ()
    shop_time_zone: str = ""
    later_words: tuple[LaterWord, ...] = ()

    @property
    def currency(self) -> str:
        """The shop's currency."""
        return self.rate.into

    def here(self, amount: Decimal) -> Money:
        """An amount of the supplier's currency in the shop's: each rounded once to its minor unit."""
        return self.rate.convert(Money(amount=amount, currency=self.terms.currency).rounded())

    def here_at_once(self, amount: Decimal) -> Money:
        """A per cent or a rate per weight, worked out in the supplier's currency, converted and only then rounded."""
        return self.rate.convert(Money(amount=amount, currency=self.terms.currency))

    def rate_of(self, currency: str) -> Rate:
        """The rate of a currency the terms name; blank is the supplier's. Refuses where the door has none."""
        if currency in ("", self.terms.currency):
            return self.rate
        if currency == self.currency:
            return Rate(currency=currency, into=currency, rate=Decimal(1), dated=self.rate.dated)
        for one in self.other_rates:
            if (one.currency, one.into) == (currency, self.currency):
                return one
        raise refused("no-rate", currency=currency, into=self.currency, day=self.rate.dated)

    def conversion(self) -> str:
        """Rate and date for a line's rule; blank where the currencies are the same."""
        return "" if self.terms.currency == self.currency else f" ({self.rate.words()})"
