"""The customer's word by command line: given, answer, take-back, answers, revisions; nothing else is ordered."""

import json
from pathlib import Path

import pytest

from tests.actions.answered_shop import quoted, torn_down
from tests.cli.running import sourcing

NOON = "2026-03-04T12:00"
PHONE = ("--by", "Maud Tilbrook", "--how", "telephone")


@pytest.fixture
def number(tmp_path: Path) -> str:
    """The belt agreed and three add-ons found, nothing answered."""
    found = quoted(tmp_path)
    torn_down(tmp_path, found)
    return found


def run(folder: Path, *words: str, at: str = NOON) -> str:
    """What it says; it must succeed."""
    code, out, err = sourcing(folder, *words, at=at)
    assert code == 0, err
    return " ".join(out.split())


def refused(folder: Path, *words: str, at: str = NOON) -> str:
    """What it refuses, in one sentence on the error stream, exit code 1."""
    code, out, err = sourcing(folder, *words, at=at)
    assert (code, out, err.count("\n")) == (1, "", 1), (code, out, err)
    return err


def test_the_whole_talk_with_a_customer(tmp_path: Path, number: str) -> None:
    """Given out, answered in part, one taken back, all of it shown in order."""
    given = run(tmp_path, "given", number, "--how", "text", "--to", "555-0142")
    assert "Revision 2 was given out on 2026-03-04 12:00 by Oona Brandeth: text to 555-0142." in given
    assert "Nothing was sent by this program." in given
    yes = ("--yes", "agreed", "--yes", "A", "--yes", "D", "--no", "C")
    words = ("--contact", "555-0142", "--words", "Go ahead.", "--condition", "ready by Friday")
    said = run(tmp_path, "answer", number, *PHONE, *yes, *words)
    assert "Waiting for an answer: B." in said
    run(tmp_path, "answer", number, *PHONE, "--yes", "B", at="2026-03-04T12:10")
    back = run(tmp_path, "take-back", number, "--line", "B", *PHONE, "--words", "Too dear.", at="2026-03-04T12:20")
    assert "Note: line B waits: Maud Tilbrook approved it on 2026-03-04 at 57.45 USD before tax" in back
    shown = run(tmp_path, "answers", number)
    assert shown.index("12:00: Maud") < shown.index("12:10: Maud") < shown.index("12:20: Maud")
    assert 'conditions: "Go ahead. On condition that: ready by Friday"' in shown
    assert "C declined" in shown and "B taken back" in shown and '"Too dear."' in shown
    history = run(tmp_path, "history", number)
    assert "gave revision 2" in history and "took the yes back: B" in history


def test_a_contrary_answer_names_who_said_what_and_how_to_say_instead(tmp_path: Path, number: str) -> None:
    """And the option does it."""
    run(tmp_path, "answer", number, *PHONE, "--yes", "agreed", "--no", "C")
    told = refused(tmp_path, "answer", number, *PHONE, "--no", "agreed")
    assert "stands as approved by Maud Tilbrook on 2026-03-04 12:00 by telephone" in told and "--instead" in told
    said = run(tmp_path, "answer", number, *PHONE, "--no", "agreed", "--instead")
    assert "1 declined" in said


@pytest.mark.parametrize("case", ["waiting", "declined", "taken back", "replaced", "older revision"])
def test_no_line_without_a_standing_yes_is_ordered(tmp_path: Path, number: str, case: str) -> None:
    """By the command, named by its label or not."""
    answer = ("answer", number, *PHONE)
    run(tmp_path, *answer, "--no", "A", "--no", "B")
    if case == "declined":
        run(tmp_path, *answer, "--no", "C")
    if case in ("taken back", "replaced"):
        run(tmp_path, *answer, "--yes", "C", "--yes", "D")
    if case == "taken back":
        run(tmp_path, "take-back", number, "--line", "C", *PHONE)
    if case == "replaced":
        run(tmp_path, *answer, "--no", "C", "--no", "D", "--instead")
    if case == "older revision":
        assert "no line 'C'" in refused(tmp_path, *answer, "--yes", "C", "--revision", "1")
    word = "declined" if case in ("declined", "replaced") else "waiting"
    told = refused(tmp_path, "order", number, "--line", "C")
    assert f"line C of job {number} is {word}, so it can't be ordered" in told
    assert "is approved and not yet ordered" in refused(tmp_path, "order", number)
    assert not list(tmp_path.glob("*PO-*"))


def test_revisions_are_listed_and_told_apart(tmp_path: Path, number: str) -> None:
    """In words; as JSON too; the owner's side only on demand."""
    text = run(tmp_path, "revisions", number)
    assert "What revision 2 says otherwise than revision 1:" in text and "line D" in text and "tonegarth" not in text
    assert "Revisions 1 and 1 say the same." in run(tmp_path, "revisions", number, "--from", "1", "--to", "1")
    found = json.loads(sourcing(tmp_path, "revisions", number, "--json", at=NOON)[1])
    assert found["compared"] == [1, 2] and [row["revision"] for row in found["rows"]] == [1, 2]


def test_the_record_as_json_holds_every_field(tmp_path: Path, number: str) -> None:
    """Amounts as text, never binary."""
    run(tmp_path, "answer", number, *PHONE, "--yes", "agreed")
    (one,) = json.loads(sourcing(tmp_path, "answers", number, "--json", at=NOON)[1])["occasions"]
    assert (one["who"], one["how"], one["taken_by"], one["at"]) == (
        "Maud Tilbrook", "telephone", "Oona Brandeth", "2026-03-04T12:00:00",
    )  # fmt: skip
    assert one["total_after"] == {"amount": "278.48", "currency": "USD"}


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("answer", "NUMBER", *PHONE), "no line of job"),
        (("answer", "NUMBER", "--by", "A Neighbour", "--how", "text", "--yes", "A"), "A Neighbour is not named"),
        (("answer", "NUMBER", "--by", "Maud Tilbrook", "--how", "shouting", "--yes", "A"), "'shouting' is not one"),
        (("answer", "NUMBER", *PHONE, "--yes", "A"), "without the freight on line D"),
        (("answer", "NUMBER", *PHONE, "--yes", "D", "--no", "A", "--no", "B", "--no", "C"), "line D is freight for"),
        (("take-back", "NUMBER", *PHONE, "--line", "A"), "line A of job"),
        (("given", "NUMBER", "--how", "pigeon"), "'pigeon' is not one of the words"),
        (("revisions", "NUMBER", "--from", "9"), "no quote of revision 9"),
        (("answers", "2020-0001"), "there is no job"),
    ],
)
def test_what_is_refused_is_told_in_one_sentence(
    tmp_path: Path, number: str, words: tuple[str, ...], told: str
) -> None:
    """Never a trace of the program."""
    assert told in refused(tmp_path, *(number if word == "NUMBER" else word for word in words))
