"""Days, their order judged by column. Outside checks: Python's date, month names of Unicode CLDR by way of Babel."""

from datetime import date

import pytest
from babel import Locale
from babel.dates import format_date
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Place
from sourcing.documents.as_written import as_written
from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.day_cells import MONTHS, day_in_text, parse_days

DAYS = st.dates(date(2020, 1, 1), date(2099, 12, 31))
FIFTH = date(2026, 12, 5)


@pytest.mark.parametrize(
    "text",
    ["2026-12-05", "5.12.2026", "05.12.2026", "5. 12. 2026", "5.12.26", "5 Dec 2026", "5. Dezember 2026", "5-Dec-2026",
     "2026-12-05 00:00:00", "2026-12-05T00:00:00", "20261205", "2026/12/05", "December 5, 2026", "Dec 5th 2026",
     "5 décembre 2026", "5 de diciembre de 2026", "5 december 2026", "ab 05.12.2026", "05-Dec-26"],
)  # fmt: skip
def test_a_clear_day(text: str) -> None:
    assert parse_days([text]) == [FIFTH]


@given(DAYS, st.sampled_from(["en", "en_GB", "de", "fr", "es", "nl"]), st.sampled_from(["long", "medium"]))
@settings(max_examples=200, deadline=None)
def test_a_day_as_babel_writes_it_with_its_month_is_read_back(day: date, locale: str, style: str) -> None:
    text = format_date(day, style, locale=locale)
    assert parse_days([text]) == [day]


@given(
    st.lists(DAYS, min_size=1, max_size=20),
    st.sampled_from(["%d/%m/%Y", "%m/%d/%Y", "%d-%m-%Y", "%d.%m.%Y", "%Y-%m-%d"]),
)
@settings(max_examples=200, deadline=None)
def test_a_column_in_one_order_is_never_read_in_the_other(days: list[date], written: str) -> None:
    """Every day is read back or is a problem; once one above the twelfth shows the order, all are read."""
    found = parse_days([day.strftime(written) for day in days])
    assert all(one == day or isinstance(one, Bad) for one, day in zip(found, days, strict=True))
    if any(day.day > 12 for day in days):
        assert found == days


def test_a_day_that_may_be_two_shows_both() -> None:
    found = parse_days(["12/05/2026"])[0]
    assert isinstance(found, Bad) and (found.code, found.suggestions) == ("day-unclear", ())
    told = found.problem(Place(file="prices.csv")).sentence()
    assert "'12/05/2026' may be 2026-05-12 or 2026-12-05, and no other cell" in told
    assert as_written(told, "en_US").count("2026-") == 0 and "May 12, 2026 or Dec 5, 2026" in as_written(told, "en_US")
    assert parse_days(["12/12/2026"]) == [date(2026, 12, 12)]
    assert isinstance(parse_days(["12/05/2026", "12/25/2026", "25/12/2026"])[0], Bad)


@pytest.mark.parametrize(
    "text",
    ["31.11.2026", "46361", "5 Dec", "Q4 2026", "2026-13-45", "12.13.2026", "Dec 2026", "soon", "5.12.05", "20261399",
     "0000-01-01", "5 Dec 2026 and 6 Dec 2026"],
)  # fmt: skip
def test_no_day(text: str) -> None:
    found = parse_days([text])[0]
    assert isinstance(found, Bad) and found.code == "day-unreadable"


def test_a_blank_is_no_day() -> None:
    assert parse_days(["", " - "]) == [None, None]


@pytest.mark.parametrize(
    "line",
    ["Prices effective 5 December 2026", "gültig ab 05.12.2026", "valable à partir du 5 décembre 2026",
     "precios válidos desde el 5 de diciembre de 2026", "prijzen geldig vanaf 5 december 2026", "valid from:2026-12-05",
     "Price list of December 5th, 2026, page 1/12", "Preise vom 5. Dezember 2026, Seite 1 von 12", "(05.12.2026)"],
)  # fmt: skip
def test_the_day_a_line_names(line: str) -> None:
    assert day_in_text(line) == FIFTH


def test_the_first_of_a_month_in_french() -> None:
    assert day_in_text("valable à partir du 1er novembre 2026") == date(2026, 11, 1)


@pytest.mark.parametrize(
    "line",
    ["Price list December 2026", "effective 12/05/2026", "1 Nov 2026 to 31 Jan 2027", "valid until 31.12.2026",
     "1.11. bis 31.12.2026", "Tel 555-0100", "1-800-555-0100", "as of 11/26", "", "20261205"],
)  # fmt: skip
def test_a_line_that_names_no_day_for_sure(line: str) -> None:
    assert day_in_text(line) is None


@pytest.mark.parametrize("locale", ["en", "de", "fr", "es", "nl"])
def test_every_month_of_unicode_cldr_is_known(locale: str) -> None:
    months = Locale(locale).months
    for names in (months[use][width] for use in ("format", "stand-alone") for width in ("wide", "abbreviated")):
        assert {number: MONTHS[name.casefold().rstrip(".")] for number, name in names.items()} == {n: n for n in names}
