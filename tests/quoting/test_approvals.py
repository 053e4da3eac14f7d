"""Answers: who may give them, what they cover, which word counts; silence is never a yes."""

from datetime import date, datetime

import pytest

from sourcing.basics.approval import AnswerWord, Approval
from sourcing.basics.job import Customer
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.quoting.answer_notes import answer_notes
from sourcing.quoting.approvals import (
    about,
    answered_now,
    answers,
    check_may_answer,
    check_not_contrary,
    check_not_ordered,
    how_given,
    labels_of,
    last_words,
    lines_named,
    may_answer,
    record_answers,
    standing_answers,
)
from sourcing.quoting.freight_answers import check_freight_line, without_freight
from sourcing.quoting.totals import total_of
from tests.builders import usd
from tests.quoting.answered_quotes import GIVEN, MADE, quote
from tests.quoting.test_pricing_and_totals import line


def test_a_yes_a_no_and_a_silence() -> None:
    """Three lines, two answers: the third waits."""
    asked = quote()
    kept = record_answers(asked, ["agreed", "A"], ["B"], GIVEN)
    assert [(one.label, one.answer, str(one.amount.amount)) for one in kept] == [
        ("1", "approved", "253.00"),
        ("A", "approved", "54.40"),
        ("B", "declined", "57.45"),
    ]
    holding = standing_answers(asked, kept[:2], {1: asked})
    found = answers(asked, holding, total_of(asked, holding))
    assert found.of("B") == "waiting"
    assert found.extra == found.approved_total - asked.agreed_total.total


def test_no_extra_is_told_before_the_agreed_work_is_approved() -> None:
    """A alone: there is no agreed total it could be extra to."""
    asked = quote()
    holding = standing_answers(asked, record_answers(asked, ["A"], [], GIVEN), {1: asked})
    assert answers(asked, holding, total_of(asked, holding)).extra == usd("0.00")


@pytest.mark.parametrize(
    ("yes", "no", "change", "words"),
    [
        (["Z"], [], {}, "has no line 'Z'; answer one of: agreed, 1, A, B"),
        (["A"], ["A"], {}, "both a yes and a no"),
        (["agreed"], ["1"], {}, "both a yes and a no"),
        ([], [], {}, "no line of job 2026-0001 was answered"),
        (["A"], [], {"at": datetime(2026, 3, 4, 9, 59)}, "before the quote"),
    ],
)
def test_what_is_no_answer(yes: list[str], no: list[str], change: dict[str, object], words: str) -> None:
    """One sentence each."""
    with pytest.raises(Refused, match=words):
        record_answers(quote(), yes, no, changed(GIVEN, **change))


def test_only_those_named_may_answer_case_and_spaces_set_aside() -> None:
    """The customer and those she named, each once; nobody else."""
    who_may = ("Silas Tilbrook", "maud tilbrook", "Ned Tilbrook")
    named = may_answer(Customer(name="Maud Tilbrook", may_also_approve=who_may))
    assert named == ("Maud Tilbrook", "Silas Tilbrook", "Ned Tilbrook")
    for who in ("silas  tilbrook", "Ned Tilbrook"):
        check_may_answer(changed(GIVEN, who=who), named, "2026-0001")
    with pytest.raises(Refused, match="A Neighbour is not named as someone who may answer for job 2026-0001"):
        check_may_answer(changed(GIVEN, who="A Neighbour"), named, "2026-0001")


def test_the_last_answer_counts() -> None:
    """She changed her mind."""
    asked = quote()
    kept = record_answers(asked, ["A"], [], GIVEN) + record_answers(asked, [], ["A"], GIVEN)
    assert standing_answers(asked, kept, {1: asked})["A"].answer == "declined"


@pytest.mark.parametrize(("holds", "why"), [("withdrawn", "taken back"), ("replaced", "a later answer")])
def test_an_answer_that_does_not_hold_covers_nothing_and_brings_no_earlier_one_back(holds: str, why: str) -> None:
    """An older yes, kept before answers were marked, must not rise again when the later yes is taken back."""
    asked = quote()
    (yes,) = record_answers(asked, ["A"], [], GIVEN)
    kept = [yes, changed(yes, holds=holds)]
    assert standing_answers(asked, kept, {1: asked}) == {}
    assert why in last_words(asked, kept, {1: asked})["A"][1]


def test_a_contrary_answer_is_refused_with_who_said_what_when() -> None:
    """Two people at two desks; the same answer again is no harm."""
    asked = quote()
    standing = {one.label: one for one in record_answers(asked, ["A"], ["B"], GIVEN)}
    again = {one.label: one for one in record_answers(asked, ["A"], ["B"], GIVEN)}
    check_not_contrary(again, standing)
    for yes, no, said in ((["B"], [], "B"), ([], ["A"], "A")):
        other = {one.label: one for one in record_answers(asked, yes, no, GIVEN)}
        with pytest.raises(Refused, match=rf"line {said} .* Maud Tilbrook on 2026-03-04 11:00 by telephone.*--instead"):
            check_not_contrary(other, standing)


