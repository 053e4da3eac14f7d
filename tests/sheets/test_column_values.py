"""What values look like, and where they contradict their header: no false alarm on sane columns.

GTINs: the worked example 6291041500213 of the GS1 Hong Kong member page on check digits, and the examples of the
documentation of python-stdnum (GTIN-8 73513537, GTIN-13 9780471117094, GTIN-14 98412345678908). The rest is common
practice, no source.
"""

from collections.abc import Sequence
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.sheet import Column, Field
from sourcing.sheets.headers.column_values import compared, doubts, looks_like, propose, suggest_price
from sourcing.sheets.headers.value_looks import is_gtin
from sourcing.sheets.worksheet import Cell

NUMBERS = ["NW-40388", "NW-40389", "OS-1177", "40-0012", "C 771", "A88", "6203-2RS", "4L390"]
PRICES = ["12.50", "8.75", "103.00", "4.15", "22.49", "$ 9.99", "1,204.50", "7,25 €"]
WORDS = [
    "Belt, auger drive",
    "Bearing, idler",
    "Keeper, belt pair",
    "Seal kit gearbox",
    "Shear pin with clip",
    "Oil seal",
]
DATES = ["2026-01-07", "05.03.2026", "3/14/2026", "12-Mar-26", "2026-02-01", "01/02/26"]
GTINS = ["6291041500213", "9780471117094", "73513537", "98412345678908", "6291041500213"]
COUNTS = ["1", "10", "25", "100", "5", "12"]


def column(field: Field, why: str = "header word") -> Column:
    """A column that means `field`."""
    return Column(at=0, header="H", field=field, why=why)


@pytest.mark.parametrize(
    ("values", "field"),
    [(PRICES, "net price"), (NUMBERS, "supplier number"), (WORDS, "description"), (DATES, "valid from"),
    (GTINS, "gtin"),
     (COUNTS, "stock"), (["In stock", "2-3 wks", "5 days", "1 week", "10 Tage"], "lead time"),
     (["Y", "N", "", "y", "no", "nein"], "no longer available"), (["USD", "usd", "EUR", "€"], "currency"),
     (["US", "CN", "DE", "Italy", "France"], "origin"), (["A", "B", "C1", "A"], "discount code"),
     (["40%", "35 %", "12,5%"], "discount"), ([".55", "0.60", "0,625"], "multiplier"),
     (["EA", "PK", "ea"], "price basis")],
)  # fmt: skip
def test_values_look_like_their_field(values: Sequence[Cell], field: Field) -> None:
    looks = looks_like(values)
    share = looks[field]
    assert share > 0.9 or (field == "gtin" and share == 1)
    assert share == max(looks.values())


def test_blanks_calls_and_dashes_say_nothing() -> None:
    assert looks_like(["", " ", "CALL", "NLA", "n/a", "-", "—", "?", "Preis auf Anfrage"]) == {}
    assert looks_like(["", "CALL", "4.50"])["net price"] == 1


def test_two_hundred_cells_from_all_over_are_looked_at() -> None:
    looks = looks_like([*["12.50"] * 50_000, *["words and words"] * 50_000])
    assert 0.4 < looks["net price"] < 0.6
    assert looks_like([*[""] * 100_000, "12.50"])["net price"] == 1


@pytest.mark.parametrize("text", ["6291041500213", "9780471117094", "73513537", "98412345678908", "6291-0415 00213"])
def test_published_gtins_have_right_check_digits(text: str) -> None:
    assert is_gtin(text)
    assert not is_gtin(text[:-1] + str((int(text[-1]) + 1) % 10))


@pytest.mark.parametrize("text", ["", "0000000000000", "629104150021", "12", "629104150021A", "²291041500213"])
def test_other_numbers_are_no_gtins(text: str) -> None:
    assert not is_gtin(text)


