"""Packs, price bases, stock. Codes C62, CEN, MIL: UN/ECE Recommendation 20. C and M: common practice, no source."""

from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.offer import LeadTime
from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.quantity_cells import (
    PER_PACK,
    Stock,
    parse_basis,
    parse_break_quantities,
    parse_count,
    parse_counts,
    parse_stock,
    parse_stocks,
    parse_yes,
)


@pytest.mark.parametrize(
    ("text", "count"),
    [("", 1), ("-", 1), ("1", 1), ("10", 10), ("10 ea", 10), ("10/pk", 10), ("PK 10", 10), ("50.0", 50), ("50,00", 50),
     ("VPE 25", 25), ("10 Stück", 10), ("1,000,000", 1_000_000), ("1500", 1500)],
)  # fmt: skip
def test_a_count(text: str, count: int) -> None:
    assert parse_count(text) == count


@pytest.mark.parametrize(
    ("text", "code"),
    [("0", "quantity-unreadable"), ("-5", "quantity-unreadable"), ("2.5", "quantity-unreadable"),
     ("ten", "quantity-unreadable"), ("1,000", "quantity-ambiguous"), ("1.000", "quantity-ambiguous"),
     ("1-4", "quantity-unreadable"), ("٣", "quantity-unreadable")],
)  # fmt: skip
def test_a_count_that_is_none(text: str, code: str) -> None:
    found = parse_count(text)
    assert isinstance(found, Bad) and found.code == code


def test_number_cells_are_counts_only_where_whole() -> None:
    assert parse_count(Decimal(10)) == 10
    assert isinstance(parse_count(Decimal("2.5")), Bad) and isinstance(parse_count(Decimal(0)), Bad)


@pytest.mark.parametrize(
    ("text", "pieces"),
    [("", None), ("12", 12), ("0", 0), (">50", 50), ("12+", 12), ("50 +", 50), ("10-50", 10), ("over 100", 100),
     ("~20", 20), ("12 pcs", 12), ("out", 0), ("Out of stock", 0), ("N", 0), ("nein", 0), ("-3", 0), ("low", None),
     ("<5", None), ("call", None), ("n/a", None), ("NLA", 0)],
)  # fmt: skip
def test_stock(text: str, pieces: int | None) -> None:
    assert parse_stock(text) == Stock(pieces)


@pytest.mark.parametrize("text", ["Y", "Yes", "In stock", "ab Lager", "ja", "Lagernd"])
def test_yes_gives_no_number_but_goods_that_leave_at_once(text: str) -> None:
    assert parse_stock(text) == Stock(None, LeadTime(text=text, least=0, most=0))


def test_backorder_is_nothing_in_stock_and_no_known_time() -> None:
    assert parse_stock("Backorder") == Stock(0, LeadTime(text="Backorder"))


def test_a_time_among_stock_cells_is_a_time() -> None:
    assert parse_stock("2-3 wks") == Stock(None, LeadTime(text="2-3 wks", least=10, most=15))


@pytest.mark.parametrize("text", ["NJ 4, TX 2", "soon", "12.5", "1,200"])
def test_stock_that_is_not_understood_is_a_problem(text: str) -> None:
    assert isinstance(parse_stock(text), Bad)


@pytest.mark.parametrize(
    ("text", "basis"),
    [("", 1), ("EA", 1), ("each", 1), ("Stk.", 1), ("C62", 1), ("SET", 1), ("C", 100), ("c", 100), ("per 100", 100),
     ("/100", 100), ("100 Stk", 100), ("CEN", 100), ("M", 1000), ("/M", 1000), ("1000", 1000), ("MIL", 1000),
     ("PK", PER_PACK), ("per pack", PER_PACK), ("VPE", PER_PACK), ("BX", PER_PACK), ("10", 10)],
)  # fmt: skip
def test_price_basis(text: str, basis: int) -> None:
    assert parse_basis(text) == basis


@pytest.mark.parametrize("text", ["m", "ft", "MTR", "roll", "-1", "0"])
def test_an_unknown_unit_is_a_problem_and_a_small_m_may_be_a_metre(text: str) -> None:
    assert isinstance(parse_basis(text), Bad)


@pytest.mark.parametrize(("text", "said"), [("", False), ("N", False), ("x", True), ("NLA", True), ("ja", True)])
def test_yes_or_no(text: str, said: bool) -> None:
    assert parse_yes(text) is said


def test_perhaps_is_neither_yes_nor_no() -> None:
    assert isinstance(parse_yes("perhaps"), Bad)


