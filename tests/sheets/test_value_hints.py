"""What the values of columns tell where their headers do not."""

from sourcing.sheets.headers.columns import is_open
from tests.sheets.test_columns import LISTS, NUMBERS, PRICES, WORDS, columns


def test_an_unknown_column_of_this_sheets_numbers_is_asked_about() -> None:
    """Left out, a number that was superseded would be ordered."""
    found = columns(Part_Number=NUMBERS, Net=PRICES, Go_to=["", "NW-40388", "", "OS-1177", ""])["Go to"]
    assert (found.field, found.suggested) == (None, "superseded by")
    assert not columns(Part_Number=NUMBERS, Net=PRICES, Go_to=["", "A", "", "B", ""])["Go to"].suggested
    assert not columns(Part_Number=NUMBERS, Net=PRICES, Go_to=NUMBERS)["Go to"].suggested


def test_the_only_column_of_words_is_the_description() -> None:
    found = columns(Part_Number=NUMBERS, Net=PRICES, What_it_is=WORDS)
    assert found["What it is"].field == "description"
    two = columns(Part_Number=NUMBERS, Net=PRICES, What_it_is=WORDS, Thing=WORDS)
    assert two["What it is"].field is None


def test_a_multiplier_shown_by_its_fractions_and_a_carton_to_be_asked_about() -> None:
    fractions, whole = ["0.62", ".7", "0.55", ".6", "0.5"], ["1", "5", "10", "5", "1"]
    assert columns(Part_Number=NUMBERS, List=LISTS, Mult=fractions)["Mult"].field == "multiplier"
    assert columns(Part_Number=NUMBERS, List=LISTS, Mult=whole)["Mult"].field is None
    carton = columns(Part_Number=NUMBERS, Net=PRICES, Carton=whole)["Carton"]
    assert (carton.field, carton.suggested, is_open(carton)) == (None, "pack", True)


def test_availability_that_says_times_beside_counted_stock_is_the_lead_time() -> None:
    times = ["In stock", "1-2 weeks", "3 wks", "Backordered", "Next day"]
    found = columns(Part_Number=NUMBERS, Net=PRICES, Availability=times, Stock=["1", "0", "4", "12", "0"])
    assert (found["Availability"].field, found["Stock"].field) == ("lead time", "stock")
    alone = columns(Part_Number=NUMBERS, Net=PRICES, Availability=times)
    assert alone["Availability"].field == "stock"
    counted = columns(Part_Number=NUMBERS, Net=PRICES, Availability=["1", "3 wks", "2 wks", "4", "5"], Stock=["1"] * 5)
    assert counted["Availability"].field == "stock"
