"""Whole sheets: every row is an offer, structure or a problem; one bad row never costs its neighbours."""

from decimal import Decimal
from typing import Any

import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.offer import LeadTime, PriceBreak
from sourcing.basics.problem import Refused
from sourcing.sheets.frame import OFFER_COLUMNS
from tests.sheets.sheet_files import (
    HEADER,
    ROW,
    codes,
    counts,
    csv_bytes,
    only,
    read,
    read_rows,
    row,
    xlsx_bytes,
)


def breaks(*steps: tuple[int, str]) -> tuple[PriceBreak, ...]:
    """Price breaks by quantity and price."""
    return tuple(PriceBreak(from_quantity=pieces, price=Decimal(price)) for pieces, price in steps)


def questions(data: bytes, currency: str = "USD") -> list[str]:
    """The codes of what is asked."""
    return [one.code for one in read(data, currency).summary.questions]


def test_an_offer_has_every_field_of_its_row() -> None:
    header = [*HEADER, "Mfr Part #", "Price per", "Min", "Multiples of", "Core", "Superseded by", "NLA", "Notes"]
    cells = [*ROW, "OV 20 417", "C", "2", "5", "15.00", "use NW-41388", "x", "heavy"]
    assert only(read_rows(cells, header=header).offers) == {
        "worksheet": "", "row": 2, "supplier_number": "NW-40388", "maker": "Norrowby", "maker_number": "OV 20 417",
        "description": "Belt, auger drive", "currency": "USD", "list_price": Decimal("40.00"),
        "breaks": breaks((1, "22.50")), "price_basis": 100, "pack": 1, "order_multiple": 5, "minimum": 2, "stock": 4,
        "lead_time": LeadTime(text="In stock", least=0, most=0), "core_charge": Decimal("15.00"),
        "superseded_by": "NW-41388", "no_longer_available": True, "note": "heavy", "sold_by": "piece", "gtin": "",
        "discount_code": "", "stock_places": (), "weight_kg": None, "oversize": None, "hazardous": None, "origin": "",
        "tariff_code": "", "valid_from": None, "valid_to": None, "length_cm": None, "width_cm": None,
        "height_cm": None, "returnable": None,
    }  # fmt: skip


def test_a_blank_is_none_and_not_nan_and_counts_stay_integers() -> None:
    reading = read_rows(row(), row(Part_Number="A2", List="", Stock="", Lead_time=""))
    frame = reading.offers
    assert list(frame.columns) == list(OFFER_COLUMNS)
    assert {str(dtype) for dtype in frame.dtypes} == {"object"}
    last: dict[str, Any] = {str(name): frame[name].iloc[1] for name in frame.columns}
    assert last["list_price"] is None and last["stock"] is None and last["lead_time"] is None
    assert last["core_charge"] is None and type(last["pack"]) is int and type(last["row"]) is int
    assert type(frame["stock"].iloc[0]) is int and last["no_longer_available"] is False


def test_a_row_without_price_is_an_offer_without_price() -> None:
    for cells in (row(Net="", List=""), row(Net="CALL", List="")):
        assert only(read_rows(cells).offers)["breaks"] == ()


def test_no_longer_available_is_said_by_words_in_price_stock_or_lead_time() -> None:
    rows = [row(Net="NLA"), row(Stock="Discontinued"), row(Lead_time="nicht mehr lieferbar"), row()]
    assert list(read_rows(*rows).offers["no_longer_available"]) == [True, True, True, False]


def test_a_stated_lead_time_wins_over_what_stock_words_imply() -> None:
    rows = [row(Stock="Yes", Lead_time="2 weeks"), row(Stock="Yes", Lead_time="")]
    times = list(read_rows(*rows).offers["lead_time"])
    assert times == [LeadTime(text="2 weeks", least=10, most=10), LeadTime(text="Yes", least=0, most=0)]


