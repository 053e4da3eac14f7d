"""A second header row within a table: read anew where it says anything else than the first, and never thrown away.

The sheets are invented; the spellings are common practice of price sheets, no source.
"""

from decimal import Decimal

import pytest

from sourcing.basics.sheet import Field
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

FIRST = "Item #,Brand,Mfg #,Description,Net,Stock\nMR-1,Brackwell,BW-20142,Belt,54.45,5\n,,,,,\n"


def read(
    second: str, said: dict[str, Field] | None = None, row: str = "MR-7,Brackwell,BW-33001,Plug,28.00,80\n"
) -> SheetReading:
    """One row under the first header, one under the second."""
    hints = Hints(supplier="maple", currency="CAD", meanings=said or {})
    return read_sheet(f"{FIRST}{second}\n{row}".encode(), "prices.csv", hints)


def last_price(reading: SheetReading) -> tuple[Decimal, int]:
    """The last row's first price, and for how many pieces it is."""
    last = reading.offers.iloc[-1]
    return last["breaks"][0].price, last["price_basis"]


def asked(reading: SheetReading) -> list[str]:
    return [one.found for one in reading.summary.questions]


@pytest.mark.parametrize(
    ("second", "count"),
    [("Net per 10", 10), ("Net per 100", 100), ("Netto je 100", 100), ("Prix net les 100", 100), ("Net / 100", 100)],
)
def test_a_second_header_whose_price_is_for_more_is_read_by_its_own_words(second: str, count: int) -> None:
    reading = read(f"Item #,Brand,Mfg #,Description,{second},Stock")
    assert asked(reading) == []
    assert last_price(reading) == (Decimal("28.00"), count)
    assert reading.offers.iloc[0]["price_basis"] == 1


def test_a_second_header_that_leaves_its_price_open_is_asked() -> None:
    second = "Item #,Brand,Mfg #,Description,Net / 10,Stock"
    assert asked(read(second)) == ["Net / 10"]
    reading = read(second, {"Net / 10": "net price"})
    assert (asked(reading), last_price(reading)) == ([], (Decimal("28.00"), 10))


@pytest.mark.parametrize("word", ["Net page price", "Our figure"])
def test_rows_under_words_nobody_knows_are_told_and_not_priced_by_the_first_header(word: str) -> None:
    reading = read(f"Item #,Brand,Mfg #,Description,{word},Stock")
    assert len(reading.offers) == 1
    assert [word in note.what for note in reading.summary.notes] == [True]


def test_a_count_that_becomes_a_pack_is_read_as_that() -> None:
    assert read("Item #,Brand,Mfg #,Description,Net,Pack").offers.iloc[-1]["pack"] == 80


def test_columns_in_another_order_with_a_price_for_more_are_read_by_their_own_header() -> None:
    reading = read("Item #,Description,Net per 10,Stock,Brand,Mfg #", row="MR-7,Plug,28.00,80,Brackwell,BW-33001\n")
    assert last_price(reading) == (Decimal("28.00"), 10)
    assert reading.offers.iloc[-1]["maker_number"] == "BW-33001"


@pytest.mark.parametrize("second", ["Item #,Brand,Mfg #,Description,Net,Stock", "ITEM #,Brand,Mfg #,Descr.,net,Stock"])
def test_the_same_header_again_stays_a_row_of_structure(second: str) -> None:
    reading = read(second)
    assert len(reading.summary.regions) == 1
    assert [row.kind for row in reading.structure if row.row == 4] == ["header"]
    assert last_price(reading) == (Decimal("28.00"), 1)
