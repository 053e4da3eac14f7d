"""A workbook of candidates as people hand it back: sorted, cut, answered in other words, read in twice."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.import_sheets import undo_import
from sourcing.actions.review import all_judgements, take_back
from sourcing.actions.review_file import judge_file
from sourcing.basics.equivalence import Statement
from sourcing.basics.judgement import JudgedFile
from sourcing.documents.review import judged_file_text, queue_xlsx
from sourcing.storage.equivalence import equivalence_table
from tests.actions.judging_shop import find, judging_shop, queue
from tests.journeys.small_shop import sheet

KEEPERS = [f"NW-3120{at},Norrowby,Keeper,13.50,6.40,50," for at in (1, 2, 5, 6, 8)]
Rows = list[list[Any]]
Hand = Callable[[Rows], Rows]


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A shop with five keepers to judge, candidates 1 to 5."""
    return judging_shop(tmp_path, KEEPERS)


def handed_back(desk: Desk, folder: Path, by_hand: Hand) -> Path:
    """The workbook of all that waits, after a person had it; `answer` is her column 1, `words` 2."""
    book = openpyxl.Workbook()
    page = book.active
    assert page is not None
    path = folder / "hand.xlsx"
    path.write_bytes(queue_xlsx(queue(desk)))
    header, *rows = [list(one) for one in openpyxl.load_workbook(path).worksheets[0].iter_rows(values_only=True)]
    for one in [header, *by_hand(rows)]:
        page.append(one)
    book.save(path)
    return path


def kept(desk: Desk) -> tuple[Statement, ...]:
    """Every statement of the equivalence table."""
    with desk.store.reading() as connection:
        return equivalence_table(connection).statements


def told(done: JudgedFile) -> str:
    """What the clerk reads, on one line."""
    return " ".join(judged_file_text(done).split())


def test_a_file_sorted_and_cut_is_taken_by_its_numbers(desk: Desk, tmp_path: Path) -> None:
    """The row's place says nothing: candidate, number and part do. A blank row in between is no row."""

    def by_hand(rows: Rows) -> Rows:
        rows[0][1], rows[1][1] = " Yes,  Fitted ", "NO"
        return [rows[3], [None] * len(rows[0]), rows[1], rows[0]]

    done = judge_file(desk, handed_back(desk, tmp_path, by_hand))
    assert [(one.row, one.judgement.candidate, one.judgement.answer) for one in done.kept] == [
        (4, 2, "no"),
        (5, 1, "yes"),
    ]
    assert (done.blank, done.problems) == (1, ())
    assert done.kept[1].judgement.standing == "fitted"


def test_words_that_are_no_answer_are_told_by_row_and_the_good_ones_kept(desk: Desk, tmp_path: Path) -> None:
    def by_hand(rows: Rows) -> Rows:
        rows[0][1], rows[1][1], rows[2][1], rows[3][1] = "Ja", "perhaps", "no", "yes"
        rows[4][2] = "ask Piet"
        rows[3][0] = "no number"
        return rows

    done = judge_file(desk, handed_back(desk, tmp_path, by_hand))
    assert [one.judgement.candidate for one in done.kept] == [3]
    assert [one.place.row for one in done.problems if one.place] == [2, 3, 5]
    assert "row 2, column 'answer': 'Ja' is no answer" in told(done)
    assert "1 row without an answer (1 of them with words, which are not kept)" in told(done)


def test_a_sheet_taken_out_meanwhile_has_no_candidate_any_more(desk: Desk, tmp_path: Path) -> None:
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["NW-31209,Norrowby,Keeper,13.50,6.10,50,"])
    find(desk, "pellbrook")

    def by_hand(rows: Rows) -> Rows:
        for one in rows:
            one[1] = "no"
        return rows

    path = handed_back(desk, tmp_path, by_hand)
    undo_import(desk, 1)
    done = judge_file(desk, path)
    assert [one.judgement.supplier_number for one in done.kept] == ["NW-31209"]
    assert len(done.problems) == 5 and "no candidate number 1 is there any more" in told(done)


def test_the_same_file_again_changes_nothing_and_is_no_trouble(desk: Desk, tmp_path: Path) -> None:
    """Only an answer that differs from the one that holds is told; one taken back is given anew."""

    def by_hand(rows: Rows) -> Rows:
        rows[0][1], rows[0][2], rows[1][1], rows[2][1] = "yes", "same drawing", "no", "no"
        return rows

    path = handed_back(desk, tmp_path, by_hand)
    assert len(judge_file(desk, path).kept) == 3
    statements = kept(desk)
    again = judge_file(desk, path)
    assert (again.kept, again.problems, again.again) == ((), (), 3)
    assert "3 rows answered so before" in told(again)
    assert kept(desk) == statements and len(all_judgements(desk)) == 3
    take_back(desk, 2, "wrong drawing")
    assert [one.judgement.candidate for one in judge_file(desk, path).kept] == [2]


def test_another_answer_than_the_one_that_holds_is_told(desk: Desk, tmp_path: Path) -> None:
    def said(answer: str) -> Hand:
        def by_hand(rows: Rows) -> Rows:
            rows[0][1] = answer
            return rows

        return by_hand

    path = handed_back(desk, tmp_path, said("no"))
    judge_file(desk, path)
    book = openpyxl.load_workbook(path)
    book.worksheets[0]["B2"] = "yes"
    book.save(path)
    done = judge_file(desk, path)
    assert (done.kept, done.again) == ((), 0) and "take that back first" in told(done)
