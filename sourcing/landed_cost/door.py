"""What stands between a supplier and the shop's door: his terms, the rate of his currency, the shop's own rates."""

from decimal import Decimal

from ..basics.money import Money
from ..basics.rate import Rate
from ..basics.terms import Calendar, Terms
from ..basics.value import Value


class Door(Value, frozen=True, kw_only=True):
    """Everything landed cost and date need beside the offer. `mileage_rate` per mile, `driver_cost` per hour."""

    terms: Terms
    rate: Rate
    mileage_rate: Decimal = Decimal(0)
    driver_cost: Decimal = Decimal(0)
    shop_calendar: Calendar = Calendar()

    @property
    def currency(self) -> str:
        """The shop's currency."""
        return self.rate.into

    def here(self, amount: Decimal) -> Money:
        """An amount of the supplier's currency in the shop's, rounded once."""
        return self.rate.convert(Money(amount=amount, currency=self.terms.currency).rounded())

    def conversion(self) -> str:
        """Rate and date for a line's rule; blank where the currencies are the same."""
        return "" if self.terms.currency == self.currency else f" ({self.rate.words()})"
