"""Many answers at once: by score only what was shown, from a file only rows as they were written."""

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.review import accept_by_score, all_judgements, judge
from sourcing.actions.review_file import judge_file
from sourcing.actions.setup import set_up
from sourcing.basics.judgement import JudgedFile
from sourcing.basics.problem import Refused
from sourcing.documents.review import judged_file_text, queue_xlsx
from sourcing.storage.judgements import judged_examples
from tests.actions.judging_shop import MONDAY, find, judging_shop, pairs, queue, waiting
from tests.journeys.small_shop import desk_at, sheet, shop

NINE = "NW-3120{},Norrowby,Keeper,13.50,6.40,50,"
MANY = [NINE.format(at) for at in (1, 2, 5)]
"""Numbers one character from KEEPER's NW-31207: seven characters, alike at 6/7."""
EDIT = Callable[[dict[str, Any]], None]


def test_by_score_only_shows_until_the_number_shown_is_said(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, MANY)
    least = Decimal("0.8")
    looked = accept_by_score(desk, "stonegarth", least)
    assert len(looked.shown) == 3 and not looked.done and all_judgements(desk) == ()
    with pytest.raises(Refused, match="2 were to be accepted, but there are 3"):
        accept_by_score(desk, "stonegarth", least, 2)
    assert all_judgements(desk) == ()
    done = accept_by_score(desk, "stonegarth", least, 3)
    assert len(done.done) == 3 and pairs(desk) == []
    assert {one.standing for one in all_judgements(desk)} == {"unchecked"}


def test_nothing_is_learnt_from_what_was_accepted_by_score(tmp_path: Path) -> None:
    """The score would be told what it said itself."""
    desk = judging_shop(tmp_path, MANY)
    judge(desk, waiting(desk, "NW-31201", "KEEPER").kept.candidate, "no")
    accept_by_score(desk, "stonegarth", Decimal("0.8"), 2)
    with desk.store.reading() as connection:
        assert [one.same for one in judged_examples(connection)] == [False]


def test_by_score_leaves_out_what_something_speaks_against(tmp_path: Path) -> None:
    """A supplier's word ties the number, the size contradicts it: one a person must look at."""
    rows = ["NW-77120,Norrowby,Auger belt A36,150.00,99.00,1,", *MANY[:1]]
    desk = judging_shop(tmp_path, rows)
    found = accept_by_score(desk, "stonegarth", Decimal("0.8"))
    assert [one.kept.offer.supplier_number for one in found.shown] == ["NW-31201"]
    against = waiting(desk, "NW-77120", "BELT").kept.candidate
    (said,) = found.left_out
    assert said.startswith(f"{against}: NW-77120 for BELT: something speaks against it: different section")


