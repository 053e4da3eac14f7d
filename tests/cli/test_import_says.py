"""What `sourcing import` says last: how many rows are ours, how many may be, and the exact command next."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from sourcing.actions.quotes import write_quote
from sourcing.basics.problem import Refused
from sourcing.cli.main import app
from tests.actions.judging_shop import MONDAY, ROWS, by_numbers
from tests.actions.quoted_shop import BELT, BELT_LINE, paper
from tests.journeys.small_shop import HEADER, sheet, shop, take_in

Run = Callable[..., str]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Run a command in the shop; its output. The score is a plain stand-in."""
    monkeypatch.setattr("sourcing.actions.candidates.match_rows", by_numbers)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCING_AT", "2026-03-02T09:00")
    shop(tmp_path, MONDAY)
    (tmp_path / "stonegarth").mkdir()

    def command(*words: str) -> str:
        done = CliRunner().invoke(app, words)
        assert done.exit_code == 0, done.output
        return done.output

    return command


def price_sheet(rows: list[str]) -> str:
    """Stonegarth's sheet with these rows, written; its path."""
    path = Path("stonegarth/prices-2026-03-01.csv")
    path.write_text("\n".join([HEADER, *rows]) + "\n")
    return str(path)


def test_rows_that_may_be_ours_are_counted_and_the_command_named(run: Run) -> None:
    said = run("import", price_sheet(ROWS))
    assert "Our parts by number and table: 1 row. 2 more rows may be ours, 2 of them likely" in said
    assert "\n    sourcing candidates stonegarth\n" in said
    listed = run("candidates", "stonegarth")
    assert "2 rows and 2 candidates wait" in listed and "automatic" not in listed, "it was looked through already"
    assert "may be ours" not in run("import", "stonegarth")


def test_where_no_row_may_be_ours_no_command_is_named(run: Run) -> None:
    said = run("import", price_sheet(ROWS[:1]))
    assert "Our parts by number and table: 1 row. No other row waits to be judged." in said
    assert "sourcing candidates" not in said


def test_a_long_sheet_says_that_nobody_has_looked(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sourcing.actions.left_by_import.MOST_ROWS", 3)
    said = run("import", price_sheet(ROWS))
    assert "Nobody has looked yet which of its 4 offers may be our parts" in said
    assert "\n    sourcing candidates stonegarth\n" in said


def two_sheets() -> None:
    """Stonegarth's as always and Pellbrook's with a price nobody can be sure of, under one name in two folders."""
    price_sheet(ROWS[:1])
    Path("pellbrook").mkdir()
    Path("pellbrook/prices-2026-03-01.csv").write_text("Part Number,Brand,Description,Price\nP-1,Norrowby,Belt,9.00\n")


def refusal(*words: str) -> str:
    """What a command that is refused says."""
    found = CliRunner().invoke(app, words).exception
    assert isinstance(found, Refused)
    return str(found)


def test_a_question_of_one_of_many_files_names_its_path_and_the_command_that_answers_it(run: Run) -> None:
    """Followed to the letter it works; then the folder is imported whole."""
    two_sheets()
    said = refusal("import", "stonegarth", "pellbrook")
    assert said.startswith("pellbrook/prices-2026-03-01.csv, row 1: column 'Price'")
    assert said.endswith("for that file alone in: sourcing import pellbrook/prices-2026-03-01.csv.")
    run("import", "pellbrook/prices-2026-03-01.csv", "--column", "Price=net price")
    assert "kept as sheet" in run("import", "stonegarth", "pellbrook")


def test_an_answer_is_for_the_files_that_have_the_column(run: Run) -> None:
    """Of two sheets one has it. It is remembered for that supplier only."""
    two_sheets()
    run("import", "stonegarth", "pellbrook", "--column", "Price=net price")
    Path("stonegarth/prices-2026-03-02.csv").write_text("Part Number,Brand,Description,Price\nP-1,Norrowby,Belt,9.00\n")
    assert "column 'Price' could be" in refusal("import", "stonegarth/prices-2026-03-02.csv")
    Path("pellbrook/prices-2026-03-02.csv").write_text("Part Number,Brand,Description,Price\nP-1,Norrowby,Belt,9.50\n")
    assert "kept as sheet 3 of pellbrook" in run("import", "pellbrook/prices-2026-03-02.csv")


def test_an_answer_that_no_file_has_a_column_for_is_refused(run: Run) -> None:
    """Also beside one that fits; a file that was there already counts too."""
    two_sheets()
    good = ("--column", "Price=net price")
    assert "no column is called 'Prise'" in refusal(
        "import", "stonegarth", "pellbrook", *good, "--column", "Prise=list price"
    )
    run("import", "pellbrook", *good)
    assert "kept as sheet 2" in run("import", "stonegarth", "pellbrook", *good)


def test_as_json(run: Run) -> None:
    (one,) = json.loads(run("import", price_sheet(ROWS), "--json"))
    assert one["left"] == {"looked": True, "ours": 1, "waiting": 2, "likely": 2}


def test_a_sheet_without_any_price_is_kept_only_when_that_is_said(run: Run) -> None:
    """And it is told again once it is kept; its rows are never ranked."""
    path = Path("stonegarth/prices-2026-03-01.csv")
    path.write_text("Part No,Description,List\n" + "".join(f"NW-7712{at},Belt,{at}4.50\n" for at in range(8)))
    refused = CliRunner().invoke(app, ["import", str(path), "--column", "Part No=supplier number"])
    assert isinstance(refused.exception, Refused), refused.output
    (told,) = refused.exception.problems
    assert told.code == "sheet-without-prices" and "--without-prices" in told.remedy
    said = run("import", str(path), "--column", "Part No=supplier number", "--without-prices")
    assert "no row has a net price, so none of its 8 offers can be ranked" in " ".join(said.split())
    compared = run("compare", "NW-77120")
    assert "Not ranked" in compared and "\n1 Stonegarth" not in compared


def test_a_sheet_is_taken_out_with_what_was_worked_out_from_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Told before with --look, told after, and entered under the job."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCING_AT", "2026-03-02T10:15")

    def run(*words: str) -> str:
        done = CliRunner().invoke(app, words)
        assert done.exit_code == 0, done.output
        return done.output

    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    job = take_in(desk, tmp_path, BELT_LINE)
    write_quote(desk, job, paper)
    asked = run("undo", "1", "--look")
    assert f"job {job}, " in asked and "quote, line 1 of revision 1" in asked
    assert "sheet" in run("sheets") and "Worked out from sheet 1 and still open" in run("undo", "1")
    assert "took out sheet 1 of Stonegarth" in run("history", job)
    told = " ".join(run("show-job", job).split())
    assert "Look at this" in told and "write the quote anew before it goes out" in told
