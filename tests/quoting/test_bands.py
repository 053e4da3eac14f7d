"""Markup bands: cliffs told or floored, bands of a category, prices raised to an ending, the list price last."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.money import Money
from sourcing.basics.settings import CategoryBands, MarkupBand, PriceEnding
from sourcing.quoting.bands import cliffs, raised_to_ending
from sourcing.quoting.pricing import unit_price
from tests.builders import usd
from tests.quoting.test_pricing_and_totals import settings

CENTS = st.integers(min_value=1, max_value=40_000)
ENDINGS = PriceEnding(endings=(Decimal("0.50"), Decimal("0.95")))


def bands(*steps: tuple[str, str]) -> tuple[MarkupBand, ...]:
    """Bands by start and multiplier."""
    return tuple(MarkupBand(from_cost=Decimal(at), multiplier=Decimal(by)) for at, by in steps)


def test_the_cliff_of_the_trade_is_told() -> None:
    """99.99 x 1.55 = 154.98 sells above 100.00 x 1.40 = 140.00 (common practice, no source)."""
    cheaper, dearer = (unit_price(usd(cost), None, settings()) for cost in ("99.99", "100.00"))
    assert (cheaper.each, cheaper.warnings) == (usd("154.98"), ())
    assert dearer.each == usd("140.00")
    assert dearer.warnings == (
        "100.00 x 1.40 = 140.00, but a part at just under 100.00 sells for up to 155.00: the band starts too low",
    )


def test_a_cost_deep_enough_in_the_band_is_no_cliff() -> None:
    """155.00 / 1.40 = 110.714...: from 110.72 on a part sells for more than any of the band below."""
    assert unit_price(usd("110.71"), None, settings()).warnings
    assert unit_price(usd("110.72"), None, settings()).warnings == ()


def test_the_setup_is_told_of_every_cliff_once() -> None:
    found = [(one.from_cost, one.price, one.price_below) for one in cliffs(settings())]
    assert found == [
        (Decimal("5.00"), Decimal("10.00"), Decimal("12.50")),
        (Decimal("20.00"), Decimal("34.00"), Decimal("40.00")),
        (Decimal("50.00"), Decimal("77.50"), Decimal("85.00")),
        (Decimal("100.00"), Decimal("140.00"), Decimal("155.00")),
    ]
    assert cliffs(settings(floor_bands=True)) == ()
    even = bands(("0", "1.5"), ("10", "1.5"))
    assert cliffs(settings(markup_bands=even)) == ()


def test_a_floored_band_starts_where_the_one_below_ends_and_says_so() -> None:
    priced = unit_price(usd("100.00"), None, settings(floor_bands=True))
    assert priced.each == usd("155.00") and priced.warnings == ()
    assert priced.rule == "100.00 x 1.40 = 140.00, raised to 155.00 where the band below ends"


def test_the_floor_is_the_dearest_of_all_bands_below() -> None:
    """A band two steps below may end higher than the one just below."""
    steep = bands(("0", "4.00"), ("50", "1.10"), ("60", "1.20"))
    assert unit_price(usd("60.00"), None, settings(markup_bands=steep, floor_bands=True)).each == usd("200.00")


@given(CENTS, CENTS)
def test_with_floored_bands_no_dearer_part_sells_for_less(one: int, other: int) -> None:
    shop = settings(floor_bands=True)
    low, high = (usd(str(Decimal(cost) / 100)) for cost in sorted((one, other)))
    assert unit_price(low, None, shop).each <= unit_price(high, None, shop).each


def test_a_category_has_bands_of_its_own_whatever_its_case() -> None:
    own = (CategoryBands(category="Belts", bands=bands(("0", "1.30"))),)
    shop = settings(category_bands=own)
    assert unit_price(usd("71.25"), None, shop, "belts ").each == usd("92.63")
    assert unit_price(usd("71.25"), None, shop, "bearings").each == usd("110.44")
    assert unit_price(usd("71.25"), None, shop).each == usd("110.44")


@pytest.mark.parametrize(
    ("price", "raised"),
    [("110.44", "110.50"), ("110.50", "110.50"), ("110.51", "110.95"), ("110.96", "111.50"), ("0.01", "0.50")],
)
def test_a_price_is_raised_to_the_next_ending(price: str, raised: str) -> None:
    assert raised_to_ending(usd(price), ENDINGS) == usd(raised)


def test_an_ending_of_more_than_one_repeats_with_its_digits() -> None:
    nines = PriceEnding(endings=(Decimal("9.95"),), from_price=Decimal(20))
    assert raised_to_ending(usd("19.99"), nines) == usd("19.99")
    assert raised_to_ending(usd("20.00"), nines) == usd("29.95")
    assert raised_to_ending(usd("109.96"), nines) == usd("119.95")


def test_an_ending_holds_in_a_currency_without_small_coins() -> None:
    yen = Money(amount=Decimal(1234), currency="JPY")
    assert raised_to_ending(yen, PriceEnding(endings=(Decimal(80),))).amount == Decimal(1280)


@given(CENTS)
def test_an_ending_never_lowers_and_never_skips_one(cents: int) -> None:
    price = usd(str(Decimal(cents) / 100))
    raised = raised_to_ending(price, ENDINGS).amount
    assert price.amount <= raised < price.amount + 1
    assert raised % 1 in (Decimal("0.50"), Decimal("0.95"))
    between = {price.amount + Decimal(step) / 100 for step in range(int((raised - price.amount) * 100))}
    assert not any(one % 1 in (Decimal("0.50"), Decimal("0.95")) for one in between)


def test_the_list_price_comes_last() -> None:
    """Not raised above the list price, nor the list price raised to an ending."""
    priced = unit_price(usd("71.25"), usd("110.47"), settings(price_ending=ENDINGS))
    assert priced.each == usd("110.47") and priced.before_cap == usd("110.50")
    assert priced.rule == (
        "71.25 x 1.55 = 110.44, raised to 110.50 by the price ending = 110.50, capped at list price 110.47"
    )


def test_a_price_that_rounds_to_nothing_is_told() -> None:
    """A screw at 0.0015 each: 2.50 times that is under half a cent."""
    assert unit_price(usd("0.0015"), None, settings()).warnings == (
        "0.0015 x 2.50 comes to nothing: the part would be given away",
    )
    assert unit_price(usd("0.00"), None, settings()).warnings == ()
