"""Prices from quantities that stand in each row, several discounts, and lines around a table that speak of prices."""

from decimal import Decimal

import pytest

from sourcing.basics.offer import PriceBreak
from sourcing.basics.sheet import Field
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

PAIRS = "Part No,Description,Qty 1,Price 1,Qty 2,Price 2\n"


def read(text: str, **said: Field) -> SheetReading:
    """A comma-separated sheet; '_' in what is said of a column stands for a blank."""
    meanings = {header.replace("_", " "): field for header, field in said.items()}
    return read_sheet(text.encode(), "prices.csv", Hints(supplier="x", currency="USD", meanings=meanings))


def breaks(reading: SheetReading) -> list[list[tuple[int, str]]]:
    """The price breaks of each offer."""
    return [[(one.from_quantity, str(one.price)) for one in row] for row in reading.offers["breaks"]]


def codes(reading: SheetReading) -> list[str]:
    """What is asked and what is wrong, by code."""
    return [one.code for one in (*reading.summary.questions, *reading.summary.problems)]


def test_one_question_for_all_paired_prices() -> None:
    assert codes(read(PAIRS + "A-1,Bolt,1,1.25,10,1.10\n")) == ["price-column-unclear"]


def test_quantities_are_each_rows_own() -> None:
    found = read(PAIRS + "A-1,Bolt,1,1.25,10,1.10\nA-2,Belt,1,12.40,5,11.60\nA-3,Pin,,0.80,,\n", Price_1="net price")
    assert codes(found) == []
    assert breaks(found) == [[(1, "1.25"), (10, "1.10")], [(1, "12.40"), (5, "11.60")], [(1, "0.80")]]
    assert type(found.offers["breaks"][0][0]) is PriceBreak


@pytest.mark.parametrize(
    ("row", "code"),
    [("A-1,Bolt,1,1.25,,1.10", "break-without-quantity"), ("A-1,Bolt,5,1.25,5,1.10", "break-twice")],
)
def test_a_price_whose_quantity_can_not_be_told_is_a_problem(row: str, code: str) -> None:
    assert codes(read(f"{PAIRS}{row}\n", Price_1="net price")) == [code]


def test_the_first_price_may_have_no_quantity_column() -> None:
    text = "Part No,Price 1,Qty 2,Price 2,Qty 3,Price 3\nA-1,5.00,10,4.00,50,3.00\n"
    assert breaks(read(text, Price_1="net price")) == [[(1, "5.00"), (10, "4.00"), (50, "3.00")]]


def test_several_discounts_come_off_one_after_the_other() -> None:
    """Worked by hand: 100.00 less 40 % is 60.00, less 5 % of that is 57.00."""
    text = "Part No,List,Disc 1,Disc 2\nA-1,100.00,40%,5%\nA-2,10.00,40%,\n"
    assert codes(read(text)) == ["column-guess", "column-guess"]
    found = read(text, Disc_1="discount", Disc_2="discount")
    assert codes(found) == []
    assert [one[0].price for one in found.offers["breaks"]] == [Decimal("57"), Decimal("6")]


LINES = [
    ("Prices per carton", True),
    ("BOLTS (price per 100)", True),
    ("BULK HOSE - PRICED PER FOOT", True),
    ("SOLD IN PAIRS", True),
    ("PRICES BELOW ARE LIST", True),
    ("Prices shown are list - deduct 40%", True),
    ("Preise sind Listenpreise", True),
    ("Closeout - 20% off prices shown", True),
    ("Add 5% steel surcharge to all prices", True),
    ("Teuerungszuschlag 3 % auf alle Preise", True),
    ("All prices include VAT", True),
    ("Alle Preise inkl. MwSt.", True),
    ("All prices in CAD", True),
    ("Prices / box", True),
    ("Prices each unless noted", False),
    ("Dealer price file Effective 1/2/2026", False),
    ("Net prices as of 1 / 2 / 2026", False),
    ("Net price list 01/2026", False),
    ("Prices exclude VAT", False),
    ("Prices do not include tax", False),
    ("2% 10 days net 30", False),
    ("20% restocking fee on returns", False),
    ("Small order surcharge 5.00 under 50.00", False),
    ("Freight surcharge 4%", False),
    ("Prices subject to change without notice", False),
    ("All prices in USD", False),
    ("Belts and pulleys", False),
]


