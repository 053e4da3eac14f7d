"""An edited table taken in: what it says is kept with its history, or nothing is; the shop's own table does no harm."""

import csv
import io
from datetime import datetime
from pathlib import Path

import openpyxl
import pytest

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.equivalences import table_to_write
from sourcing.actions.history import history
from sourcing.actions.maker_names import add_maker_name
from sourcing.actions.setup import set_up
from sourcing.actions.statement_add import Told, add_statement
from sourcing.actions.statement_deeds import (
    doubt_statement,
    set_standing,
    statement_history,
    withdraw_statement,
)
from sourcing.actions.table_import import Wanted, import_table
from sourcing.basics.equivalence import EquivalenceTable
from sourcing.basics.problem import Refused
from sourcing.documents.equivalences import table_csvs, table_xlsx
from sourcing.storage.equivalence import equivalence_table

AT = datetime(2026, 1, 12, 9, 30)
Edit = dict[str, str | int]


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk at a table of two parts and three statements that came from the shop's own file."""
    made = open_desk(str(tmp_path / "shop.db"), AT, "Greta Lindqvare")
    (tmp_path / "prices").mkdir()
    shops_table(tmp_path / "prices")
    set_up(made, tmp_path / "prices")
    return made


ROWS = (
    ("(ours)", "BELT", "same part", "Norrowby", "0040388", "maker", "parts list"),
    ("Norrowby", "0040388", "superseded by", "Norrowby", "0041388", "maker", "letter 25-07"),
    ("Norrowby", "0040388", "must not", "", "4L390", "fitted", "burned on job 2025-0101"),
)
HEADER = ("left maker", "left number", "relation", "right maker", "right number", "standing", "source")


def shops_table(folder: Path, rows: object = ROWS) -> None:
    """Write equivalence.xlsx with those statements."""
    book = openpyxl.Workbook()
    parts = book.create_sheet("parts")
    for row in (("code", "name"), ("BELT", "Auger belt"), ("KEEPER", "Belt keeper")):
        parts.append(row)
    sheet = book.create_sheet("statements")
    sheet.append((*HEADER, "stated on", "stated by"))
    assert isinstance(rows, tuple)
    for row in rows:
        sheet.append((*row, "2025-10-21", "Oona Brandeth"))
    book.save(folder / "equivalence.xlsx")


def table(desk: Desk) -> EquivalenceTable:
    """The table as it counts now."""
    with desk.store.reading() as connection:
        return equivalence_table(connection)


def exported(desk: Desk, path: Path, edits: dict[int, Edit] | None = None, drop: frozenset[int] = frozenset()) -> Path:
    """Export, change cells of statements by their numbers, leave some out; a new row has the number 0."""
    sheets = dict(table_to_write(desk))
    header, rows = sheets["statements"]
    kept: dict[int, dict[str, str | int]]
    kept = {int(row[0]): dict(zip(header, row, strict=True)) for row in rows if row[0] not in drop}
    for number, cells in (edits or {}).items():
        kept[number] = kept.get(number, dict.fromkeys(header, "")) | cells
    body = [tuple(row[name] for name in header) for row in kept.values()]
    path.write_bytes(table_xlsx({**sheets, "statements": (header, body)}))
    return path


NEW: Edit = {
    "left maker": "Norrowby",
    "left number": "0041388",
    "relation": "same part",
    "right maker": "Corrivane",
    "right number": "-B36",
    "standing": "supplier",
    "source": "cross list",
    "stated on": "2026-01-10",
    "stated by": "Piet Halloway-Rusk",
}


def test_an_export_taken_in_again_changes_nothing(desk: Desk, tmp_path: Path) -> None:
    """As a workbook and as CSV files; leading zeros, a number that begins like a formula, conditions, names."""
    add_statement(
        desk,
        Told(
            left="Norrowby:0040388",
            relation="same part",
            right="Corrivane:-B36",
            source="=list",
            condition='two "sheaves", 5 in; not wet',
            machine="0826",
            serial_from="0700",
        ),
    )
    add_maker_name(desk, "+NWB", "Norrowby")
    doubt_statement(desk, 4, "loose")
    before = table(desk)
    folder = tmp_path / "csv"
    folder.mkdir()
    for name, text in table_csvs(table_to_write(desk)).items():
        (folder / name).write_text(text, newline="")
    for path in (exported(desk, tmp_path / "all.xlsx"), folder):
        done = import_table(desk, path, Wanted())
        assert done.is_nothing and done.done and done.unchanged == 4 and not done.problems
    assert table(desk) == before
    assert [entry.deed for entry in history(desk, None)] == [
        *("set up", "add statement", "name maker", "doubt statement"),
    ]