def test_breaks_are_sorted_and_a_blank_break_is_absent() -> None:
    header = ["Part Number", "10+", "1-4", "5-9"]
    reading = read_rows(["A1", "8.00", "10.00", "9.00"], ["A2", "", "10.00", "CALL"], header=header)
    assert list(reading.offers["breaks"]) == [breaks((1, "10.00"), (5, "9.00"), (10, "8.00")), breaks((1, "10.00"))]


def test_a_price_per_pack_needs_the_pack() -> None:
    header = ["Part Number", "Net", "UOM", "Pack"]
    reading = read_rows(["A1", "5.00", "PK", "10"], ["A2", "5.00", "PK", ""], ["A3", "5.00", "EA", ""], header=header)
    assert list(reading.offers["price_basis"]) == [10, 1]
    assert codes(reading) == ["pack-unknown"]
    assert "the price is per pack, but the row" in reading.summary.problems[0].what


def test_a_row_without_the_suppliers_number_is_ordered_by_the_makers() -> None:
    header = ["Item #", "Mfr Part #", "Brand", "Net"]
    offer = only(read_rows(["", "NW-1", "Norrowby", "5.00"], header=header).offers)
    assert (offer["supplier_number"], offer["maker_number"]) == ("NW-1", "NW-1")


STRUCTURE = [
    [""],
    ["AUGER BELTS", "", "", "", "", "", "", ""],
    ["4L SERIES", "", "", ""],
    ["", "", "Belts, continued", "", "", "", "", ""],
    HEADER,
    ["Total", "12", "", "", "310.00"],
    ["Subtotal belts", "", "", "", "310.00", "", "", ""],
    ["Page 2 of 9"],
    ["Prices exclude freight", " cores", " and tax"],
    ["End of file - 831 items"],
    ["", "", "", "USD", "USD", "pcs", "pcs", "days"],
    ["Terms: net 30 days. Prices may change without notice."],
]


@pytest.mark.parametrize("cells", STRUCTURE, ids=lambda cells: " ".join(cells)[:30] or "blank")
def test_structure_is_counted_and_is_neither_offer_nor_problem(cells: list[str]) -> None:
    reading = read_rows(ROW, cells, row(Part_Number="A2"))
    assert counts(reading) == [(4, 2, 2, 0)]


PROBLEMS = [
    (row(Part_Number="5-Mar"), "number-damaged", "Part Number", "5-Mar"),
    (row(Part_Number="1.23E+11"), "number-damaged", "Part Number", "1.23E+11"),
    (row(Part_Number=""), "number-missing", "Part Number", ""),
    (row(Part_Number="x" * 61), "number-too-long", "Part Number", "x" * 61),
    (row(Net="abc"), "price-unreadable", "Net", "abc"),
    (row(Net="0.00"), "price-not-positive", "Net", "0.00"),
    (row(List="-5.00"), "price-not-positive", "List", "-5.00"),
    (row(Net="EUR 5.00"), "price-other-currency", "Net", "EUR 5.00"),
    (row(Pack="some"), "quantity-unreadable", "Pack", "some"),
    ([*ROW, "one too many"], "row-too-wide", "", ""),
]


@pytest.mark.parametrize(
    ("cells", "code", "column", "found"), PROBLEMS, ids=[f"{case[1]}-{case[2]}" for case in PROBLEMS]
)
def test_a_bad_row_is_a_problem_with_its_place_and_its_neighbours_go_on(
    cells: list[str], code: str, column: str, found: str
) -> None:
    reading = read_rows(row(Part_Number="A1"), cells, row(Part_Number="A3"))
    (problem,) = reading.summary.problems
    assert (problem.code, problem.place and (problem.place.row, problem.place.column)) == (code, (3, column))
    assert problem.found == found or not found
    assert list(reading.offers["supplier_number"]) == ["A1", "A3"]
    assert counts(reading) == [(4, 2, 1, 1)]


def test_stock_nobody_can_read_is_left_blank_with_a_note() -> None:
    reading = read_rows(row(Part_Number="A1"), row(Part_Number="A2", Stock="perhaps"))
    (note,) = reading.summary.notes
    assert (note.code, note.found) == ("stock-unreadable", "perhaps")
    assert list(reading.offers["stock"])[1] is None


