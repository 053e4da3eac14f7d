"""Judging by the command line: what each command prints, keeps and refuses, and with which exit code."""

import json
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner

from sourcing.basics.problem import Refused
from sourcing.cli.main import app
from tests.actions.judging_shop import MONDAY, by_numbers, queue
from tests.actions.test_number_rules import ROWS as PREFIXED
from tests.journeys.small_shop import desk_at, sheet, shop

KEEPERS = [f"NW-3120{at},Norrowby,Keeper,13.50,6.40,50," for at in (1, 2, 5)]
Run = Callable[..., str]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Run a command in a shop with three keepers to judge; its output. `code` is the exit code to meet."""
    monkeypatch.setattr("sourcing.actions.candidates.match_rows", by_numbers)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCING_AT", "2026-03-02T09:00")
    monkeypatch.setenv("SOURCING_WHO", "Greta Lindqvare")
    sheet(shop(tmp_path, MONDAY), tmp_path, "stonegarth", "2026-03-01", KEEPERS)

    def command(*words: str, code: int = 0) -> str:
        done = CliRunner().invoke(app, words)
        if isinstance(done.exception, Refused):
            assert code == 1, done.exception
            return str(done.exception)
        assert done.exit_code == code, done.output
        return done.output

    return command


def test_candidates_are_found_once_and_listed(run: Run) -> None:
    first = run("candidates")
    assert "stonegarth, sheet 1 (prices-2026-03-01.csv) of 2026-03-01: 3 rows, 0 automatic, 3 with candidates" in first
    assert "Candidates of all suppliers: 3 rows and 3 candidates wait" in first
    again = run("candidates", "stonegarth", "--most", "1")
    assert "automatic" not in again and "the 1 row worth most" in again
    assert "3 with candidates" in run("candidates", "--again")
    assert len(json.loads(run("candidates", "--json"))["shown"]) == 3
    assert len(json.loads(run("candidates", "--json", "--at-least", "0.8571"))["shown"]) == 3
    assert json.loads(run("candidates", "--json", "--at-least", "0.8572"))["rows"] == 0
    assert "is not a score" in run("candidates", "--at-least", "likely", code=1)


def test_yes_no_and_taking_back(run: Run) -> None:
    run("candidates")
    assert "kept as fitted for KEEPER" in run("judge", "1", "yes", "--fitted", "--words", "served the winter")
    assert "is not KEEPER" in run("judge", "2", "no")
    assert "is taken back" in run("judge", "2", "--take-back", "--words", "wrong drawing")
    said = json.loads(run("judge", "2", "yes", "--json"))
    assert said["judgement"]["who"] == "Greta Lindqvare" and said["judgement"]["standing"] == "unchecked"
    listed = run("judged", "stonegarth")
    assert "yes to KEEPER, fitted" in listed and "Taken back on 2026-03-02 by Greta Lindqvare: wrong" in " ".join(
        listed.split()
    )
    assert run("judged", "pellbrook").strip() == "Nobody has judged a candidate yet."


def test_a_file_there_and_back(run: Run, tmp_path: Path) -> None:
    """A row that can't be taken gives exit code 1, and the others are kept."""
    assert "Wrote all that waits to judged.xlsx" in run("candidates", "--most", "1", "--xlsx", "judged.xlsx")
    book = openpyxl.load_workbook("judged.xlsx")
    page = book.worksheets[0]
    page["B2"], page["B3"], page["E4"], page["B4"] = "yes", "no", "NW-9", "no"
    book.save("judged.xlsx")
    text = run("judge", "--file", "judged.xlsx", code=1)
    assert "2 answers kept, 1 row not taken" in text and "judged.xlsx, row 4, column 'number'" in text
    assert [one.kept.candidate for one in queue(desk_at(tmp_path, MONDAY)).shown] == [3]


def test_by_score_in_two_steps(run: Run) -> None:
    run("candidates")
    shown = run("judge", "--supplier", "stonegarth", "--all-above", "0.8")
    assert "Nothing is kept yet" in shown and "--accept 3" in shown
    assert "there are 3" in run("judge", "--supplier", "stonegarth", "--all-above", "0.8", "--accept", "2", code=1)
    done = run("judge", "--supplier", "stonegarth", "--all-above", "0.8", "--accept", "3")
    assert done.startswith("Accepted as unchecked: 3 candidates")
    assert "is not a score" in run("judge", "--supplier", "stonegarth", "--all-above", "most", code=1)


@pytest.mark.parametrize(
    "words",
    [
        ("judge",),
        ("judge", "1"),
        ("judge", "1", "perhaps"),
        ("judge", "1", "no", "--fitted"),
        ("judge", "1", "yes", "--file", "a.xlsx"),
        ("judge", "--all-above", "0.9"),
        ("judge", "--all-above", "0.9", "--supplier", "stonegarth", "--fitted"),
        ("number-rules", "confirm", "stonegarth"),
    ],
)
def test_what_makes_no_sense_is_a_usage_error(run: Run, words: tuple[str, ...]) -> None:
    run(*words, code=2)


def test_number_rules(run: Run, tmp_path: Path) -> None:
    assert run("number-rules").strip() == "No number rule is kept, and the sheets suggest none."
    sheet(desk_at(tmp_path, MONDAY), tmp_path, "pellbrook", "2026-03-01", PREFIXED)
    assert "sourcing number-rules confirm pellbrook --prefix='PB-'" in run("number-rules")
    confirmed = run("number-rules", "confirm", "pellbrook", "--prefix=PB-")
    assert "Rule 1: pellbrook puts 'PB-' before the number" in confirmed
    assert "Say 'sourcing candidates --again'" in confirmed
    assert json.loads(run("number-rules", "--json"))["proposed"] == []
    withdrawn = run("number-rules", "withdraw", "1", "--words", "new catalogue")
    assert "Withdrawn on 2026-03-02" in withdrawn and "Say 'sourcing candidates --again'" in withdrawn
    assert "has '-PB' after it" in run("number-rules", "confirm", "pellbrook", "--suffix", "-PB", code=1)
