"""Hostile price sheets, one trap each, against what a careful clerk says they hold.

The sheets are invented, the expectations written by hand from the sheets (common practice, no source).
"""

from pathlib import Path

import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.hints import SheetReading
from tests.traps.difference import differences
from tests.traps.expectation import (
    ENDING,
    SHEETS,
    TO_BE_CHECKED,
    as_text,
    expectation_files,
    expected_of,
    load,
    plain_reading,
    read,
    sheet_files,
)
from tests.traps.make_sheets import made_sheets
from tests.traps.write_expectation import first_expectation


@pytest.mark.parametrize("sheet", sheet_files(), ids=lambda sheet: sheet.name)
def test_sheet_is_read_as_a_careful_clerk_reads_it(sheet: Path) -> None:
    told = "no expectation for {0}: write a first one with: python -m tests.traps.write_expectation {0}, "
    assert expected_of(sheet).exists(), told.format(sheet.name) + "then check every line by hand"
    expected = load(expected_of(sheet))
    assert expected["why"] != TO_BE_CHECKED, f"{sheet.name}: check every line by hand, then say why the sheet is here"
    currency = expected.get("supplier_currency", "USD")
    reading = read(sheet, expected)
    found = plain_reading(reading, currency)
    lines = differences(expected, found, currency)
    assert not lines, f"{sheet.name}: {expected['why']}\n  " + "\n  ".join(lines)
    if not isinstance(reading, Refused):
        assert_every_row_is_somewhere(reading)


def assert_every_row_is_somewhere(reading: SheetReading) -> None:
    """Offers, structure and problem rows are counted as they are listed, and add up to the rows."""
    for one in reading.summary.accounting:
        assert one.adds_up, f"{one} does not add up"
        problems = {
            problem.place.row
            for problem in reading.summary.problems
            if problem.place and problem.place.worksheet == one.worksheet
        }
        assert one.offers == (reading.offers["worksheet"] == one.worksheet).sum()
        assert one.structure == sum(row.worksheet == one.worksheet for row in reading.structure)
        assert one.problem_rows == len(problems)


@pytest.mark.parametrize("file", expectation_files(), ids=lambda file: file.name.removesuffix(ENDING))
def test_every_expectation_has_its_sheet(file: Path) -> None:
    assert file.with_name(file.name.removesuffix(ENDING)).is_file(), f"the sheet of {file.name} is gone"


@pytest.mark.parametrize("name", sorted(made_sheets()))
def test_made_sheets_are_the_ones_that_lie_here(name: str) -> None:
    again = "write them again with: python -m tests.traps.make_sheets"
    assert (SHEETS / name).read_bytes() == made_sheets()[name], f"{name} is not what make_sheets makes; {again}"


def test_there_are_enough_sheets() -> None:
    assert len(sheet_files()) >= 75


def test_a_first_expectation_says_that_nobody_checked_it(tmp_path: Path) -> None:
    text = first_expectation("commas-plain.csv", "USD")
    file = tmp_path / "first.json"
    file.write_text(text, encoding="utf-8")
    assert load(file)["why"] == TO_BE_CHECKED
    assert differences(load(expected_of(SHEETS / "commas-plain.csv")), load(file), "USD") == []


def test_a_difference_is_told_in_words() -> None:
    offer = {"row": 2, "supplier_number": "NW-1", "breaks": [[1, "12.50"]]}
    dearer = {"row": 2, "supplier_number": "NW-1", "breaks": [[1, "12.51"]]}
    expected = {"offers": [offer], "structure": [["", 1, "header"]], "notes": ["rows-hidden"]}
    found = {"offers": [dearer], "structure": [["", 1, "note"]]}
    assert differences(expected, found, "USD") == [
        "row 2: breaks should be [[1, 12.50]], [[1, 12.51]] came",
        "row 1: structure should be 'header', 'note' came",
        "note missing: rows-hidden",
    ]
    assert differences({"refused": "file-empty"}, found, "USD") == [
        "file: expected the file refused with 'file-empty', a file that is read came"
    ]
    assert differences(expected, expected, "USD") == []


def test_an_expectation_written_out_reads_back(tmp_path: Path) -> None:
    for file in expectation_files():
        copy = tmp_path / file.name
        copy.write_text(as_text(load(file)), encoding="utf-8")
        assert load(copy) == load(file)
