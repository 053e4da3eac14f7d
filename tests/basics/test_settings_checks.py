"""What can't hold in the shop's settings: each told with its field."""

from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.settings import CategoryBands, DepositRule, FeeRule, MarkupBand, PriceEnding, Tolerance
from sourcing.basics.settings_checks import settings_contradictions
from sourcing.basics.value import changed
from tests.quoting.test_pricing_and_totals import settings

START = date(2026, 1, 1)
FEE = FeeRule(name="Disposal", of="document", charge=Decimal(3), starts_on=START)
BAND = MarkupBand(from_cost=Decimal(0), multiplier=Decimal("1.4"))


def fee(**fields: object) -> FeeRule:
    """A rule that differs from a sound one."""
    return FeeRule(**{"name": "Disposal", "of": "document", "starts_on": START, **fields})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"fee_rules": (fee(percent=Decimal(2)),)}, "fee_rules.1.percent"),
        ({"fee_rules": (fee(of="labour", charge=Decimal(2)),)}, "fee_rules.1.charge"),
        ({"fee_rules": (fee(of="labour", percent=Decimal(2), categories=("oil",)),)}, "fee_rules.1.categories"),
        ({"fee_rules": (FEE, FEE)}, "fee_rules.2"),
        ({"fee_rules": (fee(name=" "),)}, "fee_rules.1.name"),
        ({"category_bands": (CategoryBands(category=" ", bands=(BAND,)),)}, "category_bands.1.category"),
        ({"category_bands": (CategoryBands(category="oil", bands=()),)}, "category_bands.1.bands"),
        (
            {"category_bands": tuple(CategoryBands(category=name, bands=(BAND,)) for name in ("Oil", "oil"))},
            "category_bands.2.category",
        ),
        (
            {"category_bands": (CategoryBands(category="oil", bands=(BAND, BAND)),)},
            "category_bands.1.bands.2.from_cost",
        ),
        ({"markup_bands": (MarkupBand(from_cost=Decimal(0), multiplier=Decimal("0.9")),)}, "markup_bands.1.multiplier"),
        ({"markup_bands": (MarkupBand(from_cost=Decimal(5), multiplier=Decimal(2)),)}, "markup_bands.1.from_cost"),
        (
            {"category_bands": (CategoryBands(category="oil", bands=(changed(BAND, from_cost=Decimal(5)),)),)},
            "category_bands.1.bands.1.from_cost",
        ),
        ({"price_ending": PriceEnding(endings=())}, "price_ending.endings"),
        ({"price_ending": PriceEnding(endings=(Decimal("0.995"),))}, "price_ending.endings.1"),
        ({"deposit": DepositRule(percent=Decimal(120))}, "deposit.percent"),
        ({"tolerance": Tolerance(percent=Decimal(-1))}, "tolerance.percent"),
    ],
)
def test_what_cannot_hold_is_told_with_its_field(fields: dict[str, object], field: str) -> None:
    assert [one.field for one in settings_contradictions(settings(**fields))] == [field]


def test_sound_settings_are_let_through() -> None:
    sound = settings(
        fee_rules=(
            FEE,
            fee(of="labour and parts", charge=Decimal(0), percent=Decimal(2), categories=("oil",), name="Oil"),
        ),
        category_bands=(CategoryBands(category="oil", bands=(BAND,)),),
        price_ending=PriceEnding(endings=(Decimal("0.50"), Decimal("0.95"))),
        deposit=DepositRule(percent=Decimal(50)),
        tolerance=Tolerance(percent=Decimal(10), amount=Decimal(5)),
    )
    assert settings_contradictions(sound) == ()
