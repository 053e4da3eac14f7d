"""The record of what a customer authorised, against the fields that published rules ask for; and quotes given out.

Sources, both read in copies by way of a table of facts: California Code of Regulations, title 16, section 2722 (repair
of appliances; the fullest list of fields found), and title 16, sections 3353 and 3354 (motor vehicles; fields by way of
a trade summary, the text of 3353.1 was not read). Neither covers outdoor power equipment: a
measure, no law here.
"""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, withdraw
from sourcing.actions.revisions import answer_record, revisions
from sourcing.actions.sendings import given
from sourcing.basics.approval import AnswerRecord, Occasion
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed, from_json, to_json
from sourcing.documents.authorisation import record_text
from sourcing.storage.deeds import deeds
from tests.actions.answered_shop import CALLED, MONDAY, at, quoted, said, torn_down
from tests.builders import usd
from tests.journeys.small_shop import desk_at


@pytest.fixture
def found(tmp_path: Path) -> AnswerRecord:
    """Case S04: 134.71 more by telephone, 413.19 in all; C declined with the customer's word."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed", how="in person", contact=""))
    torn_down(tmp_path, number)
    words = said("A", "B", "D", no=("C",), words="The bar can wait.", conditions="no more than 420")
    record(at(tmp_path), number, words)
    return answer_record(at(tmp_path), number)


FIELDS: list[tuple[str, str, Callable[[Occasion], object], object, str]] = [
    ("date", "2722, 3353", lambda one: one.at.date().isoformat(), "2026-03-04", "Mar 4, 2026"),
    ("time", "2722, 3353", lambda one: f"{one.at:%H:%M}", "11:20", "11:20"),
    ("person authorising", "2722, 3353", lambda one: one.who, "Maud Tilbrook", "Maud Tilbrook by telephone"),
    ("person taking the consent", "2722", lambda one: one.taken_by, "Piet Halloway-Rusk", "taken down by Piet"),
    ("telephone number called, if any", "2722, 3353", lambda one: one.contact, "555-0142", "(555-0142)"),
    ("additional parts", "2722, 3353", lambda one: str(one.lines[0].parts), "25.60 USD", "$25.60"),
    ("additional labour", "2722, 3353", lambda one: str(one.lines[0].labour), "28.80 USD", "$28.80"),
    ("total additional cost", "2722, 3353", lambda one: one.extra, usd("134.71"), "$134.71"),
    ("revised total", "3353", lambda one: one.total_after, usd("413.19"), "$413.19"),
    (
        "conditions of the consent", "2722", lambda one: one.words,
        "The bar can wait. On condition that: no more than 420", "On condition that: no more than 420",
    ),
    ("how it was given: written, oral, electronic", "3353", lambda one: one.how, "telephone", "by telephone"),
]  # fmt: skip


@pytest.mark.parametrize(("field", "section", "value", "expected", "shown"), FIELDS, ids=[row[0] for row in FIELDS])
def test_each_field_a_rule_asks_for_is_kept_and_shown(
    found: AnswerRecord, field: str, section: str, value: Callable[[Occasion], object], expected: object, shown: str
) -> None:
    """One by one, in the value and on the text."""
    assert value(found.occasions[-1]) == expected, (field, section)
    assert shown in " ".join(record_text(found).split()), (field, section)


def test_each_occasion_has_its_lines_its_paper_and_what_came_before(found: AnswerRecord) -> None:
    """Two occasions; the second is to revision 2 and its paper."""
    first, second = found.occasions
    assert [(line.label, line.answer) for line in first.lines] == [("1", "approved"), ("2", "approved")]
    assert [(line.label, line.answer, line.amount) for line in second.lines] == [
        ("A", "approved", usd("54.40")),
        ("B", "approved", usd("57.45")),
        ("D", "approved", usd("14.95")),
        ("C", "declined", usd("147.20")),
    ]
    assert all(line.parts + line.labour + line.charges == line.amount for one in found.occasions for line in one.lines)
    assert (first.total_before, first.total_after) == (None, usd("278.48"))
    assert (second.total_before, second.revision, len(second.sha256)) == (usd("278.48"), 2, 64)
    assert first.sha256 != second.sha256
    assert found.waiting == ()


def test_the_record_goes_out_as_json_and_comes_back(found: AnswerRecord) -> None:
    """To the letter."""
    assert from_json(to_json(found), AnswerRecord) == found


def test_the_text_shows_no_is_a_no_and_what_is_not_noted(found: AnswerRecord) -> None:
    """Declined with the price offered and the word; who else may answer; that rules differ."""
    text = record_text(found)
    assert "declined" in text and "$147.20" in text and "The bar can wait." in text
    assert "May answer: Maud Tilbrook." in text
    assert "differs by place" in text
    assert all(len(line) <= 110 for line in text.splitlines())


def test_a_call_without_its_number_is_told_as_not_noted(tmp_path: Path) -> None:
    """Not left out, not guessed from the customer's card."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed", contact=""))
    assert "by telephone (number not noted)" in record_text(answer_record(at(tmp_path), number))


