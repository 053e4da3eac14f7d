"""Lead times in words. A week is five working days: common practice, no source."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.sheets.cells.lead_time_cells import lead_time_parser, parse_lead_time, parse_lead_times

SHEET_DAY = date(2026, 11, 25)
FIFTH = date(2026, 12, 5)


@pytest.mark.parametrize(
    ("text", "least", "most"),
    [
        ("In stock", 0, 0), ("ships same day", 0, 0), ("In stock, ships same day", 0, 0), ("Next day", 1, 1),
        ("2-3 wks", 10, 15), ("2 - 3 weeks", 10, 15), ("2–3 weeks", 10, 15), ("2 to 3 weeks", 10, 15),
        ("5-7 days", 5, 7), ("1 week", 5, 5), ("Special order 10-14 days", 10, 14), ("3 business days", 3, 3),
        ("approx. 2 weeks ARO", 10, 10), ("48 hrs", 2, 2), ("24h", 1, 1), ("1 month", 20, 23), ("10 days", 10, 10),
        ("within 5 days", 0, 5), ("Backorder, 2-3 weeks", 10, 15), ("sofort", 0, 0), ("ab Lager", 0, 0),
        ("2-3 Wochen", 10, 15), ("5 Tage", 5, 5), ("ca. 2 Wochen", 10, 10), ("3 bis 5 Werktage", 3, 5),
        ("Lieferzeit 1 Woche", 5, 5),
    ],
)  # fmt: skip
def test_words_to_working_days(text: str, least: int, most: int) -> None:
    time = parse_lead_time(text)
    assert time is not None and (time.text, time.least, time.most) == (text, least, most)


@pytest.mark.parametrize(
    "text",
    ["Backorder", "call", "auf Anfrage", "NLA", "not in stock", "no longer in stock", "mid April", "2026-03-05", "5",
     "5-7", "3-2 weeks", "2 weeks or 3 weeks",
     "In stock 2 days, backorder 3 weeks", "never within 5 days", "2 weeks after the maker answers", "1.5 weeks",
     "week 14", "4L400", "5 pcs"],
)  # fmt: skip
def test_words_that_name_no_time_keep_their_text_and_give_no_days(text: str) -> None:
    time = parse_lead_time(text)
    assert time is not None and (time.text, time.least, time.most) == (text, None, None)


def test_a_blank_states_nothing() -> None:
    assert parse_lead_time("") is None and parse_lead_time(" - ") is None


@pytest.mark.parametrize(
    ("header", "days"),
    [("Lead time (days)", 5), ("Lead time (weeks)", 25), ("Lieferzeit Tage", 5), ("Lead time", None)],
)
def test_a_bare_number_needs_the_headers_unit(header: str, days: int | None) -> None:
    time = lead_time_parser(header)("5")
    assert time is not None and (time.least, time.most) == (days, days)


def leaves_on(text: str, *others: str, dated: date | None = SHEET_DAY) -> date | None:
    """The day the first of these cells of one column names; its words are kept and give no days."""
    time = parse_lead_times([text, *others], "", dated)[0]
    assert time is not None and (time.text, time.least, time.most) == (text, None, None)
    return time.leaves_on


@pytest.mark.parametrize(
    ("text", "least", "most"),
    [
        ("ARO 10 days", 10, 10), ("10 days ARO", 10, 10), ("ships same day before 2pm", 0, 0),
        ("same day if ordered by 14:00", 0, 0), ("same day if ordered before 2 p.m.", 0, 0), ("48 hrs", 2, 2),
        ("3-5 business days", 3, 5), ("2 à 3 semaines", 10, 15), ("sous 48h", 0, 2), ("3 días", 3, 3),
        ("1 semana", 5, 5), ("2-3 weken", 10, 15), ("op voorraad", 0, 0), ("levertijd 5 dagen", 5, 5),
        ("dispo sous 10 jours", 0, 10), ("en stock", 0, 0), ("3 jours ouvrés", 3, 3), ("1 mois", 20, 23),
        ("2 a 3 semanas", 10, 15), ("binnen 3 werkdagen", 0, 3), ("bestellt bis 14 Uhr: am selben Tag", 0, 0),
    ],
)  # fmt: skip
def test_words_in_five_languages(text: str, least: int | None, most: int | None) -> None:
    time = parse_lead_times([text], "", SHEET_DAY)[0]
    assert time is not None and (time.text, time.least, time.most, time.leaves_on) == (text, least, most, None)


@pytest.mark.parametrize(
    "text",
    ["due 5 Dec", "exp. 05.12.2026", "ETA 2026-12-05", "BO 05.12.", "backorder, due 5 December", "due Dec 5",
     "B/O until 5 Dec 2026", "lieferbar ab 05.12.2026", "prévu le 5 décembre", "verwacht 5 dec", "2026-12-05",
     "disponible a partir de 5 dic"],
)  # fmt: skip
def test_a_day_the_words_name(text: str) -> None:
    assert leaves_on(text) == FIFTH


def test_a_day_without_a_year_is_the_first_on_or_after_the_sheets() -> None:
    assert leaves_on("due 25 Nov") == SHEET_DAY
    assert leaves_on("due 24 Nov") == date(2027, 11, 24)
    assert leaves_on("due 29 Feb") == date(2028, 2, 29)
    assert leaves_on("due 5 Dec", dated=None) is None


def test_the_column_shows_the_order_of_day_and_month() -> None:
    assert leaves_on("BO 12/05") is None
    assert leaves_on("BO 12/05", "BO 12/25") == FIFTH
    assert leaves_on("BO 05/12", "BO 25/12") == FIFTH
    assert leaves_on("BO 12/05", "BO 25/12", "BO 12/25") is None
    assert leaves_on("B/O until 12/05/2026", "due 11/30/2026") == FIFTH


@pytest.mark.parametrize(
    "text",
    ["12/05", "12.5", "5-7", "2-3", "Dec 2026", "due early December", "not due 5 Dec", "due 31 Nov", "due 12.13.2026",
     "5 Dec or 6 Dec", "KW 54", "mid KW 49", "part no. 5.12.2026"],
)  # fmt: skip
def test_words_that_name_no_day_for_sure(text: str) -> None:
    assert leaves_on(text) is None


@given(
    st.dates(date(2020, 1, 1), date(2080, 12, 31)),
    st.sampled_from(["KW {}", "week {}", "wk {}", "semaine {}", "semana {}"]),
)
def test_a_calendar_week_is_one_of_iso_8601_and_its_friday(day: date, words: str) -> None:
    """Against Python's own weeks (date.fromisocalendar)."""
    year, week, _ = day.isocalendar()
    friday = date.fromisocalendar(year, week, 5)
    assert leaves_on(f"{words.format(week)}/{year}") == friday
    assert leaves_on(words.format(week), dated=day) in (
        friday,
        leaves_on(words.format(week), dated=friday + timedelta(1)),
    )
    if day <= friday:
        assert leaves_on(words.format(week), dated=day) == friday


def test_a_spreadsheets_date_under_a_header_of_days_is_a_damaged_range() -> None:
    found = parse_lead_times(["2026-12-05 00:00:00"], "Lead time (days)", SHEET_DAY)[0]
    assert found is not None and found.leaves_on is None
    assert leaves_on("2026-12-05 00:00:00") == FIFTH


@pytest.mark.parametrize("header", ["Délai (jours)", "Plazo (días)", "Levertijd (dagen)", "Lieferzeit (Tage)"])
def test_the_headers_unit_in_five_languages(header: str) -> None:
    assert [(time.least, time.most) for time in parse_lead_times(["5", "2-3"], header, None) if time] == [
        (5, 5),
        (2, 3),
    ]
