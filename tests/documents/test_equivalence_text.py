"""The table in words: what a file changes, what happened to a statement, what a check found, a number's family."""

import csv
import io
from datetime import datetime

import openpyxl

from sourcing.basics.equivalence import MakerAlias
from sourcing.basics.problem import Place, problem
from sourcing.basics.statement_history import KeptStatement, StatementEvent
from sourcing.basics.table_change import ChangedStatement, TableChanges
from sourcing.basics.table_finding import Finding
from sourcing.basics.value import changed
from sourcing.documents.equivalences import (
    Sheets,
    aliases_text,
    changes_text,
    history_text,
    set_up_text,
    table_csvs,
    table_xlsx,
)
from sourcing.documents.family_text import family_text
from sourcing.documents.table_check import check_text
from tests.documents.family_values import BELT, CHEAP, FAMILY, S1, S2, S3, S4, S5, VIEW, said

AT = datetime(2026, 1, 12, 9, 30)
SHEETS: Sheets = {
    "parts": (("code", "name"), [("00123", "=SUM(A1)")]),
    "statements": (("number", "left number", "condition"), [(7, "00456", "")]),
    "makers": (("alias", "maker"), []),
}


def event(what: str, reason: str, minute: int = 30, **more: object) -> StatementEvent:
    """Something that happened to statement 4."""
    at = AT.replace(minute=minute)
    return StatementEvent(statement=4, at=at, who="Oona Brandeth", what=what, reason=reason, **more)  # type: ignore[arg-type]


def test_numbers_are_text_in_the_workbook_and_blanks_are_blank() -> None:
    book = openpyxl.load_workbook(io.BytesIO(table_xlsx(SHEETS)))
    assert book.sheetnames == ["parts", "statements", "makers", "how it reads"]
    assert [cell.value for cell in book["parts"][2]] == ["00123", "=SUM(A1)"]
    assert [cell.data_type for cell in book["parts"][2]] == ["s", "s"]
    assert [cell.value for cell in book["statements"][2]] == [7, "00456", None]
    assert book["makers"].max_row == 1


def test_csv_files_keep_leading_zeros_and_no_cell_is_a_formula() -> None:
    files = table_csvs(SHEETS)
    assert list(files) == ["parts.csv", "statements.csv", "makers.csv"]
    assert list(csv.reader(files["parts.csv"].splitlines()))[1] == ["00123", "'=SUM(A1)"]


def test_changes_are_counted_and_listed_with_what_stays_though_the_file_differs() -> None:
    changes = TableChanges(
        file="edited.xlsx",
        added=(changed(S3, number=None),),
        changed=(ChangedStatement(before=S4, now=S4, words=("standing: 'supplier' becomes 'fitted'",)),),
        withdrawn=(S5,),
        missing=(S1,),
        stay_withdrawn=(S2,),
        doubts_stay=(S4,),
        unchanged=80,
        parts_added=(BELT,),
        aliases_added=(MakerAlias(alias="NWB", maker="Norrowby"),),
        problems=(problem("blank-number", place=Place(file="edited.xlsx", row=9), found="-"),),
        why_withdrawn="never fitted",
    )
    text = changes_text(changes)
    head, body = text.split("\n\n", 1)
    assert " ".join(head.split()) == (
        "edited.xlsx, statements: 1 added, 1 changed, 1 withdrawn, 80 unchanged, 1 not in the file, they stay, 1 in "
        "the file but withdrawn by a person, they stay withdrawn, 1 row that can't be used. Nothing is changed yet."
    )
    for words in (
        "edited.xlsx, row 9: '-' holds no letter and no digit",
        "4  Norrowby NW-40388 is the same part as Dunmarrow DM-77120: standing: 'supplier' becomes 'fitted'",
        "Withdrawn (never fitted): 1",
        "Parts added: 1",
        "'NWB' is Norrowby",
    ):
        assert words in body, words
    assert "Nothing is changed yet" not in changes_text(changed(changes, done=True))
    assert max(map(len, text.splitlines())) <= 100


