"""What can't hold in terms, calendars and clocks: one sentence each, all at once, and no date is made from it."""

from datetime import date, datetime, time
from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.problem import Refused
from sourcing.basics.settings import MarkupBand, Settings, Shop
from sourcing.basics.terms import Calendar
from sourcing.basics.value import changed
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.date_checks import check_calendar, check_dates, check_shop_dates, check_zone
from tests.builders import door, item, offer, terms

MONDAY = datetime(2026, 3, 2, 14, 40)

WRONG = [
    ({"calendar": Calendar(week=())}, "the week of 'larkmoor' has no day that is worked"),
    ({"calendar": Calendar(closed=(date(206, 12, 24),))}, "the closing day 0206-12-24 of 'larkmoor' is not between"),
    ({"calendar": Calendar(country="XX")}, "no public holidays are known for 'XX'"),
    ({"transit_days": (-1, 2)}, "transit_days of 'larkmoor' is -1 to 2, less than none"),
    ({"transit_days": (1, 5000)}, "transit_days of 'larkmoor' is 1 to 5000, more than 1000"),
    ({"dispatch_days": -1}, "dispatch_days of 'larkmoor' is -1, less than none"),
    ({"order_days": ("Sat", "Sun")}, "'larkmoor' takes orders on Sat, Sun and works on none of these days"),
    ({"cut_off": time.fromisoformat("14:00:00+01:00")}, "the cut-off 14:00:00+01:00 of 'larkmoor' says a zone itself"),
]


def settings(**fields: Any) -> Settings:
    """A shop that is open Monday to Friday."""
    values: dict[str, Any] = {
        "shop": Shop(name="A shop"),
        "currency": "USD",
        "locale": "en_US",
        "markup_bands": (MarkupBand(from_cost=Decimal(0), multiplier=Decimal(2)),),
        "labour_rate": Decimal(90),
        "technician_cost": Decimal(30),
    }
    return Settings(**{**values, **fields})


@pytest.mark.parametrize(("fields", "words"), WRONG)
def test_one_sentence_each(fields: dict[str, Any], words: str) -> None:
    """Nothing else is wrong with these terms."""
    (told,) = check_dates(terms(**fields))
    assert words in told.sentence() and told.sentence().count(".") <= 2


@pytest.mark.parametrize(("fields", "words"), WRONG)
def test_no_date_is_made_from_it(fields: dict[str, Any], words: str) -> None:
    """The promise date refuses in the same words."""
    with pytest.raises(Refused) as refusal:
        arrival(item(offer()), door(**fields), MONDAY)
    assert words in str(refusal.value)


def test_all_at_once() -> None:
    """Three wrongs, three sentences."""
    wrong = terms(calendar=Calendar(week=(), country="XX"), transit_days=(-2, -1))
    assert [one.code for one in check_dates(wrong)] == ["week-without-days", "unknown-country", "terms-days-below-zero"]


def test_ordinary_terms_hold() -> None:
    """Nothing is told."""
    assert check_dates(terms(order_days=("Tue",), calendar=Calendar(country="US"))) == ()
    assert (
        check_shop_dates(settings(time_zone="America/Chicago")) == () and check_calendar(Calendar(), "the shop") == ()
    )


def test_a_supplier_with_a_clock_needs_the_shops() -> None:
    """His name and zone are told; an unknown zone is told before that."""
    abroad = terms("kesselried", time_zone="Europe/Berlin")
    (told,) = check_zone(abroad, settings())
    assert told.code == "shop-without-time-zone" and "'kesselried' is on a clock in Europe/Berlin" in told.what
    assert check_zone(abroad, settings(time_zone="America/Chicago")) == ()
    assert check_zone(terms(), settings()) == check_zone(terms(), settings(time_zone="America/Chicago")) == ()
    (told,) = check_zone(terms(time_zone="Berlin"), settings())
    assert told.code == "unknown-time-zone" and told.suggestions == ("Europe/Berlin",)


def test_the_shops_own_clock_and_calendar_are_checked() -> None:
    """In the settings, and again at the door."""
    wrong = settings(time_zone="Chicago", calendar=Calendar(week=()))
    assert [one.code for one in check_shop_dates(wrong)] == ["unknown-time-zone", "week-without-days"]
    with pytest.raises(Refused, match="the time zone 'Chicago' of the shop"):
        arrival(item(offer()), changed(door(), shop_time_zone="Chicago"), MONDAY)
    with pytest.raises(Refused, match="the week of the shop"):
        arrival(item(offer()), changed(door(), shop_calendar=Calendar(week=())), MONDAY)
    with pytest.raises(Refused, match="the shop's own time zone is not set"):
        arrival(item(offer()), door(time_zone="Europe/Berlin"), MONDAY)
