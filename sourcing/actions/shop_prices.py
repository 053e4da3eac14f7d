"""What one piece costs by a sheet, in the shop's own currency: for ordering and comparing, not for a paper."""

from datetime import date
from decimal import Decimal

from ..basics.offer import Offer
from ..basics.problem import Refused
from ..basics.rate import Rates


class ShopPrices:
    """Prices per piece in the shop's currency by its own rates of a day, not rounded."""

    def __init__(self, rates: Rates, day: date) -> None:
        """Take the shop's rate table; the newest rate on or before the day counts."""
        self.currency = rates.into
        self._rates = rates
        self._day = day
        self._known: dict[str, Decimal | None] = {}

    def each(self, price: Decimal | None, basis: int, currency: str, sold_by: str | None) -> Decimal | None:
        """The price of one piece. None without a price, without a rate, and where goods are sold by length."""
        rate = self._rate(currency)
        if price is None or rate is None or (sold_by or "piece") != "piece":
            return None
        return price * rate / basis

    def of(self, offer: Offer) -> Decimal | None:
        """The net price of one piece of the offer from the smallest quantity on."""
        price = offer.breaks[0].price if offer.breaks else None
        return self.each(price, offer.price_basis, offer.currency, offer.sold_by)

    def _rate(self, currency: str) -> Decimal | None:
        if currency not in self._known:
            try:
                self._known[currency] = self._rates.on(currency, self._day).rate
            except Refused:
                self._known[currency] = None  # no rate is no reason not to judge the rest
        return self._known[currency]
