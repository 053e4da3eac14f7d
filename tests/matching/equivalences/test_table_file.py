"""Reading an edited table: what is wrong is told by its row, what is good is kept, numbers are never guessed."""

import io
from datetime import date, datetime

import openpyxl
import pytest

from sourcing.basics.equivalence import EquivalenceTable, MakerAlias
from sourcing.basics.problem import Problem, Refused
from sourcing.matching.equivalences.table_file import read_table, read_table_csv

from .tables import Row, csv_file, workbook

PARTS: list[Row] = [("code", "name"), ("BELT", "Auger drive belt"), ("KEEPER", "Belt keeper")]
HEADER = (
    "left maker", "left number", "relation", "count", "right maker", "right number", "machine", "serial from",
    "serial to", "standing", "source", "stated on", "stated by", "number",
)  # fmt: skip
GOOD: dict[str, object] = {
    "left maker": "(ours)", "left number": "BELT", "relation": "same part", "right maker": "Norrowby",
    "right number": "NW-40388", "standing": "maker", "source": "parts list", "stated on": "2026-01-02",
    "stated by": "Oona Brandeth",
}  # fmt: skip


def row(**cells: object) -> Row:
    """A good row with some cells changed, named with low lines for blanks."""
    said = GOOD | {name.replace("_", " "): cell for name, cell in cells.items()}
    return [said.get(title) for title in HEADER]


def read(*rows: Row, **sheets: list[Row]) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    """The table of a workbook with these statements."""
    return read_table(workbook({"parts": PARTS, "statements": [HEADER, *rows], **sheets}), "table.xlsx")


def test_columns_are_found_by_their_header_in_any_order() -> None:
    """With every column a statement has."""
    full = row(relation="kit contains", count=2, machine="NW-826", serial_from=1000, serial_to="1999", number=17)
    (one,) = read(full)[0].statements
    assert (one.relation, one.count, one.machine, one.serial_from, one.serial_to) == (
        "kit contains", 2, "NW-826", "1000", "1999",
    )  # fmt: skip
    assert (one.number, one.row, one.left.printed, one.stated_on) == (17, 2, "BELT", date(2026, 1, 2))
    turned = [cells[::-1] for cells in (HEADER, full)]
    assert read_table(workbook({"parts": PARTS, "statements": turned}), "t.xlsx")[0].statements == (one,)


# The kinds of damage: Ziemann 2016 (Genome Biology 17:177), Abeysooriya 2021 (PLoS Comput Biol 17(7)), Microsoft KB
# 269370 (15 digits).
@pytest.mark.parametrize(
    "cell",
    [
        "1.23E+11", 1.23457e17, "5-Mar", "Mar-14", "2026-03-05", datetime(2026, 3, 5), date(2026, 3, 5), "40388.0",
        40388.5, 40388.25, "1234567890123450000", 1234567890123450000, True, "TRUE", "#REF!", "#####", "inf",
    ],
)  # fmt: skip
def test_a_number_a_spreadsheet_has_changed_is_told_and_the_good_rows_are_kept(cell: object) -> None:
    """On either side; nothing is read into it."""
    read_table_, problems = read(row(), row(right_number=cell), row(left_maker="Norrowby", left_number=cell))
    assert [one.row for one in read_table_.statements] == [2]
    assert {(one.code, one.place.row if one.place else 0) for one in problems} == {
        ("table-number-damaged", 3),
        ("table-number-damaged", 4),
    }


@pytest.mark.parametrize("cell", ["123E5", "DEC-14", "1044-77-21", "00123", "6203-2RS", "B36", "1/2", "3-5", "45942"])
def test_a_number_that_only_looks_odd_is_taken_as_it_stands(cell: str) -> None:
    """Nothing speaks for damage in a column of mixed numbers."""
    found, problems = read(row(right_number=cell))
    assert not problems and found.statements[0].right.printed == cell


def test_leading_zeros_that_only_a_format_shows_are_told() -> None:
    """The cell holds 388 and shows 00388."""
    book = openpyxl.Workbook()
    book.remove(book.active)  # type: ignore[arg-type]
    for name, rows in {"parts": PARTS, "statements": [HEADER, row(right_number=388)]}.items():
        sheet = book.create_sheet(name)
        for cells in rows:
            sheet.append(list(cells))
    book["statements"].cell(2, HEADER.index("right number") + 1).number_format = "00000"
    out = io.BytesIO()
    book.save(out)
    found, (one,) = read_table(out.getvalue(), "t.xlsx")
    assert not found.statements and one.code == "table-number-damaged" and "00000" in one.sentence()
    assert read(row(right_number=388))[0].statements[0].right.printed == "388"


@pytest.mark.parametrize(
    ("cells", "code"),
    [
        ({"right_maker": "(ours)", "right_number": "belt "}, "statement-about-itself"),
        ({"relation": "fits"}, "unknown-word"),
        ({"standing": "sure"}, "unknown-word"),
        ({"right_number": "--"}, "blank-number"),
        ({"right_number": None}, "table-cell-blank"),
        ({"source": " "}, "table-cell-blank"),
        ({"left_number": "BETL"}, "no-such-part"),
        ({"stated_on": "5.3.26"}, "no-such-day"),
        ({"relation": "kit contains", "count": 0}, "count-below-one"),
        ({"relation": "kit contains", "count": "two"}, "count-below-one"),
        ({"count": 2}, "count-without-kit"),
        ({"machine": "NW-826", "serial_from": "2000", "serial_to": "1999"}, "serials-backwards"),
        ({"number": "x"}, "not-a-statement-number"),
    ],
)
def test_a_row_that_cannot_be_used_is_told_with_its_place(cells: dict[str, object], code: str) -> None:
    """And the others are kept."""
    found, (one,) = read(row(**cells), row())
    assert one.code == code and one.place and (one.place.worksheet, one.place.row) == ("statements", 2)
    assert [each.row for each in found.statements] == [3]


