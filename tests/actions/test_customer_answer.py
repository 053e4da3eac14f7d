"""A customer's answer on her page: kept once, by the rules of every answer, and signed."""

from datetime import timedelta
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, standing, withdraw
from sourcing.actions.customer_answer import Answer, answer, total_with
from sourcing.actions.customer_links import (
    OpenedLink,
    make_link,
    new_secret,
    open_link,
    signature_of,
)
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.links import links
from sourcing.storage.quotes import approvals
from tests.actions.answered_shop import BELT, FOUND, MONDAY, at, change, quoted, said, torn_down
from tests.actions.linked_shop import HER, LATER, PAGE, Deed, drawing, her, linked, opens, refusal_of, row


def test_an_answer_is_kept_with_who_when_how_and_the_signature(tmp_path: Path) -> None:
    """By the rules of every answer: price, revision, freight that goes along; and once."""
    number, secret, _ = linked(tmp_path)
    words = Answer(
        yes=("1", "A", "D"), no=("B",), name=" maud  TILBROOK ", conditions="ready by Friday", words="call me first"
    )
    answer(her(tmp_path), secret, changed(words, drawing=drawing()))
    with at(tmp_path).store.reading() as connection:
        kept = [one for _, one in approvals(connection, number)]
    assert [(one.label, one.answer) for one in kept] == [
        ("1", "approved"), ("A", "approved"), ("D", "approved"), ("2", "approved"), ("B", "declined"),
    ]  # fmt: skip
    assert {(one.who, one.how, one.contact, one.taken_by, one.at, one.revision) for one in kept} == {
        ("maud TILBROOK", PAGE, "link 1", PAGE, LATER, 2)
    }
    assert kept[0].condition == "ready by Friday" and kept[-1].words == "call me first"
    assert standing(at(tmp_path), number).answers.of("C") == "waiting", "silence is never a yes"
    found = row(tmp_path, number)
    assert found.standing == "answered" and found.link.answered_at == LATER
    assert found.signature and found.signature.name == "maud TILBROOK"
    assert signature_of(at(tmp_path), number, 1).startswith(b"\x89PNG")


def test_the_answered_link_shows_what_was_given_until_it_ends(tmp_path: Path) -> None:
    """And asks nothing; answers by telephone later are not among them."""
    number, secret, made = linked(tmp_path)
    answer(her(tmp_path), secret, Answer(yes=("1",), no=("A",), name=HER))
    record(at(tmp_path, LATER + timedelta(hours=1)), number, said("B", "D"))
    link = open_link(her(tmp_path, made.until), secret)
    assert link.asked == () and link.totals == ()
    assert [(one.label, one.answer) for one in link.given] == [("1", "approved"), ("2", "approved"), ("A", "declined")]
    assert opens(tmp_path, secret, made.until + timedelta(minutes=1)) == "link-over"


def test_what_was_answered_can_be_read_after_a_newer_revision(tmp_path: Path) -> None:
    """It stays the confirmation of what she answered to."""
    number, secret, _ = linked(tmp_path)
    answer(her(tmp_path), secret, Answer(yes=("1",), name=HER))
    change(tmp_path, number, BELT + FOUND.replace("hours = 0.5", "hours = 1.5"), LATER)
    assert open_link(her(tmp_path), secret).frozen.quote.revision == 2


def test_a_second_answer_is_refused(tmp_path: Path) -> None:
    """From another tab: the first stands as it was."""
    number, secret, _ = linked(tmp_path)
    answer(her(tmp_path), secret, Answer(yes=("1",), name=HER))
    again = refusal_of(tmp_path, secret, Answer(no=("1",), name=HER))
    assert again.problems[0].code == "link-answered"
    assert standing(at(tmp_path), number).answers.of("1") == "approved"


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (Answer(yes=("1",), name=""), "link-name-missing"),
        (Answer(yes=("1",), name="  "), "link-name-missing"),
        (Answer(yes=("1",), name="Ansgar Fremd"), "link-name-unknown"),
        (Answer(name=HER), "link-nothing-answered"),
        (Answer(no=("1",), name=HER, conditions="if cheaper"), "link-condition-without-yes"),
        (Answer(yes=("A",), name=HER), "link-freight-needed"),
        (Answer(yes=("D",), no=("A", "B", "C"), name=HER), "link-freight-for-nothing"),
        (Answer(yes=("1", "D"), name=HER), "link-freight-for-nothing"),
        (Answer(yes=("Z",), name=HER), "link-not-taken"),
        (Answer(yes=("1",), no=("1",), name=HER), "link-not-taken"),
        (Answer(yes=("1",), name=HER, words="x" * 2001), "words-too-long"),
        (Answer(yes=("1",), name="x" * 101), "words-too-long"),
        (Answer(yes=("1",), name=HER, drawing="data:image/svg+xml;base64,PHN2Zz4="), "drawing-not-read"),
    ],
)
def test_what_is_refused_is_told_in_her_words(tmp_path: Path, words: Answer, code: str) -> None:
    """No command of the program, no cost, nobody else's name; nothing is kept."""
    number, secret, _ = linked(tmp_path)
    refusal = refusal_of(tmp_path, secret, words)
    assert [one.code for one in refusal.problems] == [code]
    assert "sourcing" not in str(refusal) and "--" not in str(refusal)
    assert "{" not in str(refusal) and (HER not in str(refusal))
    assert set(dict(standing(at(tmp_path), number).answers.by_label).values()) == {"waiting"}


