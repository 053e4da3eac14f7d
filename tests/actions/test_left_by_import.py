"""What an import leaves for a person: candidates are looked for at once, or the command is named."""

from collections.abc import Sequence
from pathlib import Path

import openpyxl
import pytest

from sourcing.actions.candidates import find_candidates
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.left_by_import import left_by_import
from sourcing.actions.maker_names import add_maker_name, remove_maker_name
from sourcing.actions.number_rules import confirm_number_rule, withdraw_number_rule
from sourcing.actions.review import judge
from sourcing.actions.review_queue import review_queue
from sourcing.actions.setup import set_up
from sourcing.actions.statement_deeds import answer_doubt, doubt_statement
from sourcing.basics.judgement import LeftByImport
from sourcing.basics.number_rule import NumberRule
from sourcing.documents.review import queue_text
from tests.actions.judging_shop import MONDAY, ROWS, by_numbers, queue, waiting
from tests.journeys.small_shop import HEADER, sheet, shop


def left(desk: Desk, folder: Path, rows: Sequence[str] = ROWS, day: str = "2026-03-01") -> LeftByImport | None:
    """Import the rows as Stonegarth's sheet of that day; what is left."""
    (folder / "stonegarth").mkdir(exist_ok=True)
    path = folder / "stonegarth" / f"prices-{day}.csv"
    path.write_text("\n".join([HEADER, *rows]) + "\n")
    (one,) = left_by_import(desk, import_sheets(desk, [path], Said()), match=by_numbers)
    return one.left


def test_a_short_sheet_is_looked_through_at_once(tmp_path: Path) -> None:
    """One row is ours by its number, two may be; the queue has them and nothing is left to look through."""
    desk = shop(tmp_path, MONDAY)
    assert left(desk, tmp_path) == LeftByImport(looked=True, ours=1, waiting=2, likely=2)
    assert (queue(desk).rows, queue(desk).likely, queue(desk).not_looked_through) == (2, 2, ())
    assert [one.deed for one in history(desk, "sheet 1")] == ["import", "find candidates"]


def test_what_is_answered_already_waits_no_more_on_the_next_sheet(tmp_path: Path) -> None:
    desk = shop(tmp_path, MONDAY)
    left(desk, tmp_path)
    judge(desk, waiting(desk, "NW-77210", "BELT").kept.candidate, "no")
    again = left(desk, tmp_path, [*ROWS, "ZZ-2,Dunmarrow,Bolt,1.00,0.50,9,"], "2026-03-02")
    assert again == LeftByImport(looked=True, ours=1, waiting=1, likely=1)


def test_a_long_sheet_is_kept_and_not_looked_through(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sourcing.actions.left_by_import.MOST_ROWS", 3)
    desk = shop(tmp_path, MONDAY)
    assert left(desk, tmp_path) == LeftByImport(looked=False)
    assert queue(desk).not_looked_through == (1,)


def test_nothing_is_said_of_a_sheet_that_is_there_or_does_not_count(tmp_path: Path) -> None:
    desk = shop(tmp_path, MONDAY)
    left(desk, tmp_path)
    assert left(desk, tmp_path) is None, "the same bytes"
    assert left(desk, tmp_path, ROWS[:2], "2026-01-01") is None, "older than the newest"


def test_the_queue_says_when_the_table_changed_after_a_sheet_was_looked_through(tmp_path: Path) -> None:
    """An answer is no such change: it settles its own row. Nor is a table taken in again as it was."""
    desk = shop(tmp_path, MONDAY)
    left(desk, tmp_path)
    judge(desk, waiting(desk, "NW-31270", "KEEPER").kept.candidate, "yes")
    set_up(desk, tmp_path)
    assert review_queue(desk).table_changed_since == ()
    book = openpyxl.load_workbook(tmp_path / "equivalence.xlsx")
    book["parts"].append(["SHOE", "Skid shoe", ""])
    book.save(tmp_path / "equivalence.xlsx")
    set_up(desk, tmp_path)
    assert review_queue(desk).table_changed_since == (1,)
    assert "'sourcing candidates --again' looks again" in " ".join(queue_text(review_queue(desk)).split())
    find_candidates(desk, match=by_numbers)
    assert review_queue(desk).table_changed_since == ()


def test_a_makers_name_and_a_doubt_are_changes_for_every_sheet(tmp_path: Path) -> None:
    desk = shop(tmp_path, MONDAY)
    for change in (
        lambda: add_maker_name(desk, "Norrowby Inc.", "Norrowby"),
        lambda: remove_maker_name(desk, "Norrowby Inc."),
        lambda: doubt_statement(desk, 1, "the list is old"),
        lambda: answer_doubt(desk, 1, "asked"),
    ):
        left(desk, tmp_path)
        find_candidates(desk, match=by_numbers)
        assert review_queue(desk).table_changed_since == ()
        change()
        assert review_queue(desk).table_changed_since == (1,)


def test_a_number_rule_is_a_change_for_its_suppliers_sheet_alone(tmp_path: Path) -> None:
    """And what matches by itself without the prefix waits no more at once."""
    desk = shop(tmp_path, MONDAY)
    left(desk, tmp_path)
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["PB-NW-77120,Norrowby,Auger belt B88,189.50,126.90,2,"])
    find_candidates(desk, match=by_numbers)
    assert [one.kept.offer.supplier_number for one in queue(desk, "pellbrook").shown] == ["PB-NW-77120"]
    kept = confirm_number_rule(desk, NumberRule(supplier="pellbrook", kind="prefix", text="PB-"))
    assert review_queue(desk).table_changed_since == (2,) and queue(desk, "pellbrook").rows == 0
    find_candidates(desk, match=by_numbers)
    assert review_queue(desk).table_changed_since == ()
    withdraw_number_rule(desk, kept.number, "he dropped it")
    assert review_queue(desk).table_changed_since == (2,)