def test_a_no_to_what_is_ordered_is_refused_and_a_yes_is_not() -> None:
    """The order has to be cancelled first."""
    asked = quote()
    yes = {one.label: one for one in record_answers(asked, ["A"], [], GIVEN)}
    no = {one.label: one for one in record_answers(asked, [], ["A"], GIVEN)}
    check_not_ordered(yes, {"A"})
    check_not_ordered(no, {"B"})
    with pytest.raises(Refused, match="line A of job 2026-0001 is already on a purchase order"):
        check_not_ordered(no, {"A"})


def test_an_answer_to_an_older_revision_is_taken_only_for_lines_that_are_the_same() -> None:
    """A is the same under another label, B is dearer, and line 1 is gone."""
    first = quote()
    moved = changed(first.lines[1], label="C")
    second = changed(first, revision=2, lines=(moved, changed(first.lines[2], parts_price=usd("40.00"))))
    (yes,) = record_answers(first, ["A"], [], GIVEN)
    assert answered_now(second, first, [yes]) == {"C": yes}
    for label, why in (("B", "now 59.20 USD before tax, then it was 57.45 USD"), ("1", "revision 2 no longer has it")):
        with pytest.raises(
            Refused, match=rf"line {label} of revision 1 .*: .*{why}; ask the customer about revision 2"
        ):
            answered_now(second, first, record_answers(first, [label], [], GIVEN))


def test_answers_about_the_same_work_are_found_whatever_revision_and_label() -> None:
    """And what is ordered is known under its label of today."""
    first = quote()
    second = changed(first, revision=2, lines=(first.lines[0], changed(first.lines[1], label="C", number="M")))
    kept = [(7, one) for one in record_answers(first, ["A"], [], GIVEN)]
    kept += [(8, one) for one in record_answers(second, ["C"], [], GIVEN)]
    kept += [(9, changed(kept[1][1], holds="withdrawn"))]
    both = {1: first, 2: second}
    assert about(second, ["C"], kept, both) == [7, 8]
    assert about(second, ["1"], kept, both) == []
    assert labels_of(second, [7], kept, both) == {"C"}
    renamed = changed(second, revision=3, lines=(changed(first.lines[1], title="Both keepers"),))
    assert labels_of(renamed, [7], kept, both) == {"A"}


def test_extra_parts_need_a_yes_to_their_freight() -> None:
    """Freight has a line of its own: D. What was not answered now is left alone."""
    asked = quote(line("D", freight="14.95"))
    without: dict[str, AnswerWord] = {"1": "approved", "A": "approved"}
    with pytest.raises(Refused, match="line A can't be ordered without the freight on line D"):
        check_freight_line(asked, without)
    with pytest.raises(Refused, match="line A can't be ordered without the freight on line D"):
        check_freight_line(asked, {**without, "D": "declined"}, ["D"])
    check_freight_line(asked, without, ["1"])
    check_freight_line(asked, {**without, "D": "approved"})
    check_freight_line(asked, {"1": "approved", "A": "declined"})


def test_freight_is_not_approved_for_parts_that_are_all_declined() -> None:
    """While one of them waits it may still be needed."""
    asked = quote(line("2", freight="9.95"), line("D", freight="14.95"))
    words: dict[str, AnswerWord] = {"1": "approved", "2": "approved", "A": "declined", "B": "declined", "D": "approved"}
    with pytest.raises(Refused, match="line D is freight for the parts on A, B, and all of these are declined"):
        check_freight_line(asked, words)
    with pytest.raises(Refused, match="line 2 is freight for the parts on 1"):
        check_freight_line(asked, {"1": "declined", "2": "approved"})
    check_freight_line(asked, {**words, "B": "waiting"})
    check_freight_line(asked, {**words, "D": "declined"})


def test_agreed_parts_and_their_freight_are_approved_together_or_not_at_all() -> None:
    """A no to the freight, silence about it, and a yes to it alone are refused with a sentence."""
    asked = quote(line("2", freight="9.95"))
    for said in ("declined", "waiting"):
        words: dict[str, AnswerWord] = {"1": "approved", "2": said}
        for answered in (["1"], ["2"], ["1", "2"]):
            with pytest.raises(
                Refused, match="line 1 can't be ordered without the freight on line 2; record the yes to"
            ):
                check_freight_line(asked, words, answered)
        check_freight_line(asked, words, ["A"])
    with pytest.raises(Refused, match="line 2 is freight for the parts on 1, and none of these is approved"):
        check_freight_line(asked, {"1": "waiting", "2": "approved"}, ["2"])
    check_freight_line(asked, {"1": "waiting", "2": "approved"}, ["A"])
    check_freight_line(asked, {"1": "declined", "2": "declined"}, ["1", "2"])
    check_freight_line(asked, {"1": "approved", "2": "approved"}, ["1", "2"])


@pytest.mark.parametrize("typed", [["a", "1"], ["1,A"], ["A 1"], [" a, AGREED "], ["Agreed", "A"]])
def test_labels_are_read_as_a_tired_clerk_types_them(typed: list[str]) -> None:
    """Small letters, a comma, a blank between two."""
    assert set(lines_named(quote(), typed)) == {"1", "A"}