def test_an_answer_contrary_to_one_by_telephone_meanwhile_is_refused_without_a_name(tmp_path: Path) -> None:
    """All or nothing; the same word again is no contradiction."""
    number, secret, _ = linked(tmp_path)
    record(at(tmp_path), number, said("A", "D", who="Maud Tilbrook", contact="555-0142"))
    refusal = refusal_of(tmp_path, secret, Answer(yes=("1",), no=("A",), name=HER))
    assert [one.code for one in refusal.problems] == ["link-answered-otherwise"]
    assert "555-0142" not in str(refusal) and "Tilbrook" not in str(refusal)
    assert standing(at(tmp_path), number).answers.of("1") == "waiting"
    answer(her(tmp_path), secret, Answer(yes=("1", "A"), name=HER))
    assert standing(at(tmp_path), number).answers.of("A") == "approved"


def test_a_yes_taken_back_is_asked_again(tmp_path: Path) -> None:
    """By telephone given, by telephone taken back: on her page it waits."""
    number, secret, _ = linked(tmp_path)
    record(at(tmp_path), number, said("A", "D"))
    withdraw(at(tmp_path), number, TakenBack(labels=("A", "D"), who=HER, how="telephone"))
    assert "A" in open_link(her(tmp_path), secret).asked


def test_a_yes_to_an_earlier_day_is_asked_again_and_may_become_a_no(tmp_path: Path) -> None:
    """The belt was approved on Monday and would come later by now: the paper has boxes for it, so a no counts."""
    number = quoted(tmp_path)
    record(at(tmp_path, MONDAY), number, said("agreed"))
    torn_down(tmp_path, number)
    assert standing(at(tmp_path), number).answers.of("1") == "approved"
    secret = new_secret()
    make_link(at(tmp_path), number, secret)
    link = open_link(her(tmp_path), secret)
    assert "1" in link.asked and link.totals[0].amount == 0
    answer(her(tmp_path), secret, Answer(no=("1",), name=HER))
    now = standing(at(tmp_path), number).answers
    assert (now.of("1"), now.of("2")) == ("declined", "declined")


def nothing(_folder: Path, number: str) -> None:
    """Nothing is answered before."""


def by_telephone(folder: Path, number: str) -> None:
    """Keepers and the extras' freight approved, the bar declined."""
    record(at(folder), number, said("A", "D", no=("C",)))


def on_monday(folder: Path, number: str) -> None:
    """The belt approved on Monday for an earlier day: it is asked about again, its freight goes with it."""
    record(at(folder, MONDAY), number, said("agreed"))


@pytest.mark.parametrize(
    ("before", "after", "choices", "taken"),
    [(nothing, nothing, 32, 16), (nothing, by_telephone, 4, 4), (on_monday, nothing, 32, 16)],
)
def test_every_choice_that_can_be_sent_comes_to_the_total_that_was_shown(
    tmp_path: Path, before: Deed, after: Deed, choices: int, taken: int
) -> None:
    """With tax, supplies, and freight that goes with lines: what is shown is what is kept.

    Of 32 choices the rules take 16: belt yes or no, with any of seven choices of extras and their freight, or none.
    """
    number = quoted(tmp_path)
    before(tmp_path, number)
    torn_down(tmp_path, number)
    after(tmp_path, number)
    secret = new_secret()
    make_link(at(tmp_path), number, secret)
    link = open_link(her(tmp_path), secret)
    assert len(link.totals) == choices
    kept = 0
    for place, total in enumerate(link.totals):
        yes = tuple(label for at_bit, label in enumerate(link.asked) if place & 1 << at_bit)
        assert total_with(link, yes) == total
        kept += _comes_to(tmp_path, number, link, yes, total.amount)
    assert kept == taken


def _comes_to(folder: Path, number: str, link: OpenedLink, yes: tuple[str, ...], amount: object) -> bool:
    """Record the choice in a transaction that is thrown away; False where the rules refuse it."""
    from sourcing.actions.answers import keep_answers
    from sourcing.actions.customer_answer import _spoken

    words = Answer(yes=yes, no=tuple(label for label in link.asked if label not in yes), name=HER)
    kept = None
    try:
        with her(folder).writing("try") as pen:
            kept = keep_answers(pen, number, _spoken(link, words))
            raise InterruptedError
    except InterruptedError:
        assert kept and kept.approved.total.amount == amount, yes
        return True
    except Refused as refusal:
        assert {one.code for one in refusal.problems} <= {
            "freight-not-answered",
            "freight-for-nothing",
            "freight-alone",
        }
        return False


def test_two_sendings_at_once_keep_one_answer(tmp_path: Path) -> None:
    """Two tabs at the same moment: one is kept, the other is told."""
    import threading

    number, secret, _ = linked(tmp_path)
    start, told = threading.Barrier(2), []

    def send(words: Answer) -> None:
        desk = her(tmp_path)
        start.wait()
        try:
            answer(desk, secret, words)
            told.append("kept")
        except Refused as refusal:
            told.append(refusal.problems[0].code)

    some = [Answer(yes=("1",), name=HER), Answer(no=("1",), name=HER)]
    threads = [threading.Thread(target=send, args=(one,)) for one in some]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert sorted(told) == ["kept", "link-answered"]
    with at(tmp_path).store.reading() as connection:
        assert len(links(connection, number)) == 1
        assert {one.label for _, one in approvals(connection, number)} == {"1", "2"}
