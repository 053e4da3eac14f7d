"""What terms leave open is listed with what follows from it; what they say is not."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from sourcing.actions.terms_open import not_known
from sourcing.basics.freight import Freight, Oversize, WeightBand
from sourcing.basics.rate import Rate, Rates
from sourcing.basics.settings import Settings
from sourcing.basics.terms import Calendar, CoreReturn, DutyRate, Returns, TaxPaid
from sourcing.basics.value import changed
from tests.builders import terms
from tests.full_terms import FULL
from tests.storage.kept_values import settings

D = Decimal
DAY = date(2026, 1, 13)
HERE: Settings = changed(settings(), calendar=Calendar(country="US"), rate_per_km=D("0.45"), clerk_cost=D(22))
RATES = Rates(into="USD", rates=(Rate(currency="EUR", into="USD", rate=D("1.08"), dated=DAY),))
SAID: dict[str, Any] = {
    "calendar": Calendar(country="US"),
    "prices_hold_days": 60,
    "return_terms": Returns(returnable=False),
    "core_return": CoreReturn(within_days=60, freight=D(9)),
}
"""Terms of a supplier in the country that leave nothing open."""


def open_ones(**fields: Any) -> list[str]:
    """What is open in those terms with some fields changed."""
    return [one.what for one in not_known(terms(**{**SAID, **fields}), HERE, RATES, DAY)]


def weight_rule(**fields: Any) -> Freight:
    """Freight by weight up to 30 kg, with a range for goods without a weight."""
    bands = (WeightBand(to_weight=D(30), charge=D(9)),)
    values: dict[str, Any] = {"rule": "by weight", "weight_bands": bands, "piece_weight": (D(1), D(2))}
    return Freight(**{**values, **fields})


def test_terms_that_say_everything_leave_nothing_open() -> None:
    assert open_ones() == []
    assert not_known(FULL, HERE, RATES, DAY) == ()


@pytest.mark.parametrize(
    ("fields", "what"),
    [
        ({"freight": None}, "freight"),
        ({"freight": Freight(rule="asked")}, "freight of an order"),
        ({"freight": Freight(rule="per weight", per_weight=D(1))}, "the weight of a piece where his sheet gives none"),
        ({"freight": weight_rule()}, "freight of an order heavier than 30 kg"),
        (
            {"freight": Freight(rule="flat", charge=D(1), oversize=Oversize(charge=D(9)))},
            "whether goods are oversize where his sheet gives neither word nor length",
        ),
        ({"freight": Freight(rule="pick-up", round_trip_miles=D(9))}, "the hours of the drive"),
        ({"transit_days": (1, 5)}, "days on the road"),
        ({"calendar": Calendar()}, "his public holidays"),
        ({"prices_hold_days": None}, "how long his prices hold"),
        ({"return_terms": Returns()}, "whether goods go back"),
        ({"return_terms": Returns(returnable=True, freight=D(5))}, "restocking and days to return"),
        ({"core_return": CoreReturn(freight=D(5))}, "until when an old part goes back, or its freight"),
        ({"duty_rates": (DutyRate(percent=D(3), origin="CN"),)}, "duty on goods that no rate of duty_rates fits"),
    ],
)
def test_each_thing_left_open_is_named(fields: dict[str, Any], what: str) -> None:
    assert open_ones(**fields) == [what]


def test_picking_up_needs_the_shop_s_own_rates() -> None:
    """Without them his offers have no cost; a kilometre at 0 is a rate."""
    drive = terms(**SAID, freight=Freight(rule="pick-up", round_trip_km=D(9), round_trip_hours=D(1)))
    none = changed(HERE, mileage_rate=D(0), clerk_cost=D(0), rate_per_km=None)
    found = [(one.what, one.keeps_from_ranking) for one in not_known(drive, none, RATES, DAY)]
    assert found == [
        ("the shop's rate per mile or km for picking up", True),
        ("the shop's cost per hour for picking up", True),
    ]
    assert not_known(drive, changed(none, rate_per_km=D(0), clerk_cost=D(22)), RATES, DAY) == ()
    assert not_known(drive, None, RATES, DAY) == ()


def test_a_supplier_abroad_leaves_duty_tax_and_clock_open() -> None:
    """By his country, or where none is named by his currency."""
    abroad = {"calendar": Calendar(country="DE"), "currency": "EUR"}
    asked = ["duty", "tax at the border that the shop can't get back", "his time zone"]
    assert open_ones(**abroad) == asked
    assert open_ones(currency="EUR", calendar=Calendar()) == [*asked[:2], "his public holidays", asked[2]]
    said = {"duty_percent": D(0), "tax": TaxPaid(name="none", percent=D(0)), "time_zone": "Europe/Berlin"}
    assert open_ones(**abroad, **said) == []


def test_what_keeps_offers_from_being_ranked_comes_first() -> None:
    """A currency without a rate on that day, and freight that is not known."""
    found = not_known(terms(freight=None, currency="EUR"), HERE, RATES, date(2026, 1, 12))
    assert [(one.what, one.keeps_from_ranking) for one in found][:3] == [
        ("a rate from EUR into USD on or before 2026-01-12", True),
        ("freight", True),
        ("duty", False),
    ]
