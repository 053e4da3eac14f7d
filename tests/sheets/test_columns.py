"""Headers to meanings: the dictionary, a person's word, quantity breaks, and what is refused rather than guessed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.basics.sheet import Column, Field
from sourcing.sheets.header_words import WORDS, break_quantity, currencies_named, field_of, header_key
from sourcing.sheets.reading import Hints, SheetReading, read_sheet
from tests.sheets.sheet_files import csv_bytes


def read_header(*header: str, currency: str = "USD", meanings: dict[str, Field] | None = None) -> SheetReading:
    """A sheet of this header and one row of plausible cells."""
    data = csv_bytes([list(header), ["A1", *["5"] * (len(header) - 1)]])
    return read_sheet(data, "a.csv", Hints("stonegarth", currency, meanings or {}))


def refusal(*header: str, **more: dict[str, Field]) -> str:
    """The message this header is refused with."""
    with pytest.raises(Refused) as caught:
        read_header(*header, **more)  # type: ignore[arg-type]
    return str(caught.value)


def columns(*header: str, **more: dict[str, Field]) -> dict[str, Column]:
    """The columns of a header by their text."""
    return {column.header: column for column in read_header(*header, **more).summary.columns}  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("header", "field"),
    [
        ("Part #", "supplier number"), ("PART NO.", "supplier number"), ("Artikel-Nr.", "supplier number"),
        ("Mfr Part #", "maker number"), ("Herstellernummer", "maker number"), ("Brand", "maker"),
        ("Bezeichnung", "description"), ("UVP EUR", "list price"), ("MSRP (USD)", "list price"),
        ("Dealer Net", "net price"), ("EK netto EUR", "net price"), ("Net ($)", "net price"), ("VPE", "pack"),
        ("Price per", "price basis"), ("U/M", "price basis"), ("Bestand", "stock"), ("Qty available", "stock"),
        ("Lieferzeit", "lead time"), ("Lead Time (days)", "lead time"), ("Core", "core charge"),
        ("Superseded By", "superseded by"), ("NLA", "no longer available"), ("MOQ", "minimum"),
        ("Multiples of", "order multiple"), ("Remarks", "note"), ("Currency", "currency"), ("10+", "net price"),
    ],
)  # fmt: skip
def test_header_words(header: str, field: Field) -> None:
    assert field_of(header) == field


@pytest.mark.parametrize(
    "header", ["", "Weight", "Qty", "Price", "Preis", "Page", "Discount", "Netto-Gewicht", "10", "UPC"]
)
def test_other_words_mean_nothing(header: str) -> None:
    assert field_of(header) is None


def test_no_word_has_two_meanings() -> None:
    keys = [(header_key(word), field) for field, words in WORDS.items() for word in words.split(",")]
    assert len({key for key, _ in keys}) == len(set(keys))


@pytest.mark.parametrize(
    ("header", "pieces"),
    [("1-9", 1), ("10-49", 10), ("50+", 50), ("Qty 5+", 5), ("ab 10", 10), ("Net 10+", 10), ("10 +", 10), ("10–49", 10),
     ("1 to 4", 1), ("5 or more", 5), ("100 and up", 100), ("Qty 1-4", 1), ("ab 25 Stück", 25), (">= 10", 10),
     ("Qty 5", 5), ("1-4 USD", 1)],
)  # fmt: skip
def test_quantity_breaks(header: str, pieces: int) -> None:
    assert break_quantity(header) == pieces


@pytest.mark.parametrize(
    "header", ["9-1", "0-4", "10", "per 100", "Net per 100", "Price 2026", "A 1-4", "2026-03-05", ""]
)
def test_no_quantity_breaks(header: str) -> None:
    assert break_quantity(header) is None


@given(st.text(max_size=30))
def test_no_header_text_crashes_it(header: str) -> None:
    field_of(header)
    currencies_named(header)


def test_unknown_columns_are_listed_and_not_used() -> None:
    found = columns("Part Number", "Net", "Weight", "Colour")
    assert (found["Weight"].field, found["Weight"].why) == (None, "not known")
    assert found["Net"].field == "net price"


@pytest.mark.parametrize("header", ["Price", "Preis", "Unit price", "Price (USD)"])
def test_a_bare_price_is_refused_with_the_option_to_confirm_it(header: str) -> None:
    assert f'--column "{header}=net price"' in refusal("Part Number", header)


@pytest.mark.parametrize("said", ["Price", "price", " PRI CE "])
def test_a_confirmed_meaning_holds_without_case_and_spaces(said: str) -> None:
    assert columns("Part Number", "Price", meanings={said: "list price"})["Price"].field == "list price"


def test_a_persons_word_wins_over_the_dictionary() -> None:
    found = columns("Part Number", "Net", "List", meanings={"Net": "not used", "List": "net price"})
    assert (found["Net"].field, found["List"].field) == ("not used", "net price")


def test_two_columns_of_one_meaning_are_refused_and_not_used_settles_it() -> None:
    message = refusal("Part Number", "Net", "Your cost")
    assert "'Net' (column B), 'Your cost' (column C)" in message and '--column "Your cost=not used"' in message
    assert columns("Part Number", "Net", "Your cost", meanings={"Your cost": "not used"})["Net"].field == "net price"


def test_equal_headers_are_told_apart_by_their_letter() -> None:
    assert '--column "column C=not used"' in refusal("Part Number", "Net", "Net")
    reading = read_header("Part Number", "Net", "Net", meanings={"column C": "not used"})
    assert [column.field for column in reading.summary.columns] == ["supplier number", "net price", "not used"]


def test_every_fault_of_a_header_is_said_at_once() -> None:
    message = refusal("Part Number", "Price", "Stock", "Bestand")
    assert "could be the net price or the list price" in message and "more than one column means 'stock'" in message


def test_a_sheet_without_numbers_or_prices_is_refused_and_lists_its_headers() -> None:
    assert "hold part numbers; the headers are 'Net', 'Stock'" in refusal("Net", "Stock")
    assert "hold prices; the headers are 'Part Number', 'Stock'" in refusal("Part Number", "Stock")


def test_the_only_number_column_is_the_one_to_order_by() -> None:
    (number, *_) = read_header("Mfr Part #", "Brand", "Net").summary.columns
    assert number.field == "supplier number"


def test_a_break_header_that_became_a_date_is_refused() -> None:
    assert "'9-May'" in refusal("Part Number", "1-4", "9-May", "10+")


@pytest.mark.parametrize(
    ("text", "codes"),
    [("EK netto EUR", {"EUR"}), ("Net (USD)", {"USD"}), ("Netto €", {"EUR"}), ("Net $", set()), ("ALL PRICES", set())],
)
def test_currencies_a_header_names(text: str, codes: set[str]) -> None:
    assert currencies_named(text) == codes
