"""Prices, totals and add-on prices against worked days whose figures were checked by hand, decimal by decimal."""

from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.money import Money, total
from sourcing.basics.quote import QuoteLine
from sourcing.basics.settings import FeeRule, MarkupBand, Settings, Shop, Supplies, Tax
from sourcing.basics.value import changed
from sourcing.quoting.fees import rules_on
from sourcing.quoting.pricing import offer_price, unit_price
from sourcing.quoting.totals import add_on_prices, document_total, taxes_on
from tests.builders import offer, usd

DAY = date(2026, 3, 4)
BANDS = (("0.00", "2.50"), ("5.00", "2.00"), ("20.00", "1.70"), ("50.00", "1.55"), ("100.00", "1.40"))


def settings(**fields: object) -> Settings:
    """The invented shop of the worked days: 96.00 an hour, supplies 5 % at most 12.00, tax 7 % on parts and freight."""
    values: dict[str, object] = {
        "shop": Shop(name="Wickenby Yard Machine Repair"),
        "currency": "USD",
        "locale": "en_US",
        "markup_bands": tuple(MarkupBand(from_cost=Decimal(at), multiplier=Decimal(by)) for at, by in BANDS),
        "labour_rate": Decimal("96.00"),
        "technician_cost": Decimal("34.00"),
        "supplies": Supplies(percent_of_labour=Decimal(5), most=Decimal("12.00")),
        "taxes": (Tax(name="Sales tax", percent=Decimal(7), on=("parts", "freight"), starts_on=date(2026, 1, 1)),),
    }
    return Settings(**{**values, **fields})  # type: ignore[arg-type]


def line(label: str, parts: str = "0", hours: str = "0", freight: str = "0") -> QuoteLine:
    """A quote line by its sums."""
    return QuoteLine(
        label=label,
        kind="agreed" if label.isdigit() else "add-on",
        title=f"Line {label}",
        part="P" if parts != "0" else "",
        number="N",
        description="",
        quantity=1,
        unit_price=usd(parts),
        parts_price=usd(parts),
        hours=Decimal(hours),
        labour_price=usd(str(Decimal(hours) * 96)).rounded(),
        freight_price=usd(freight),
        found="",
        why="",
        if_declined="",
        behind=None,
    )


@pytest.mark.parametrize(
    ("cost", "listed", "price"),
    [
        ("71.25", "109.00", "109.00"),  # 110.44 before the cap
        ("6.40", "13.50", "12.80"),
        ("22.50", "39.95", "38.25"),
        ("64.00", "109.00", "99.20"),
        ("24.75", "44.00", "42.08"),  # 42.075
        ("126.90", "189.50", "177.66"),
        ("139.59", "208.45", "195.43"),  # 195.426
        ("84.60", "139.95", "131.13"),
        ("4.99", None, "12.48"),
        ("5.00", None, "10.00"),
    ],
)
def test_unit_price(cost: str, listed: str | None, price: str) -> None:
    """Cost times the band, rounded half up, not above list."""
    assert unit_price(usd(cost), usd(listed) if listed else None, settings()).each == usd(price)


def test_the_cap_is_the_owners_choice_and_is_said() -> None:
    """With and without."""
    priced = unit_price(usd("71.25"), usd("109.00"), settings())
    capped, rule = priced.each, priced.rule
    assert capped == usd("109.00") and rule == "71.25 x 1.55 = 110.44, capped at list price 109.00"
    assert unit_price(usd("71.25"), usd("109.00"), settings(cap_at_list_price=False)).each == usd("110.44")


def test_a_list_price_in_another_currency_is_said_to_hold_no_price() -> None:
    """39.29 x 1.70 = 66.79 for a belt with a list price of 50.00 CAD, stated per 10 as 500.00."""
    belt = offer(currency="CAD", list_price=Decimal(500), price_basis=10)
    priced = offer_price(belt, usd("39.29"), 1, settings())
    said = "39.29 x 1.70; not held to the list price of 50.00 CAD: it is in another currency"
    assert (priced.each, priced.rule) == (usd("66.79"), said)
    assert offer_price(belt, usd("39.29"), 1, settings(cap_at_list_price=False)).rule == "39.29 x 1.70"
    assert offer_price(changed(belt, list_price=None), usd("39.29"), 1, settings()).rule == "39.29 x 1.70"
    at_home = offer_price(changed(belt, currency="USD"), usd("39.29"), 1, settings())
    assert (at_home.each, at_home.rule) == (usd("50.00"), "39.29 x 1.70 = 66.79, capped at list price 50.00")


def test_a_days_quote_to_the_cent() -> None:
    """Belt 109.00, freight 9.95 billed, 1.5 hours: before tax 270.15, tax 8.33, total 278.48."""
    shop = settings()
    found = document_total([line("1", "109.00", "1.5"), line("2", freight="9.95")], shop.charge_rules, DAY, "USD")
    assert dict(found.sums)["fees"] == usd("7.20")
    assert (found.before_tax, found.taxes[0].amount, found.total) == (usd("270.15"), usd("8.33"), usd("278.48"))


