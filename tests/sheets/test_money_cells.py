"""Prices: decimal marks judged by column, words for no price, problems; Babel's formats are the outside check."""

from decimal import Decimal

import pytest
from babel.numbers import format_currency, format_decimal
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.sheets.cells.amounts import clear_mark
from sourcing.sheets.cells.basis_cells import Basis
from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.money_cells import (
    BasedPrice,
    _price,
    currencies_in,
    decimal_mark,
    parse_core_charge,
    parse_money,
)

AMOUNTS = st.lists(st.decimals("0.01", "999999.99", places=2), min_size=1, max_size=20)


def price(text: str, *others: str, currency: str = "USD") -> Decimal | BasedPrice | str | None:
    """What the first of these cells of one column gives: a price, none, or the code of its problem."""
    found = parse_money([text, *others], currency)[0]
    return found.code if isinstance(found, Bad) else found


@given(AMOUNTS, st.sampled_from(["en_US", "de_DE", "de_CH", "en_GB", "it_IT", "da_DK", "fr_FR"]))
@settings(max_examples=200, deadline=None)
def test_what_babel_writes_for_a_country_is_read_back(amounts: list[Decimal], locale: str) -> None:
    """Locale data of Unicode CLDR by way of Babel: thousands by comma, dot, apostrophe or narrow space."""
    cells = [format_decimal(amount, "#,##0.00", locale) for amount in amounts]
    assert parse_money(cells, "EUR") == amounts


@given(AMOUNTS, st.sampled_from([("en_US", "USD"), ("de_DE", "EUR"), ("de_DE", "USD"), ("en_GB", "GBP")]))
@settings(max_examples=100, deadline=None)
def test_currency_as_babel_writes_it_is_read_back(amounts: list[Decimal], country: tuple[str, str]) -> None:
    locale, currency = country
    assert parse_money([format_currency(amount, currency, locale=locale) for amount in amounts], currency) == amounts


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.50", "12.50"), ("12,50", "12.50"), ("1,249.00", "1249.00"), ("1.249,00", "1249.00"), ("0.125", "0.125"),
        ("1'249.00", "1249.00"), ("1 249,00", "1249.00"), ("1\u202f249,00", "1249.00"), (".50", "0.50"), ("7", "7"),
        ("1234.567", "1234.567"), ("1,234,567", "1234567"), ("$12.50", "12.50"), ("12.50 USD", "12.50"),
        ("USD 12.50", "12.50"), ("US$ 12.50", "12.50"), ("12.50 ea", "12.50"), ("12.50/ea", "12.50"),
        ("$ 1,249.00 each", "1249.00"), ("１２.５０", "12.50"), ("  12.50\u00a0", "12.50"), ("12.5000", "12.5000"),
    ],
)  # fmt: skip
def test_a_clear_price(text: str, value: str) -> None:
    assert str(price(text)) == value


@pytest.mark.parametrize(
    "text", ["", " ", "CALL", "Call for price", "N/A", "POA", "tbd", "-", "–", "auf Anfrage", "NLA"]
)
def test_no_price_is_none_and_never_zero(text: str) -> None:
    assert price(text, "12.50") is None


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("1,234", "price-ambiguous"), ("12.345", "price-ambiguous"), ("0.00", "price-not-positive"),
        ("0", "price-not-positive"), ("-5.00", "price-not-positive"), ("(5.00)", "price-not-positive"),
        ("5.00-", "price-not-positive"), ("12.50.1", "price-unreadable"), ("1,23,456.00", "price-unreadable"),
        ("12 50", "price-unreadable"), ("12.50/KT", "price-basis-unreadable"), ("1.2E+03", "price-unreadable"),
        ("12.50 10%", "price-unreadable"), ("abc", "price-unreadable"), ("#REF!", "price-unreadable"),
        ("EUR 12.50", "price-other-currency"), ("€12.50", "price-other-currency"),
        ("12.50 CAD", "price-other-currency"),
        ("1234567890123.00", "price-unreadable"), ("2026-03-05 00:00:00", "price-unreadable"),
        ("٣", "price-unreadable"),
    ],
)  # fmt: skip
def test_a_problem_and_never_a_guess(text: str, code: str) -> None:
    assert price(text) == code


@pytest.mark.parametrize(("others", "value"), [(["12.50"], "1.234"), (["12,50"], "1234"), (["1.249,00"], "1234")])
def test_the_column_tells_what_one_cell_does_not(others: list[str], value: str) -> None:
    assert price("1.234", *others) == Decimal(value)


def test_an_unclear_price_shows_both_readings() -> None:
    bad = parse_money(["1,234"], "USD")[0]
    assert isinstance(bad, Bad) and bad.suggestions == ("1.234", "1234")


