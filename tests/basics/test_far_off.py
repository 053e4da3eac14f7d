"""Figures far from usual or from the last: which are asked about, and that no ordinary change of a shop is.

What is usual: common practice, no source; the day's figures are invented.
"""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from typing import Any

import msgspec
import pytest

from sourcing.actions.file_faults import list_kind, table_kind
from sourcing.basics.far_off import HOURS, USUAL, far_off
from sourcing.basics.freight import Freight
from sourcing.basics.settings import MarkupBand, Settings, Shop, Supplies, Tax
from sourcing.basics.terms import DutyRate, Returns, Terms
from sourcing.basics.value import changed
from tests.full_terms import FREIGHTS, FULL

D = Decimal
HOUR = D(96)
BANDS = ((0, "2.50"), (20, "1.70"), (100, "1.40"))
TAX = Tax(name="Sales tax", percent=D("6.5"), on=("parts",), starts_on=date(2025, 1, 1))
TERMS = Terms(
    supplier="stonegarth",
    name="Stonegarth Trade Parts",
    starts_on=date(2025, 1, 1),
    currency="USD",
    freight=Freight(rule="flat", charge=D("14.95"), free_from=D(200)),
    duty_percent=D(3),
)


def _bands(*bands: tuple[int, str]) -> tuple[MarkupBand, ...]:
    return tuple(MarkupBand(from_cost=D(start), multiplier=D(times)) for start, times in bands)


SHOP = Settings(
    shop=Shop(name="Wickenby Yard Machine Repair"),
    currency="USD",
    locale="en_US",
    markup_bands=_bands(*BANDS),
    labour_rate=HOUR,
    technician_cost=D(34),
    clerk_cost=D(22),
    mileage_rate=D("0.725"),
    margin_floor_percent=D(28),
    supplies=Supplies(percent_of_labour=D(5), most=D(12)),
    taxes=(TAX,),
)

SLIPS: Sequence[tuple[str, dict[str, Any]]] = (
    ("markup_bands.1.multiplier", {"markup_bands": _bands((0, "160"), *BANDS[1:])}),
    ("markup_bands.3.multiplier", {"markup_bands": _bands(*BANDS[:2], (100, "14.0"))}),
    ("labour_rate", {"labour_rate": D("9.60")}),
    ("labour_rate", {"labour_rate": D(960)}),
    ("technician_cost", {"technician_cost": D(340)}),
    ("mileage_rate", {"mileage_rate": D("72.5")}),
    ("margin_floor_percent", {"margin_floor_percent": D("0.28")}),
    ("margin_floor_percent", {"margin_floor_percent": D("2.8")}),
    ("taxes.1.percent", {"taxes": (changed(TAX, percent=D(65)),)}),
    ("taxes.1.percent", {"taxes": (changed(TAX, percent=D("0.065")),)}),
    ("supplies.most", {"supplies": Supplies(percent_of_labour=D(5), most=D(1200))}),
    ("quote_valid_days", {"quote_valid_days": 700}),
)


@pytest.mark.parametrize(("field", "typed"), SLIPS)
def test_a_slip_of_the_point_in_the_settings_is_asked_about(field: str, typed: dict[str, Any]) -> None:
    """Ten or a hundred times what it was, or a per cent typed as a part of one."""
    assert [one.field for one in far_off(SHOP, changed(SHOP, **typed), HOUR, HOUR)] == [field]


@pytest.mark.parametrize(
    ("field", "typed"),
    [
        ("freight.charge", {"freight": Freight(rule="flat", charge=D(1495), free_from=D(200))}),
        ("freight.free_from", {"freight": Freight(rule="flat", charge=D("14.95"), free_from=D(2))}),
        ("duty_percent", {"duty_percent": D(300)}),
        ("duty_percent", {"duty_percent": D("0.03")}),
        ("duty_rates.1.percent", {"duty_rates": (DutyRate(percent=D(250), origin="DE"),)}),
        ("minimum_order", {"minimum_order": D(25000)}),
        ("entry_fee", {"entry_fee": D(1200)}),
        ("discount_percent", {"discount_percent": D("0.4")}),
        ("return_terms.restocking_percent", {"return_terms": Returns(restocking_percent=D("0.15"))}),
        ("transit_days.2", {"transit_days": (1, 200)}),
    ],
)
def test_a_slip_in_a_suppliers_terms_is_asked_about(field: str, typed: dict[str, Any]) -> None:
    """Money is measured by an hour of labour, so the same holds in every currency."""
    assert [one.field for one in far_off(TERMS, changed(TERMS, **typed), HOUR, HOUR)] == [field]


