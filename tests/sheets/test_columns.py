"""Headers to columns: a person's word, the dictionary, hints from spelling and values, and what is asked instead.

The header words are common practice, no source.
"""

from collections.abc import Sequence

import pytest

from sourcing.basics.problem import Place, Problem, Refused
from sourcing.basics.sheet import Column, Field
from sourcing.sheets.headers.close_words import closest
from sourcing.sheets.headers.columns import Header, columns_of, is_open, meanings_by_key, questions, refuse_unclear
from sourcing.sheets.worksheet import Cell

NUMBERS = ["NW-40388", "NW-40389", "OS-1177", "40-0012", "C 771"]
PRICES = ["12.50", "8.75", "103.00", "4.15", "22.49"]
LISTS = ["20.00", "14.00", "160.00", "7.20", "33.00"]
WORDS = ["Belt, auger drive", "Bearing, idler", "Keeper, belt pair", "Seal kit gearbox", "Shear pin with clip"]


def columns(meanings: dict[str, Field] | None = None, /, **cells: Sequence[Cell]) -> dict[str, Column]:
    """The columns of headers with the cells under them, by header; '_' in a name is a blank."""
    headers = [Header(name.replace("_", " "), (name.replace("_", " "),)) for name in cells]
    values = list(cells.values())
    found = columns_of(headers, meanings_by_key(meanings or {}), lambda at: values[at])
    return {column.header: column for column in found}


def plain(*headers: str, meanings: dict[str, Field] | None = None) -> tuple[Column, ...]:
    """The columns of headers alone."""
    return columns_of([Header(text, (text,) if text else ()) for text in headers], meanings_by_key(meanings or {}))


def asked(*headers: str, meanings: dict[str, Field] | None = None) -> tuple[Problem, ...]:
    """The questions these headers raise."""
    return questions(plain(*headers, meanings=meanings), Place(file="a.csv"))


def sentences(*headers: str, meanings: dict[str, Field] | None = None) -> str:
    """The same as one text."""
    return " ".join(problem.sentence() for problem in asked(*headers, meanings=meanings))


def test_unknown_columns_are_listed_and_not_used() -> None:
    found = {column.header: column for column in plain("Part Number", "Net", "Weight", "Colour")}
    assert (found["Colour"].field, found["Weight"].field, found["Net"].field) == (None, "weight", "net price")
    assert asked("Part Number", "Net", "Weight", "Colour", "Gadget") == ()


@pytest.mark.parametrize(
    "header", ["Price", "Preis", "Prix HT", "Precio", "Prijs", "Unit price", "Price (USD)", "Price 1"]
)
def test_a_bare_price_is_asked_about_with_the_option_to_confirm_it(header: str) -> None:
    (problem,) = asked("Part Number", header)
    assert problem.code == "price-column-unclear"
    assert f'--column "{header}=net price"' in problem.sentence()
    assert is_open(plain("Part Number", header)[1])
    with pytest.raises(Refused):
        refuse_unclear(plain("Part Number", header), Place())
    assert asked("Part Number", header, meanings={header: "list price"}) == ()


@pytest.mark.parametrize("said", ["Price", "price", " PRI CE ", "column B"])
def test_a_confirmed_meaning_holds_without_case_and_spaces(said: str) -> None:
    column = plain("Part Number", "Price", meanings={said: "list price"})[1]
    assert (column.field, column.why) == ("list price", "confirmed")


def test_a_persons_word_wins_over_the_dictionary() -> None:
    found = plain(
        "Part Number", "Net", "List", "10+", meanings={"Net": "not used", "List": "net price", "10+": "net price"}
    )
    assert [column.field for column in found[1:]] == ["not used", "net price", "net price"]
    assert found[3].from_quantity == 10


def test_two_columns_of_one_meaning_are_asked_about_and_not_used_settles_it() -> None:
    text = sentences("Part Number", "Dealer", "Distributor")
    assert "'Dealer' (column B), 'Distributor' (column C)" in text and '--column "Distributor=not used"' in text
    assert asked("Part Number", "Dealer", "Distributor", meanings={"Distributor": "not used"}) == ()