def test_by_score_leaves_out_a_row_of_which_two_parts_are_as_likely(tmp_path: Path) -> None:
    """NW-22207 lies between IDLER's NW-22203 and a KEEPER known as NW-22209."""
    desk = shop(tmp_path, MONDAY)
    book = openpyxl.load_workbook(tmp_path / "equivalence.xlsx")
    book["statements"].append(
        ["(ours)", "KEEPER", "same part", "Norrowby", "NW-22209", "maker", "a list", "2026-01-02", "Oona Brandeth"]
    )
    book.save(tmp_path / "equivalence.xlsx")
    set_up(desk, tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", ["NW-22207,Norrowby,Idler,39.95,22.50,5,"])
    find(desk)
    found = accept_by_score(desk, "stonegarth", Decimal("0.8"))
    assert found.shown == () and len(found.left_out) == 2
    assert "several of our parts, IDLER, KEEPER" in found.left_out[0]


def test_one_number_in_two_rows_makes_one_statement(tmp_path: Path) -> None:
    """Both rows are settled by it."""
    desk = judging_shop(tmp_path, [*MANY[:1], "NW 31201,Norrowby,Keeper pair,13.50,6.40,50,"])
    done = accept_by_score(desk, "stonegarth", Decimal("0.8"), 1)
    assert len(done.done) == 1 and pairs(desk) == []


@pytest.mark.parametrize("least", ["0.49", "1.01", "NaN", "-1"])
def test_a_score_that_is_none_is_refused(tmp_path: Path, least: str) -> None:
    desk = judging_shop(tmp_path, MANY)
    with pytest.raises(Refused, match="is not a score"):
        accept_by_score(desk, "stonegarth", Decimal(least))


def test_a_score_counts_as_it_is_shown(tmp_path: Path) -> None:
    """6/7 is shown as 0.86 and is 0.8571 to four places; a score of 0.8572 is not reached."""
    desk = judging_shop(tmp_path, MANY)
    assert len(accept_by_score(desk, "stonegarth", Decimal("0.8571")).shown) == 3
    assert accept_by_score(desk, "stonegarth", Decimal("0.8572")).shown == ()
    with pytest.raises(Refused, match="no waiting candidate"):
        accept_by_score(desk, "stonegarth", Decimal("0.8572"), 0)


def filled(desk: Desk, folder: Path, edit: EDIT) -> Path:
    """The queue written out; `edit` is given each row by its headers and changes it."""
    path = folder / "judged.xlsx"
    path.write_bytes(queue_xlsx(queue(desk)))
    book = openpyxl.load_workbook(path)
    page = book.worksheets[0]
    header = [str(cell.value) for cell in page[1]]
    for cells in page.iter_rows(min_row=2):
        row: dict[str, Any] = {name: cell.value for name, cell in zip(header, cells, strict=True)}
        edit(row)
        for name, cell in zip(header, cells, strict=True):
            cell.value = row[name]
    book.save(path)
    return path


def by_number(**answers: str) -> EDIT:
    """Put an answer beside the last figures of each number."""

    def edit(row: dict[str, Any]) -> None:
        row["answer"] = answers.get(f"n{str(row['number'])[-5:]}")

    return edit


def codes(done: JudgedFile) -> list[str]:
    """The kinds of the problems, in the order of the rows."""
    return [one.code for one in done.problems]


def test_a_file_is_taken_in_row_by_row(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, [*MANY, NINE.format(4)])
    path = filled(desk, tmp_path, by_number(n31201="Yes, fitted", n31202="yes", n31205="no"))
    greta = desk_at(tmp_path, MONDAY, "Greta Lindqvare")
    done = judge_file(greta, path)
    assert (len(done.kept), done.blank, done.problems) == (3, 1, ())
    found = {one.supplier_number: (one.answer, one.standing, one.who) for one in all_judgements(desk)}
    assert found == {
        "NW-31201": ("yes", "fitted", "Greta Lindqvare"),
        "NW-31202": ("yes", "unchecked", "Greta Lindqvare"),
        "NW-31205": ("no", "", "Greta Lindqvare"),
    }
    assert pairs(desk) == [("NW-31204", "KEEPER")]
    text = judged_file_text(done)
    assert "3 answers kept, 0 rows not taken, 1 row without an answer" in text and "row 2: " in text


def test_by_score_knows_the_suppliers(tmp_path: Path) -> None:
    """A slip in the name is told; it would read as if nothing waited."""
    with pytest.raises(Refused, match="there is no sheet of 'stonegart'"):
        accept_by_score(judging_shop(tmp_path, MANY), "stonegart", Decimal("0.8"))


def test_reading_the_same_file_twice_keeps_nothing_new(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, MANY)
    path = filled(desk, tmp_path, by_number(n31201="no"))
    judge_file(desk, path)
    again = judge_file(desk, path)
    assert (again.kept, codes(again), again.again) == ((), [], 1)
    assert len(all_judgements(desk)) == 1


@pytest.mark.parametrize(
    ("column", "value", "code"),
    [
        ("number", "NW-31209", "judged-row-edited"),
        ("number", 31201, "judged-row-edited"),
        ("our part", "BELT", "judged-row-edited"),
        ("candidate", 4711, "no-such-candidate"),
        ("candidate", "one", "candidate-number-unclear"),
        ("candidate", None, "candidate-number-unclear"),
        ("answer", "perhaps", "unknown-answer"),
        ("answer", 1, "unknown-answer"),
    ],
)
def test_a_row_that_was_edited_is_told_and_the_others_are_kept(
    tmp_path: Path, column: str, value: object, code: str
) -> None:
    desk = judging_shop(tmp_path, MANY)

    def edit(row: dict[str, Any]) -> None:
        row["answer"] = "no"
        if row["number"] == "NW-31201":
            row[column] = value

    done = judge_file(desk, filled(desk, tmp_path, edit))
    assert codes(done) == [code] and len(done.kept) == 2
    place = done.problems[0].place
    assert place and place.row and place.file == "judged.xlsx"
    assert {one.supplier_number for one in all_judgements(desk)} == {"NW-31202", "NW-31205"}


def test_a_candidate_answered_twice_is_not_taken_at_all(tmp_path: Path) -> None:
    """Neither answer: which one is meant is not for the program to say."""
    desk = judging_shop(tmp_path, MANY)
    path = filled(desk, tmp_path, by_number(n31201="yes fitted", n31202="no"))
    book = openpyxl.load_workbook(path)
    page = book.worksheets[0]
    first = next(cells for cells in page.iter_rows(min_row=2, values_only=True) if cells[4] == "NW-31201")
    page.append([first[0], "no", *first[2:]])
    book.save(path)
    done = judge_file(desk, path)
    assert codes(done) == ["candidate-twice"] * 2
    assert [one.supplier_number for one in all_judgements(desk)] == ["NW-31202"]


def test_a_row_with_a_yes_to_two_parts_is_not_taken(tmp_path: Path) -> None:
    """Sister parts stand in one row of the sheet; the yeses cancel out, the no counts."""
    desk = judging_shop(tmp_path, ["NW-32207,Norrowby,Idler,39.95,22.50,5,", *MANY[:1]])
    keeper = [one for one in queue(desk).shown if one.kept.offer.supplier_number == "NW-32207"]
    assert len(keeper) >= 2
    done = judge_file(desk, filled(desk, tmp_path, by_number(n32207="yes", n31201="no")))
    assert codes(done) == ["row-of-two-parts"] * len(keeper) and len(done.kept) == 1


def test_words_are_asked_for_in_a_file_too(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Auger belt A36,150.00,99.00,1,"])

    def edit(row: dict[str, Any]) -> None:
        row["answer"] = "yes"

    assert codes(judge_file(desk, filled(desk, tmp_path, edit))) == ["against-without-words"]


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 torn", b"answer,candidate\nyes,1\n"])
def test_what_is_no_workbook_is_refused(tmp_path: Path, content: bytes) -> None:
    desk = judging_shop(tmp_path, MANY)
    path = tmp_path / "other.xlsx"
    path.write_bytes(content)
    with pytest.raises(Refused, match="can't be opened as an XLSX workbook"):
        judge_file(desk, path)


def test_a_workbook_without_the_columns_is_refused(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, MANY)
    path = tmp_path / "other.xlsx"
    openpyxl.Workbook().save(path)
    with pytest.raises(Refused, match="has no column 'candidate'"):
        judge_file(desk, path)