def test_what_is_asked_shows_the_last_and_what_is_usual() -> None:
    """Both stand beside what was typed."""
    (slip,) = far_off(SHOP, changed(SHOP, markup_bands=_bands((0, "160"), *BANDS[1:])), HOUR, HOUR)
    assert slip.found == "is 160; until now 2.50, 1.70, 1.40; usual is 1 to 10"
    (dear,) = far_off(None, changed(TERMS, small_order_fee=D(450), minimum_order=D(25)), HOUR, HOUR)
    assert dear.found == "is 450; usual is 0.00 to 192.00 where an hour of labour is 96.00"


@pytest.mark.parametrize(
    "typed",
    [
        {"markup_bands": _bands((0, "4.00"), (5, "2.50"), (20, "1.80"), (300, "1.25"))},
        {"labour_rate": D(145), "technician_cost": D(45)},
        {"labour_rate": D("64.50"), "technician_cost": D(0), "clerk_cost": D(0), "mileage_rate": D(0)},
        {"mileage_rate": D("1.10"), "rate_per_km": D("0.45")},
        {"margin_floor_percent": D(0)},
        {"margin_floor_percent": D(50)},
        {"taxes": (TAX, changed(TAX, name="County tax", percent=D("0.5")))},
        {"taxes": (changed(TAX, percent=D(27)),)},
        {"quote_valid_days": 90},
    ],
)
def test_no_ordinary_change_of_the_settings_is_asked_about(typed: dict[str, Any]) -> None:
    """A question that comes every day is answered without being read."""
    assert not list(far_off(SHOP, changed(SHOP, **typed), HOUR, HOUR))


def test_ordinary_terms_of_every_kind_are_kept_without_a_question() -> None:
    """Every rule of freight, every field; anew, and changed as suppliers change them."""
    every = [*(changed(TERMS, freight=freight) for freight in FREIGHTS), FULL]
    for terms in every:
        assert not list(far_off(None, terms, HOUR, HOUR)), terms
    dearer = changed(TERMS, freight=Freight(rule="flat", charge=D(24), free_from=D(500)), duty_percent=D(10))
    assert not list(far_off(TERMS, dearer, HOUR, HOUR))


def test_what_stood_there_before_is_not_asked_about_again() -> None:
    """Somebody was sure of it: another field changed, or a band added, brings no second question."""
    odd = changed(SHOP, markup_bands=_bands((0, "12"), (1, "2.50")))
    assert list(far_off(None, odd, HOUR, HOUR))
    assert not list(far_off(odd, changed(odd, labour_rate=D(99)), HOUR, HOUR))
    assert not list(far_off(odd, changed(odd, markup_bands=_bands((0, "12"), (1, "2.50"), (50, "1.80"))), HOUR, HOUR))


def test_where_no_hour_is_known_money_is_held_against_the_last_alone() -> None:
    """No rate of that currency: nothing is measured by a guess."""
    dear = changed(TERMS, freight=Freight(rule="flat", charge=D(1495)))
    assert not list(far_off(None, dear, None, HOUR))
    assert [one.field for one in far_off(TERMS, dear, None, HOUR)] == ["freight.charge"]


@pytest.mark.parametrize("name", [*USUAL, *HOURS])
def test_every_bound_is_of_a_field_there_is(name: str) -> None:
    """A field renamed would lose its question in silence."""
    for kind in (Settings, Terms):
        if _has(kind, name.split(".")):
            return
    raise AssertionError(name)


def _has(kind: Any, way: list[str]) -> bool:
    """Whether the field is there, through the values and lists it stands in."""
    for name in way:
        table = table_kind(kind) or table_kind(list_kind(kind))
        fields = {field.name: field.type for field in msgspec.structs.fields(table)} if table else {}
        if name not in fields:
            return False
        kind = fields[name]
    return True
