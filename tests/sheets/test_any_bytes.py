"""No bytes crash the reader: anything but a refusal in a sentence, or counts that do not add up, is a bug."""

from decimal import Decimal
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.sheets.plain import grid_rows, plain_table
from sourcing.sheets.reading import Hints, SheetReading, read_sheet
from tests.sheets.sheet_files import HEADER, csv_bytes

TRAPS = Path(__file__).parents[1] / "traps" / "sheets"
SEEDS = sorted(file for file in TRAPS.iterdir() if not file.name.endswith(".json") and file.stat().st_size < 20_000)
NASTY = st.sampled_from(
    ["", " ", "0", "1,234", "1.234,5", "-3", "(3.20)", "CALL", "NLA", "5-Mar", "1E+5", "1.2E+11", "=1+1", "'", '"',
     "\x00",
     "\u202e12", "½", "٣", "12.50/C", "1'000.--", "40%", "2-3 wks", "BO 12/05", "9" * 400, "é", "\ud7ff", "\n", ",;\t|"]
)  # fmt: skip


def check(data: bytes, currency: str) -> None:
    """Read in every way; what was read is whole."""
    for read in (lambda: list(grid_rows(data, "x")), lambda: plain_table(data, "x", {})):
        try:
            read()
        except Refused as refusal:
            assert all(one.what and one.remedy for one in refusal.problems)
    try:
        reading = read_sheet(data, "x", Hints(supplier="stonegarth", currency=currency))
    except Refused as refusal:
        assert all(one.what and one.remedy for one in refusal.problems)
    else:
        whole(reading)


def whole(reading: SheetReading) -> None:
    """Every row is one of the three, every offer has a number, no price is nothing or less."""
    summary, offers = reading.summary, reading.offers
    assert all(one.adds_up for one in summary.accounting)
    assert sum(one.offers for one in summary.accounting) == len(offers)
    assert sum(one.structure for one in summary.accounting) == len(reading.structure)
    bad = {(one.place.worksheet, one.place.row) for one in summary.problems if one.place}
    kept = set(zip(offers["worksheet"], offers["row"], strict=True))
    aside = {(one.worksheet, one.row) for one in reading.structure}
    assert not bad & kept and not bad & aside and not kept & aside
    assert all(offers["supplier_number"])
    for breaks in offers["breaks"]:
        assert all(type(one.price) is Decimal and one.price > 0 and one.from_quantity > 0 for one in breaks)


@given(st.binary(max_size=400), st.sampled_from(["", "USD"]))
@settings(max_examples=150, deadline=None)
def test_any_bytes(data: bytes, currency: str) -> None:
    check(data, currency)


@given(
    st.sampled_from(SEEDS), st.floats(0, 1), st.floats(0, 1), st.binary(max_size=6), st.sampled_from(["cut", "twice"])
)
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_a_sheet_with_a_piece_changed(seed: Path, first: float, last: float, put: bytes, how: str) -> None:
    data = seed.read_bytes()
    start, end = sorted((int(first * len(data)), int(last * len(data))))
    end = min(end, start + 40)
    piece = data[start:end]
    check(data[:start] + put + (piece * 2 if how == "twice" else b"") + data[end:], "USD")


@given(st.lists(st.lists(NASTY, min_size=1, max_size=9), max_size=8), st.sampled_from(["", "USD", "EUR"]))
@settings(max_examples=200, deadline=None)
def test_nasty_cells_under_known_headers(rows: list[list[str]], currency: str) -> None:
    check(csv_bytes([HEADER, *rows]), currency)
