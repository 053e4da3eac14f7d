"""Money against ISO 4217, the rounding of EN 16931's published example documents, and its own promises."""

from decimal import Decimal

import pytest
from babel.numbers import get_currency_precision
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.currency import OTHER_MINOR_UNITS, TWO_MINOR_UNITS, minor_units
from sourcing.basics.money import Money, percent_of, round_half_up, share_out, total
from sourcing.basics.problem import Refused
from tests.builders import usd

# Babel's data are CLDR's, which give cash practice for these; ISO 4217 gives the figure this project keeps.
# The differences were found by comparing the two tables, ISO 4217's list of current currencies (read) and Babel's:
# Babel 2.18 has all but COP, HUF and IDR, Babel 2.19 all but RSD.
CLDR_DIFFERS = frozenset(
    ["AFN", "ALL", "COP", "HUF", "IDR", "IQD", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "RSD", "SOS", "SYP", "YER"]
)


def test_minor_units_agree_with_babel_but_for_named_currencies() -> None:
    """ISO 4217 against an independent table."""
    for currency in TWO_MINOR_UNITS | set(OTHER_MINOR_UNITS):
        if get_currency_precision(currency) != minor_units(currency):
            assert currency in CLDR_DIFFERS, currency


@pytest.mark.parametrize(
    ("currency", "units"), [("USD", 2), ("EUR", 2), ("JPY", 0), ("ISK", 0), ("KWD", 3), ("CLF", 4)]
)
def test_minor_units_of_the_standard(currency: str, units: int) -> None:
    """Source: ISO 4217, list of current currencies."""
    assert minor_units(currency) == units


def test_unknown_currency_is_refused_in_a_sentence() -> None:
    """A code the standard does not list."""
    with pytest.raises(Refused, match="'XBT' is not a currency code of ISO 4217"):
        minor_units("XBT")


# Published tax amounts and line amounts that tell half-up from half-even and from binary float.
# Source: EN 16931 validation artefacts, UBL example documents (examples 1, 2, 8, 9, discount sample) and UBL 2.1
# Invoice example; figures only.
PUBLISHED = [
    ("1460.50", "25", "365.13"),
    ("183.23", "6", "10.99"),
    ("46.37", "21", "9.74"),
    ("908.91", "21", "190.87"),
    ("147.00", "21", "30.87"),
    ("625743.54", "25", "156435.89"),
]


@pytest.mark.parametrize(("taxable", "percent", "published"), PUBLISHED)
def test_tax_rounds_as_published(taxable: str, percent: str, published: str) -> None:
    """Tax once on the sum, half up."""
    assert percent_of(usd(taxable), Decimal(percent)) == usd(published)


@pytest.mark.parametrize(
    ("quantity", "price", "basis", "published"),
    [
        (132, "15.24", 12, "167.64"),
        (1, "441.00", 12, "36.75"),
        (16000, "0.00880", 1, "140.80"),
        (100, "0.1212", 1, "12.12"),
        (250, "0.75", 1, "187.50"),
    ],
)
def test_line_amounts_as_published(quantity: int, price: str, basis: int, published: str) -> None:
    """A unit price with more decimals than the currency, and a price for twelve. Source: EN 16931 example 8, sample."""
    assert usd(str(Decimal(price) * quantity / basis)).rounded() == usd(published)


def test_half_goes_away_from_zero_and_never_through_float() -> None:
    """1.005 and 2.675 fail in binary float; a credit is the mirror of a charge (DIN 1333, commercial rounding)."""
    assert round_half_up(Decimal("1.005"), 2) == Decimal("1.01")
    assert round_half_up(Decimal("2.675"), 2) == Decimal("2.68")
    assert round_half_up(Decimal("-0.125"), 2) == Decimal("-0.13")


def test_currencies_never_mix() -> None:
    """Adding and comparing both refuse."""
    euro = Money(amount=Decimal(1), currency="EUR")
    for mix in (lambda: usd("1") + euro, lambda: usd("1") < euro, lambda: total([usd("1"), euro], "USD")):
        with pytest.raises(Refused, match="without a dated rate"):
            mix()


def test_a_fraction_of_a_cent_is_never_dropped_silently() -> None:
    """Whole minor units only."""
    with pytest.raises(ValueError, match="not a whole number of minor units"):
        usd("1.005").minor()


@given(st.integers(-100_000, 100_000), st.lists(st.integers(0, 500), min_size=1, max_size=8))
def test_shares_sum_to_the_cent(cents: int, weights: list[int]) -> None:
    """Largest remainder: the parts are the whole, and none is a cent or more off its exact share."""
    amount = usd(str(Decimal(cents) / 100))
    shares = share_out(amount, weights)
    assert total(shares, "USD") == amount.rounded()
    whole = sum(weights) or len(weights)
    for share, weight in zip(shares, weights if sum(weights) else [1] * len(weights), strict=True):
        assert abs(share.amount - amount.amount * weight / whole) < Decimal("0.01")


def test_equal_remainders_go_to_the_earlier_share_exactly() -> None:
    """8.00 by 292 and 224 parts of 2176: 107.35... and 82.35... cents, the same remainder 768 of 2176; by hand."""
    shares = share_out(usd("8.00"), [8, 9, 191, 292, 452, 500, 500, 224])
    assert (shares[3], shares[7]) == (usd("1.08"), usd("0.82"))
