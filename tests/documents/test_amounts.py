"""Money, dates and per cent on paper, against ISO 4217 and Babel."""

from datetime import date
from decimal import Decimal

import pytest
from babel.numbers import format_currency, get_currency_precision, parse_decimal
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.currency import OTHER_MINOR_UNITS, TWO_MINOR_UNITS
from sourcing.basics.money import Money
from sourcing.basics.problem import Refused
from sourcing.documents.amounts import date_text, decimal_text, money_text, month_text, page_language, percent_text

LOCALES = ("en_US", "en_GB", "de_DE", "fr_CH", "ja_JP", "sv_SE")


def money(amount: str, currency: str = "USD") -> Money:
    """An amount."""
    return Money(amount=Decimal(amount), currency=currency)


@pytest.mark.parametrize(
    ("amount", "currency", "expected"),
    [
        # Minor units by ISO 4217: USD 2, JPY 0, KWD 3, IQD 3 (Babel gives the last one none).
        ("166.6", "USD", "$166.60"),
        ("1234.5", "JPY", "¥1,235"),
        ("1.2345", "KWD", "KWD1.235"),
        ("7.5", "IQD", "IQD7.500"),
        ("-4.1", "USD", "-$4.10"),
        ("0", "USD", "$0.00"),
        # Half up at the tie: float or half-even would give 2.67 and 0.12.
        ("2.675", "USD", "$2.68"),
        ("0.125", "USD", "$0.13"),
    ],
)
def test_money_has_the_minor_units_of_iso_4217(amount: str, currency: str, expected: str) -> None:
    assert money_text(money(amount, currency), "en_US") == expected


def test_money_is_babels_wherever_babel_and_iso_agree() -> None:
    for currency in sorted(TWO_MINOR_UNITS | set(OTHER_MINOR_UNITS)):
        decimals = OTHER_MINOR_UNITS.get(currency, 2)
        if get_currency_precision(currency) != decimals:
            continue
        for locale in LOCALES:
            ours = money_text(money("-12345.25", currency).rounded(), locale)
            assert ours == format_currency(money("-12345.25", currency).rounded().amount, currency, locale=locale)


def test_babel_differs_from_iso_somewhere_so_the_standards_figures_are_needed() -> None:
    differing = [code for code in OTHER_MINOR_UNITS if get_currency_precision(code) != OTHER_MINOR_UNITS[code]]
    assert "IQD" in differing
    assert money_text(money("1", "IQD"), "de_DE").startswith("1,000")


@given(st.integers(-(10**17), 10**17), st.sampled_from(LOCALES))
def test_every_digit_survives_the_paper(cents: int, locale: str) -> None:
    amount = Decimal(cents).scaleb(-2)
    shown = money_text(money(str(amount), "EUR"), locale)
    figures = "".join(character for character in shown if character.isdigit() or character in ".,'’\xa0\u202f")
    back = parse_decimal(figures.strip("\xa0\u202f"), locale=locale)
    assert back == abs(amount)


def test_a_bigger_number_than_a_float_can_hold_is_exact() -> None:
    assert money_text(money("90071992547409.93"), "en_US") == "$90,071,992,547,409.93"
    assert decimal_text(Decimal("0.10000000000000000001"), "en_US") == "0.10000000000000000001"


def test_dates_name_the_month() -> None:
    assert date_text(date(2026, 2, 1), "en_US") == "Feb 1, 2026"
    assert date_text(date(2026, 2, 1), "en-GB") == "1 Feb 2026"


def test_percent_is_shown_as_it_is() -> None:
    assert [percent_text(Decimal(text)) for text in ("6.5", "21.07", "-100.00", "1E+1")] == [
        "6.5 %",
        "21.07 %",
        "-100.00 %",
        "10 %",
    ]
    assert percent_text(None) == "none"


def test_english_words_are_announced_as_english() -> None:
    assert [page_language(locale) for locale in ("en_US", "en-GB", "de_DE")] == ["en-US", "en-GB", "en"]


@pytest.mark.parametrize("locale", ["", "xx_YY", "en_US_", "english please"])
def test_an_unknown_locale_is_told(locale: str) -> None:
    with pytest.raises(Refused, match="locale"):
        money_text(money("1"), locale)


def test_a_month_is_written_in_words() -> None:
    """As the Unicode CLDR has it; a heading that is no month stays."""
    assert month_text("2026-01", "en_US") == "January 2026" and month_text("2026-01", "de_DE") == "Januar 2026"
    assert month_text("not approved", "en_US") == "not approved"
