"""The account of an import, the list of sheets, and where a quote stands."""

from sourcing.basics.approval import Answers
from sourcing.basics.sheet import Accounting
from sourcing.basics.value import changed
from sourcing.documents.answers import answers_text
from sourcing.documents.sheets import import_text, sheets_text, summary_text
from tests.documents.buying_values import KEPT, SUMMARY
from tests.documents.values import QUOTE, usd


def test_the_account_visibly_adds_up() -> None:
    text = import_text(KEPT, SUMMARY)
    assert "1,236 rows = 1,200 offers + 11 headings, totals and notes + 25 rows with a problem" in text
    assert "ADD UP" not in text
    wrong = changed(SUMMARY, accounting=(Accounting(worksheet="Belts", rows=9, offers=5, structure=1, problem_rows=1),))
    joined = " ".join(import_text(KEPT, wrong).split())
    assert "worksheet 'Belts': 9 rows = 5 offers" in joined and "THIS DOES NOT ADD UP" in joined


def test_columns_used_and_not_known_are_told() -> None:
    text = import_text(KEPT, SUMMARY)
    assert "  Columns used: Item = supplier number; Net 10+ = net price from 10\n" in text
    assert "  Columns not known, so not used: column C; Zone\n" in text
    assert "Page" not in text


def test_twenty_problems_are_shown_and_the_rest_counted() -> None:
    text = import_text(KEPT, SUMMARY)
    assert "25 problems:" in text and text.count("'1.23E+11' is damaged") == 20 and text.endswith("and 5 more.\n")
    assert "row 1, column 'Item'" in text
    few = import_text(KEPT, changed(SUMMARY, problems=SUMMARY.problems[:20]))
    assert "more" not in few
    assert import_text(KEPT, changed(SUMMARY, problems=())).endswith("  No problems.\n")


def test_a_file_only_read_is_not_said_to_be_kept() -> None:
    text = summary_text(changed(SUMMARY, sheet_date=None))
    assert text.startswith("stonegarth-2026-01.csv: no date found, prices in USD; not kept\n")
    assert "1,236 rows = " in text


def test_kept_sheets_are_listed() -> None:
    older = changed(KEPT, sheet=1, is_newest=False, file="older.csv")
    lines = sheets_text([older, KEPT]).splitlines()
    assert [line.split() for line in lines[2:]] == [
        ["1", "stonegarth", "2026-01-05", "1,200", "25", "no", "older.csv"],
        ["3", "stonegarth", "2026-01-05", "1,200", "25", "yes", "stonegarth-2026-01.csv"],
    ]
    assert sheets_text([]) == "No sheet is kept yet.\n"


def answers(**words: str) -> Answers:
    """Answers by label ('_1' for '1'), approved 374.46 with 59.99 extra."""
    by_label = tuple((label.strip("_"), word) for label, word in words.items())
    made = Answers(job="2026-0001", revision=2, by_label=(), approved_total=usd("374.46"), extra=usd("59.99"))
    return changed(made, by_label=by_label)


def test_each_line_is_approved_declined_or_waiting() -> None:
    text = answers_text(QUOTE, answers(_1="approved", _2="approved", _3="approved", A="approved", B="declined"))
    rows = [line.split()[:3] for line in text.splitlines()[3:9]]
    assert rows == [
        ["1", "approved", "$286.60"],
        ["2", "approved", "$4.26"],
        ["3", "approved", "$12.50"],
        ["A", "approved", "$57.80"],
        ["B", "declined", "$71.20"],
        ["C", "waiting", "$102.20"],
    ]
    assert "Approved, with tax: $374.46\nOf that beyond the work asked for: $59.99\n" in text
    assert "Waiting for an answer: C. No answer is not a yes" in text


def test_no_extra_is_named_before_all_work_asked_for_is_approved() -> None:
    assert "beyond" not in answers_text(QUOTE, answers(_1="approved"))
    every = answers(_1="approved", _2="approved", _3="approved", A="declined", B="declined", C="declined")
    assert "Waiting" not in answers_text(QUOTE, every)