@pytest.mark.parametrize(("typed", "label"), [(["1,Z"], "Z"), ([""], ""), (["A1"], "A1")])
def test_a_label_that_is_not_there_is_refused_and_no_other_taken_for_it(typed: list[str], label: str) -> None:
    """'A1' is not A and 1."""
    with pytest.raises(Refused, match=f"has no line '{label}'"):
        lines_named(quote(), typed)


@pytest.mark.parametrize(("typed", "how"), [("Phone", "telephone"), (" email", "e-mail"), ("In-Person", "in person")])
def test_a_way_is_known_by_its_short_word_too(typed: str, how: str) -> None:
    """No guess is needed for these."""
    assert how_given(typed) == how


def test_a_condition_is_told_where_the_quote_stands() -> None:
    """Of the line said yes to; a no has none, whatever was said with it."""
    asked = quote()
    kept = record_answers(asked, ["A"], ["B"], changed(GIVEN, words="Go. On condition that: under 200"))
    last = last_words(asked, kept, {1: asked})
    assert answer_notes(asked, last, {1: asked}) == ("line A is approved on condition: under 200",)
    assert [(one.condition, one.said) for one in kept] == [
        ("under 200", "Go. On condition that: under 200"),
        ("", "Go."),
    ]


def test_freight_that_names_its_lines_is_for_these_alone() -> None:
    """A comes with D's freight, B with none of its own."""
    asked = quote(changed(line("D", freight="14.95"), freight_for=("A",)))
    check_freight_line(asked, {"B": "approved"})
    with pytest.raises(Refused, match="line A can't be ordered without the freight on line D"):
        check_freight_line(asked, {"A": "approved"})
    with pytest.raises(Refused, match="line D is freight for the parts on A,"):
        check_freight_line(asked, {"A": "declined", "B": "approved", "D": "approved"})


@pytest.mark.parametrize(
    ("said", "found"),
    [("approved", None), ("declined", ("D", "declined")), ("waiting", ("D", "waiting")), (None, ("D", "waiting"))],
)
def test_a_part_wants_a_yes_to_its_freight(said: AnswerWord | None, found: tuple[str, str] | None) -> None:
    """D brings A and not B; without an answer it waits."""
    asked = quote(changed(line("D", freight="14.95"), freight_for=("A",)))
    words: dict[str, AnswerWord] = {"A": "approved", "B": "approved", **({"D": said} if said else {})}
    assert without_freight(asked, words, asked.lines[1]) == found
    assert without_freight(asked, words, asked.lines[2]) is None


def test_how_an_answer_came() -> None:
    """Known words only."""
    assert how_given(" Telephone ") == "telephone"
    with pytest.raises(Refused, match="'shouted' is not one of the words for 'how'"):
        how_given("shouted")


def test_the_shop_is_told_why_a_line_waits_again_and_which_price_is_not_the_one_approved() -> None:
    """A became dearer, B cheaper, line 1 stayed as it was."""
    first = quote()
    lines = [first.lines[0], *(changed(first.lines[at], parts_price=usd("30.00")) for at in (1, 2))]
    second = changed(first, revision=2, lines=tuple(lines))
    kept = record_answers(first, ["agreed", "A", "B"], [], GIVEN)
    assert answer_notes(second, last_words(second, kept, {1: first}), {1: first, 2: second}) == (
        "line A waits: Maud Tilbrook approved it on 2026-03-04 at 54.40 USD before tax, but the price is now "
        "58.80 USD before tax, then it was 54.40 USD",
        "line B is now 49.20 USD before tax; Maud Tilbrook approved it on 2026-03-04 at 57.45 USD before tax, and that "
        "answer still holds",
    )


@pytest.mark.parametrize(
    ("now", "words"),
    [
        ((date(2026, 3, 9), date(2026, 3, 18)), "now it is 2026-03-18"),
        (None, "now no day is known"),
        ((date(2026, 3, 5), date(2026, 3, 6)), ""),
        ((date(2026, 3, 4), date(2026, 3, 5)), ""),
    ],
)
def test_a_later_day_than_approved_is_said_and_drops_no_yes(now: tuple[date, date] | None, words: str) -> None:
    """Trade, findings 12 and 13: a later date is a new question (common practice, no source)."""
    first = changed(quote(), arrives=(date(2026, 3, 5), date(2026, 3, 6)))
    second = changed(first, revision=2, arrives=now, made_at=MADE)
    last = last_words(second, record_answers(first, ["agreed"], [], GIVEN), {1: first})
    assert last["1"][1] == ""
    notes = answer_notes(second, last, {1: first, 2: second})
    assert len(notes) == (1 if words else 0)
    assert not words or f"promised by 2026-03-06 on revision 1, {words}" in notes[0]


def test_an_answer_to_a_revision_that_is_not_at_hand_covers_nothing() -> None:
    """No guess: without the paper nobody knows what was answered."""
    asked = quote()
    kept: tuple[Approval, ...] = record_answers(asked, ["A"], [], GIVEN)
    assert standing_answers(asked, kept, {}) == {}