def test_records_from_before_totals_were_kept_say_so(found: AnswerRecord) -> None:
    """Not nought."""
    old = tuple(changed(one, extra=None, total_before=None, total_after=None) for one in found.occasions)
    text = record_text(changed(found, occasions=old))
    assert text.count("Total after this answer: not written down then") == 2 and "Total of all approved" not in text


def test_words_of_the_customer_can_not_forge_a_line_or_command_the_terminal(found: AnswerRecord) -> None:
    """A line end, a terminal code and a turned reading direction in what she said."""
    words = "yes\n  Total of all approved, with tax: $0.00 \x1b[2J\u202e"
    forged = tuple(changed(one, words=words, contact=words, who=words) for one in found.occasions)
    text = record_text(changed(found, occasions=forged))
    assert not {"\x1b", "\u202e"} & set(text)
    assert "\n  Total of all approved, with tax: $0.00" not in text


def test_silence_is_shown_as_waiting(tmp_path: Path) -> None:
    """Nobody answered: no occasion, every line waits."""
    number = quoted(tmp_path)
    found = answer_record(at(tmp_path), number)
    assert found.occasions == () and found.waiting[0] == "1 Belt"
    assert "No answer is recorded." in record_text(found) and "No answer is not a yes." in record_text(found)


def test_what_was_taken_back_stands_in_its_place_in_time(tmp_path: Path) -> None:
    """Yes on Monday, back on Wednesday at 11:30, other answers after."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed"))
    taken = TakenBack(labels=("agreed",), who="Maud Tilbrook", how="e-mail", words="Not yet.")
    withdraw(at(tmp_path, datetime(2026, 3, 4, 11, 30)), number, taken)
    record(at(tmp_path, datetime(2026, 3, 5, 9, 0)), number, said("agreed"))
    found = answer_record(at(tmp_path), number)
    kinds = [(one.lines[0].answer, one.lines[0].holds, len(one.lines)) for one in found.occasions]
    assert kinds == [("approved", "withdrawn", 2), ("taken back", "withdrawn", 2), ("approved", "yes", 2)]
    assert "taken back later" in record_text(found) and '"Not yet."' in record_text(found)


def test_a_quote_given_out_is_kept_with_whom_how_and_when(tmp_path: Path) -> None:
    """Newest or a named one; the ledger has it; nothing is sent."""
    number = quoted(tmp_path)
    out = given(at(tmp_path), number, None, " E-Mail ", "maud@example.org")
    assert (out.revision, out.how, out.sent_to, out.who, out.at, out.notes) == (
        1, "e-mail", "maud@example.org", "Piet Halloway-Rusk", CALLED, (),
    )  # fmt: skip
    torn_down(tmp_path, number)
    old = given(at(tmp_path, datetime(2026, 3, 10, 9, 0)), number, 1, "post", "")
    assert [words.split(":")[0] for words in old.notes] == ["revision 2 is newer", "it was valid to 2026-03-09"]
    rows = revisions(at(tmp_path), number).rows
    assert [[one.how for one in row.given] for row in rows] == [["e-mail", "post"], []]
    with at(tmp_path).store.reading() as connection:
        details = [deed.detail for deed in deeds(connection) if deed.deed == "give quote"]
    assert details[0] == "gave revision 1 to the customer: e-mail maud@example.org"


@pytest.mark.parametrize(
    ("revision", "how", "moment", "words"),
    [
        (7, "text", CALLED, "has no quote of revision 7"),
        (None, "pigeon", CALLED, "'pigeon' is not one of the words for 'how'"),
        (None, "text", datetime(2026, 3, 2, 10, 14), "was made on 2026-03-02 10:15"),
    ],
)
def test_what_can_not_be_given_out(
    tmp_path: Path, revision: int | None, how: str, moment: datetime, words: str
) -> None:
    """One sentence each."""
    number = quoted(tmp_path)
    with pytest.raises(Refused, match=words):
        given(at(tmp_path, moment), number, revision, how, "")


def test_a_job_without_a_quote_has_nothing_to_give_or_show(tmp_path: Path) -> None:
    """And an unknown job is told with the nearest numbers."""
    number = quoted(tmp_path)
    with pytest.raises(Refused, match=f"Perhaps: {number}"):
        given(at(tmp_path), "2026-0009", None, "text", "")
    with pytest.raises(Refused, match="there is no job"):
        answer_record(at(tmp_path), "2026-0009")