def test_of_several_net_prices_the_shops_own_is_the_one_to_keep() -> None:
    (problem,) = asked("Part Number", "Dealer", "Distributor", "Your price")
    assert problem.suggestions == ("Dealer=not used", "Distributor=not used")


def test_equal_headers_are_told_apart_by_their_letter() -> None:
    assert '--column "column C=not used"' in sentences("Part Number", "Net", "Net")
    found = plain("Part Number", "Net", "Net", meanings={"column C": "not used"})
    assert [column.field for column in found] == ["supplier number", "net price", "not used"]


def test_every_fault_of_a_header_is_said_at_once() -> None:
    text = sentences("Part Number", "Price", "Stock", "Bestand")
    assert "could be the net price or the list price" in text and "more than one column means 'stock'" in text


def test_a_sheet_without_numbers_or_prices_is_asked_about_and_lists_its_headers() -> None:
    assert "hold part numbers; the headers are 'Net', 'Stock'" in sentences("Net", "Stock")
    assert "hold prices; the headers are 'Part Number', 'Stock'" in sentences("Part Number", "Stock")


def test_the_only_number_column_is_the_one_to_order_by() -> None:
    (number, *_) = plain("Mfr Part #", "Brand", "Net")
    assert number.field == "supplier number"
    assert [column.field for column in plain("Mfr Part #", "SKU", "Net")][:2] == ["maker number", "supplier number"]


def test_a_weak_number_word_gives_way_to_an_outspoken_one() -> None:
    found = plain("Item", "Part Number", "Net")
    assert (found[0].field, found[0].why, found[1].field) == (None, "'Part Number' is the number", "supplier number")
    assert plain("Item", "Net")[0].field == "supplier number"
    described = columns(Artikel=WORDS, Artikelnummer=NUMBERS, EK=PRICES)
    assert described["Artikel"].field == "description"
    assert columns(Item=["1", "2", "3", "4", "5"], SKU=NUMBERS, Net=PRICES)["Item"].field is None


def test_two_outspoken_numbers_are_a_question() -> None:
    assert [problem.code for problem in asked("SKU", "Part Number", "Net")] == ["meaning-twice"]


def test_a_break_header_that_became_a_date_is_asked_about() -> None:
    assert "'9-May'" in sentences("Part Number", "1-4", "9-May", "10+")


def test_warehouses_are_no_rivals_but_the_same_one_twice_is() -> None:
    assert asked("SKU", "Net", "Stock East", "Stock West", "Stock") == ()
    assert [problem.code for problem in asked("SKU", "Net", "Stock East", "Qty East")] == ["meaning-twice"]


def test_the_sum_of_the_warehouses_is_not_counted_twice() -> None:
    east, west = ["1", "2", "0", "", "4"], ["3", "0", "0", "5", "1"]
    cells: dict[str, Sequence[Cell]] = {"SKU": NUMBERS, "Net": PRICES, "Stock_East": east, "Stock_West": west}
    assert columns(**cells, Stock=["4", "2", "0", "5", "5"])["Stock"].field == "not used"
    assert columns(**cells, Stock=["9", "2", "0", "5", "5"])["Stock"].field == "stock"


def test_numbered_quantities_beside_numbered_prices_are_no_prices() -> None:
    headers = ("SKU", "Qty 1", "Price 1", "Qty 2", "Price 2")
    fields = [column.field for column in plain(*headers)]
    assert fields == ["supplier number", "break quantity", None, "break quantity", None]
    assert len(asked(*headers)) == 1
    assert plain("SKU", "Qty 5", "Price 5")[1].field is None
    assert [column.from_quantity for column in plain("SKU", "Qty 1", "Qty 10", "Qty 50")] == [None, 1, 10, 50]
    assert [column.field for column in plain("SKU", "Net", "Qty 1", "Qty 2")][2:] == [None, None]


