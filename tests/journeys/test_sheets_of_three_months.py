"""A supplier's sheets of three months: what is asked once, what is remembered, what a changed header means."""

import sqlite3
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import openpyxl
import pytest

from sourcing.actions.changes import sheet_changes
from sourcing.actions.desk import Desk
from sourcing.actions.import_sheets import Imported, Said, import_sheets, sheets, undo_import
from sourcing.basics.problem import Refused
from sourcing.documents.changes import changes_csv, changes_xlsx
from tests.journeys.small_shop import shop

AT = datetime(2026, 3, 2, 9, 0)
JANUARY = "Part Number,Brand,Description,Price,Stock\nNW-1,Norrowby,Belt,10.00,4\nNW-2,Norrowby,=1+1,20.00,0\n"
FEBRUARY = "Part Number,Brand,Description,Price,Stock\nNW-1,Norrowby,Belt,11.00,4\nNW-3,Norrowby,@SUM(A1),5.00,0\n"
MARCH = "Part Number,Brand,Description,Dealer Net,Stock\nNW-1,Norrowby,Belt,11.00,4\nNW-3,Norrowby,Pin,4.00,0\n"
NET = Said(columns={"Price": "net price"})


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """The desk of a small invented shop."""
    return shop(tmp_path, AT)


def take(desk: Desk, folder: Path, day: str, text: str, said: Said | None = None) -> Imported:
    """Import a sheet of Stonegarth's of that day."""
    sheet = folder / f"stonegarth-{day}.csv"
    sheet.write_text(text, encoding="utf-8")
    (done,) = import_sheets(desk, [sheet], said or Said())
    return done


def contents(folder: Path) -> list[str]:
    """Everything the database holds, as SQL text."""
    with sqlite3.connect(next(folder.glob("*.db"))) as connection:
        return list(connection.iterdump())


def test_a_question_is_asked_once_and_keeps_the_sheet_out_until_then(desk: Desk, tmp_path: Path) -> None:
    before = contents(tmp_path)
    with pytest.raises(Refused) as refusal:
        take(desk, tmp_path, "2026-01-05", JANUARY)
    assert [one.code for one in refusal.value.problems] == ["price-column-unclear"]
    assert contents(tmp_path) == before
    assert take(desk, tmp_path, "2026-01-05", JANUARY, NET).kept.offers == 2
    assert take(desk, tmp_path, "2026-02-02", FEBRUARY).kept.offers == 2
    assert take(desk, tmp_path, "2026-02-02", FEBRUARY).again


def test_a_changed_header_is_said_and_net_prices_do_not_vanish_without_a_word(desk: Desk, tmp_path: Path) -> None:
    take(desk, tmp_path, "2026-01-05", JANUARY, NET)
    changed = take(desk, tmp_path, "2026-03-02", MARCH).changed
    assert any("Dealer Net" in one.what for one in changed)
    listed = MARCH.replace("Dealer Net", "List Price")
    with pytest.raises(Refused) as refusal:
        take(desk, tmp_path, "2026-03-03", listed)
    assert refusal.value.problems[0].code == "net-price-gone"
    gone = Said(columns={"Dealer Net": "not used"})
    assert take(desk, tmp_path, "2026-03-03", listed, gone).kept.offers == 2


def test_a_header_that_is_not_there_is_refused_and_so_is_a_word_that_means_nothing(desk: Desk, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refusal:
        take(desk, tmp_path, "2026-01-05", JANUARY, Said(columns={"Preis": "net price"}))
    assert refusal.value.problems[0].code == "no-such-header"


def test_what_changed_by_hand_arithmetic_and_undo(desk: Desk, tmp_path: Path) -> None:
    """10.00 to 11.00 is +10.0 %; NW-2 is gone, NW-3 is new."""
    take(desk, tmp_path, "2026-01-05", JANUARY, NET)
    later = take(desk, tmp_path, "2026-02-02", FEBRUARY)
    found = sheet_changes(desk, "stonegarth")
    assert [(one.now.supplier_number, one.prices[0].percent) for one in found.changed] == [("NW-1", Decimal("10.0"))]
    assert [one.supplier_number for one in found.vanished] == ["NW-2"]
    assert [one.supplier_number for one in found.appeared] == ["NW-3"]
    assert found.adds_up
    undo_import(desk, later.kept.sheet)
    assert [one.is_newest for one in sheets(desk)] == [True]


def test_text_like_a_formula_stays_text_in_what_is_written_for_people(desk: Desk, tmp_path: Path) -> None:
    """OWASP, CSV injection: cells that begin with = + - @ run as formulas in a spreadsheet."""
    take(desk, tmp_path, "2026-01-05", JANUARY, NET)
    take(desk, tmp_path, "2026-02-02", FEBRUARY)
    found = sheet_changes(desk, "stonegarth")
    path = tmp_path / "changes.xlsx"
    path.write_bytes(changes_xlsx(found))
    cells = [cell for sheet in openpyxl.load_workbook(path) for row in sheet.iter_rows() for cell in row]
    risky = [cell for cell in cells if isinstance(cell.value, str) and cell.value[:1] in "=@"]
    assert {cell.value for cell in risky} == {"=1+1", "@SUM(A1)"}
    assert all(cell.data_type == "s" for cell in risky)
    texts = changes_csv(found)
    assert "'=1+1" in texts and "'@SUM(A1)" in texts
