"""Whatever bytes a file holds: offers that can be trusted, or a refusal. What a fuzzer found stands here as it was."""

import random
from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from sourcing.basics.offer import PriceBreak
from sourcing.basics.problem import Refused
from sourcing.sheets.plain import grid_rows, plain_table
from sourcing.sheets.reading import SheetReading
from tests.sheets.sheet_files import counts, csv_bytes, read, zip_bytes

TRAPS = Path(__file__).parents[1] / "traps" / "sheets"
SEEDS = [
    path.read_bytes()
    for path in sorted(TRAPS.iterdir())
    if not path.name.endswith(".expected.json") and path.stat().st_size < 8000
]
COUNTS = ("pack", "order_multiple", "minimum", "price_basis")
Where = tuple[str, int]


def look(data: bytes) -> SheetReading | None:
    """The file read in each of the three ways, checked; None where it is refused. All else comes out of here."""
    for plainly in (lambda: list(grid_rows(data, "x")), lambda: plain_table(data, "x", {})):
        try:
            plainly()
        except Refused as refusal:
            assert all(one.sentence() for one in refusal.problems)
    try:
        reading = read(data)
    except Refused as refusal:
        assert all(one.sentence() for one in refusal.problems)
        return None
    counts(reading)
    _each_row_is_one_thing(reading)
    for offer in reading.offers.to_dict("records"):
        _can_be_trusted({str(name): value for name, value in offer.items()})
    return reading


def _each_row_is_one_thing(reading: SheetReading) -> None:
    """Offer, structure or told problem, and never two of them: looked at row by row, not by the counts."""
    names = [one.worksheet for one in reading.summary.accounting]
    if len(names) != len(set(names)):  # a damaged workbook may name two worksheets alike
        return
    offers: list[Where] = list(zip(reading.offers["worksheet"], reading.offers["row"], strict=True))
    structure: list[Where] = [(one.worksheet, one.row) for one in reading.structure]
    places = [one.place for one in reading.summary.problems if one.place]
    told: set[Where] = {(one.worksheet, one.row) for one in places if one.row is not None}
    everywhere = {*offers, *structure, *told}
    assert len(offers) + len(structure) + len(told) == len(everywhere)
    assert len(everywhere) == sum(one.rows for one in reading.summary.accounting)


def _can_be_trusted(offer: dict[str, object]) -> None:
    assert isinstance(offer["supplier_number"], str) and offer["supplier_number"].strip()
    breaks = offer["breaks"]
    assert isinstance(breaks, tuple) and all(isinstance(one, PriceBreak) for one in breaks)
    quantities = [one.from_quantity for one in breaks]
    assert quantities == sorted(set(quantities)) and all(pieces >= 1 for pieces in quantities)
    for price in [*(one.price for one in breaks), offer["list_price"]]:
        assert price is None or (isinstance(price, Decimal) and price.is_finite() and price > 0)
    for amount in (offer["core_charge"], offer["weight_kg"]):
        assert amount is None or (isinstance(amount, Decimal) and amount.is_finite() and amount >= 0)
    for name in COUNTS:
        pieces = offer[name]
        assert type(pieces) is int and pieces >= 1, name
    stock = offer["stock"]
    assert stock is None or (type(stock) is int and stock >= 0)
    for name in ("valid_from", "valid_to"):
        assert offer[name] is None or type(offer[name]) is date


def part(declaration: bytes) -> bytes:
    """A workbook whose first part begins with this XML declaration."""
    workbook = declaration + b"<workbook/>"
    return zip_bytes({"[Content_Types].xml": b"<Types/>", "xl/workbook.xml": workbook})


def test_a_mark_alone_is_no_number() -> None:
    """An apostrophe before a number is set aside; where nothing follows it, an offer without a number was kept."""
    reading = look(b"Part Number,Net\nA-1,2.50\n',2.50\n")
    assert reading is not None
    assert list(reading.offers["supplier_number"]) == ["A-1"]
    assert [(one.code, one.place and one.place.row) for one in reading.summary.problems] == [("number-missing", 3)]


