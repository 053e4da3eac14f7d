"""The command `read` as a person and as a program meets it: plain CSV, exit codes, columns written and given back."""

import csv
import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.running import sourcing as sourcing_here

COMMAND = [sys.executable, "-c", "from sourcing.cli.main import run; run()"]
SHEET = "Part Number,Net,Pack\nA-1,2.50,1\nA-2,3.50,10\n"
UNCLEAR = "Part Number,Price,Price 2\nA-1,2.50,2.40\nA-2,3.50,3.40\n"


def environment(**more: str) -> dict[str, str]:
    """The environment without what a developer has set for himself."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith(("SOURCING_", "PYTHON", "LC_"))}
    return kept | more


def sourcing(folder: Path, *words: str, **more: str) -> tuple[int, bytes, str]:
    """Exit code, output as bytes and errors of a command; in a process of its own where that gets an environment."""
    if not more:
        code, output, errors = sourcing_here(folder, *words)
        return code, output.encode(), errors
    done = subprocess.run([*COMMAND, *words], cwd=folder, env=environment(**more), capture_output=True, check=False)
    return done.returncode, done.stdout, done.stderr.decode()


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """A folder with a plain sheet, one with a question and one that is none."""
    (tmp_path / "plain.csv").write_text(SHEET)
    (tmp_path / "unclear.csv").write_text(UNCLEAR)
    (tmp_path / "picture.csv").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(40))
    return tmp_path


def test_the_grid_is_every_row_as_utf_8(sheet: Path) -> None:
    """Whatever the file was written in and whatever the terminal speaks: UTF-8, commas, quotes where needed."""
    rows = [["Größe ½", "Preis"], ["", ""], ['a "b", c', "=1+1"], ["  00123", "1.234,50 €"]]
    text = 'Größe ½\tPreis\r\n\t\r\n"a ""b"", c"\t=1+1\r\n  00123\t1.234,50 €\r\n'
    (sheet / "wide.txt").write_bytes(text.encode("utf-16"))
    for locale in ({"LC_ALL": "C"}, {"LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}):
        code, output, errors = sourcing(sheet, "read", "wide.txt", "--grid", **locale)
        assert (code, errors) == (0, "")
        assert output.decode("utf-8") == 'Größe ½,Preis\n,\n"a ""b"", c",=1+1\n  00123,"1.234,50 €"\n'
        assert list(csv.reader(output.decode("utf-8").splitlines())) == rows


def test_the_table_is_header_and_body_alone(sheet: Path) -> None:
    text = "Prices of Larkmoor\n\n" + SHEET + "Total,6.00\n"
    (sheet / "more.csv").write_text(text)
    assert sourcing(sheet, "read", "more.csv", "--table") == (0, SHEET.encode(), "")


def test_a_terminal_that_speaks_ascii_gets_text_and_no_fault(sheet: Path) -> None:
    (sheet / "umlaut.csv").write_text("Part Number,Net,Größe\nÄ-1,2.50,½\n", encoding="utf-8")
    code, output, errors = sourcing(sheet, "read", "umlaut.csv", "--currency", "USD", LC_ALL="C")
    assert (code, errors) == (0, "") and b"1 offer" in output


def test_json_of_what_is_no_sheet_says_why(sheet: Path) -> None:
    code, output, errors = sourcing(sheet, "read", "picture.csv", "--json")
    found = json.loads(output)
    assert (code, [one["code"] for one in found["questions"]], found["worksheets"]) == (1, ["not-a-sheet"], [])
    assert errors.startswith("sourcing: picture.csv: ")


@pytest.mark.parametrize("words", [["--grid"], ["--table"], []])
def test_what_is_no_sheet_prints_nothing_but_a_sentence(sheet: Path, words: list[str]) -> None:
    code, output, errors = sourcing(sheet, "read", "picture.csv", *words)
    assert (code, output) == (1, b"") and errors.startswith("sourcing: picture.csv: ") and "Traceback" not in errors


def test_a_question_is_exit_1_and_the_answer_exit_0(sheet: Path) -> None:
    """Read as far as it can be, as text and for a program; with both columns told there is nothing left to ask."""
    read = ["read", "unclear.csv", "--currency", "USD"]
    code, output, errors = sourcing(sheet, *read)
    assert code == 1 and b"question" in output and errors == ""
    code, output, _ = sourcing(sheet, *read, "--json")
    assert code == 1
    assert {one["code"] for one in json.loads(output)["questions"]} >= {"price-column-unclear"}
    told = ["--column", "Price=net price", "--column", "Price 2=net price from 10"]
    code, output, errors = sourcing(sheet, *read, *told, "--json")
    found = json.loads(output)
    assert (code, errors, found["questions"]) == (0, "", [])
    assert [[(one["from_quantity"], one["price"]) for one in offer["breaks"]] for offer in found["offers"]] == [
        [(1, "2.50"), (10, "2.40")],
        [(1, "3.50"), (10, "3.40")],
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--column", "Net=cheapest"], "'cheapest' is not one of the words for 'Net'"),
        (["--column", "Net=pack from 10"], "'pack from 10' is not one of the words"),
        (["--column", "Net"], "'Net'"),
        (["--column", "Net=net price from ten"], "ten"),
        (["--columns", "broken.toml"], "broken.toml"),
        (["--columns", "other.toml"], "columns"),
        (["--columns", "number.toml"], "number.toml"),
        (["--columns", "nowhere.toml"], "nowhere.toml"),
    ],
)
def test_what_is_said_of_the_columns_can_be_wrong(sheet: Path, words: list[str], said: str) -> None:
    (sheet / "broken.toml").write_text('[columns]\n"Net = "net price"\n')
    (sheet / "other.toml").write_text('[prices]\n"Net" = "net price"\n')
    (sheet / "number.toml").write_text('[columns]\n"Net" = 7\n')
    code, output, errors = sourcing(sheet, "read", "plain.csv", "--currency", "USD", *words)
    assert code == 1 and output == b"" and said in errors and "Traceback" not in errors


def test_two_kinds_of_output_are_a_wrong_command(sheet: Path) -> None:
    code, output, _ = sourcing(sheet, "read", "plain.csv", "--grid", "--json")
    assert (code, output) == (2, b"")


COLUMNS = {
    "prices by quantity": "Part Number,Net,10+,Pack\nA-1,2.50,2.40,1\nA-2,3.50,3.40,1\n",
    "warehouses": "Part Number,Net,Stock East,Stock West\nA-1,2.50,3,4\nA-2,3.50,5,6\n",
    "warehouses by name": "Part Number,Net,Warehouse Dallas,Warehouse Reno\nA-1,2.50,3,4\nA-2,3.50,0,1\nA-3,1.50,8,2\n",
    "marks of TOML": 'Part Number,Net,"Say ""x"" \\ = # [a]",Note\nA-1,2.50,x,y\n',
    "a header twice": "Part Number,Net,Gadget,Gadget,Pack\nA-1,2.50,x,y,1\n",
    "no header": "Part Number,Net,,Pack\nA-1,2.50,x,1\n",
}


@pytest.mark.parametrize("name", COLUMNS)
def test_the_columns_written_read_the_sheet_the_same(sheet: Path, name: str) -> None:
    """What `--write-columns` wrote is taken by `--columns` as it is, and changes nothing but the reasons."""
    (sheet / "s.csv").write_text(COLUMNS[name])
    read = ["read", "s.csv", "--currency", "USD", "--json"]
    code, before, errors = sourcing(sheet, *read, "--write-columns", "c.toml")
    assert (code, errors) == (0, "")
    code, after, errors = sourcing(sheet, *read, "--columns", "c.toml")
    assert (code, errors) == (0, "")
    assert json.loads(after)["offers"] == json.loads(before)["offers"]


def on_a_terminal(folder: Path, *words: str) -> tuple[bytes, str]:
    """The output, and what the terminal was sent as errors: a pseudo-terminal, as a person sits at."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [*COMMAND, *words], cwd=folder, env=environment(), stdout=subprocess.PIPE, stderr=theirs
    ) as process:
        os.close(theirs)
        assert process.stdout
        output, sent = process.stdout.read(), b""
        try:
            while piece := os.read(ours, 65536):
                sent += piece
        except OSError:  # Linux says so when the last writer of a pseudo-terminal is gone
            pass
        os.close(ours)
    assert process.returncode == 0
    return output, sent.decode()