@pytest.mark.parametrize(("line", "asked"), LINES)
@pytest.mark.parametrize("place", ["above", "section", "below"])
def test_a_line_that_speaks_of_prices_is_asked_about_once(line: str, asked: bool, place: str) -> None:
    """The lines are common practice of price sheets, no source."""
    rows = ["Part No,Description,Dealer Net", "A-1,Belt,12.50", "A-2,Bolt,1.20"]
    rows.insert({"above": 0, "section": 2, "below": 3}[place], line)
    text = "\n".join(rows) + "\n"
    found = [one for one in read(text).summary.questions if one.code == "line-about-prices"]
    applied = place == "above" and line in ("All prices in CAD", "BOLTS (price per 100)")
    assert bool(found) is (asked and not applied)
    said: dict[str, Field] = {line: "not used"}
    assert "line-about-prices" not in codes(read(text, **said))


def test_all_prices_per_hundred_above_the_table_is_applied_and_not_asked() -> None:
    found = read("All prices per 100\nPart No,Description,Dealer Net\nA-1,Bolt,12.50\n")
    assert (codes(found), list(found.offers["price_basis"])) == ([], [100])


def test_a_line_said_to_be_the_price_basis_holds_for_the_rows_under_it() -> None:
    """A section's line for its own rows, one above the table for all."""
    section = (
        "Part No,Description,Dealer Net\nA-1,Belt,12.50\nBOLTS (price per 100),,\nA-2,Bolt,1.20\nBELTS,,\nA-3,Belt,3\n"
    )
    said: dict[str, Field] = {"BOLTS (price per 100)": "price basis"}
    found = read(section, **said)
    assert (codes(found), list(found.offers["price_basis"])) == ([], [1, 100, 1])
    assert [one.code for one in found.summary.notes] == ["line-applied"]
    said = {"Prices per pair": "price basis"}
    found = read("Prices per pair\nPart No,Description,Dealer Net\nA-1,Keeper,12.50\n", **said)
    assert (codes(found), list(found.offers["price_basis"])) == ([], [2])


def test_a_line_is_not_said_to_hold_where_a_column_says_it_of_each_row() -> None:
    said: dict[str, Field] = {"Prices per 100": "price basis"}
    found = read("Prices per 100\nPart No,Dealer Net,UOM\nA-1,12.50,EA\n", **said)
    assert (list(found.offers["price_basis"]), found.summary.notes) == ([1], ())


def test_a_line_per_carton_needs_the_cartons_pieces() -> None:
    said: dict[str, Field] = {"Prices per carton": "price basis"}
    text = "Prices per carton\nPart No,Description,Dealer Net,Std Pack\nA-1,Pin,12.50,10\nA-2,Pin,3.00,\n"
    found = read(text, **said)
    assert (codes(found), list(found.offers["price_basis"])) == (["pack-unknown"], [10])


def test_a_sheet_whose_prices_say_their_unit_needs_no_line() -> None:
    for header, cell in (("UOM", "EA"), ("Box price", "")):
        price = "Dealer Net" if cell else "Box price"
        text = f"Prices per carton\nPart No,Description,{price},Box Qty{',UOM' if cell else ''}\nA-1,Bolt,12.50,10"
        said: dict[str, Field] = {} if cell else {"Box_price": "net price"}
        found = read(text + (f",{cell}\n" if cell else "\n"), **said)
        assert "line-about-prices" not in codes(found), header