def test_a_row_with_two_bad_cells_is_one_problem_row_and_two_problems() -> None:
    reading = read_rows(row(Net="abc", Pack="some"), ROW)
    assert counts(reading) == [(3, 1, 1, 1)]
    assert sorted(codes(reading)) == ["price-unreadable", "quantity-unreadable"]


def test_another_table_below_is_read_by_its_own_header() -> None:
    other = ["Item", "Description", "Brand", "Net", "Pack", "", "", ""]
    reading = read_rows(ROW, other, ["A9", "Starter", "Corrivane", "15.00", "3"])
    assert list(reading.offers["supplier_number"]) == ["NW-40388", "A9"]
    assert list(reading.offers["breaks"]) == [breaks((1, "22.50")), breaks((1, "15.00"))]
    assert [(one.header_row, one.last_row) for one in reading.summary.regions] == [(1, 2), (3, 4)]
    assert counts(reading) == [(4, 2, 2, 0)]


def test_another_table_below_without_prices_is_not_read_and_told() -> None:
    other = ["Item", "Description", "Brand", "Core", "Pack", "", "", ""]
    reading = read_rows(ROW, other, ["A9", "Starter", "Corrivane", "15.00", "1"])
    assert counts(reading) == [(4, 1, 3, 0)]
    assert [(one.code, one.place and one.place.row) for one in reading.summary.notes] == [("table-not-read", 3)]


def test_preamble_lines_are_structure_and_may_hold_known_words() -> None:
    preamble = [["Stonegarth Trade Parts"], [], ["Net prices", "Stock list"], ["Terms: net 30, freight extra"]]
    reading = read(csv_bytes([*preamble, HEADER, ROW]))
    assert counts(reading) == [(6, 1, 5, 0)]
    assert only(reading.offers)["row"] == 6
    assert reading.summary.columns[0].header == "Part Number"


def test_a_two_row_header_is_joined_over_merged_cells() -> None:
    upper = ["Item", None, None, "Price USD", None, "Availability", None]
    lower = ["Code", "Maker", "Description", "List", "Net", "On hand", "Lead time"]
    reading = read(
        xlsx_bytes(Cover=[["Prices of January"]], Prices=[upper, lower, ["A1", "X", "Belt", 9, 5, 2, "1 week"]])
    )
    assert [column.header for column in reading.summary.columns][3:5] == ["Price USD List", "Price USD Net"]
    offer = only(reading.offers)
    assert (offer["list_price"], offer["breaks"], offer["worksheet"]) == (Decimal(9), breaks((1, "5")), "Prices")
    assert counts(reading) == [(1, 0, 1, 0), (3, 1, 2, 0)]


def test_two_worksheets_with_tables_are_both_read() -> None:
    reading = read(xlsx_bytes(Belts=[HEADER, ROW], Chain=[["Part Number", "Net"], ["C1", "2.50"], ["C2", "bad"]]))
    assert counts(reading) == [(2, 1, 1, 0), (3, 1, 1, 1)]
    assert list(reading.offers["worksheet"]) == ["Belts", "Chain"]
    assert reading.summary.problems[0].place is not None and reading.summary.problems[0].place.worksheet == "Chain"


CURRENCIES: list[tuple[list[list[str]], str, str]] = [
    ([["Part Number", "Net"], ["A1", "5.00"]], "", "currency-not-known"),
    ([["Part Number", "Net EUR"], ["A1", "5.00"]], "USD", "currency-differs"),
    ([["Part Number", "Net", "Currency"], ["A1", "5.00", "EUR"]], "USD", "currency-differs"),
    ([["All prices in EUR"], ["Part Number", "Net"], ["A1", "5.00"]], "USD", "currency-differs"),
    ([["Part Number", "Net"], ["A1", "€5.00"]], "USD", "currency-differs"),
    ([["Part Number", "Net EUR", "List USD"], ["A1", "5.00", "9.00"]], "", "currency-by-column"),
    (
        [["Prices in EUR"], ["All costs in USD"], ["Part Number", "Net"], ["A1", "5.00"]],
        "",
        "currency-mixed",
    ),
]