def screen(sent: str) -> str:
    """What is left to see on one line after carriage returns."""
    line: list[str] = []
    for part in sent.split("\r"):
        line[: len(part)] = part
    return "".join(line).strip()


def test_progress_shows_steps_and_leaves_no_trace(sheet: Path) -> None:
    words = ["read", "plain.csv", "--currency", "USD", "--json"]
    output, sent = on_a_terminal(sheet, *words)
    assert all(step in sent for step in ("reading 0.0 MB", "looking for the table", "reading the cells"))
    assert screen(sent) == "" and sent.endswith("\r") and "\n" not in sent
    assert sourcing(sheet, *words) == (0, output, "")
    assert b"..." not in output


def test_columns_to_fill_are_written_for_a_sheet_nobody_can_read_yet(sheet: Path) -> None:
    """No header at all: the file names columns by letter; filled in and given back, the sheet is read."""
    lines = [f"A-{n},Belt auger drive,1{n}.20,{n}" for n in range(1, 8)]
    (sheet / "bare.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    read = ["read", "bare.csv", "--currency", "USD"]
    code, output, errors = sourcing(sheet, *read, "--write-columns", "c.toml")
    assert (code, output) == (1, b"") and "no row of headers" in errors
    text = (sheet / "c.toml").read_text(encoding="utf-8")
    assert '"column A" = "?"  # perhaps: supplier number' in text
    for field in ("supplier number", "net price"):
        text = text.replace(f'"?"  # perhaps: {field}', f'"{field}"')
    (sheet / "c.toml").write_text(text, encoding="utf-8")
    code, output, errors = sourcing(sheet, *read, "--columns", "c.toml")
    assert (code, errors) == (0, "") and b"7 offers" in output
