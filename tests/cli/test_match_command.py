"""`sourcing match`: two files in, one line for each candidate out; no database."""

import csv
import io
import json
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner, Result

from sourcing.basics.problem import Refused
from sourcing.cli.main import app

SHEET = """Artikel;Marke;Bezeichnung;Preis
NW-40388;Norrowby;Auger drive belt 5/8 x 91 in;115,00
NW-4O388;Norrowby;Auger drive belt 5/8 x 91 in;115,00
1,23E+11;Norrowby;Belt keeper;8,90
;;;
"QX-1";Corrivane;Fuel cap;4,10
"""
PARTS = """number,maker,description,price
NW 40388,Norrowby,Auger drive belt 5/8 x 91 in,$119.00
NW-31207,Norrowby,Belt keeper,$8.90
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A sheet of a supplier and the shop's parts."""
    (tmp_path / "sheet.csv").write_text(SHEET, encoding="utf-8")
    (tmp_path / "parts.csv").write_text(PARTS, encoding="utf-8")
    return tmp_path


def run(folder: Path, *more: str) -> Result:
    """The command on the two files."""
    told = ["match", str(folder / "sheet.csv"), "--against", str(folder / "parts.csv"), *more]
    return CliRunner().invoke(app, told)


def lines(folder: Path, *more: str) -> list[dict[str, str]]:
    """What it prints, as CSV."""
    found = run(folder, *more)
    assert found.exit_code == 0, found.output
    return list(csv.DictReader(io.StringIO(found.stdout)))


def test_one_line_a_row_with_rows_as_a_spreadsheet_counts_them(folder: Path) -> None:
    """The header is row 1; the blank row is nobody's; German headers and decimals are understood."""
    found = lines(folder)
    assert [one["row"] for one in found] == ["2", "3", "4", "6"]
    assert [one["tier"] for one in found] == ["automatic", "candidate", "candidate", "none"]
    assert found[0]["part_row"] == "2" and "O where 0 stands" in found[1]["reasons"]
    assert found[3]["part_row"] in ("", "3") and float(found[3]["score"]) < 0.05


def test_a_second_row_under_one_number_makes_both_a_question(folder: Path) -> None:
    """One of the two must be another thing."""
    (folder / "sheet.csv").write_text(SHEET.replace("NW-4O388", "NW-40388"), encoding="utf-8")
    assert [one["tier"] for one in lines(folder)][:2] == ["candidate", "candidate"]


def test_a_damaged_number_is_told(folder: Path) -> None:
    """It matches nothing; the description may."""
    damaged = lines(folder)[2]
    assert damaged["number"] == "1,23E+11" and "is damaged and counts as none" in damaged["reasons"]


def test_json_holds_the_same_and_the_facts(folder: Path) -> None:
    """Null where there is no part; at most so many lines for a row."""
    found = json.loads(run(folder, "--json", "--top", "2").stdout)
    assert max(one["rank"] for one in found) <= 2
    assert {"row", "part_row", "tier", "score", "rank", "reasons", "against", "facts"} <= set(found[0])


def test_answers_are_learnt_from_and_a_refused_pair_does_not_return(folder: Path) -> None:
    """In the workbook that the command itself wrote."""
    book = folder / "matches.xlsx"
    lines(folder, "--xlsx", str(book))
    sheet = openpyxl.load_workbook(book)
    table = sheet.worksheets[0]
    columns = {str(cell.value): at for at, cell in enumerate(table[1], 1)}
    table.cell(row=3, column=columns["answer"], value="no")
    sheet.save(book)
    found = lines(folder, "--judged", str(book))
    assert [(one["row"], one["part_row"]) for one in found if one["row"] == "3"] != [("3", "2")]


@pytest.mark.parametrize(
    ("file", "text", "code"),
    [
        ("parts.csv", "a,b\n1,2\n", "no-four-columns"),
        ("judged.csv", "row,part_row\n2,2\n", "no-answers"),
        ("judged.csv", "row,part_row,answer\n2,2,perhaps\n", "unknown-word"),
        ("judged.csv", "row,part_row,answer\n2,99,yes\n", "answer-about-nothing"),
        ("judged.csv", "row,part_row,answer\nx,2,yes\n", "count-below-one"),
    ],
)
def test_what_cannot_be_used_is_told_in_a_sentence(folder: Path, file: str, text: str, code: str) -> None:
    """What, where, what to do."""
    (folder / file).write_text(text, encoding="utf-8")
    found = run(folder, *(("--judged", str(folder / file)) if file == "judged.csv" else ()))
    assert isinstance(found.exception, Refused)
    assert [one.code for one in found.exception.problems] == [code]


def test_a_header_said_that_no_file_has_is_refused(folder: Path) -> None:
    """A slip of the pen would change nothing and say nothing."""
    found = run(folder, "--column", "Artikle=number")
    assert isinstance(found.exception, Refused) and found.exception.problems[0].code == "no-such-header"


TITLES = """id,title,description,brand,price
1,Norrowby auger drive belt NW-40388 5/8 x 91 in,"Long wearing, for all machines with a 24 in housing",Norrowby,119.00
2,Belt keeper,Keeps NW-31207 on the pulley,Norrowby,8.90
"""


def test_a_title_and_a_description_are_both_read(folder: Path) -> None:
    """A title is read by itself, a short one with the description behind it; what is used is told, and what is not."""
    (folder / "parts.csv").write_text(TITLES, encoding="utf-8")
    found = run(folder, "--json")
    told = [
        (one["row"], one["part_row"], one["part_description"]) for one in json.loads(found.stdout) if one["score"] > 0.5
    ]
    assert (2, 2, "Norrowby auger drive belt NW-40388 5/8 x 91 in") in told
    assert "parts.csv: maker = brand; description = title, description; price = price; not used: id" in found.stderr
    three = run(folder, "--json", "--top", "9")
    assert "Belt keeper Keeps NW-31207 on the pulley" in {one["part_description"] for one in json.loads(three.stdout)}


def test_a_column_can_be_left_aside_or_named_the_only_one(folder: Path) -> None:
    """What a person says counts before our own words for headers."""
    (folder / "parts.csv").write_text(TITLES, encoding="utf-8")
    without = run(folder, "--column", "title=not used", "--column", "Marke=maker")
    assert "description = description; price = price; not used: id, title" in without.stderr
    only = run(folder, "--column", "description=description")
    assert "description = description; price" in only.stderr
