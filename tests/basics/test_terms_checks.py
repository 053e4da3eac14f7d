"""What can't hold in a supplier's terms is found field by field; what can is left alone."""

from datetime import time
from decimal import Decimal
from typing import Any

import msgspec
import pytest

from sourcing.basics.contradiction import Contradiction
from sourcing.basics.freight import Freight, FreightBand, Oversize, WeightBand
from sourcing.basics.problem import Refused
from sourcing.basics.terms import Calendar, CashDiscount, DutyRate, EntryFee, OrderDiscount, Split, TaxPaid, Terms
from sourcing.basics.terms_checks import contradictions
from sourcing.basics.value import changed
from tests.builders import terms
from tests.full_terms import FREIGHTS, FULL

D = Decimal


def found(**fields: Any) -> list[str]:
    """What contradicts in ordinary terms with those fields changed, as 'field found'."""
    return [f"{one.field} {one.found}" for one in contradictions(terms(**fields))]


def weights(*bands: tuple[str, str]) -> tuple[WeightBand, ...]:
    """Bands up to a weight."""
    return tuple(WeightBand(to_weight=D(to), charge=D(charge)) for to, charge in bands)


def values(*bands: tuple[str, str]) -> tuple[FreightBand, ...]:
    """Bands from a value."""
    return tuple(FreightBand(from_value=D(start), charge=D(charge)) for start, charge in bands)


@pytest.mark.parametrize("freight", FREIGHTS, ids=lambda freight: freight.rule)
def test_what_holds_is_left_alone(freight: Freight) -> None:
    assert contradictions(changed(FULL, freight=freight)) == ()


def test_every_field_of_a_freight_rule_is_in_the_rules_that_hold() -> None:
    """So that a new field is not refused with every rule."""
    used = {field.name for one in FREIGHTS for field in msgspec.structs.fields(one) if getattr(one, field.name)}
    assert used == {field.name for field in msgspec.structs.fields(Freight)}


WRONG_FREIGHT: list[tuple[dict[str, Any], str]] = [
    ({"rule": "by weight"}, "weight_bands is missing"),
    ({"rule": "per weight"}, "per_weight is missing"),
    ({"rule": "per parcel", "charge": D(5)}, "parcel_limit is missing"),
    ({"rule": "per parcel", "parcel_limit": D(30)}, "charge or weight_bands is missing"),
    (
        {"rule": "per parcel", "parcel_limit": D(2), "charge": D(5), "weight_bands": weights(("2", "5"))},
        "charge and weight_bands are both given",
    ),
    ({"rule": "pick-up", "round_trip_miles": D(4), "round_trip_km": D(6)}, "are both given"),
    ({"rule": "flat", "charge": D(5), "per_weight": D(1)}, "per_weight does not belong to the rule 'flat'"),
    ({"rule": "asked", "charge": D(5)}, "charge does not belong to the rule 'asked'"),
    ({"rule": "included", "free_from": D(100)}, "free_from is given, but with the rule 'included' he charges nothing"),
    ({"rule": "pick-up", "round_trip_km": D(6), "free_from": D(5)}, "free_from is given, but with the rule 'pick-up'"),
    ({"rule": "flat", "charge": D(5), "free_from": D(0)}, "free_from is 0, so nothing would ever be charged"),
    ({"rule": "by order value", "bands": values(("50", "9"))}, "bands.1.from_value is 50, so an order below it has no"),
    ({"rule": "by order value", "bands": values(("0", "9"), ("0", "8"))}, "bands.2.from_value is 0 a second time"),
    ({"rule": "by weight", "weight_bands": weights(("5", "9"), ("2", "11"))}, "weight_bands.2.to_weight is 2, below"),
    ({"rule": "by weight", "weight_bands": weights(("2", "9"), ("5", "8"))}, "weight_bands.2.charge is 8, less than"),
    ({"rule": "by weight", "weight_bands": weights(("0", "9"))}, "weight_bands.1.to_weight is 0, which means nothing"),
    (
        {"rule": "per parcel", "parcel_limit": D(30), "weight_bands": weights(("20", "9"))},
        "weight_bands ends at 20, and a parcel may weigh 30",
    ),
    ({"rule": "per weight", "per_weight": D(1), "least": D(9), "most": D(5)}, "least is 9, more than 'most' (5)"),
    ({"rule": "asked", "between": (D(9), D(5))}, "between has the larger number first (9, 5)"),
    ({"rule": "flat", "charge": D("-1")}, "charge is -1, and that is below nothing"),
    ({"rule": "flat", "charge": D("NaN")}, "charge is NaN, and that is no number"),
    ({"rule": "flat", "charge": D("1e12")}, "charge is 1E+12, far too large"),
    ({"rule": "flat", "charge": D(1), "oversize": Oversize(charge=D(-2))}, "oversize.charge is -2"),
]


@pytest.mark.parametrize(("fields", "said"), WRONG_FREIGHT, ids=[said for _, said in WRONG_FREIGHT])
def test_freight_that_can_not_hold(fields: dict[str, Any], said: str) -> None:
    assert any(one.startswith(f"freight.{said}") or said in one for one in found(freight=Freight(**fields)))


def test_bands_by_value_may_fall_and_bands_by_weight_may_stay() -> None:
    """Larger orders often go cheaper; two weights may cost the same."""
    assert not found(freight=Freight(rule="by order value", bands=values(("0", "12"), ("100", "9"), ("200", "0"))))
    assert not found(freight=Freight(rule="by weight", weight_bands=weights(("2", "9"), ("5", "9"))))