def test_long_lists_are_cut_and_the_rest_is_counted() -> None:
    many = tuple(said(at, S1.left, "same part", S3.right) for at in range(45))
    assert "  and 5 more" in changes_text(TableChanges(file="x", missing=many))


def test_history_tells_who_when_what_and_why() -> None:
    events = (
        event("stated", "t.xlsx, row 3"),
        event("doubted", "slips & burns", 31),
        event("changed", "x", 32, was=S3),
    )
    text = history_text(KeptStatement(statement=S4, events=events))
    assert "It counts as unchecked; stated on 2025-10-21 by Oona Brandeth." in text
    assert "  2026-01-12 09:30  Oona Brandeth: stated: t.xlsx, row 3\n" in text
    assert "  2026-01-12 09:31  Oona Brandeth: doubted: slips & burns\n" in text
    assert "(before: Norrowby NW-40388 is the same part as Corrivane CV-B36K" in " ".join(text.split())
    assert "is not known" not in text
    old = history_text(KeptStatement(statement=S4, withdrawn=True))
    assert "is withdrawn and counts no more" in old and "before the program kept a history is not known" in old


def test_setting_up_says_what_it_left_alone_and_nothing_where_nothing() -> None:
    assert set_up_text(None) == "" == set_up_text(TableChanges(file="equivalence.xlsx", unchanged=80))
    changes = TableChanges(file="equivalence.xlsx", missing=(S1, S2), doubts_stay=(S4,))
    assert set_up_text(changes) == (
        "\nStatements made at the desk and not in it, they stay: 2."
        "\nStatements doubted at the desk, they stay doubted: 1."
    )


def test_findings_stand_by_kind_with_their_statements() -> None:
    found = (
        Finding(kind="doubted", words="doubted: x", statements=(S4,)),
        Finding(kind="same part and must not", words="said to be both", statements=(S3, S5), more=3),
    )
    lines = check_text(found).splitlines()
    assert lines[0] == "To look at: 2 findings"
    assert [line for line in lines if line and line[0] != " "][1:] == ["Same part and must not: 1", "Doubted: 1"]
    assert "      and 3 more statements" in lines
    assert any(line.startswith("      3  Norrowby NW-40388 is the same part as") for line in lines)
    assert check_text(()) == "Nothing in the table contradicts itself.\n"


def test_a_family_shows_the_path_to_each_number_link_by_link() -> None:
    text = family_text(VIEW)
    block = text.split("\n\n")[-4]  # before what is banned, the kit, and what stands beside the family
    assert block == (
        "  Corrivane CV-B36H: counts as unchecked; not sold, by the newest sheets; only if sheave above 5 in\n"
        "      1  BELT-AUGER is the same part as Norrowby NW-40388 (maker: Norrowby parts list NW-826)\n"
        "      3  Norrowby NW-40388 is the same part as Corrivane CV-B36K (fitted: fitted on job 2025-0193,\n"
        "        served)\n"
        "      8  Corrivane CV-B36H may serve for Corrivane CV-B36K, only if sheave above 5 in (unchecked:\n"
        "        Norrowby parts list NW-826)"
    )
    assert "the newest number that is sold" in text and "4L390 <light>: MUST NOT SERVE" in text
    assert "A kit that holds it: Norrowby NW-K 900, 2 in one kit" in text


def test_what_must_not_serve_is_said_before_anything_else_of_a_number() -> None:
    ban = said(9, S1.right, "must not", CHEAP, source="burned on job 2026-0001")
    members = tuple(changed(one, forbidden=ban) if one.number == CHEAP else one for one in FAMILY.members)
    text = family_text(changed(VIEW, families=(changed(FAMILY, members=members),)))
    assert "Dunmarrow DM-77120: MUST NOT SERVE (burned on job 2026-0001)" in text
    assert "      9  Dunmarrow DM-77120 must not serve for Norrowby NW-40388" in text


def test_names_of_makers_are_listed() -> None:
    assert aliases_text([MakerAlias(alias="NWB", maker="Norrowby")]) == "'NWB' is Norrowby\n"
    assert aliases_text([]) == "No other name of a maker is kept.\n"
