"""The shop's settings as a file that reads back to the same, and in words: the owner's apart from the clerk's."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import msgspec

from sourcing.actions.settings_file import read_settings
from sourcing.basics.settings import (
    CategoryBands,
    DepositRule,
    FeeRule,
    MarkupBand,
    PriceEnding,
    Settings,
    Shop,
    Supplies,
    Tax,
    Tolerance,
)
from sourcing.basics.terms import Calendar
from sourcing.basics.value import changed
from sourcing.documents.settings import settings_toml, settings_words

D, DAY = Decimal, date(2026, 1, 15)

FULL = Settings(
    shop=Shop(name='Shop "of" \\ all', address=("14 Lane", "Town"), telephone="555-0117", email="a@b.example"),
    currency="EUR",
    locale="de_DE",
    markup_bands=(MarkupBand(from_cost=D("0.00"), multiplier=D("2.51")), MarkupBand(from_cost=D(9), multiplier=D(2))),
    labour_rate=D("96.00"),
    technician_cost=D("34.10"),
    clerk_cost=D("22.20"),
    mileage_rate=D("0.725"),
    rate_per_km=D("0.45"),
    cap_at_list_price=False,
    margin_floor_percent=D("27.5"),
    freight_to_customer="carried",
    supplies=Supplies(percent_of_labour=D(5), most=D("12.00")),
    taxes=(Tax(name="Sales tax", percent=D("6.5"), on=("parts", "labour"), starts_on=DAY),),
    quote_valid_days=9,
    calendar=Calendar(week=("Mon", "Sat"), country="DE", region="BY", closed=(date(2026, 12, 24),)),
    terms_text=("One, with a comma.", "Two."),
    cautions=("Key out.",),
    cautions_dated=DAY,
    time_zone="Europe/Berlin",
    category_bands=(CategoryBands(category="belts", bands=(MarkupBand(from_cost=D(0), multiplier=D("1.61")),)),),
    floor_bands=True,
    price_ending=PriceEnding(endings=(D("0.50"), D("0.95")), from_price=D(10)),
    fee_rules=(FeeRule(name="Oil", of="document", starts_on=DAY, charge=D("3.50"), categories=("oil",), most=D(9)),),
    deposit=DepositRule(percent=D(50), of="parts", from_amount=D(20)),
    tolerance=Tolerance(percent=D(3), amount=D(5)),
    special_order_terms=("Ordered for you alone.",),
    law_text=("As the law asks.",),
    paper_size="A4",
)


def test_every_field_reads_back_from_the_file(tmp_path: Path) -> None:
    """None is left out: each says something else than its default here."""
    fields = msgspec.structs.fields(Settings)
    assert [one.name for one in fields if not one.required and getattr(FULL, one.name) == one.default] == []
    path = tmp_path / "shop.toml"
    path.write_text(settings_toml(FULL, DAY), encoding="utf-8")
    assert read_settings(path) == FULL


def test_the_owner_is_told_what_the_clerk_is_not() -> None:
    """Bands, the floor, and what an hour costs the shop."""
    owner = str(settings_words(FULL, for_owner=True))
    clerk = str(settings_words(FULL, for_owner=False))
    for secret in ("2.51", "1.61", "27.5", "34.10", "22.20"):
        assert secret in owner and secret not in clerk
    for both in ("96.00", "6.5 %", "Oil", "50 % of parts", "3 % and at most 5 EUR"):
        assert both in clerk


def test_the_owner_reads_that_a_list_price_in_another_currency_holds_no_price() -> None:
    words = dict(settings_words(changed(FULL, cap_at_list_price=True), for_owner=True)["prices"])
    assert words["List price"] == "never above it where it is in EUR; one in another currency holds no price down"