def test_the_same_statement_twice_is_told_other_evidence_is_not() -> None:
    """Other spelling is the same; another source, or another number in the shop's table, is not."""
    swapped = {"left_maker": "NORROWBY", "left_number": "nw 40388", "right_maker": "(Ours)", "right_number": "Belt"}
    rows = [row(), row(**swapped), row(source="fitted on a job"), row(relation="superseded by"), row(number=5)]
    found, (one,) = read(*rows)
    assert one.code == "statement-twice" and one.place and one.place.row == 3 and "row 2" in one.what
    assert len(found.statements) == 4


def test_an_alias_may_turn_a_statement_into_one_about_itself() -> None:
    """Makers' names are read first."""
    makers: list[Row] = [("maker", "alias"), ("Norrowby", "NWB")]
    itself = row(left_maker="NWB", left_number="10", right_maker="Norrowby", right_number="1-0")
    found, (one,) = read(itself, row(), makers=makers)
    assert one.code == "statement-about-itself" and len(found.statements) == 1
    assert found.aliases == (MakerAlias(alias="NWB", maker="Norrowby"),)


@pytest.mark.parametrize(
    ("alias", "maker", "code"),
    [
        ("NWB", "(ours)", "alias-of-ours"),
        ("Norrowby", "NORROW-BY", "alias-of-itself"),
        ("", "Norrowby", "table-cell-blank"),
        ("--", "Norrowby", "blank-number"),
    ],
)
def test_makers_names_that_mean_nothing(alias: str, maker: str, code: str) -> None:
    """Told by row."""
    found, (one,) = read(row(), makers=[("alias", "maker"), (alias, maker)])
    assert one.code == code and not found.aliases and one.place and one.place.worksheet == "makers"


@pytest.mark.parametrize(
    ("cells", "code"),
    [
        ({"side": "starboard"}, "unknown-word"),
        ({"cogs": "some"}, "unknown-word"),
        ({"sold as": "dozen"}, "unknown-word"),
        ({"pieces": -1}, "count-below-one"),
        ({"code": "belt"}, "part-twice"),
        ({"code": "2026-03-05"}, "table-number-damaged"),
    ],
)
def test_what_is_asked_of_a_part_in_words_nobody_knows(cells: dict[str, object], code: str) -> None:
    """The part is left out and told."""
    header = ("code", "side", "cogs", "sold as", "pieces")
    odd = [({"code": "ODD"} | cells).get(title) for title in header]
    parts: list[Row] = [header, ("BELT", "Left", "PLAIN", "matched set", 2), odd]
    found, (one,) = read(row(), parts=parts)
    assert one.code == code and [part.code for part in found.parts] == ["BELT"]
    asked = found.parts[0].asked
    assert (asked.side, asked.cogs, asked.sold_as, asked.pieces) == ("left", "plain", "matched set", 2)


def test_a_header_that_is_wrong_is_told_once() -> None:
    """Not once for each row of a long table."""
    strange = read_table(workbook({"parts": PARTS, "statements": [[*HEADER, "colour"], [*row(), "red"]]}), "t.xlsx")
    assert [one.code for one in strange[1]] == ["unknown-table-column"] and len(strange[0].statements) == 1
    without = [title for title in HEADER if title != "relation"]
    missing = read_table(workbook({"parts": PARTS, "statements": [without, *[without] * 50]}), "t.xlsx")[1]
    assert [(one.code, one.found) for one in missing] == [("table-column-missing", "relation")]
    twice = read_table(workbook({"parts": PARTS, "statements": [[*HEADER, "source"], row()]}), "t.xlsx")[1]
    assert [one.code for one in twice] == ["table-column-twice"]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_csv_however_a_spreadsheet_writes_it(delimiter: str, encoding: str) -> None:
    """Commas, semicolons, tabs; with mark, without, Windows-1252."""
    rows = [HEADER, row(source="Händlerliste, Seite 3; Teil 2")]
    files = {"Parts.csv": csv_file(PARTS, delimiter, encoding), "a/statements.CSV": csv_file(rows, delimiter, encoding)}
    found, problems = read_table_csv(files, "folder")
    assert not problems and found.statements[0].source == "Händlerliste, Seite 3; Teil 2"


def test_csv_problems_name_the_file_and_row() -> None:
    """There are no worksheets."""
    files = {"parts.csv": csv_file(PARTS), "statements.csv": csv_file([HEADER, row(), row(relation="fits")])}
    (one,) = read_table_csv(files, "folder")[1]
    assert one.place and (one.place.file, one.place.worksheet, one.place.row) == ("statements.csv", "", 3)


def test_what_is_no_table_is_refused() -> None:
    """No workbook, half a workbook, no worksheet, zeros in the text."""
    good = workbook({"parts": PARTS, "statements": [HEADER, row()]})
    for data in (b"", b"PK\x03\x04", good[: len(good) // 2], good.replace(b"xl/workbook.xml", b"xl/workbo0k.xml")):
        with pytest.raises(Refused, match="workbook"):
            read_table(data, "t.xlsx")
    with pytest.raises(Refused, match="no worksheet 'parts'"):
        read_table(workbook({"statements": [HEADER]}), "t.xlsx")
    with pytest.raises(Refused, match="no worksheet 'statements'"):
        read_table_csv({"parts.csv": csv_file(PARTS)}, "folder")
    with pytest.raises(Refused, match="zero characters"):
        read_table_csv({"parts.csv": b"code\x00", "statements.csv": b"x"}, "folder")
