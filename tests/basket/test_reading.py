"""A basket is read to the digit, and every field of the values it is made of can be written in it."""

import json
from datetime import date, datetime, time
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from sourcing.actions.basket_shop import settings_of
from sourcing.actions.exact_json import exact_json
from sourcing.actions.fitting import fitted
from sourcing.basics.basket import Basket, BasketShop
from sourcing.basics.offer import Offer
from sourcing.basics.value import changed, to_json
from tests.basket.baskets import BASKET, read, spoilt
from tests.basket.filled import filled

PRICE = "offers.0.breaks.0.price"


def test_every_field_comes_back_as_it_was_written() -> None:
    """All fields of a basket, filled with what is not their default, survive JSON."""
    whole = filled(Basket)
    assert fitted(exact_json(to_json(whole), "basket.json"), Basket, "basket.json") == whole


def test_an_offer_of_a_basket_is_an_offer_and_three_fields() -> None:
    """Whatever an offer gains can be said in a basket too."""
    offer = read(json.dumps(BASKET).encode()).offers[0]
    assert set(offer.__struct_fields__) - set(Offer.__struct_fields__) == {"our_part", "standing", "priced_on"}
    assert type(offer.offer()) is Offer


def test_what_another_field_says_may_be_left_out() -> None:
    """Currency, source, name, start, the rate's own side and the words of a lead time."""
    basket = read(json.dumps(BASKET).encode())
    here, there = basket.offers
    assert (here.currency, there.currency) == ("USD", "EUR")
    assert (there.source.file, there.source.worksheet, there.source.row) == ("basket.json", "offers", 2)
    assert (here.source.sheet_date, there.source.sheet_date) == (date(2026, 1, 13), date(2026, 1, 2))
    assert there.lead_time is not None and there.lead_time.text == "0 to 1 working days"
    assert basket.suppliers[1].name == "kesselried"
    assert basket.rates[0].into == "USD"
    assert basket.suppliers[0].cut_off == time(13, 0)


def test_the_moment_is_the_callers_then_the_files_then_now() -> None:
    """A basket planned again last month's way, as it says, or today."""
    other = datetime(2026, 1, 14, 9, 0)
    assert read(json.dumps(BASKET).encode(), other).at == other
    assert read(json.dumps(BASKET).encode()).at == datetime(2026, 1, 13, 10, 15)
    assert read(spoilt("at", ...)).at == datetime(2026, 1, 13, 10, 15)


def test_an_offer_without_a_day_is_priced_on_the_day_of_planning() -> None:
    """Also where that day is the caller's."""
    offer = read(json.dumps(BASKET).encode(), datetime(2026, 2, 3, 9, 0)).offers[0]
    assert offer.source.sheet_date == date(2026, 2, 3)


def test_numbers_are_read_to_the_digit() -> None:
    """RFC 8259 leaves the precision of numbers to the reader; none of these is exact as a binary fraction."""
    for written in ("0.1", "1e-7", "12.345", "999999999999.000000000001", "5", "1E2"):
        for text in (written, f'"{written}"'):
            data = spoilt(PRICE, 123456).replace(b"123456", text.encode())
            assert read(data).offers[0].breaks[0].price == Decimal(written), text


@given(st.decimals(min_value=Decimal("0.000001"), max_value=Decimal(10**9), places=6))
def test_any_price_is_read_to_the_digit(price: Decimal) -> None:
    """As a number of JSON, without quotes."""
    data = spoilt(PRICE, 123456).replace(b"123456", f"{price:f}".encode())
    assert read(data).offers[0].breaks[0].price == price


def test_a_mark_at_the_start_of_the_file_is_no_fault() -> None:
    """Some editors write the byte order mark of UTF-8."""
    assert read(b"\xef\xbb\xbf" + json.dumps(BASKET).encode()).currency == "USD"


def test_the_shops_figures_reach_landed_cost() -> None:
    """Every field of the shop stands in the settings the doors are made of."""
    shop = filled(BasketShop)
    settings = settings_of(changed(read(json.dumps(BASKET).encode()), shop=shop))
    for name in shop.__struct_fields__:
        assert getattr(settings.shop if name == "name" else settings, name) == getattr(shop, name), name