def test_a_price_with_tax_is_asked_about_only_where_there_is_no_other() -> None:
    assert [problem.code for problem in asked("SKU", "Net incl. VAT")] == ["price-with-tax"]
    assert asked("SKU", "Net", "List incl. VAT") == ()
    assert plain("SKU", "Net", "List incl. VAT")[2].field is None


def test_an_older_price_is_neither_taken_nor_asked_about() -> None:
    assert asked("SKU", "Net", "Old price") == ()
    assert [problem.code for problem in asked("SKU", "Old price")] == ["no-price-column"]


def test_a_surcharge_column_is_a_question_unless_nothing_stands_in_it() -> None:
    assert [problem.code for problem in asked("SKU", "Net", "Tariff surcharge")] == ["column-surcharge"]
    assert is_open(columns(SKU=NUMBERS, Net=PRICES, Surcharge=["", "", "1.20", "", ""])["Surcharge"])
    assert not is_open(columns(SKU=NUMBERS, Net=PRICES, Surcharge=[""] * 5)["Surcharge"])


def test_a_column_without_a_header_is_left_out_unless_a_person_named_it() -> None:
    assert [column.header for column in plain("SKU", "", "Net")] == ["SKU", "Net"]
    assert plain("SKU", "", "Net", meanings={"column B": "note"})[1].field == "note"


@pytest.mark.parametrize(
    ("header", "field", "values"),
    [
        ("Descripton", "description", WORDS),
        ("Beschreibng", "description", WORDS),
        ("Manufcturer", "maker", ["Norrowby", "Norrowby", "Ostrevik", "Norrowby", "Ostrevik"]),
        ("Lead Tmie", "lead time", ["In stock", "2-3 wks", "1 week", "5 days", "In stock"]),
        ("Lagerbestnad", "stock", ["4", "0", "12", ">50", "3"]),
        ("Lagerbestnad", None, WORDS),
        ("Descripton", None, PRICES),
    ],
)
def test_a_slip_of_the_pen_in_a_harmless_header_is_taken_where_the_values_agree(
    header: str, field: Field | None, values: Sequence[Cell]
) -> None:
    found = columns(**{"SKU": NUMBERS, "Net": PRICES, header.replace(" ", "_"): values})[header]
    assert found.field == field
    assert field is None or found.why.startswith("close to the header word")


@pytest.mark.parametrize(
    ("header", "field"),
    [("Net Prce", "net price"), ("Lsit Price", "list price"), ("Nettopries", "net price"),
    ("Multiplyer", "multiplier"),
     ("Pack Qtty", "pack"), ("Mfr Part Numbr", "maker number"), ("Core Chrage", "core charge"), ("Pricess", None)],
)  # fmt: skip
def test_a_slip_in_a_header_that_may_cost_money_is_only_suggested(header: str, field: Field | None) -> None:
    found = columns(**{"SKU": NUMBERS, header.replace(" ", "_"): PRICES})[header]
    assert (found.field, found.suggested) == (None, field)
    problems = questions(tuple(columns(**{"SKU": NUMBERS, header.replace(" ", "_"): PRICES}).values()), Place())
    assert field is None or (problems[0].code == "column-guess" and f"{header}={field}" in problems[0].sentence())


def test_a_misspelt_only_number_column_is_taken_where_its_values_are_part_numbers() -> None:
    assert columns(Part_Numbr=NUMBERS, Net=PRICES)["Part Numbr"].field == "supplier number"
    assert columns(Part_Numbr=PRICES, Net=PRICES)["Part Numbr"].field is None
    assert columns(Part_Numbr=NUMBERS, Mfr_Part=NUMBERS, Net=PRICES)["Part Numbr"].field is None