def test_looking_tells_the_same_and_keeps_nothing(desk: Desk, tmp_path: Path) -> None:
    before = table(desk)
    path = exported(desk, tmp_path / "t.xlsx", {0: NEW, 2: {"standing": "fitted"}}, frozenset((3,)))
    looked = import_table(desk, path, Wanted(look=True))
    assert table(desk) == before and not looked.done and len(history(desk, None)) == 1
    done = import_table(desk, path, Wanted())
    assert (done.added, done.changed, done.missing) == (looked.added, looked.changed, looked.missing)
    assert [len(some) for some in (done.added, done.changed, done.missing)] == [1, 1, 1]


def test_what_is_edited_is_kept_with_its_history(desk: Desk, tmp_path: Path) -> None:
    edits: dict[int, Edit] = {0: NEW | {"doubt": "colour differs"}, 2: {"standing": "fitted", "condition": "dry"}}
    import_table(desk, exported(desk, tmp_path / "t.xlsx", edits), Wanted())
    assert [str(one) for one in table(desk).statements] == [
        "BELT is the same part as Norrowby 0040388 (maker: parts list)",
        "Norrowby 0040388 is superseded by Norrowby 0041388, only if dry (fitted: letter 25-07)",
        "4L390 must not serve for Norrowby 0040388 (fitted: burned on job 2025-0101)",
        "Norrowby 0041388 is the same part as Corrivane -B36 (supplier: cross list, doubted: colour differs)",
    ]
    told = [(event.what, event.reason) for event in statement_history(desk, 2).events]
    assert told == [
        ("stated", "equivalence.xlsx, row 3"),
        ("standing changed", "maker to fitted: t.xlsx, row 3"),
        ("changed", "t.xlsx, row 3"),
    ]
    was = statement_history(desk, 2).events[-1].was
    assert was is not None and (was.standing, was.condition) == ("maker", "")
    new = statement_history(desk, 4)
    assert [event.what for event in new.events] == ["stated", "doubted"] and new.statement.row is None
    assert history(desk, "equivalence table")[-1].detail == "t.xlsx: 1 added, 1 changed"


def test_other_numbers_in_an_old_row_withdraw_the_old_statement_and_state_a_new_one(desk: Desk, tmp_path: Path) -> None:
    done = import_table(desk, exported(desk, tmp_path / "t.xlsx", {2: {"right number": "0041399"}}), Wanted())
    assert len(done.replaced) == 1
    old = statement_history(desk, 2)
    assert old.withdrawn and old.statement.right.printed == "0041388"
    assert (old.events[-1].what, old.events[-1].reason) == ("replaced", "by statement 4, t.xlsx, row 3")
    assert statement_history(desk, 4).statement.right.printed == "0041399"


def test_what_is_missing_goes_only_with_a_reason(desk: Desk, tmp_path: Path) -> None:
    path = exported(desk, tmp_path / "t.xlsx", drop=frozenset((3,)))
    stayed = import_table(desk, path, Wanted())
    assert [one.number for one in stayed.missing] == [3] and len(table(desk).statements) == 3
    import_table(desk, path, Wanted(withdraw_missing="it was another belt"))
    gone = statement_history(desk, 3)
    assert gone.withdrawn and gone.events[-1].reason == "it was another belt"


def test_rows_that_can_not_be_used_keep_everything_out_unless_told_otherwise(desk: Desk, tmp_path: Path) -> None:
    before = table(desk)
    path = exported(desk, tmp_path / "t.xlsx", {0: NEW, 2: {"relation": "like"}, 3: {"right number": "1.23E+11"}})
    with pytest.raises(Refused) as error:
        import_table(desk, path, Wanted())
    head, *rows = error.value.problems
    assert (head.code, [one.code for one in rows]) == (
        "table-import-problems",
        ["unknown-word", "table-number-damaged"],
    )
    assert [one.place.row for one in rows if one.place] == [3, 4]
    with pytest.raises(Refused, match="it is not clear which statements are missing"):
        import_table(desk, path, Wanted(keep_good=True, withdraw_missing="gone"))
    assert table(desk) == before and len(history(desk, None)) == 1
    done = import_table(desk, path, Wanted(keep_good=True))
    assert done.done and len(done.problems) == 2 and len(done.added) == 1
    assert table(desk).statements[:3] == before.statements  # the rows that could not be read changed nothing


def test_statements_alone_are_read_against_the_parts_that_are_kept(desk: Desk, tmp_path: Path) -> None:
    out = io.StringIO()
    csv.writer(out).writerows([tuple(NEW), tuple(NEW.values()), ("(ours)", "NOBODY", *list(NEW.values())[2:])])
    (tmp_path / "cross.csv").write_text(out.getvalue())
    done = import_table(desk, tmp_path / "cross.csv", Wanted(look=True))
    assert len(done.added) == 1 and len(done.missing) == 3 and not done.parts_missing
    (problem,) = done.problems
    assert problem.code == "no-such-part" and problem.sentence().startswith("cross.csv, row 3")
    (tmp_path / "empty").mkdir()
    with pytest.raises(Refused, match="holds none of"):
        import_table(desk, tmp_path / "empty", Wanted())


