"""Fees by rule with caps and days, fees of the job, a customer free of tax, and the deposit."""

from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.quote import QuoteLine
from sourcing.basics.settings import ChargeRules, DepositRule, FeeRule, Supplies, Tax
from sourcing.basics.value import changed
from sourcing.quoting.deposit import deposit_asked, deposit_on
from sourcing.quoting.fees import fee_amounts
from sourcing.quoting.totals import document_total
from tests.builders import usd
from tests.quoting.test_pricing_and_totals import DAY, line, settings

TAX = Tax(name="Sales tax", percent=Decimal(7), on=("parts", "freight", "fees"), starts_on=date(2026, 1, 1))
START = date(2026, 1, 1)


def fees(rule: FeeRule, *lines: QuoteLine) -> list[tuple[str, str, str]]:
    """Each fee's name, amount and rule."""
    found = fee_amounts(lines, ChargeRules(fee_rules=(rule,)), DAY, "USD")
    return [(one.name, str(one.amount.amount), one.rule) for one in found]


def test_a_fee_once_for_the_document() -> None:
    rule = FeeRule(name="Disposal", of="document", charge=Decimal("3.50"), starts_on=START)
    assert fees(rule, line("1", "10.00"), line("2", hours="1")) == [("Disposal", "3.50", "once for the document")]
    assert fees(rule) == []


def test_a_fee_for_parts_of_a_category_only() -> None:
    rule = FeeRule(name="Battery", of="piece", charge=Decimal(5), categories=("batteries",), starts_on=START)
    battery = changed(line("1", "80.00"), category="Batteries", quantity=2)
    assert fees(rule, battery, line("2", "10.00")) == [("Battery", "10.00", "2 x 5")]
    assert fees(rule, line("2", "10.00")) == []
    once = changed(rule, of="document")
    assert fees(once, line("2", "10.00")) == []
    assert fees(once, battery) == [("Battery", "5.00", "once for the document")]


def test_a_fee_in_per_cent_stops_at_its_cap() -> None:
    rule = FeeRule(name="Supplies", of="labour and parts", percent=Decimal(4), most=Decimal(9), starts_on=START)
    found = fees(rule, line("1", "100.00", "1"))
    assert found == [("Supplies", "7.84", "4 % of labour and parts 196.00 USD")]
    found = fees(rule, line("1", "200.00", "1"))
    assert found == [("Supplies", "9.00", "4 % of labour and parts 296.00 USD = 11.84, at most 9.00")]


def test_a_fee_holds_from_its_day_and_ends_with_an_entry_of_nothing() -> None:
    first = FeeRule(name="Disposal", of="document", charge=Decimal(3), starts_on=START)
    ended = FeeRule(name="Disposal", of="document", starts_on=date(2026, 6, 1))
    rules = ChargeRules(fee_rules=(ended, first))
    for day, count in ((date(2025, 12, 31), 0), (START, 1), (date(2026, 5, 31), 1), (date(2026, 6, 1), 0)):
        assert len(fee_amounts([line("1", "1.00")], rules, day, "USD")) == count


def test_fees_of_job_and_rules_are_one_sum_and_taxed_as_fees() -> None:
    rules = ChargeRules(
        taxes=(TAX,),
        supplies=Supplies(percent_of_labour=Decimal(5), most=Decimal(12)),
        fee_rules=(FeeRule(name="Disposal", of="document", charge=Decimal("3.50"), starts_on=START),),
    )
    lines = [line("1", "100.00", "1"), changed(line("2"), fee_price=usd("20.00"))]
    found = document_total(lines, rules, DAY, "USD")
    assert dict(found.sums)["fees"] == usd("28.30")  # 20.00 + 4.80 + 3.50
    assert [fee.name for fee in found.fees] == ["Shop supplies", "Disposal"]
    assert found.taxes[0].taxable == usd("128.30") and found.taxes[0].amount == usd("8.98")
    assert found.total == usd("233.28")  # 100 + 96 + 28.30 + 8.98


def test_a_customer_free_of_tax_pays_none() -> None:
    rules = changed(settings().charge_rules, tax_exempt=True)
    found = document_total([line("1", "109.00", "1.5")], rules, DAY, "USD")
    assert found.taxes == () and found.total == found.before_tax == usd("260.20")


def test_a_deposit_of_half_of_the_parts() -> None:
    """Parts of 194.60 and 31.60: half of 226.20 is 113.10."""
    rule = DepositRule(percent=Decimal(50), of="parts")
    lines = [line("1", "194.60", "1"), line("2", "31.60"), line("A", "50.01")]
    found = deposit_asked(lines, settings().charge_rules, rule, DAY, "USD")
    assert found is not None
    assert (found.agreed, found.everything) == (usd("113.10"), usd("138.11"))  # 276.21 / 2 = 138.105, half up
    assert found.rule == "50 % of the parts before tax"


def test_a_deposit_only_for_special_orders_and_only_from_an_amount_on() -> None:
    rule = DepositRule(percent=Decimal(50), from_amount=Decimal(20))
    small, large = (changed(line("1", price), special_order=True) for price in ("39.98", "40.00"))
    assert deposit_on([large, line("2", "500.00")], ChargeRules(), rule, DAY, "USD") == usd("20.00")
    assert deposit_on([small], ChargeRules(), rule, DAY, "USD") == usd("0.00")
    assert deposit_asked([line("1", "500.00")], ChargeRules(), rule, DAY, "USD") is None
    assert deposit_asked([large], ChargeRules(), None, DAY, "USD") is None


@pytest.mark.parametrize(("percent", "asked"), [("100", "278.48"), ("33", "91.90")])
def test_a_deposit_of_everything_is_of_the_total_with_tax(percent: str, asked: str) -> None:
    lines = [line("1", "109.00", "1.5"), line("2", freight="9.95")]
    rule = DepositRule(percent=Decimal(percent), of="everything")
    assert deposit_on(lines, settings().charge_rules, rule, DAY, "USD") == usd(asked)
