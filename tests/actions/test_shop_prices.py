"""The price of one piece in the shop's currency, or none: never a guess and never zero."""

from datetime import date
from decimal import Decimal

from sourcing.actions.shop_prices import ShopPrices
from sourcing.basics.rate import Rate, Rates
from tests.builders import offer

EUR = Rate(currency="EUR", into="USD", rate=Decimal("1.10"), dated=date(2026, 1, 9), source="bank")
PRICES = ShopPrices(Rates(into="USD", rates=(EUR,)), date(2026, 1, 9))


def test_a_price_per_hundred_is_a_hundredth_each() -> None:
    assert PRICES.of(offer(price="12.50", price_basis=100)) == Decimal("0.125")


def test_the_shops_own_rate_of_the_day_is_used() -> None:
    """A rate dated later than the day is none."""
    assert PRICES.of(offer(price="10.00", currency="EUR")) == Decimal("11.0000")
    before = ShopPrices(Rates(into="USD", rates=(EUR,)), date(2026, 1, 8))
    assert before.of(offer(price="10.00", currency="EUR")) is None


def test_what_has_no_price_each_has_none() -> None:
    """No net price, no rate, sold by the foot."""
    assert PRICES.of(offer(price=None)) is None
    assert PRICES.of(offer(price="10.00", currency="SEK")) is None
    assert PRICES.of(offer(price="10.00", sold_by="foot")) is None