def test_setting_up_again_leaves_alone_what_a_person_did_at_the_desk(desk: Desk, tmp_path: Path) -> None:
    """Nothing made there is lost, nothing withdrawn there comes back, no doubt is laid aside, no standing turned."""
    add_statement(desk, Told(left="ours:BELT", relation="must not", right="Dunmarrow:77", source="job 2026-0003"))
    withdraw_statement(desk, 2, "wrong letter")
    doubt_statement(desk, 1, "which list?")
    set_standing(desk, 3, "unchecked", "nobody remembers that job")
    done = set_up(desk, tmp_path / "prices").changes
    assert done is not None
    assert [[one.number for one in some] for some in (done.missing, done.stay_withdrawn, done.doubts_stay)] == [
        *([4], [2], [1]),
    ]
    assert [one.before.number for one in done.stay_changed] == [3]
    assert [(one.number, one.standing, one.doubt) for one in table(desk).statements] == [
        (1, "maker", "which list?"),
        (3, "unchecked", ""),
        (4, "unchecked", ""),
    ]


def test_setting_up_withdraws_what_its_file_dropped_and_restores_it_with_the_file(desk: Desk, tmp_path: Path) -> None:
    shops_table(tmp_path / "prices", ROWS[:2][::-1])
    set_up(desk, tmp_path / "prices")
    assert [(one.number, one.row) for one in table(desk).statements] == [(2, 2), (1, 3)]
    gone = statement_history(desk, 3)
    assert gone.withdrawn and gone.events[-1].reason == "not in equivalence.xlsx any more"
    shops_table(tmp_path / "prices")
    done = set_up(desk, tmp_path / "prices").changes
    assert done is not None and [one.number for one in done.restored] == [3]
    assert [(one.number, one.row) for one in table(desk).statements] == [(1, 2), (2, 3), (3, 4)]
    assert [event.what for event in statement_history(desk, 3).events] == ["stated", "withdrawn", "restored"]


def test_another_relation_needs_another_source(desk: Desk, tmp_path: Path) -> None:
    """One edited cell makes no same part of a must-not that keeps its standing and source."""
    before = table(desk)
    path = exported(desk, tmp_path / "t.xlsx", {3: {"relation": "same part"}})
    with pytest.raises(Refused, match="withdraw the old one with why") as error:
        import_table(desk, path, Wanted())
    assert [one.place.row for one in error.value.problems[1:] if one.place] == [4]
    assert table(desk) == before
    assert import_table(desk, path, Wanted(keep_good=True)).done and table(desk) == before
    path = exported(desk, tmp_path / "t.xlsx", {3: {"relation": "same part", "source": "job 2026-0009"}})
    assert len(import_table(desk, path, Wanted()).replaced) == 1
    shops_table(tmp_path / "prices", (*ROWS[:2], ("Norrowby", "0040388", "same part", "", "4L390", *ROWS[2][5:])))
    other = open_desk(str(tmp_path / "other.db"), AT, "Greta Lindqvare")
    set_up(other, tmp_path / "prices")
    shops_table(tmp_path / "prices")
    with pytest.raises(Refused, match="must not serve"):
        set_up(other, tmp_path / "prices")


def test_a_statement_of_a_day_to_come_is_not_taken(desk: Desk, tmp_path: Path) -> None:
    path = exported(desk, tmp_path / "t.xlsx", {0: NEW | {"stated on": "2027-01-10"}})
    with pytest.raises(Refused, match="2027-01-10, and today is 2026-01-12"):
        import_table(desk, path, Wanted())


def test_setting_up_keeps_the_good_rows_where_told_so_and_takes_nothing_out(desk: Desk, tmp_path: Path) -> None:
    """The row that can't be read may be the very one that seems to be missing."""
    new = ("(ours)", "KEEPER", "same part", "Norrowby", "0051", "maker", "parts list")
    shops_table(tmp_path / "prices", (*ROWS[:2], (*ROWS[2][:2], "forbidden", *ROWS[2][3:]), new))
    before = table(desk)
    with pytest.raises(Refused):
        set_up(desk, tmp_path / "prices")
    assert table(desk) == before
    done = set_up(desk, tmp_path / "prices", keep_good=True)
    assert [one.place.row for one in done.problems if one.place] == [4]
    assert [str(one) for one in table(desk).statements if one.number in (1, 2, 3)] == [
        str(one) for one in before.statements
    ]
    assert len(table(desk).statements) == 4 and table(desk).parts == before.parts
