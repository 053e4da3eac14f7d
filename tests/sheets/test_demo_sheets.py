"""The demo sheets read whole: rows, offers, structure and problems of each, counted here by hand-written readers."""

import csv
import io
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from sourcing.sheets.reading import Hints, SheetReading, read_sheet
from tests.sheets.sheet_files import counts

DEMO = Path(__file__).resolve().parents[2] / "demo_prices"
SHEETS = sorted(path for path in DEMO.glob("*/*") if path.suffix != ".md")


def reading_of(path: Path) -> SheetReading:
    """The demo sheet read with the currency of its supplier's terms."""
    currency = "EUR" if path.parent.name == "kesselried" else "USD"
    return read_sheet(path.read_bytes(), path.name, Hints(path.parent.name, currency))


def demo(supplier: str) -> tuple[Path, SheetReading]:
    """The supplier's newest sheet, and its reading."""
    path = [path for path in SHEETS if path.parent.name == supplier][-1]
    return path, reading_of(path)


def test_all_five_suppliers_are_there() -> None:
    assert {path.parent.name for path in SHEETS} >= {"stonegarth", "kesselried", "larkmoor", "pellbrook", "tavishollow"}


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: f"{path.parent.name}-{path.name}")
def test_a_demo_sheet_reads_without_a_problem_and_every_row_is_counted(path: Path) -> None:
    reading = reading_of(path)
    assert reading.summary.problems == ()
    assert len(reading.offers) >= 300
    assert sum(row[0] for row in counts(reading)) == rows_in(path)
    assert all(column.field for column in reading.summary.columns)


def rows_in(path: Path) -> int:
    """Rows of the file by other readers: the csv module, openpyxl."""
    if path.suffix == ".xlsx":
        return sum(worksheet.max_row for worksheet in openpyxl.load_workbook(path).worksheets)
    encoding = {"kesselried": "cp1252", "tavishollow": "utf-16"}.get(path.parent.name, "utf-8")
    return len(list(csv.reader(io.StringIO(path.read_bytes().decode(encoding), newline=""))))


def test_stonegarth_has_a_preamble_sections_and_a_footer_that_counts_its_items() -> None:
    path, reading = demo("stonegarth")
    footer = next(line for line in path.read_text("utf-8").splitlines() if line.startswith("End of file"))
    assert f"- {len(reading.offers)} items" in footer
    assert reading.offers["breaks"].map(len).eq(0).sum() >= 1
    assert set(reading.offers["currency"]) == {"USD"}


def test_kesselried_prices_have_decimal_commas() -> None:
    path, reading = demo("kesselried")
    rows = list(csv.DictReader(io.StringIO(path.read_bytes().decode("cp1252"), newline=""), delimiter=";"))
    expected = [Decimal(row["EK netto EUR"].replace(".", "").replace(",", ".")) for row in rows if row["EK netto EUR"]]
    assert [breaks[0].price for breaks in reading.offers["breaks"] if breaks] == expected
    assert any("ä" in text or "ü" in text for text in reading.offers["description"])


def test_larkmoors_cover_is_structure_and_its_header_takes_two_rows() -> None:
    _, reading = demo("larkmoor")
    cover, prices = counts(reading)
    assert cover[1] == cover[3] == 0 and prices[2] == 3
    assert "6002-2RS" in set(reading.offers["supplier_number"])


def test_pellbrook_has_three_breaks_cores_and_prices_per_hundred() -> None:
    _, reading = demo("pellbrook")
    offers = reading.offers
    assert {tuple(step.from_quantity for step in breaks) for breaks in offers["breaks"]} == {(1, 5, 10)}
    assert set(offers["price_basis"]) == {1, 100}
    assert any(core is not None and core > 0 for core in offers["core_charge"])
    assert {type(pack) for pack in offers["pack"]} == {int}


def test_tavishollow_says_when_in_words() -> None:
    _, reading = demo("tavishollow")
    times = {time.text: (time.least, time.most) for time in reading.offers["lead_time"] if time}
    assert times["In stock, ships same day"] == (0, 0)
    assert times["2-3 wks"] == (10, 15)
    assert times["Special order 10-14 days"] == (10, 14)
    assert times["Backorder"] == (None, None)
    assert "OV 20 417" in set(reading.offers["supplier_number"])
