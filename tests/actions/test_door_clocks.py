"""The door an action opens knows both clocks, or says that the shop's is missing."""

from datetime import date, datetime
from decimal import Decimal

import pytest

from sourcing.actions.desk import ShopNow
from sourcing.basics.problem import Refused
from sourcing.basics.rate import Rates
from sourcing.basics.settings import MarkupBand, Settings, Shop
from sourcing.landed_cost.arrival import arrival
from tests.builders import item, offer, terms

MONDAY = datetime(2026, 3, 2, 6, 30)


def shop(here: str, there: str) -> ShopNow:
    """A shop with one supplier, each with a time zone or none."""
    settings = Settings(
        shop=Shop(name="A shop"),
        currency="USD",
        locale="en_US",
        markup_bands=(MarkupBand(from_cost=Decimal(0), multiplier=Decimal(2)),),
        labour_rate=Decimal(90),
        technician_cost=Decimal(30),
        time_zone=here,
    )
    return ShopNow(settings=settings, terms={"larkmoor": terms(time_zone=there)}, rates=Rates(into="USD", rates=()))


def test_the_cut_off_is_on_the_suppliers_clock() -> None:
    """Half past six in New York is half past twelve in Berlin on 2 March 2026: a day later than on one clock."""
    days = []
    for here, there in (("America/New_York", "Europe/Berlin"), ("America/New_York", ""), ("", "")):
        door = shop(here, there).door("larkmoor", MONDAY)
        days.append(arrival(item(offer()), door, MONDAY).latest)
    assert days == [date(2026, 3, 5), date(2026, 3, 4), date(2026, 3, 4)]


def test_a_shop_without_a_clock_is_told() -> None:
    """Only where a supplier has one."""
    with pytest.raises(
        Refused, match="'larkmoor' is on a clock in Europe/Berlin, and the shop's own time zone is not set"
    ):
        shop("", "Europe/Berlin").door("larkmoor", MONDAY)
