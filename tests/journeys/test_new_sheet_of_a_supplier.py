"""Three months of one supplier's sheets: asked once, remembered, compared, undone; nothing kept in silence."""

import csv
import io
import sqlite3
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import openpyxl
import pytest

from sourcing.actions.changes import sheet_changes
from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.import_sheets import Imported, Said, import_sheets, sheets, undo_import
from sourcing.basics.change import SheetChanges
from sourcing.basics.problem import Refused
from sourcing.documents.changes import changes_csv, changes_text, changes_xlsx
from tests.journeys.small_shop import desk_at, shop

JANUARY = """Part Number,Brand,Description,Price,Superseded by
NW-77120,Norrowby,Belt B88,120.00,
NW-31207,Norrowby,Keeper,6.40,
NW-22203,Norrowby,Idler,22.50,
NW-52626,Norrowby,Scraper bar,31.00,
NW-40388,Norrowby,Shear pin,1.60,
"""
FEBRUARY = """Part Number,Brand,Description,Price,Superseded by
NW-77120,Norrowby,Belt B88,126.90,
NW-31207,Norrowby,Keeper,6.16,
NW-22203,Norrowby,Idler,22.50,
NW-52626,Norrowby,Scraper bar,31.00,NW-52627
NW-52627,Norrowby,Scraper bar,33.00,
"""
NET = Said(columns={"Price": "net price"})
LIVE = ("=1+1", "@SUM(A1)", "+cmd|' /C calc'!A0", "-2+3", "\t=1+1")
Take = Callable[..., Imported]


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """The shop on a February morning."""
    return shop(tmp_path, datetime(2026, 2, 3, 9, 0))


@pytest.fixture
def take(desk: Desk, tmp_path: Path) -> Take:
    """Imports the text as Stonegarth's sheet of a day."""

    def taken(text: str, day: str, said: Said | None = None) -> Imported:
        path = tmp_path / "stonegarth" / f"prices-{day}.csv"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text)
        (one,) = import_sheets(desk, [path], said or Said())
        return one

    return taken


def contents(folder: Path) -> list[str]:
    """Everything the database holds, as SQL text."""
    with sqlite3.connect(folder / "sourcing.db") as connection:
        return list(connection.iterdump())


def moved(found: SheetChanges) -> dict[str, tuple[str, str]]:
    """The numbers that changed: how, and by how many per cent."""
    return {
        one.now.supplier_number: (one.kind, str(one.headline.percent) if one.headline else "") for one in found.changed
    }


def test_a_price_that_could_be_two_things_is_asked_once_for_ever(take: Take, tmp_path: Path) -> None:
    """Refused with the question and nothing kept; answered; the next sheet with this header is not asked."""
    before = contents(tmp_path)
    with pytest.raises(Refused) as refusal:
        take(JANUARY, "2026-01-05")
    assert [one.code for one in refusal.value.problems] == ["price-column-unclear"]
    assert 'confirm with --column "Price=net price"' in str(refusal.value)
    assert contents(tmp_path) == before
    assert take(JANUARY, "2026-01-05", NET).kept.offers == 5
    february = take(FEBRUARY, "2026-02-02")
    assert (february.kept.offers, february.changed) == (5, ())


def test_the_same_bytes_twice_are_told_and_nothing_is_doubled(take: Take, desk: Desk, tmp_path: Path) -> None:
    first = take(JANUARY, "2026-01-05", NET)
    before = contents(tmp_path)
    again = take(JANUARY, "2026-01-05", NET)
    assert again.again and again.summary is None and again.kept == first.kept
    assert take(JANUARY, "2026-01-19").again  # under another name and day
    assert contents(tmp_path) == before and len(sheets(desk)) == 1


def test_what_rose_fell_vanished_appeared_and_was_superseded(take: Take, desk: Desk) -> None:
    """By hand: 120.00 to 126.90 is 6.90 / 120 = 5.75 %, half up 5.8; 6.40 to 6.16 is -0.24 / 6.40 = -3.75 %, -3.8."""
    take(JANUARY, "2026-01-05", NET)
    take(FEBRUARY, "2026-02-02")
    found = sheet_changes(desk, "stonegarth")
    assert moved(found) == {
        "NW-77120": ("rose", "5.8"),
        "NW-31207": ("fell", "-3.8"),
        "NW-52626": ("superseded", ""),
    }
    assert [one.supplier_number for one in found.vanished] == ["NW-40388"]
    assert [one.supplier_number for one in found.appeared] == ["NW-52627"]
    (bar,) = (one for one in found.changed if one.kind == "superseded")
    assert bar.instead and bar.instead.supplier_number == "NW-52627"
    assert found.unchanged == 1 and found.adds_up and str(found.median_rise) == "5.8"
    text = changes_text(found)
    assert "+5.8 %" in text and "-3.8 %" in text


