"""Packs, price bases, stock. Codes C62, CEN, MIL: UN/ECE Recommendation 20. C and M: common practice, no source."""

from decimal import Decimal

import pytest

from sourcing.basics.offer import LeadTime
from sourcing.sheets.cells import Bad
from sourcing.sheets.quantity_cells import PER_PACK, Stock, parse_basis, parse_count, parse_stock, parse_yes


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
