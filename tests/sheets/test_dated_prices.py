"""Price headers with a day: a price of a later day is asked about, kept with its day and said in the notes.

The words are common practice of price sheets, no source; the sheets are invented.
"""

from datetime import date

import pytest

from sourcing.basics.sheet import Field
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

DATED = date(2026, 1, 12)
LATER = [
    ("Prix net HT à partir du 01/02/2026", date(2026, 2, 1)),
    ("EK netto ab 01.02.", date(2026, 2, 1)),
    ("EK netto ab 01.02.2026", date(2026, 2, 1)),
    ("Net price from Feb 1", date(2026, 2, 1)),
    ("Net price valid from 2026-02-01", date(2026, 2, 1)),
    ("Net price (effective 2/15/2026)", date(2026, 2, 15)),
    ("Net price February 2026", date(2026, 2, 1)),
    ("Prijs netto vanaf 01-02-2026", date(2026, 2, 1)),
    ("Net price 2027", date(2027, 1, 1)),
]
HELD = [
    "Net price", "Net price 2026", "Net price from Jan 5", "Net price valid from 2026-01-12", "EK netto ab 10 Stück",
    "Net 1-9", "Net 10+", "Net price (effective 1/1/2026)", "EK netto Stand 02.01.2026",
]  # fmt: skip


def read(text: str, said: dict[str, Field], dated: date | None = DATED) -> SheetReading:
    hints = Hints(supplier="x", currency="EUR", meanings=said, dated=dated)
    return read_sheet(text.encode(), "prices.csv", hints)


def asked(reading: SheetReading) -> list[str]:
    return [one.found for one in reading.summary.questions if one.code == "price-of-a-later-day"]


@pytest.mark.parametrize(("header", "day"), LATER)
def test_a_price_of_a_later_day_is_asked_and_kept_with_its_day(header: str, day: date) -> None:
    text = f"Part No;Description;List;{header}\nA-1;Belt;63.90;43.90\nA-2;Pin;5.30;3.30\n"
    assert asked(read(text, {})) == [header]
    kept = read(text, {header: "net price"})
    assert (asked(kept), list(kept.offers["valid_from"])) == ([], [day, day])
    noted = [one.what for one in kept.summary.notes if one.code == "later-price-used"]
    assert len(noted) == 1 and f"from {day} on" in noted[0]


@pytest.mark.parametrize("header", HELD)
def test_a_price_that_holds_on_the_sheets_day_is_not_asked(header: str) -> None:
    text = f"Part No;Description;List;{header}\nA-1;Belt;63.90;43.90\nA-2;Pin;5.30;3.30\n"
    kept = read(text, {header: "net price"})
    assert (asked(read(text, {})), list(kept.offers["valid_from"])) == ([], [None, None])
    assert not [one for one in kept.summary.notes if one.code == "later-price-used"]


TODAY, LATER_ON = "Prix net HT jusqu'au 31/01/2026", "Prix net HT à partir du 01/02/2026"
TWO = f"Référence;Désignation;{TODAY};{LATER_ON}\nA-1;Courroie;40,30;43,90\nA-2;Boulon;3,10;3,30\n"


def test_of_two_prices_the_later_one_is_never_taken_by_itself() -> None:
    assert asked(read(TWO, {})) == [LATER_ON]
    kept = read(TWO, {TODAY: "net price", LATER_ON: "not used"})
    assert kept.summary.questions == ()
    assert [str(row[0].price) for row in kept.offers["breaks"]] == ["40.30", "3.10"]
    assert list(kept.offers["valid_from"]) == [None, None]
    assert list(kept.offers["valid_to"]) == [date(2026, 1, 31)] * 2


def test_a_day_of_two_readings_is_asked_with_both() -> None:
    text = "Part No,Description,Net price from 1/2/2026\nA-1,Belt,43.90\n"
    asked_of = [one.what for one in read(text, {}).summary.questions if one.code == "price-of-a-later-day"]
    assert len(asked_of) == 1 and "2026-01-02 or 2026-02-01" in asked_of[0]


def test_a_row_that_begins_later_than_its_header_counts() -> None:
    header = "EK netto ab 01.02.2026"
    text = f"Part No;Description;{header};Gültig ab\nA-1;Belt;43,90;2026-03-01\nA-2;Pin;3,30;\n"
    kept = read(text, {header: "net price"})
    assert list(kept.offers["valid_from"]) == [date(2026, 3, 1), date(2026, 2, 1)]