def test_add_ons_by_telephone_and_on_paper_differ_by_no_cent() -> None:
    """Keepers 25.60 + 0.3 h and idler 38.25 + 0.2 h approved, tine set declined, freight 14.95 on its own line.

    Revised total 413.19, 134.71 more; tax once on 197.75 is 13.84, and not the 13.85 of two rounded taxes.
    """
    agreed = [line("1", "109.00", "1.5"), line("2", freight="9.95")]
    extras = [line("A", "25.60", "0.3"), line("B", "38.25", "0.2"), line("D", freight="14.95")]
    rules = settings().charge_rules
    before = document_total(agreed, rules, DAY, "USD")
    after = document_total([*agreed, *extras], rules, DAY, "USD")
    assert (after.total, after.total - before.total) == (usd("413.19"), usd("134.71"))
    assert after.taxes[0].taxable == usd("197.75") and after.taxes[0].amount == usd("13.84")


def test_an_add_ons_price_is_the_difference_of_two_totals() -> None:
    """A: 54.40 and 1.44 supplies and tax on 134.55 less tax on 108.95."""
    lines = [line("1", "108.95", "1.5"), line("A", "25.60", "0.3")]
    (price,) = add_on_prices(lines, settings().charge_rules, DAY, "USD")
    # 134.55 x 7 % = 9.4185 -> 9.42; 108.95 x 7 % = 7.6265 -> 7.63; 25.60 + 28.80 + 1.44 + (9.42 - 7.63) = 57.63
    assert price.price == usd("57.63")


def test_the_supplies_fee_stops_at_its_cap() -> None:
    """240.00 of labour at 5 % is exactly the 12.00 it may be at most; more labour, no more fee."""
    for hours, fee in (("2.4", "11.52"), ("2.5", "12.00"), ("4", "12.00")):
        found = document_total([line("1", hours=hours)], settings().charge_rules, DAY, "USD")
        assert dict(found.sums)["fees"] == usd(fee)


def test_tax_once_on_the_sum_as_published() -> None:
    """EN 16931 example 8: lines sum to 908.91, 21 % is 190.87; line by line it would add to 190.88.

    The two lines here are made up to sum to the published base; base, rate and tax are the example's.
    """
    tax = Tax(name="VAT", percent=Decimal(21), on=("parts",), starts_on=date(2020, 1, 1))
    lines = [line("1", "167.64"), line("2", "741.27")]
    found = document_total(lines, settings(taxes=(tax,), supplies=None).charge_rules, DAY, "USD")
    assert found.taxes[0].taxable == usd("908.91") and found.taxes[0].amount == usd("190.87")
    assert found.total == usd("1099.78")


def test_a_tax_holds_from_its_day() -> None:
    """The newest entry that has started."""
    old = Tax(name="Sales tax", percent=Decimal(6), on=("parts",), starts_on=date(2025, 1, 1))
    new = Tax(name="Sales tax", percent=Decimal(7), on=("parts",), starts_on=date(2026, 7, 1))
    assert taxes_on([new, old], date(2026, 6, 30)) == (old,)
    assert taxes_on([old, new], date(2026, 7, 1)) == (new,)
    assert taxes_on([old, new], date(2024, 7, 1)) == ()


# EN 16931 validation artefacts, UBL example 1: line net amounts by tax rate as published; 229.60 before tax, taxes
# 10.99 and 9.74 on 183.23 and 46.37, 250.33 with tax. Figures only.
AT_SIX = "19.90 9.85 8.29 14.46 35.00 35.00 10.65 1.55 14.37 8.29 16.58 9.95 3.30 3.90 102.12 -109.98"
AT_TWENTY_ONE = "10.80 7.60 9.34 18.63"


def test_a_published_invoice_to_the_cent() -> None:
    """Each rate once on its own sum, then the total."""
    low, high = (total(map(usd, text.split()), "USD") for text in (AT_SIX, AT_TWENTY_ONE))
    assert (low, high) == (usd("183.23"), usd("46.37"))
    taxes = (
        Tax(name="6 %", percent=Decimal(6), on=("parts",), starts_on=date(2020, 1, 1)),
        Tax(name="21 %", percent=Decimal(21), on=("freight",), starts_on=date(2020, 1, 1)),
    )
    lines = [line("1", str(low.amount)), line("2", freight=str(high.amount))]
    found = document_total(lines, settings(taxes=taxes, supplies=None).charge_rules, DAY, "USD")
    assert found.before_tax == usd("229.60")
    assert [tax.amount for tax in found.taxes] == [usd("10.99"), usd("9.74")]
    assert found.total == usd("250.33")
    assert isinstance(found.total, Money)


def test_names_of_taxes_are_one_whatever_their_case_and_blanks() -> None:
    """The newer rate replaces the other in what new quotes are charged by; rules frozen before stay as they were."""
    old = Tax(name="Sales tax", percent=Decimal(6), on=("parts",), starts_on=date(2025, 1, 1))
    new = Tax(name="SALES  Tax", percent=Decimal(7), on=("parts",), starts_on=date(2026, 7, 1))
    charged = taxes_on(settings(taxes=(new, old)).charge_rules.taxes, date(2026, 7, 1))
    assert [(tax.name, tax.percent) for tax in charged] == [("Sales tax", Decimal(7))]
    assert len(taxes_on((old, new), date(2026, 7, 1))) == 2


def test_names_of_fees_are_one_too() -> None:
    old = FeeRule(name="Old oil", of="document", charge=Decimal(3), starts_on=date(2025, 1, 1))
    new = FeeRule(name="old Oil", of="document", charge=Decimal(4), starts_on=date(2026, 1, 1))
    fees = rules_on(settings(fee_rules=(old, new)).charge_rules.fee_rules, DAY)
    assert [(fee.name, fee.charge) for fee in fees] == [("Old oil", Decimal(4))]
