"""Price headers that name a package: whether the price is for a piece or for the package is asked, never taken.

The words are common practice of price sheets, no source; the sheets are invented.
"""

from decimal import Decimal

import pytest

from sourcing.basics.sheet import Field
from sourcing.sheets.headers.package_prices import leaves_open
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet


def read(header: str, said: dict[str, Field], packs: tuple[str, str] = ("10", "1"), more: str = "") -> SheetReading:
    """Two rows with a pack column, a price under that header."""
    text = f"Part No,Description,Pkg Qty,{header}{more and ',UOM'}\nA-1,Pin,{packs[0]},7.90{more}\n"
    text += f"A-2,Belt,{packs[1]},46.00{more}\n"
    return read_sheet(text.encode(), "prices.csv", Hints(supplier="x", currency="USD", meanings=said))


def asked(reading: SheetReading) -> list[str]:
    return [one.found for one in reading.summary.questions if one.code == "price-of-a-package"]


OPEN = [
    "Pkg Price", "Package price", "Box price", "Pack Net", "Net pkg", "Net price (pkg)", "Case cost", "VPE-Preis",
    "Preis VPE", "Packungspreis", "EK VPE", "Prix boîte", "Prix du lot", "Precio caja", "Doosprijs",
    "Dealer pack price",
]  # fmt: skip
SAID = [
    "Price/Pack", "Preis je VPE", "Net price/pkg", "Price per package", "Prix par boîte", "Prijs per doos", "Net",
    "Dealer net", "Net price per 100", "Pack price each", "Backpack net", "Preis", "Ihr EK",
]  # fmt: skip


@pytest.mark.parametrize("header", OPEN)
def test_a_price_whose_header_names_a_package_is_asked_what_it_is_for(header: str) -> None:
    reading = read(header, {header: "net price"})
    assert asked(reading) == [f"{header}: per pack"]


@pytest.mark.parametrize("header", SAID)
def test_a_header_that_says_it_or_names_none_is_not_asked(header: str) -> None:
    assert not leaves_open(header)
    assert asked(read(header, {header: "net price"})) == []


def prices(reading: SheetReading) -> list[tuple[Decimal, int]]:
    return [
        (row[0].price, basis)
        for row, basis in zip(reading.offers["breaks"], reading.offers["price_basis"], strict=True)
    ]


@pytest.mark.parametrize("header", OPEN)
@pytest.mark.parametrize(("answer", "basis", "words"), [("price basis", 10, "per pack"), ("not used", 1, "each")])
def test_what_a_person_says_holds_and_is_noted(header: str, answer: Field, basis: int, words: str) -> None:
    reading = read(header, {header: "net price", f"{header}: per pack": answer})
    assert asked(reading) == []
    assert prices(reading) == [(Decimal("7.90"), basis), (Decimal("46.00"), 1)]
    noted = [one.what for one in reading.summary.notes if one.code == "package-price-said"]
    assert noted == [f"the prices of column '{header}' are read as {words}, as a person has said"]


def test_packs_of_one_piece_or_a_column_that_says_it_need_no_question() -> None:
    said: dict[str, Field] = {"Pkg Price": "net price"}
    assert asked(read("Pkg Price", said, packs=("1", ""))) == []
    assert asked(read("Pkg Price", said, more=",EA")) == []


def test_a_package_whose_pieces_nobody_counts_is_asked_and_never_a_piece_by_itself() -> None:
    said: dict[str, Field] = {"Box price": "net price"}
    text = b"Part No,Description,Box price\nA-1,Pin,7.90\n"
    found = read_sheet(text, "prices.csv", Hints(supplier="x", currency="USD", meanings=said))
    assert asked(found) == ["Box price: per pack"]
    said["Box price: per pack"] = "price basis"
    found = read_sheet(text, "prices.csv", Hints(supplier="x", currency="USD", meanings=said))
    assert [one.code for one in found.summary.problems] == ["pack-unknown"]