@pytest.mark.parametrize(
    ("text", "count"),
    [("10 pcs", 10), ("VPE 10", 10), ("par 10", 10), ("caja 10", 10), ("doos 10", 10), ("1 dz", 12), ("2 doz", 24),
     ("3 Dutzend", 36), ("box of 10", 10), ("boîte de 10", 10), ("10 stuks", 10), ("10 unidades", 10), ("", 1)],
)  # fmt: skip
def test_counts_in_five_languages(text: str, count: int) -> None:
    assert parse_counts([text]) == [count]


@pytest.mark.parametrize(
    ("text", "count"),
    [("10", 10), ("10+", 10), ("10-49", 10), ("≥10", 10), (">= 10", 10), ("ab 10", 10), ("à partir de 10", 10),
     ("desde 10", 10), ("vanaf 10", 10), ("10 Stück und mehr", 10), ("10 to 49", 10), ("10 à 49", 10), ("", None),
     ("from 10 pcs", 10), ("10 and up", 10), ("1", 1)],
)  # fmt: skip
def test_from_how_many_pieces(text: str, count: int | None) -> None:
    assert parse_break_quantities([text]) == [count]


def test_more_than_ten_is_from_ten_or_from_eleven() -> None:
    found = parse_break_quantities([">10", "over 10", "<10", "0", "many"])
    assert [one.code for one in found if isinstance(one, Bad)] == ["quantity-ambiguous"] * 2 + [
        "quantity-unreadable"
    ] * 3
    assert isinstance(found[0], Bad) and found[0].suggestions == ("10", "11")
    assert parse_break_quantities([Decimal(10)]) == [10]


@pytest.mark.parametrize(
    "text", ["oui", "sí", "en stock", "disponible", "op voorraad", "auf Lager", "available", "sur stock", "voorradig"]
)
def test_yes_for_stock_in_five_languages(text: str) -> None:
    assert parse_stocks([text]) == [Stock(None, LeadTime(text=text, least=0, most=0))]


@pytest.mark.parametrize(
    "text",
    ["agotado", "épuisé", "rupture", "en rupture de stock", "uitverkocht", "niet op voorraad", "ausverkauft", "non",
     "sin stock", "0", "0.00", "0,000"],
)  # fmt: skip
def test_none_in_stock(text: str) -> None:
    assert parse_stocks([text]) == [Stock(0)]


@pytest.mark.parametrize("text", ["special order", "sur commande", "bajo pedido", "op bestelling", "auf Bestellung"])
def test_ordered_only_when_asked_for(text: str) -> None:
    assert parse_stocks([text]) == [Stock(0, LeadTime(text=text))]


@pytest.mark.parametrize(
    ("column", "pieces"),
    [
        (["1,250", "12"], [1250, 12]), (["1.250", "12"], [1250, 12]), (["1,250"], [1250]), (["12.0", "7.0"], [12, 7]),
        (["1,250", "12.0"], [1250, 12]), (["1.250,00", "7"], [1250, 7]), (["1,250,000"], [1250000]),
        (["1 250", "1'250"], [1250, 1250]), ([">1,000", "1,250+"], [1000, 1250]), (["12 (+30 on order)"], [12]),
        (["12 + 30 bestellt"], [12]), (["12 in stock", "5 disponibles"], [12, 5]), (["0,000", "12,000"], [0, 12]),
    ],
)  # fmt: skip
def test_thousands_are_judged_by_column(column: list[str], pieces: list[int]) -> None:
    assert parse_stocks(column) == [Stock(count) for count in pieces]


@pytest.mark.parametrize(
    "column", [["2.5"], ["1.250", "12.0"], ["1.250", "2.5"], ["12,000", "5,000"], ["50²"], ["O"], ["1,250", "0,000"]]
)
def test_stock_that_can_be_read_two_ways_is_a_problem(column: list[str]) -> None:
    found = parse_stocks(column)[0]
    assert isinstance(found, Bad) and found.code == "stock-unreadable"


def test_stock_that_is_due_on_a_day() -> None:
    column = ["due 12/05", "BO 12/25", "due soon", "KW 49", ""]
    found = parse_stocks(column, date(2026, 11, 25))
    assert found[0] == Stock(0, LeadTime(text="due 12/05", leaves_on=date(2026, 12, 5)))
    assert found[1] == Stock(0, LeadTime(text="BO 12/25", leaves_on=date(2026, 12, 25)))
    assert isinstance(found[2], Bad)
    assert found[3:] == [Stock(0, LeadTime(text="KW 49", leaves_on=date(2026, 12, 4))), Stock(None)]
    assert parse_stocks(["due 12/05"]) == [Stock(0, LeadTime(text="due 12/05"))]