def test_a_cell_against_its_column_is_a_problem_and_the_column_goes_on() -> None:
    column = [f"{n}.50" for n in range(1, 30)] + ["7,25"]
    found = parse_money(column, "USD")
    assert isinstance(found[-1], Bad) and found[-1].code == "price-mark-differs"
    assert found[0] == Decimal("1.50")


def test_where_both_marks_are_common_only_clear_cells_are_prices() -> None:
    assert decimal_mark(["1.50", "2,50", "3.50", "4,50"]) == ""
    assert price("1.234", "1.50", "2,50", "3.50", "4,50") == "price-ambiguous"
    assert price("1.50", "2,50", "3.50", "4,50") == Decimal("1.50")


def test_prices_are_decimals_not_floats() -> None:
    assert all(type(found) is Decimal for found in parse_money(["0.10", "0.1", "1", Decimal("0.3")], "USD"))


def test_a_core_charge_of_zero_says_there_is_none_and_a_blank_says_nothing() -> None:
    assert parse_core_charge(["0.00", "", "15.00"], "USD") == [Decimal(0), None, Decimal(15)]


@pytest.mark.parametrize(
    ("digits", "mark"),
    [("1", ""), ("1.2", "."), ("1,2", ","), ("1.234", "?"), ("0.123", "."), ("1234,567", ","), ("1.234.567", ","),
     ("1,234.5", "."), ("1.234,5", ","), ("1.2.3", "")],
)  # fmt: skip
def test_the_mark_one_cell_shows(digits: str, mark: str) -> None:
    assert clear_mark(digits) == mark


def test_currencies_the_cells_name() -> None:
    assert currencies_in(["€ 1,50", "2,50 EUR", "3,50", ""]) == {"EUR"}
    assert currencies_in(["€ 1,50", "2,50", "3,50"]) == set()
    assert currencies_in(["$1.50", "CALL", "1.50"]) == set()


LOCALES = ["en", "de", "fr", "es", "nl", "de_CH"]
COLUMN = st.lists(st.decimals("0.01", "9999999.99", places=2), min_size=20, max_size=20)


@given(COLUMN, st.sampled_from(LOCALES))
@settings(max_examples=150, deadline=None)
def test_a_column_of_twenty_in_every_locale_is_read_back(amounts: list[Decimal], locale: str) -> None:
    """Unicode CLDR by way of Babel, two decimals, its own grouping."""
    assert parse_money([format_decimal(amount, "#,##0.00", locale) for amount in amounts], "EUR") == amounts


@given(
    COLUMN,
    st.sampled_from([("nl", "EUR"), ("fr", "EUR"), ("es", "EUR"), ("de_CH", "CHF"), ("sv", "SEK"), ("pl", "PLN")]),
)
@settings(max_examples=100, deadline=None)
def test_a_column_with_the_currency_in_every_locale_is_read_back(
    amounts: list[Decimal], country: tuple[str, str]
) -> None:
    cells = [format_currency(amount, country[1], locale=country[0]) for amount in amounts]
    assert parse_money(cells, country[1]) == amounts
    assert currencies_in(cells) <= {country[1]}


@pytest.mark.parametrize(
    ("text", "currency", "value"),
    [
        ("12,50 €", "EUR", "12.50"), ("EUR 12,50", "EUR", "12.50"), ("€12", "EUR", "12"), ("12,--", "EUR", "12"),
        ("12.-", "CHF", "12"), ("CHF 12.—", "CHF", "12"), ("12.–", "CHF", "12"), ("Fr. 12.50", "CHF", "12.50"),
        ("kr 125,00", "SEK", "125.00"), ("125,00 kr.", "DKK", "125.00"), ("USD12.50", "USD", "12.50"),
        ("$.95", "USD", "0.95"), ("1\u2009234,50", "EUR", "1234.50"), ("1\u00a0234,50", "EUR", "1234.50"),
        ("1’234.50", "CHF", "1234.50"), ("12,50 euro", "EUR", "12.50"), ("12.50 USD each", "USD", "12.50"),
        ("12,50 / pièce", "EUR", "12.50"), ("12,50 p/st", "EUR", "12.50"), ("12.50/1 ea", "USD", "12.50"),
        ("CA$12.50", "CAD", "12.50"), ("12,50 zł", "PLN", "12.50"), ("12.50/pair", "USD", "12.50"),
    ],
)  # fmt: skip
def test_usual_writings(text: str, currency: str, value: str) -> None:
    assert str(price(text, currency=currency)) == value


