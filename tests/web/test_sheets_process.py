"""Sheets are read by a process of their own: what it gives back, and what becomes of one that breaks."""

import sys
from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.import_sheets import Said
from sourcing.actions.sheet_sent import SheetTaken
from sourcing.basics.problem import Refused
from sourcing.basics.value import from_json, to_json
from sourcing.documents.changes_shown import ChangesShown
from sourcing.web import errands
from sourcing.web.errands import Compare, Runner, TakeIn, in_a_process
from tests.web.sheets_world import PLAIN
from tests.web.world import CLERK, NOW, new_database

SAID = to_json(Said(looked_over=True)).decode()


def taken(database: Path, path: Path, file: str, run: Runner = in_a_process) -> SheetTaken:
    """A sheet read by a process, or by `run`."""
    told: list[str] = []
    errand = TakeIn(database=str(database), at=NOW, who=CLERK, path=str(path), file=file, said=SAID)
    found = from_json(run(errand, told.append), SheetTaken)
    assert any("reading" in words for words in told)
    return found


def test_a_process_keeps_a_sheet_and_compares_two(tmp_path: Path) -> None:
    """The whole way: progress, what came of it, and the file of the comparison."""
    database, path = new_database(tmp_path), tmp_path / "held"
    path.write_bytes(PLAIN)
    first = taken(database, path, "stonegarth-2026-01-13.csv", errands.do)
    path.write_bytes(PLAIN.replace(b"4.50", b"5.50"))
    second = taken(database, path, "stonegarth-2026-01-14.csv")
    assert first.sheet and second.sheet and first.supplier == "stonegarth"
    errand = Compare(
        database=str(database),
        at=NOW,
        file="x",
        supplier="stonegarth",
        sheet=second.sheet,
        against=first.sheet,
        folder=str(tmp_path),
    )
    found = from_json(in_a_process(errand, lambda _: None), ChangesShown)
    assert found.rose == 1 and found.adds_up
    assert "5.50" in (tmp_path / f"{first.sheet}-{second.sheet}.csv").read_text(encoding="utf-8")


def test_a_process_that_dies_is_told_and_nothing_is_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A crash of the reader is a sentence."""
    broken = tmp_path / "broken"
    broken.write_text("#!/bin/sh\nexit 3\n", encoding="utf-8")
    broken.chmod(0o700)
    monkeypatch.setattr(sys, "executable", str(broken))
    errand = TakeIn(database="x.db", at=datetime(2026, 1, 1), who="", path="x", file="x.csv", said=SAID)
    with pytest.raises(Refused, match="broke off"):
        in_a_process(errand, lambda _: None)


def test_a_process_that_takes_too_long_is_stopped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It can't hold up the sheets after it for ever."""
    slow = tmp_path / "slow"
    slow.write_text("#!/bin/sh\nexec sleep 60\n", encoding="utf-8")
    slow.chmod(0o700)
    monkeypatch.setattr(sys, "executable", str(slow))
    monkeypatch.setattr(errands, "MOST_MINUTES", 0.005)
    errand = TakeIn(database="x.db", at=datetime(2026, 1, 1), who="", path="x", file="x.csv", said=SAID)
    with pytest.raises(Refused, match="was stopped"):
        in_a_process(errand, lambda _: None)


def test_a_fault_of_the_program_is_kept_in_a_file_and_told_as_broken_off(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its trace is in a file of the shop's computer and on no page."""
    database = new_database(tmp_path)
    errand = TakeIn(database=str(database), at=NOW, who=CLERK, path=str(tmp_path / "gone"), file="x.csv", said=SAID)
    with pytest.raises(Refused, match="broke off"):
        in_a_process(errand, lambda _: None)
    words = capsys.readouterr().out.split()
    assert "FileNotFoundError" in Path(words[-1]).read_text(encoding="utf-8")
    Path(words[-1]).unlink()
