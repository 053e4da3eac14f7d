"""An export taken in again later: what was done since it was written stays, and is told by row."""

import csv
from datetime import datetime
from pathlib import Path

import pytest
from sqlalchemy import delete

from sourcing.actions import table_keep
from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.equivalences import table_to_write
from sourcing.actions.statement_add import Told, add_statement
from sourcing.actions.statement_deeds import doubt_statement, set_standing, statement_history, withdraw_statement
from sourcing.actions.table_import import Wanted, import_table
from sourcing.basics.problem import Refused
from sourcing.documents.equivalences import changes_text, table_csvs, table_xlsx
from sourcing.storage.equivalence import put_parts
from sourcing.storage.shop_tables import STATEMENT_EVENTS
from tests.matching.equivalences.tables import table as of_parts

AT = datetime(2026, 1, 12, 9, 30)
Cells = dict[str, str | int]


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk at three unchecked statements made there."""
    made = open_desk(str(tmp_path / "shop.db"), AT, "Greta Lindqvare")
    with made.writing("parts") as pen:
        put_parts(pen.connection, of_parts().parts)
    for right in ("Norrowby:NW-1", "Norrowby:NW-2", "Ostrevik:OS-3"):
        add_statement(made, Told(left="ours:BELT", relation="same part", right=right, source="old list"))
    return made


def export(desk: Desk, folder: Path, kind: str, edits: dict[int, Cells], drop: tuple[int, ...] = ()) -> Path:
    """The table as it is now as a file of that kind, some cells edited, some statements left out."""
    sheets = dict(table_to_write(desk))
    header, rows = sheets["statements"]
    kept = [dict(zip(header, row, strict=True)) for row in rows if row[0] not in drop]
    body = [tuple((row | edits.get(int(row["number"]), {})).values()) for row in kept]
    edited = {**sheets, "statements": (header, body)}
    if kind == "xlsx":
        (folder / "t.xlsx").write_bytes(table_xlsx(edited))
        return folder / "t.xlsx"
    (folder / "t").mkdir()
    for name, text in table_csvs(edited).items():
        (folder / "t" / name).write_text(text, encoding="utf-8")
    return folder / "t"


def standings(desk: Desk) -> dict[int, str]:
    """How far each statement in force is trusted."""
    header, rows = table_to_write(desk)["statements"]
    return {int(row[0]): str(row[header.index("standing")]) for row in rows}


@pytest.mark.parametrize("kind", ["xlsx", "csv"])
def test_what_the_desk_changed_since_stays_and_the_rest_goes_in(desk: Desk, tmp_path: Path, kind: str) -> None:
    """Row 2 was edited and nothing happened since; 3 was edited and the desk changed it; 4 is old and unedited."""
    edits: dict[int, Cells] = {1: {"standing": "supplier"}, 2: {"standing": "supplier"}}
    file = export(desk, tmp_path, kind, edits)
    set_standing(desk, 2, "fitted", "job 2026-0004")
    set_standing(desk, 3, "maker", "letter 26-01")
    looked = import_table(desk, file, Wanted(look=True))
    done = import_table(desk, file, Wanted())
    assert [one.now.number for one in done.changed] == [1] and done.stay_changed == looked.stay_changed
    assert standings(desk) == {1: "supplier", 2: "fitted", 3: "maker"}
    told = [one.words for one in done.stay_changed]
    assert told == [
        (
            "row 3: changed at the desk since this file was written, by Greta Lindqvare on 2026-01-12",
            "standing: 'fitted' becomes 'supplier'",
        ),
        (
            "row 4: changed at the desk since this file was written, by Greta Lindqvare on 2026-01-12",
            "standing: 'maker' becomes 'unchecked'",
        ),
    ]
    words = " ".join(changes_text(done).split())
    assert "2 changed since the file was written, they stay as they are" in words and told[0][0] in words
    assert [event.what for event in statement_history(desk, 3).events] == ["stated", "standing changed"]


def test_a_row_or_the_whole_file_may_have_its_way(desk: Desk, tmp_path: Path) -> None:
    """A row without 'as of change' is taken at its word; with the option every row is."""
    file = export(desk, tmp_path, "xlsx", {2: {"as of change": ""}})
    set_standing(desk, 2, "fitted", "job 2026-0004")
    set_standing(desk, 3, "maker", "letter 26-01")
    import_table(desk, file, Wanted())
    assert standings(desk) == {1: "unchecked", 2: "unchecked", 3: "maker"}
    import_table(desk, file, Wanted(file_wins=True))
    assert standings(desk) == {1: "unchecked", 2: "unchecked", 3: "unchecked"}


def test_what_another_file_changed_since_stays_too(desk: Desk, tmp_path: Path) -> None:
    """Two people export and edit the same row: the second is told, and by which file it was changed."""
    (tmp_path / "other").mkdir()
    file = export(desk, tmp_path, "xlsx", {1: {"standing": "maker"}})
    other = export(desk, tmp_path / "other", "csv", {1: {"standing": "fitted"}})
    import_table(desk, other, Wanted())
    done = import_table(desk, file, Wanted())
    assert [one.words[0] for one in done.stay_changed] == [
        "row 2: changed by t since this file was written, by Greta Lindqvare on 2026-01-12"
    ]
    assert standings(desk)[1] == "fitted"


def test_a_file_from_before_a_statement_never_withdraws_it(desk: Desk, tmp_path: Path) -> None:
    """Missing for a reason goes; stated or changed since stays, and is told apart from what is just missing."""
    file = export(desk, tmp_path, "xlsx", {}, drop=(2, 3))
    set_standing(desk, 3, "maker", "letter 26-01")
    add_statement(desk, Told(left="ours:BELT", relation="must not", right="Dunmarrow:77", source="job 2026-0003"))
    done = import_table(desk, file, Wanted(withdraw_missing="not ours"))
    assert [one.number for one in done.withdrawn] == [2]
    assert [one.number for one in done.missing] == [one.number for one in done.missing_newer] == [3, 4]
    assert "Not in the file, but stated or changed since it was written: they stay: 2" in changes_text(done)
    done = import_table(desk, file, Wanted(withdraw_missing="not ours", file_wins=True))
    assert [one.number for one in done.withdrawn] == [3, 4] and not done.missing_newer


def test_doubts_withdrawals_and_what_agrees_are_no_news(desk: Desk, tmp_path: Path) -> None:
    """The doubt stays, the withdrawn stays withdrawn as ever; a row that says what the table says is unchanged."""
    file = export(desk, tmp_path, "xlsx", {3: {"standing": "maker"}})
    doubt_statement(desk, 1, "it slipped")
    withdraw_statement(desk, 2, "wrong list")
    set_standing(desk, 3, "maker", "letter 26-01")
    done = import_table(desk, file, Wanted())
    assert not done.stay_changed and done.unchanged == 2
    assert [[one.number for one in some] for some in (done.doubts_stay, done.stay_withdrawn)] == [[1], [2]]


def test_other_numbers_in_a_row_that_is_behind_replace_nothing(desk: Desk, tmp_path: Path) -> None:
    """A doubt since then is enough: whoever doubted it has not seen the other number."""
    file = export(desk, tmp_path, "xlsx", {1: {"right number": "NW-9"}})
    doubt_statement(desk, 1, "it slipped")
    done = import_table(desk, file, Wanted())
    assert not done.replaced and not done.withdrawn and not done.added
    assert [one.before.number for one in done.stay_changed] == [1]


def test_rows_of_another_table_and_cells_filled_down_are_problems(desk: Desk, tmp_path: Path) -> None:
    """A change that has not been yet: told by row, the statement neither changed nor withdrawn."""
    edits: dict[int, Cells] = {1: {"as of change": 4, "standing": "maker"}, 2: {"as of change": "x"}}
    file = export(desk, tmp_path, "xlsx", edits)
    with pytest.raises(Refused) as error:
        import_table(desk, file, Wanted())
    assert sorted(one.code for one in error.value.problems[1:]) == ["change-not-yet", "not-a-change-number"]
    done = import_table(desk, file, Wanted(keep_good=True))
    assert not done.changed and standings(desk)[1] == "unchecked"
    (wrong,) = (one for one in done.problems if one.code == "change-not-yet")
    assert wrong.place is not None and wrong.place.row == 2
    assert "says 4, but the newest change of this table is 3" in wrong.sentence()


def test_a_file_made_by_hand_has_no_such_column(desk: Desk, tmp_path: Path) -> None:
    """Then it is taken at its word, as before there was one."""
    header, rows = table_to_write(desk)["statements"]
    with (tmp_path / "hand.csv").open("w", newline="", encoding="utf-8") as out:
        csv.writer(out).writerows([header[:-1], *(row[:-1] for row in rows)])
    set_standing(desk, 3, "maker", "letter 26-01")
    done = import_table(desk, tmp_path / "hand.csv", Wanted())
    assert [one.now.number for one in done.changed] == [3] and standings(desk)[3] == "unchecked"


def test_a_table_from_before_there_was_a_history_is_known_to_change_0(desk: Desk, tmp_path: Path) -> None:
    """Its first export says so, and what is done afterwards stays as well."""
    with desk.writing("as an older program left it") as pen:
        pen.connection.execute(delete(STATEMENT_EVENTS))
    assert {row[-1] for row in table_to_write(desk)["statements"][1]} == {0}
    file = export(desk, tmp_path, "csv", {2: {"standing": "supplier"}})
    set_standing(desk, 3, "maker", "letter 26-01")
    done = import_table(desk, file, Wanted())
    assert [one.now.number for one in done.changed] == [2]
    assert [one.before.number for one in done.stay_changed] == [3]


def test_stored_in_pieces_every_row_gets_its_own_number_and_reason(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A long table is stored some at a time, in the order of its rows; one of them replaces another statement."""
    monkeypatch.setattr(table_keep, "AT_ONCE", 2)
    header, rows = table_to_write(desk)["statements"]
    replaced = dict(zip(header, rows[0], strict=True)) | {"right number": "NW-8"}
    new = [replaced | {"number": "", "right number": f"NW-{at}", "as of change": ""} for at in (11, 12, 13)]
    with (tmp_path / "t.csv").open("w", newline="", encoding="utf-8") as out:
        csv.writer(out).writerows([header, *(one.values() for one in (*new, replaced))])
    import_table(desk, tmp_path / "t.csv", Wanted())
    told = [statement_history(desk, number) for number in (4, 5, 6, 7)]
    assert [one.statement.right.printed for one in told] == ["NW-11", "NW-12", "NW-13", "NW-8"]
    assert [one.events[0].reason for one in told] == [f"t.csv, row {at}" for at in (2, 3, 4, 5)]
    assert statement_history(desk, 1).events[-1].reason == "by statement 7, t.csv, row 5"