@pytest.mark.parametrize(
    ("field", "values", "kind"),
    [
        ("net price", WORDS, "words without figures"), ("net price", DATES, "dates"), ("net price", GTINS, "GTINs"),
        ("list price", WORDS, "words without figures"),
        ("core charge", ["Y", "N", "Y", "N", "Y"], "words without figures"),
        ("supplier number", PRICES, "prices"), ("supplier number", DATES, "dates"),
        ("supplier number", WORDS, "words"),
        ("supplier number", ["1", "2", "3", "4", "5", "6"], "count the rows"),
        ("supplier number", ["NORROWBY", "NORROWBY", "OSTREVIK", "OV", "OSTREVIK", "NORROWBY"], "only 3 of the 6"),
        ("supplier number", ["A1", "B2"] * 30, "only 2 of the 60"), ("maker number", PRICES, "prices"),
        ("stock", DATES, "dates"), ("stock", PRICES[:2] + PRICES[3:], "prices"),
        ("pack", ["EA", "PK", "EA", "BX", "EA"], "units"),
        ("pack", WORDS, "words without figures"), ("minimum", DATES, "dates"), ("maker", COUNTS, "plain numbers"),
        ("description", PRICES, "plain numbers"), ("currency", PRICES, "plain numbers"),
        ("discount", ["A", "B", "A", "C", "A"], "words without figures"), ("multiplier", ["40%"] * 5, "percentages"),
        ("gtin", WORDS, "words without figures"), ("weight", WORDS, "words without figures"),
        ("package length", WORDS, "words without figures"), ("package dimensions", COUNTS, "plain numbers"),
        ("pack", ["30x20x4 cm"] * 5, "dimensions"), ("returnable", PRICES[:2] + PRICES[3:], "prices"),
        ("origin", PRICES, "numbers"),
        ("valid from", WORDS, "words without figures"), ("price basis", PRICES[:2] + PRICES[3:], "prices"),
        ("lead time", PRICES[:2] + PRICES[3:], "prices"), ("superseded by", PRICES[:2] + PRICES[3:], "prices"),
    ],
)  # fmt: skip
def test_values_that_contradict_their_header(field: Field, values: Sequence[Cell], kind: str) -> None:
    assert kind in (doubts(column(field), values) or "")
    assert doubts(column(field, "confirmed"), values) is None
    assert doubts(column(field), values[:4]) is None


@pytest.mark.parametrize(
    ("field", "values"),
    [
        ("net price", PRICES), ("net price", ["10", "20", "5", "1", "100"]), ("net price", [""] * 50),
        ("net price", ["CALL"] * 50), ("net price", ["NLA"] * 9 + ["12.50"]),
        ("net price", ["1.234", "2.500", "9", "8", "7"]),
        ("net price", [Decimal(5), Decimal("12.5"), Decimal(1), Decimal(2), Decimal(3)]),
        ("net price", ["see page", "ring us", "new soon", "12.50", "8.00", "9.00"]),
        ("net price", ["12.50/C", "8.00 ea", "(3.20)", "USD 4.00", "1'234.50"]),
        ("supplier number", NUMBERS), ("supplier number", ["10040388", "10040389", "10040390", "10040391", "2"]),
        ("supplier number", ["40388.0", "40389.0", "40390.0", "40391.0", "40392.0"]),
        ("supplier number", ["101", "102", "103"]),
        ("supplier number", ["BELT-A", "BELT-B", "BELTS", "PINX", "KEEPERS"]), ("supplier number", GTINS),
        ("supplier number", ["A1"] * 5 + ["B2"] * 5 + ["C3"] * 5),
        ("maker", ["Norrowby"] * 30), ("maker", ["3X", "Norrowby", "Ostrevik", "Corrivane", "Dunmarrow"]),
        ("description", WORDS), ("description", ["A88 belt", "6203 bearing", "#40 chain", "B36", "4L390"]),
        ("stock", COUNTS), ("stock", ["Y", "N", "out", "In stock", "low"]),
        ("stock", [">50", "12+", "BO 12/05", "0", "3"]),
        ("stock", [Decimal(3)] * 9), ("stock", ["5.00", "3.00", "0.00", "1.00", "12.00"]),
        ("pack", COUNTS), ("pack", ["1 pk", "10/box", "Pack of 5", "1", "2"]), ("pack", ["", "10", "", "", ""]),
        ("lead time", ["In stock", "2-3 wks", "5", "BO 12/05", "ARO 10 days"]), ("lead time", COUNTS),
        ("lead time", DATES),
        ("no longer available", ["Y", "", "x", "NLA", "12/2025"]), ("discount", ["40", "35%", "0.4", "12.5", "10"]),
        ("discount code", ["A", "40", "B", "50", "12"]), ("multiplier", [".55", "0.6", "1", ".5", ".62"]),
        ("currency", ["USD", "EUR", "$", "US$", "USD"]), ("core charge", ["", "15.00", "0", "n/a", "12"]),
        ("weight", ["1.25 lb", "0.5", "3 kg", "1/2 lb", "2"]), ("origin", ["US", "CN", "DE", "TW", "IT"]),
        ("package length", ["12", "1/2 in", "30.5", "3 ft", '12"']), ("package dimensions", ["30x20x4 cm"] * 5),
        ("returnable", ["Y", "N", "", "NR", "NCNR"]),
        ("gtin", GTINS), ("gtin", ["", "012345", "x1", "5", "629104150021 3"]),
        ("tariff code", ["4010.31.60.00", "8482", "401031"]),
        ("price basis", ["EA", "C", "100", "per 100", "1"]), ("valid from", DATES),
        ("superseded by", ["", "NW-1", "NLA", "12"]),
        ("hazardous", ["Y", "N", "", "UN1203", "ORM-D"]), ("note", PRICES),
    ],
)  # fmt: skip
def test_sane_columns_raise_no_doubt(field: Field, values: Sequence[Cell]) -> None:
    assert doubts(column(field), values) is None