@pytest.mark.parametrize(("rows", "expected", "code"), CURRENCIES)
def test_a_currency_unknown_or_not_the_suppliers_is_asked(rows: list[list[str]], expected: str, code: str) -> None:
    assert questions(csv_bytes(rows), expected) == [code]


@pytest.mark.parametrize(
    "rows",
    [
        [["Part Number", "Net EUR"], ["A1", "5.00"]],
        [["Part Number", "Net", "Currency"], ["A1", "5.00", "EUR"]],
        [["Preise in EUR"], ["Part Number", "Net"], ["A1", "5.00"]],
        [["Part Number", "Net"], ["A1", "€5.00"]],
    ],
)
def test_the_sheet_may_tell_its_currency_by_itself(rows: list[list[str]]) -> None:
    reading = read(csv_bytes(rows), "")
    assert reading.summary.currency == "EUR" and only(reading.offers)["currency"] == "EUR"


def test_one_row_in_another_currency_is_a_problem_of_that_row() -> None:
    header = ["Part Number", "Net", "Currency"]
    reading = read_rows(["A1", "5.00", "USD"], ["A2", "5.00", "CAD"], ["A3", "5.00", ""], header=header)
    assert codes(reading) == ["row-other-currency"]
    assert list(reading.offers["supplier_number"]) == ["A1", "A3"]


def test_a_header_alone_gives_no_offers_and_an_empty_frame() -> None:
    reading = read_rows()
    assert counts(reading) == [(1, 0, 1, 0)] and list(reading.offers.columns) == list(OFFER_COLUMNS)


ANY_ROW = st.one_of(
    st.just(ROW),
    st.sampled_from(STRUCTURE),
    st.sampled_from([case[0] for case in PROBLEMS]),
    st.lists(st.text(max_size=8), min_size=1, max_size=9),
)


@given(st.lists(ANY_ROW, max_size=15))
@settings(max_examples=200, deadline=None)
def test_every_row_is_accounted_for(rows: list[list[str]]) -> None:
    try:
        reading = read_rows(*rows)
    except Refused as refusal:
        assert refusal.problems[0].code in {"quote-not-closed", "not-a-sheet"}
        return
    counts(reading)
    shown = {problem.place.row for problem in reading.summary.problems if problem.place}
    assert len(shown) == reading.summary.accounting[0].problem_rows
    assert shown.isdisjoint(reading.offers["row"])


def test_the_same_bytes_give_the_same_reading() -> None:
    data = csv_bytes([HEADER, *[row(Part_Number=f"A{n}") for n in range(50)]])
    first, second = read(data), read(data)
    assert first.summary == second.summary
    pd.testing.assert_frame_equal(first.offers, second.offers)


def test_a_file_without_a_header_is_refused_with_what_its_columns_look_like() -> None:
    rows = [[f"NW-4{n:04}", "Belt, auger drive", f"{n + 10}.50"] for n in range(12)]
    with pytest.raises(Refused) as refusal:
        read(csv_bytes(rows))
    suggested = refusal.value.problems[0].suggestions
    assert {"column A=supplier number", "column C=net price"} <= set(suggested)


def test_a_file_without_a_header_keeps_its_first_row_once_the_columns_are_named_by_letter() -> None:
    rows = [["Stonegarth"], *([f"NW-4{n:04}", "Belt, auger drive", f"{n + 10}.50"] for n in range(12))]
    reading = read(csv_bytes(rows), **{"column A": "supplier number", "column C": "net price"})
    assert len(reading.offers) == 12 and reading.offers["row"].iloc[0] == 2
    assert [(one.header_row, one.last_row) for one in reading.summary.regions] == [(None, 13)]