def test_undo_brings_the_older_sheet_back(take: Take, desk: Desk, tmp_path: Path) -> None:
    """The newer price is gone, the older counts again; what was remembered of the columns stays."""
    take(JANUARY, "2026-01-05", NET)
    february = take(FEBRUARY, "2026-02-02").kept
    prices = {"before": _price_of_the_belt(desk)}
    assert undo_import(desk, february.sheet) == february
    prices["after"] = _price_of_the_belt(desk)
    assert prices == {"before": "126.90", "after": "120.00"}
    assert [(one.sheet_date.isoformat(), one.is_newest) for one in sheets(desk)] == [("2026-01-05", True)]
    with pytest.raises(Refused, match="no sheet before"):
        sheet_changes(desk, "stonegarth")
    assert take(FEBRUARY, "2026-02-02").kept.offers == 5
    assert _price_of_the_belt(desk_at(tmp_path, datetime(2026, 2, 3, 10, 0))) == "126.90"


def _price_of_the_belt(desk: Desk) -> str:
    (one,) = compare(desk, "NW-77120", 1, None).ranked
    return str(one.priced.offer.breaks[0].price)


@pytest.mark.parametrize(
    ("header", "told"),
    [
        ("Part Number,Brand,Description,Dealer Net,Superseded by", ["header-changed"]),
        ("Part Number,Brand,Description,Price,Replaced by", ["header-changed"]),
        ("Part Number,Brand,Colour,Price,Superseded by", ["header-gone", "header-new"]),
    ],
)
def test_a_changed_header_is_read_and_said(take: Take, header: str, told: list[str]) -> None:
    take(FEBRUARY, "2026-02-02", NET)
    march = take(FEBRUARY.replace(FEBRUARY.splitlines()[0], header), "2026-03-02")
    assert [one.code for one in march.changed] == told
    assert march.summary and {one.field for one in march.summary.columns} >= {"supplier number", "net price"}


@pytest.mark.parametrize(
    ("header", "code"),
    [
        ("Part Number,Brand,Description,List,Superseded by", "net-price-gone"),
        ("Part Number,Brand,Description,Remarks,Superseded by", "no-price-column"),
        ("Part Number,Brand,Description,Amount,Superseded by", "price-column-unclear"),
        ("Part Number,Brand,Description,,Superseded by", "column-guess"),
    ],
)
def test_a_price_header_that_vanished_is_never_no_price(take: Take, tmp_path: Path, header: str, code: str) -> None:
    """Refused or asked, and the February sheet counts as before."""
    take(FEBRUARY, "2026-02-02", NET)
    before = contents(tmp_path)
    with pytest.raises(Refused) as refusal:
        take(FEBRUARY.replace(FEBRUARY.splitlines()[0], header), "2026-03-02")
    assert [one.code for one in refusal.value.problems] == [code]
    assert contents(tmp_path) == before


def test_text_that_begins_like_a_formula_is_text_everywhere(take: Take, desk: Desk) -> None:
    """Kept to the letter; no live formula in the workbook or the CSV (OWASP, 'CSV Injection')."""
    out = io.StringIO()
    lines = csv.writer(out)
    lines.writerow(["Part Number", "Brand", "Description", "Net"])
    lines.writerows([f"A{at}", "Norrowby", text, "1.50"] for at, text in enumerate(LIVE))
    lines.writerows([text.strip(), "Norrowby", "a number", "1.50"] for text in LIVE[:4])
    take("Part Number,Brand,Description,Net\nZ-9,Norrowby,Pin,2.50\n", "2026-01-05")
    march = take(out.getvalue(), "2026-03-02")
    assert march.summary
    found = sheet_changes(desk, "stonegarth")
    kept = {one.description for one in found.appeared} | {one.supplier_number for one in found.appeared}
    assert kept >= {"=1+1", "@SUM(A1)", "+cmd|' /C calc'!A0", "-2+3"}
    assert len(found.appeared) == march.kept.offers == 9
    _no_live_cell_in_a_workbook(changes_xlsx(found))
    cells = [cell for row in csv.reader(io.StringIO(changes_csv(found))) for cell in row]
    assert {"'=1+1", "'@SUM(A1)", "'+cmd|' /C calc'!A0", "'-2+3"} <= set(cells)
    assert not [cell for cell in cells if cell.lstrip().startswith(("=", "+", "@"))]


def _no_live_cell_in_a_workbook(data: bytes) -> None:
    book = openpyxl.load_workbook(io.BytesIO(data))
    cells = [cell for worksheet in book for row in worksheet.iter_rows() for cell in row]
    risky = [cell for cell in cells if isinstance(cell.value, str) and cell.value.lstrip().startswith(tuple("=+-@"))]
    assert {str(cell.value).strip() for cell in risky} >= {"=1+1", "@SUM(A1)", "-2+3"}
    assert all(cell.data_type == "s" and cell.quotePrefix for cell in risky)
    assert not [cell for cell in cells if cell.data_type == "f"]
