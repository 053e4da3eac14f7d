"""Terms as databases of before hold them: without the fields that came later, with what those fields then mean."""

from decimal import Decimal

from sourcing.basics.terms import Returns, Split, Terms
from sourcing.basics.value import from_json, to_json
from tests.full_terms import FULL

OLD = """{"supplier":"stonegarth","name":"Stonegarth Trade Parts","starts_on":"2025-10-01","currency":"USD",
"freight":{"rule":"flat","charge":"14.95","bands":[],"free_from":"200.00","round_trip_miles":null,
"round_trip_hours":null},"minimum_order":"25.00","small_order_fee":"4.50","handling":"0","discount_percent":"0",
"duty_percent":null,"entry_fee":"0","cut_off":"13:00:00","dispatch_days":0,"transit_days":[1,2],
"calendar":{"week":["Mon","Tue","Wed","Thu","Fri"],"country":"US","region":"","closed":[]},"prices_hold_days":60,
"returns":"Within 30 days.","address":[]}"""
"""A row of `supplier_terms` as it was written before freight by weight, duty rates and the rest were known."""


def test_an_old_row_is_read_and_says_what_it_said() -> None:
    old = from_json(OLD, Terms)
    assert old.freight and old.freight.charge == Decimal("14.95") and old.freight.weight_bands == ()
    assert old.minimum_order == 25 and old.prices_hold_days == 60
    assert old.return_terms == Returns(returnable=None) and old.split == Split(sends="together")
    assert old.tax is None and old.duty_rates == () and old.time_zone == ""


def test_every_field_comes_back() -> None:
    assert from_json(to_json(FULL), Terms) == FULL