@given(st.lists(st.one_of(st.text(max_size=12), st.decimals(allow_nan=False, allow_infinity=False)), max_size=30))
def test_no_values_crash_it(values: list[Cell]) -> None:
    looks = looks_like(values)
    assert all(0 < share <= 1 for share in looks.values())
    doubts(column("supplier number"), values)
    propose([values, values])
    compared(values, values)


def test_a_table_without_headers_gets_suggestions_and_no_meanings() -> None:
    lists = ["20.00", "14.00", "160.00", "7.20", "33.00"]
    nets = ["12.50", "8.75", "103.00", "4.15", "22.49"]
    found = propose([NUMBERS[:5], WORDS[:5], lists, nets, COUNTS[:5], GTINS])
    assert [one.field for one in found] == [None] * 6
    expected = ["supplier number", "description", "list price", "net price", "stock", "gtin"]
    assert [one.suggested for one in found] == expected
    assert [one.suggested for one in propose([NUMBERS[:5], nets, lists])][1:] == ["net price", "list price"]


def test_three_price_columns_or_crossing_ones_are_not_told_apart() -> None:
    nets = ["12.50", "8.75", "103.00", "4.15", "22.49"]
    assert [one.suggested for one in propose([nets, nets[::-1]])] == [None, None]
    assert [one.suggested for one in propose([nets, nets, nets])] == [None] * 3
    assert propose([["x"], []])[1].suggested is None


def test_prices_are_compared_row_by_row_where_both_are_clear() -> None:
    assert compared(
        ["1.00", "2,50", "", "CALL", "1.234", "$ 5.00 ea"], ["2.00", "2.50", "1", "2", "3", Decimal(4)]
    ) == (3, 1, 1)
    assert compared(["1.234,50", "1,234.50"], ["1234.50", "1 234,51"]) == (2, 1, 1 - 1)


def test_a_price_is_suggested_only_where_every_row_agrees() -> None:
    lists: dict[Field, Sequence[Cell]] = {"list price": ["10.00", "20.00", "30.00"]}
    assert suggest_price(["6.00", "12.00", "30.00"], lists)[0] == "net price"
    assert suggest_price(["6.00", "12.00", "30.01"], lists) == (None, "")
    assert suggest_price(["10.00", "20.00", "18.00"], lists) == (None, "")
    assert suggest_price(["", "CALL", ""], lists) == (None, "")
    assert suggest_price(["15.00", "25.00", "30.00"], {"net price": lists["list price"]})[0] == "list price"
    assert suggest_price(["6.00"], {**lists, "net price": ["5.00"]}) == (None, "")