@pytest.mark.parametrize(
    "header",
    ["Package type", "Model", "Series", "Category", "Colour", "Length", "Width", "Warranty", "Last price",
    "List date",
     "Price level", "Supplier", "Vendor", "Customer", "Position", "Location", "Warehouse", "Language", "Net profit",
     "Margin", "Price date", "Price change", "Part type", "Part class", "Dealer code", "Dealer name", "Net Core",
     "Description 2", "Section", "Vehicle", "Engine", "Application", "Picture", "Sortiment", "Bestellung",
     "Price 12", "Line code"],
)  # fmt: skip
def test_common_headers_of_another_meaning_are_close_to_no_word(header: str) -> None:
    assert closest(header) is None


def test_an_unclear_price_beside_a_list_price_is_suggested_by_its_values() -> None:
    price = columns(SKU=NUMBERS, List=LISTS, Price=PRICES)["Price"]
    assert (price.field, price.suggested) == (None, "net price")
    assert price.why == "net price or list price; lower than the list price in 5 of 5 rows, never higher"
    assert columns(SKU=NUMBERS, Net=PRICES, Price=LISTS)["Price"].suggested == "list price"
    assert columns(SKU=NUMBERS, List=LISTS, Price=[*PRICES[:4], "99.00"])["Price"].suggested is None
    assert columns(SKU=NUMBERS, List=LISTS, Price=LISTS)["Price"].suggested is None
    (problem,) = questions(tuple(columns(SKU=NUMBERS, List=LISTS, Price=PRICES).values()), Place())
    assert problem.suggestions[0].startswith("Price=net price (lower than")


@pytest.mark.parametrize(
    ("header", "values", "suggested"),
    [("Mult", ["1", "5", "10", "1", "2"], "order multiple"),
    ("Mult", ["1.55", "1.60", "1", "1.5", "1.6"], "multiplier"),
     ("Disc", ["Y", "", "Y", "N", ""], "no longer available"), ("Disc", ["A", "B", "A", "C", "A"], "discount code"),
     ("Disc", ["40", "35", "40", "40", "50"], "discount"), ("Qty", ["4", "0", "9", "1", "2"], "stock")],
)  # fmt: skip
def test_a_word_of_two_meanings_is_a_question_with_a_suggestion(
    header: str, values: Sequence[Cell], suggested: Field
) -> None:
    found = columns(**{"SKU": NUMBERS, "Net": PRICES, header: values})
    assert (found[header].field, found[header].suggested) == (None, suggested)
    assert [problem.code for problem in questions(tuple(found.values()), Place())] == ["column-guess"]


def test_a_bare_quantity_beside_repeated_numbers_may_be_where_a_price_begins() -> None:
    numbers = ["A1", "A1", "A1", "B2", "B2", "B2"]
    found = columns(SKU=numbers, Qty=["1", "10", "50", "1", "10", "50"], Net=[*PRICES, "3.00"])
    assert found["Qty"].suggested == "break quantity"


def test_a_column_without_a_header_that_looks_like_what_is_missing_is_suggested() -> None:
    headers = [Header("SKU", ("SKU",)), Header("", ()), Header("Stock", ("Stock",))]
    cells: list[Sequence[Cell]] = [NUMBERS, PRICES, ["1"] * 5]
    found = columns_of(headers, {}, lambda at: cells[at])
    assert [(column.at, column.field, column.suggested) for column in found][1] == (1, None, "net price")
    assert '--column "column B=net price"' in questions(found, Place())[0].sentence()
    assert len(columns_of([*headers, Header("Net", ("Net",))], {}, lambda at: [*cells, PRICES][at])) == 3


def test_values_against_their_header_are_a_question_where_values_are_given() -> None:
    cells: list[Sequence[Cell]] = [NUMBERS, WORDS]
    found = columns_of([Header("SKU", ("SKU",)), Header("Net", ("Net",))], {}, lambda at: cells[at])
    assert questions(found, Place()) == ()
    (problem,) = questions(found, Place(), lambda at: cells[at])
    assert problem.code == "column-contradicted" and "words without figures" in problem.sentence()
