"""`sourcing read`: its four ways to print, its exit codes, its files of columns, and the steps it shows."""

import csv
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from sourcing.cli.main import app

SHEET = 'Stonegarth\nPart Number,Description,Price\nNW-1,"Belt, auger",10.00\n00123,Pin,20.00\n'


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """A sheet with a price that may be net or list."""
    file = tmp_path / "sheet.csv"
    file.write_bytes(SHEET.encode("utf-16"))
    return file


def read(*words: object) -> Result:
    """The command run in this process."""
    return CliRunner().invoke(app, ["read", *map(str, words)])


def test_the_grid_is_every_row_as_utf_8_with_commas(sheet: Path) -> None:
    done = read(sheet, "--grid")
    assert done.exit_code == 0
    assert list(csv.reader(io.StringIO(done.stdout_bytes.decode("utf-8"), newline=""))) == [
        ["Stonegarth"],
        ["Part Number", "Description", "Price"],
        ["NW-1", "Belt, auger", "10.00"],
        ["00123", "Pin", "20.00"],
    ]


def test_the_table_is_header_and_body_alone(sheet: Path) -> None:
    assert read(sheet, "--table").stdout.splitlines()[0] == "Part Number,Description,Price"
    assert len(read(sheet, "--table").stdout.splitlines()) == 3


def test_a_question_is_exit_1_and_an_answer_exit_0(sheet: Path) -> None:
    asked = read(sheet, "--json", "--currency", "USD")
    assert asked.exit_code == 1
    assert [one["code"] for one in json.loads(asked.stdout)["questions"]] == ["price-column-unclear"]
    answered = read(sheet, "--json", "--currency", "USD", "--column", "Price=net price")
    assert answered.exit_code == 0
    offers = json.loads(answered.stdout)["offers"]
    assert [(one["supplier_number"], one["breaks"]) for one in offers] == [
        ("NW-1", [{"from_quantity": 1, "price": "10.00"}]),
        ("00123", [{"from_quantity": 1, "price": "20.00"}]),
    ]


def test_columns_are_written_to_a_file_corrected_and_read_back(sheet: Path, tmp_path: Path) -> None:
    file = tmp_path / "columns.toml"
    assert read(sheet, "--currency", "USD", "--write-columns", file).exit_code == 1
    file.write_text(
        file.read_text(encoding="utf-8").replace('"Price" = "?"', '"Price" = "list price"'), encoding="utf-8"
    )
    done = read(sheet, "--json", "--currency", "USD", "--columns", file)
    assert done.exit_code == 0 and json.loads(done.stdout)["offers"][0]["list_price"] == "10.00"


def test_a_price_break_may_be_named(sheet: Path) -> None:
    done = read(sheet, "--json", "--currency", "USD", "--column", "Price=net price from 10")
    assert json.loads(done.stdout)["offers"][0]["breaks"] == [{"from_quantity": 10, "price": "10.00"}]


@pytest.mark.parametrize(
    ("words", "code"),
    [(["--column", "Price=net"], 1), (["--column", "Preis=net price"], 1), (["--column", "Price"], 1),
     (["--grid", "--table"], 2)],
)  # fmt: skip
def test_what_can_not_be_meant_is_refused_and_prints_nothing(sheet: Path, words: list[str], code: int) -> None:
    done = read(sheet, *words)
    assert done.exit_code == code and not done.stdout


def test_a_file_that_is_none_prints_nothing(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").write_bytes(b"%PDF-1.7\n")
    for words in (["--grid"], ["--table"], ["--json"], []):
        done = read(tmp_path / "a.pdf", *words)
        assert done.exit_code == 1 and not done.stdout


def run(sheet: Path, stderr: int) -> bytes:
    """The command in a process of its own; what it printed."""
    command = [
        sys.executable,
        "-c",
        "from sourcing.cli.main import run; run()",
        "read",
        str(sheet),
        "--currency",
        "USD",
    ]
    return subprocess.run(command, stdout=subprocess.PIPE, stderr=stderr, check=False).stdout


def test_steps_are_shown_on_a_terminal_only_and_leave_no_trace(sheet: Path) -> None:
    ours, theirs = pytest.importorskip("pty").openpty()
    out = run(sheet, theirs)
    os.close(theirs)
    shown = os.read(ours, 100_000).decode()
    assert "reading 0.0 MB" in shown and "looking for the table" in shown and "reading the cells" in shown
    assert shown.endswith("\r") and not shown.rsplit("\r", 2)[-2].strip()
    assert b"looking for the table" not in out