WRONG: list[tuple[dict[str, Any], str]] = [
    ({"name": " "}, "name is blank"),
    ({"name": "Larkmoor "}, "name is 'Larkmoor ', with a blank before or after it"),
    ({"currency": "DOL"}, "currency is 'DOL', and that is not a currency code of ISO 4217"),
    ({"minimum_order": D(-5)}, "minimum_order is -5, and that is below nothing"),
    ({"small_order_fee": D(5)}, "small_order_fee is given, but there is no minimum_order"),
    ({"discount_percent": D(101)}, "discount_percent is 101 per cent, and more than 100 can't be"),
    ({"duty_percent": D(1001)}, "duty_percent is 1001 per cent, and more than 1000 can't be"),
    ({"dispatch_days": -1}, "dispatch_days is -1"),
    ({"prices_hold_days": -1}, "prices_hold_days is -1"),
    ({"cash_discount": CashDiscount(percent=D(2), within_days=-3)}, "cash_discount.within_days is -3"),
    (
        {
            "order_discounts": (
                OrderDiscount(from_value=D(9), percent=D(2)),
                OrderDiscount(from_value=D(5), percent=D(3)),
            )
        },
        "order_discounts.2.from_value is 5, below the one before it (9)",
    ),
    ({"duty_rates": (DutyRate(percent=D(1)),), "duty_percent": D(2)}, "duty_rates.1 fits every offer, and so does"),
    ({"duty_on": "goods and freight"}, "duty_on is 'goods and freight', but no duty_percent says at what rate"),
    ({"duty_on": "goods and freight", "duty_rates": (DutyRate(percent=D(1), origin="CN"),)}, "duty_on is 'goods and"),
    ({"duty_rates": (DutyRate(percent=D(1), origin="CN"),) * 2}, "duty_rates the rate for 'CN, any tariff code'"),
    ({"duty_rates": (DutyRate(percent=D(1), origin="China"),)}, "duty_rates.1.origin is 'China'"),
    ({"duty_rates": (DutyRate(percent=D(1), tariff="84.31"),)}, "duty_rates.1.tariff is '84.31'"),
    ({"entry_fees": (EntryFee(name="Entry"),)}, "entry_fees.1 has neither charge, percent nor least"),
    ({"entry_fees": (EntryFee(name="E", charge=D(1), currency="X"),)}, "entry_fees.1.currency is 'X'"),
    ({"entry_fees": (EntryFee(name="E", least=D(9), most=D(5)),)}, "entry_fees.1.least is 9, more than 'most' (5)"),
    ({"tax": TaxPaid(name="VAT", percent=D(7), on=())}, "tax.on names nothing"),
    ({"split": Split(later_charge=D(5))}, "split.later_charge is given, but all is sent together"),
    ({"calendar": Calendar(week=())}, "calendar.week names no day"),
    ({"calendar": Calendar(week=("Mon", "Mon"))}, "calendar.week the day 'Mon' stands there more than once"),
    ({"calendar": Calendar(region="BY")}, "calendar.region is 'BY', but no country is named"),
    ({"order_days": ("Mon", "Mon")}, "order_days the day 'Mon' stands there more than once"),
    ({"cut_off": time.fromisoformat("13:00+01:00")}, "cut_off is 13:00:00+01:00: write the time alone"),
]


@pytest.mark.parametrize(("fields", "said"), WRONG, ids=[said for _, said in WRONG])
def test_terms_that_can_not_hold(fields: dict[str, Any], said: str) -> None:
    (one,) = found(**fields)
    assert one.startswith(said)


def test_a_minimum_without_a_fee_is_a_refusal_and_holds() -> None:
    assert not found(minimum_order=D(30))


def test_a_rate_for_every_offer_says_at_what_rate_freight_is_dutiable() -> None:
    assert not found(duty_on="goods and freight", duty_rates=(DutyRate(percent=D(4)),))


def test_duty_may_be_above_a_hundred_per_cent() -> None:
    """Anti-dumping duties are (common practice, no source)."""
    assert not found(duty_percent=D(145), duty_rates=(DutyRate(percent=D("236.5"), origin="CN"),))


def test_terms_nothing_can_be_worked_out_from_are_refused_with_all_that_is_wrong() -> None:
    """Also where they are made in code; the refusal names every field."""
    with pytest.raises(Refused) as refusal:
        terms(freight=Freight(rule="flat"), minimum_order=D(-5), transit_days=(3, 1))
    told = str(refusal.value)
    assert all(f"'{field}'" in told for field in ("freight.charge", "minimum_order", "transit_days"))


def test_terms_kept_before_more_was_checked_are_still_read() -> None:
    """What is only refused at the door stays readable in the database."""
    kept = msgspec.json.encode(terms(minimum_order=D(-5)))
    assert msgspec.json.decode(kept, type=Terms).minimum_order == -5


def test_the_place_of_a_contradiction_is_dotted_and_counts_from_one() -> None:
    wrong = terms(freight=Freight(rule="by order value", bands=values(("0", "9"), ("50", "-1"))))
    below = Contradiction(field="freight.bands.2.charge", found="is -1, and that is below nothing")
    assert contradictions(wrong) == (below,)