@pytest.mark.parametrize(
    ("text", "currency", "value", "basis"),
    [
        ("12.50/C", "USD", "12.50", Basis(100, "piece")), ("12.50 /100", "USD", "12.50", Basis(100, "piece")),
        ("12,50 €/100 Stk", "EUR", "12.50", Basis(100, "piece")), ("$4.10/ft", "USD", "4.10", Basis(1, "foot")),
        ("3,20 €/m", "EUR", "3.20", Basis(1, "metre")), ("12.50 per pack", "USD", "12.50", Basis(1, "pack")),
        ("12.50/M", "USD", "12.50", Basis(1000, "piece")), ("12,50/100 EUR", "EUR", "12.50", Basis(100, "piece")),
        ("12,50 par lot", "EUR", "12.50", Basis(1, "pack")), ("12,50 je 100", "EUR", "12.50", Basis(100, "piece")),
    ],
)  # fmt: skip
def test_a_price_that_says_what_it_is_for(text: str, currency: str, value: str, basis: Basis) -> None:
    assert price(text, currency=currency) == BasedPrice(Decimal(value), basis)


@pytest.mark.parametrize(
    ("text", "currency"), [("12.50/m", "USD"), ("3,20 €/M", "EUR"), ("12.50/roll", "USD"), ("12.50/KT", "USD")]
)
def test_a_letter_that_may_mean_metre_or_thousand_is_a_problem(text: str, currency: str) -> None:
    assert price(text, currency=currency) == "price-basis-unreadable"


@pytest.mark.parametrize(
    ("text", "suggestions"),
    [
        ("12.50*", ("12.50",)), ("12.50†", ("12.50",)), ("12.50²", ("12.50",)), ("12.5.0", ()),
        ("$12.50 *", ("$12.50",)),
        ("12.50 1)", ("12.50",)), ("12,50,1", ()), ("1O.50", ()), ("1l.50", ()), ("12.50 13.20", ()), ("12€50", ()),
        ("12-May", ("12.5", "5.12")), ("2026-05-12 00:00:00", ("12.5", "5.12")), ("1.2E+3", ()), ("12.50%", ()),
        ("R$ 12.50", ()), ("12.50-13.20", ()), ("ab 12,50", ()), ("--12.50", ()), ("(12.50", ()), ("½", ()),
        ("12½", ()), ("12.50 C", ()), ("$", ()), ("0.0.0", ()),
    ],
)  # fmt: skip
def test_unreadable_with_what_may_have_been_meant(text: str, suggestions: tuple[str, ...]) -> None:
    found = parse_money([text, "1.00"], "USD")[0]
    assert isinstance(found, Bad) and (found.code, found.suggestions) == ("price-unreadable", suggestions)


@pytest.mark.parametrize("text", ["(3.20)", "12.50-", "-$5.00", "($5.00)", "−5.00", "$ -5.00", "0.00 $", "0"])
def test_nothing_or_less_is_no_price(text: str) -> None:
    assert price(text, "1.00") == "price-not-positive"


@pytest.mark.parametrize(
    "text",
    ["sur demande", "Nous consulter", "consultar", "A consultar", "op aanvraag", "Prijs op aanvraag", "auf Anfrage",
     "TBA", "P.O.A.", "n.v.t.", "Call!", "nicht mehr lieferbar", "descatalogado"],
)  # fmt: skip
def test_no_price_in_five_languages(text: str) -> None:
    assert price(text, "12.50") is None


@given(st.lists(st.text("0125.,'$€-/ Cmft*(", max_size=9), min_size=1, max_size=8), st.sampled_from(["USD", "EUR"]))
@settings(max_examples=400, deadline=None)
def test_a_column_by_shapes_is_read_as_its_cells_are(cells: list[str], currency: str) -> None:
    """The short way by shapes against the long way for each cell with the column's mark."""
    mark = decimal_mark(cells)
    for cell, found in zip(cells, parse_money(cells, currency), strict=True):
        alone = _price(cell, mark, currency)
        shown = [(one.code, one.suggestions) if isinstance(one, Bad) else one for one in (found, alone)]
        assert shown[0] == shown[1]


def test_number_cells_of_a_workbook_stay_among_texts() -> None:
    found = parse_money([Decimal("12.5"), "CALL", "13.20", Decimal(0)], "USD")
    assert found[:3] == [Decimal("12.5"), None, Decimal("13.20")] and isinstance(found[3], Bad)


def test_a_core_charge_is_for_one_piece() -> None:
    assert parse_core_charge(["15.00/ea", "15.00 ea"], "USD") == [Decimal(15), Decimal(15)]
    assert isinstance(parse_core_charge(["15.00/C"], "USD")[0], Bad)