def test_price_breaks_do_not_go_on_from_a_row_without_a_number() -> None:
    """They joined the row above though it had no number either, and one of them was counted twice."""
    reading = look(b"Part Number,Description,Qty From,Net Price\nN,,x,1.25\n,,10,1.10\n,,50,0.98\nNW-31,,1,12.40\n")
    assert reading is not None
    assert [one.place and one.place.row for one in reading.summary.problems] == [2, 3, 4]
    (breaks,) = reading.offers["breaks"]
    assert [one.price for one in breaks] == [Decimal("12.40")]


@given(st.binary(max_size=400))
@settings(max_examples=60, deadline=None)
@example(b"\xff\xfe\x00\xd8\x00\xdc")
@example(b"\xef\xbb\xbf\xef\xbb\xbfNet,Part Number\n1,2\n")
@example(b"Part Number,Net\r\rA,1\n\r\n\x1a")
def test_any_bytes_at_all(data: bytes) -> None:
    look(data)


@given(st.sampled_from(SEEDS), st.integers(0, 2**32), st.integers(1, 4))
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.large_base_example])
def test_a_good_sheet_damaged_somewhere(data: bytes, dice: int, times: int) -> None:
    """A bit flipped, a piece taken out, put in, or repeated, up to four times over."""
    roll = random.Random(dice)
    for _ in range(times):
        data = damaged(data, roll)
    look(data)


def damaged(data: bytes, roll: random.Random) -> bytes:
    """The bytes with one damage."""
    at = roll.randrange(len(data) + 1)
    end = min(len(data), at + roll.randrange(1, 40))
    middle = {
        "flip": bytes([data[at] ^ (1 << roll.randrange(8))]) + data[at + 1 : end] if at < len(data) else b"",
        "insert": roll.choice(PIECES) + data[at:end],
        "delete": b"",
        "repeat": data[at:end] * 2,
    }
    return data[:at] + middle[roll.choice(sorted(middle))] + data[end:]


PIECES = [
    b'"',
    b"'",
    b"\n",
    b"\r",
    b"\0",
    b",",
    b";",
    b"\t",
    b"\xff",
    b"\xe2\x82",
    b"-",
    b"0",
    b"<row>",
    b"\x1a",
    b"=1+1",
]
HEADERS = [
    "Part Number", "Net", "List", "10+", "50+", "Qty From", "Pack", "Stock", "Stock East", "Lead time", "Core", "UOM",
    "Currency", "Discount", "Multiplier", "Superseded by", "GTIN", "Origin", "Tariff code", "Weight", "Valid from",
    "Hazmat", "Note", "Maker", "Manufacturer part number",
]  # fmt: skip
NASTY = [
    "", " ", "'", "0", "0.00", "-5", "-0", "(3.20)", "()", "1e5", "1E999", "1.23E+11", "NaN", "inf", "-inf", "٣", "½",
    "1.234", "1,234", "1,234.50", "1.234,5", "$12.50/C", "12,50 €", "CALL", "NLA", "#N/A", "#REF!", "TRUE", "5-Mar",
    "2026-02-30", "31/12/99", "9" * 40, "0" * 40, "40%", "1/0", "per ft", "C", "M", ">50", "12+", "Y", "2-3 wks",
    "BO 12/05", "Total", "=1+1", "\x00", "\u202e7", "\ud7ff", "NW-40388", "00123", "A-1", "Net", "Part Number", "12.50",
]  # fmt: skip


@st.composite
def grids(draw: st.DrawFn) -> list[list[str]]:
    """A number and a price column among others, and cells that were chosen to be read wrongly."""
    header = draw(st.permutations(HEADERS))[: draw(st.integers(0, 7))]
    header = draw(st.permutations(list(dict.fromkeys([*header, "Part Number", "Net"]))))
    cell = st.sampled_from(NASTY) | st.text(max_size=6)
    width = st.integers(max(len(header) - 1, 1), len(header) + 1)
    rows: Sequence[list[str]] = draw(
        st.lists(width.flatmap(lambda n: st.lists(cell, min_size=n, max_size=n)), max_size=9)
    )
    return [list(header), *(row for row in rows)]


@given(grids(), st.sampled_from(",;\t|"))
@settings(max_examples=250, deadline=None)
@example([["Part Number", "Net"], ["'", "2.50"], ["A", "2.50"]], ",")
def test_cells_that_are_easily_read_wrongly(rows: list[list[str]], delimiter: str) -> None:
    look(csv_bytes([[cell.replace("\0", "\x01") for cell in row] for row in rows], delimiter))
