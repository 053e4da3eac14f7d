"""Parts of ours one by one: kept by the rules of the table's rows, and no file that does not know of them undoes it."""

from pathlib import Path

import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.equivalences import table_to_write
from sourcing.actions.history import history
from sourcing.actions.part_deeds import add_part, change_part, look_at_change, opened_part, take_part_out
from sourcing.actions.setup import set_up
from sourcing.actions.statement_add import Told, add_statement
from sourcing.actions.statement_deeds import withdraw_statement
from sourcing.actions.table_import import Wanted, import_table
from sourcing.basics.our_part import PartTold
from sourcing.basics.problem import Refused
from sourcing.documents.equivalences import changes_sections, set_up_text, table_csvs
from tests.actions.test_table_import import desk, table

__all__ = ["desk"]

PIN = PartTold(code="PIN", name="Shear pin")


def _csvs(desk: Desk, folder: Path) -> Path:
    folder.mkdir()
    for name, text in table_csvs(table_to_write(desk)).items():
        (folder / name).write_text(text, newline="")
    return folder


def _more(folder: Path, name: str, line: str) -> None:
    with (folder / name).open("a", newline="") as file:
        file.write(f"{line}\n")


def _codes(desk: Desk) -> list[str]:
    return [part.code for part in table(desk).parts]


def test_what_is_done_to_a_part_stands_in_the_ledger(desk: Desk) -> None:
    """Added, changed, taken out: each signed and about the part."""
    add_part(desk, PIN)
    change_part(desk, PartTold(code="pin", name="Shear pin", size="1/4", sold_as="pair"))
    take_part_out(desk, "PIN")
    told = [(one.deed, one.subject, one.detail) for one in history(desk, "part PIN")]
    assert told == [
        ("add part", "part PIN", "Shear pin"),
        ("change part", "part PIN", "size: '' becomes '1/4'; comes as: '' becomes 'pair'"),
        ("take part out", "part PIN", "Shear pin"),
    ]
    assert _codes(desk) == ["BELT", "KEEPER"]


def test_looking_at_a_change_keeps_nothing_and_nothing_changed_is_refused(desk: Desk) -> None:
    """What stays is no change."""
    before = opened_part(desk, "BELT").part
    assert look_at_change(desk, PartTold(code="BELT", name="Belt")).changes == ("name: 'Auger belt' becomes 'Belt'",)
    assert opened_part(desk, "BELT").part == before
    with pytest.raises(Refused, match="is so already"):
        change_part(desk, PartTold(code="BELT", name="Auger belt"))


def test_a_part_a_withdrawn_statement_names_stays(desk: Desk) -> None:
    """It can be restored, and would then name nothing."""
    add_part(desk, PIN)
    kept = add_statement(desk, Told(left="ours:PIN", relation="same part", right="X:1", source="list"))
    withdraw_statement(desk, kept.statement.number or 0, "wrong")
    with pytest.raises(Refused, match=f"statement {kept.statement.number} names it"):
        take_part_out(desk, "PIN")


def test_setting_up_again_from_a_folder_keeps_parts_of_the_desk(desk: Desk, tmp_path: Path) -> None:
    """The folder's table never knew of the new one, nor of the other name; what it says of the rest counts."""
    add_part(desk, PIN)
    add_statement(desk, Told(left="ours:PIN", relation="same part", right="X:1", source="list"))
    change_part(desk, PartTold(code="BELT", name="Belt of the auger", size="B36"))
    done = set_up(desk, tmp_path / "prices")
    parts = {part.code: part for part in table(desk).parts}
    assert list(parts) == ["BELT", "KEEPER", "PIN"] and parts["BELT"].size == "B36"
    assert done.changes and not done.changes.parts_gone and not done.changes.parts_changed
    assert "Parts changed at the desk since, they stay so: BELT." in set_up_text(done.changes)


def test_a_file_adds_no_part_whose_code_is_a_number_of_another(desk: Desk, tmp_path: Path) -> None:
    """As the form does not; the other rows are taken where that is asked for, without what speaks of that part."""
    folder = _csvs(desk, tmp_path / "csv")
    _more(folder, "parts.csv", "0040388,Another belt")
    _more(folder, "parts.csv", "SPRING,Idler spring")
    said = ",(ours),0040388,same part,1,Norrowby,77,,,,,maker,list,2026-01-02,Oona Brandeth"
    _more(folder, "statements.csv", said)
    with pytest.raises(Refused, match="'0040388' is a number of our part BELT already"):
        import_table(desk, folder, Wanted())
    done = import_table(desk, folder, Wanted(keep_good=True))
    assert [one.code for one in done.problems] == ["part-number-of-another", "part-not-kept"]
    assert _codes(desk) == ["BELT", "KEEPER", "SPRING"] and len(table(desk).statements) == 3


def test_a_file_adds_no_part_that_is_there_in_other_letters(desk: Desk, tmp_path: Path) -> None:
    """Case, spaces and punctuation make no other code."""
    folder = _csvs(desk, tmp_path / "csv")
    (folder / "parts.csv").write_text("code,name\nBELT,Auger belt\nkeep-er,Belt keeper\n")
    with pytest.raises(Refused, match="'keep-er' is a number of our part KEEPER already"):
        import_table(desk, folder, Wanted())


def test_a_file_says_what_it_would_change_of_a_part(desk: Desk, tmp_path: Path) -> None:
    """A size that a file of before takes away is seen before it is taken in."""
    folder = _csvs(desk, tmp_path / "csv")
    change_part(desk, PartTold(code="BELT", name="Auger belt", size="B36"))
    sections = dict(changes_sections(import_table(desk, folder, Wanted(look=True))))
    assert sections["Parts changed"] == ["BELT  Auger belt: size: 'B36' becomes ''"]


def test_a_code_nobody_can_read_is_refused(desk: Desk) -> None:
    """It would stand on every paper."""
    with pytest.raises(Refused, match="more than 60 characters"):
        add_part(desk, PartTold(code="P" * 61, name="Shear pin"))
    assert add_part(desk, PartTold(code="P" * 60)).part.code == "P" * 60
