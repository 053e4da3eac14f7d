"""GTIN, country of origin, tariff code.

GTIN: check digit rule of the GS1 General Specifications; 6291041500213 is the worked example on the GS1 Hong Kong
page (sum 57, check digit 3); 73513537, 98412345678908 and 9780471117094 stand in the documentation of python-stdnum;
036000291452 is the usual textbook UPC (from memory); the rest are computed, with restricted-circulation prefixes.
"""

from decimal import Decimal

import pytest
from babel import Locale
from hypothesis import given
from hypothesis import strategies as st
from stdnum import ean

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.code_cells import (
    GTIN_LENGTHS,
    LANGUAGES,
    has_right_check_digit,
    parse_gtins,
    parse_origins,
    parse_tariff_codes,
)
from sourcing.sheets.worksheet import Cell


@pytest.mark.parametrize(
    "gtin",
    ["6291041500213", "73513537", "98412345678908", "9780471117094", "036000291452", "290000000012", "2000000000015",
     "20000011", "12000000000012", "2000160000009",
     "614141000036", "10614141000415"],  # prefix 0614141 of the GS1 General Specifications' examples (from memory)
)  # fmt: skip
def test_a_right_gtin(gtin: str) -> None:
    assert parse_gtins([gtin]) == [gtin]


def test_the_rule_does_not_notice_neighbours_that_differ_by_five() -> None:
    """2000160000009 with 1 and 6 swapped: computed, a known limit of the rule."""
    assert parse_gtins(["2000610000009"]) == ["2000610000009"]


@pytest.mark.parametrize(
    ("cell", "code", "suggestions"),
    [
        ("6291041500214", "gtin-check-digit", ()), ("6921041500213", "gtin-check-digit", ()),
        ("36000291452", "gtin-lost-zero", ("036000291452",)), ("6.29104E+12", "gtin-unreadable", ()),
        (Decimal(36000291452), "gtin-lost-zero", ("036000291452",)), ("0471117099", "gtin-unreadable", ()),
        ("0000000000000", "gtin-unreadable", ()), ("12345", "gtin-unreadable", ()), ("٣٣٣٣٣٣٣٣", "gtin-unreadable", ()),
        ("123456789012345", "gtin-unreadable", ()),
    ],
)  # fmt: skip
def test_no_gtin(cell: Cell, code: str, suggestions: tuple[str, ...]) -> None:
    found = parse_gtins([cell])[0]
    assert isinstance(found, Bad) and (found.code, found.suggestions) == (code, suggestions)


@given(st.from_regex(r"[0-9]{7,13}", fullmatch=True))
def test_check_digits_by_the_rule_written_out(body: str) -> None:
    """From the right, body digits times 3, 1, 3, 1; the check digit fills up to the next ten."""
    total = sum(int(digit) * (3 if at % 2 == 0 else 1) for at, digit in enumerate(reversed(body)))
    right = -total % 10
    assert [digit for digit in range(10) if has_right_check_digit(f"{body}{digit}")] == [right]


@given(st.from_regex(r"[0-9]{7,13}", fullmatch=True))
def test_check_digits_against_python_stdnum(body: str) -> None:
    """`stdnum.ean` reckons the same digit and takes the same numbers of 8, 12, 13 and 14 digits."""
    digit = ean.calc_check_digit(body)
    assert [other for other in "0123456789" if has_right_check_digit(body + other)] == [digit]
    if len(body) + 1 in GTIN_LENGTHS:
        assert ean.is_valid(body + digit)


@given(st.from_regex(r"[0-9]{14}", fullmatch=True).filter(has_right_check_digit), st.integers(0, 12))
def test_swapped_neighbours_are_noticed_but_where_they_differ_by_five(gtin: str, at: int) -> None:
    """Weights 1 and 3: a swap changes the sum by twice the difference, and ten is what is looked at (arithmetic)."""
    swapped = gtin[:at] + gtin[at + 1] + gtin[at] + gtin[at + 2 :]
    assert has_right_check_digit(swapped) == (abs(int(gtin[at]) - int(gtin[at + 1])) in (0, 5))
    assert ean.is_valid(swapped) == has_right_check_digit(swapped)


def test_a_zero_put_back_is_right_again_and_a_shortened_number_is_lost() -> None:
    """Eleven digits of 036000291452 (textbook UPC, from memory); 6.29104E+12 of 6291041500213 (GS1 Hong Kong)."""
    assert ean.is_valid("36000291452".zfill(14)) and ean.is_valid("036000291452")
    found = parse_gtins(["36000291452", "6.29104E+12"])
    assert [one.suggestions for one in found if isinstance(one, Bad)] == [("036000291452",), ()]


def test_a_gtin_in_other_dress() -> None:
    assert parse_gtins(["6291-0415-00213", "6 291041 500213", '="036000291452"', "'036000291452", "", "n/a"]) == [
        "6291041500213", "6291041500213", "036000291452", "036000291452", "", "",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "code"),
    [("TW", "TW"), ("twn", "TW"), ("Made in Taiwan", "TW"), ("PRC", "CN"), ("U.S.A.", "US"), ("UK", "GB"),
     ("Deutschland", "DE"), ("Allemagne", "DE"), ("Alemania", "DE"), ("Duitsland", "DE"), ("Österreich", "AT"),
     ("Hergestellt in China", "CN"), ("Korea", "KR"), ("Czech Republic", "CZ"), ("Hong Kong", "HK"), ("Turkey", "TR"),
     ("Niger", "NE"), ("Nigeria", "NG"), ("", ""), ("-", "")],
)  # fmt: skip
def test_a_country(text: str, code: str) -> None:
    assert parse_origins([text]) == [code]


@pytest.mark.parametrize("text", ["EU", "China/Taiwan", "XX", "ZZ", "UN", "Atlantis", "Asia", "1"])
def test_no_country(text: str) -> None:
    found = parse_origins([text])[0]
    assert isinstance(found, Bad) and found.code == "origin-unknown"


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_name_of_unicode_cldr_gives_its_own_code(language: str) -> None:
    """No name of one language hides a country of another."""
    codes = [
        code for code in ("US", "DE", "FR", "ES", "NL", "CN", "TW", "JP", "IT", "GB", "MX", "IN", "PL", "AT", "CH")
    ]
    assert parse_origins([Locale(language).territories[code] for code in codes]) == codes


@pytest.mark.parametrize(
    ("alpha_3", "code"), [("USA", "US"), ("DEU", "DE"), ("CHN", "CN"), ("CHE", "CH"), ("GBR", "GB")]
)
def test_three_letters_of_iso_3166(alpha_3: str, code: str) -> None:
    assert parse_origins([alpha_3]) == [code]


def test_tariff_codes() -> None:
    """4010.39 is the heading's subdivision for V-belts of the Harmonized System (from memory)."""
    assert parse_tariff_codes(["4010.39", "4010 39 00", "4010.39.00.00", "", "-"]) == [
        "401039", "40103900", "4010390000", "", "",
    ]  # fmt: skip


def test_a_tariff_code_that_has_lost_its_zero() -> None:
    found = parse_tariff_codes(["0901210000", "0901220000", "901210000"])[2]
    assert isinstance(found, Bad) and (found.code, found.suggestions) == ("tariff-code-lost-zero", ("0901210000",))


@pytest.mark.parametrize("text", ["4010", "40103", "4010.39.00.0", "V-belt", "4010390000123", "401039000"])
def test_no_tariff_code(text: str) -> None:
    found = parse_tariff_codes([text, "401039"])[0]
    assert isinstance(found, Bad) and found.code == "tariff-code-unreadable"
