"""Lead times in words. A week is five working days: common practice, no source."""

import pytest

from sourcing.sheets.lead_time_cells import lead_time_parser, parse_lead_time


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
