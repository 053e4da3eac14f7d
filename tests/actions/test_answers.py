"""Answers as deeds: what they come to, who may give them, what is contrary, older revisions, and nothing by halves."""

from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.answers import Standing, record, standing
from sourcing.actions.job_states import whole_job
from sourcing.actions.orders import look_at_orders, place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.revisions import answer_record
from sourcing.actions.sendings import given
from sourcing.actions.setup import set_up
from sourcing.basics.approval import Approval
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.deeds import deeds
from sourcing.storage.jobs import change_job, job
from sourcing.storage.quotes import approvals
from tests.actions.answered_shop import BELT, CALLED, FOUND, MONDAY, at, change, paper, quoted, said, torn_down
from tests.builders import usd
from tests.journeys.small_shop import SHOP, desk_at, sheet


def kept(folder: Path, number: str) -> list[Approval]:
    """Every answer of the job."""
    with at(folder).store.reading() as connection:
        return [one for _, one in approvals(connection, number)]


def one_of_three(folder: Path) -> tuple[str, Standing]:
    """Yes to the belt on Monday; on Wednesday yes to A and B with their freight, no to C."""
    number = quoted(folder)
    record(desk_at(folder, MONDAY), number, said("agreed", how="in person"))
    torn_down(folder, number)
    return number, record(at(folder), number, said("A", "B", "D", no=("C",), words="The bar can wait."))


def test_each_answer_keeps_what_its_occasion_came_to(tmp_path: Path) -> None:
    """Case S04 of the shop's worked days: 134.71 more, 413.19 in all; first 278.48 with nothing extra."""
    number, found = one_of_three(tmp_path)
    answers = kept(tmp_path, number)
    monday = [one for one in answers if one.revision == 1]
    assert {(one.extra, one.total_after) for one in monday} == {(usd("0.00"), usd("278.48"))}
    wednesday = [one for one in answers if one.revision == 2]
    assert [one.label for one in wednesday] == ["A", "B", "D", "C"]
    assert {(one.extra, one.total_after) for one in wednesday} == {(usd("134.71"), usd("413.19"))}
    assert (found.answers.extra, found.answers.approved_total) == (usd("134.71"), usd("413.19"))
    assert {(one.taken_by, one.contact, one.at) for one in wednesday} == {("Piet Halloway-Rusk", "555-0142", CALLED)}


def test_no_extra_is_kept_while_agreed_work_waits(tmp_path: Path) -> None:
    """There is no agreed total it could be beyond: None, not nought.

    Keepers 54.40, freight 14.95, supplies 1.44 (5 % of 28.80), tax 2.84 (7 % of 40.55).
    """
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    record(at(tmp_path), number, said("A", "D"))
    assert {(one.extra is None, one.total_after) for one in kept(tmp_path, number)} == {(True, usd("73.63"))}


def test_a_contrary_answer_is_refused_until_she_says_instead(tmp_path: Path) -> None:
    """Who said what when; then the new word counts and the old one holds no more, in every revision."""
    number, _ = one_of_three(tmp_path)
    later = at(tmp_path, datetime(2026, 3, 5, 9, 0), "Oona Brandeth")
    with pytest.raises(Refused, match=r"line A .* approved by Maud Tilbrook on 2026-03-04 11:20 by telephone"):
        record(later, number, said(no=("A",)))
    with pytest.raises(Refused, match=r"line C .* declined by Maud Tilbrook"):
        record(later, number, said("C"))
    with pytest.raises(Refused, match=r"line 1 .* approved by Maud Tilbrook on 2026-03-02 10:15 in person"):
        record(later, number, said(no=("1",)))
    assert len(kept(tmp_path, number)) == 6
    found = record(later, number, said(no=("A",), instead=True))
    assert found.words()["A"] == "declined"
    holds = [(one.answer, one.holds) for one in kept(tmp_path, number) if one.label == "A"]
    assert holds == [("approved", "replaced"), ("declined", "yes")]


def test_a_no_that_came_instead_ends_the_yes_in_every_revision(tmp_path: Path) -> None:
    """The belt was approved on revision 1; the no is to revision 2."""
    number, _ = one_of_three(tmp_path)
    found = record(at(tmp_path), number, said(no=("1", "2"), instead=True))
    assert (found.words()["1"], found.words()["2"]) == ("declined", "declined")
    assert {(one.label, one.holds) for one in kept(tmp_path, number) if one.revision == 1} == {
        ("1", "replaced"), ("2", "replaced"),
    }  # fmt: skip


def test_the_same_answer_again_is_a_second_record_and_no_harm(tmp_path: Path) -> None:
    """Both stay on record, the totals too."""
    number, first = one_of_three(tmp_path)
    again = record(at(tmp_path), number, said("A", no=("C",)))
    assert again.answers.by_label == first.answers.by_label
    assert again.answers.approved_total == usd("413.19")
    assert len(kept(tmp_path, number)) == 8


def test_an_answer_to_an_older_revision_covers_what_is_the_same_and_nothing_else(tmp_path: Path) -> None:
    """The keepers rose by 0.20 each: the idler can still be approved on revision 2, the keepers can't."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    rows = ["NW-31207,Norrowby,Keeper,13.50,6.50,50,In stock", "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock"]
    sheet(at(tmp_path), tmp_path, "stonegarth", "2026-03-04", [*rows, "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock"])
    write_quote(at(tmp_path), number, paper)
    words = (
        r"line A of revision 2 .* now 54\.80 USD before tax, then it was 54\.40 USD; ask the customer about revision 3"
    )
    with pytest.raises(Refused, match=words):
        record(at(tmp_path), number, said("A", "B", "D", revision=2))
    found = record(at(tmp_path), number, said("B", "D", revision=2))
    assert (found.quote.revision, found.words()["A"], found.words()["B"]) == (3, "waiting", "approved")
    assert {one.revision for one in kept(tmp_path, number)} == {2}
    with pytest.raises(Refused, match="has no quote of revision 9"):
        record(at(tmp_path), number, said("B", revision=9))


def test_where_only_an_older_revision_was_given_out_it_must_be_said_which_was_answered(tmp_path: Path) -> None:
    """A yes must not slide to figures the customer never saw."""
    number = quoted(tmp_path)
    given(desk_at(tmp_path, MONDAY), number, None, "in person", "")
    torn_down(tmp_path, number)
    with pytest.raises(Refused, match=r"revision 2 of job .* was not given to the customer, revision 1 was"):
        record(at(tmp_path), number, said("agreed"))
    assert record(at(tmp_path), number, said("agreed", revision=1)).words()["1"] == "approved"
    given(at(tmp_path), number, None, "text", "555-0142")
    assert record(at(tmp_path), number, said("A", "D")).words()["A"] == "approved"


def test_someone_named_in_the_job_since_may_answer_and_nobody_else(tmp_path: Path) -> None:
    """Named in advance, with the customer's consent; the quote does not name her."""
    number = quoted(tmp_path)
    greta = said("agreed", who="Greta Lindqvare")
    with pytest.raises(Refused, match=r"Greta Lindqvare is not named .* \(named: Maud Tilbrook\)"):
        record(at(tmp_path), number, greta)
    with at(tmp_path).store.writing() as connection:
        now = job(connection, number)
        named = changed(now.customer, may_also_approve=("Greta Lindqvare",))
        change_job(connection, changed(now, customer=named))
    assert record(at(tmp_path), number, greta).words()["1"] == "approved"


def test_nothing_is_kept_of_an_answer_that_is_refused_in_part(tmp_path: Path) -> None:
    """A and B without their freight: refused at the end of all, and nothing of it stays, the ledger included."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    with pytest.raises(Refused, match="without the freight on line D"):
        record(at(tmp_path), number, said("agreed", "A", "B"))
    assert kept(tmp_path, number) == []
    with at(tmp_path).store.reading() as connection:
        assert "answer" not in {deed.deed for deed in deeds(connection)}


def test_an_answer_is_a_deed_under_the_job(tmp_path: Path) -> None:
    """Who, how, to which revision, what."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    record(at(tmp_path), number, said("agreed", revision=1))
    with at(tmp_path).store.reading() as connection:
        last = deeds(connection)[-1]
    assert (last.deed, last.subject, last.who) == ("answer", number, "Piet Halloway-Rusk")
    assert last.detail == "Maud Tilbrook by telephone to revision 1: 1 approved, 2 approved"


def test_conditions_are_kept_with_the_words(tmp_path: Path) -> None:
    """A list of fields read in a rule has conditions of consent (16 CCR 2722)."""
    number = quoted(tmp_path)
    record(at(tmp_path), number, said("agreed", words="Go ahead.", conditions="ready by Friday"))
    assert {one.words for one in kept(tmp_path, number)} == {"Go ahead. On condition that: ready by Friday"}


def test_a_condition_stands_with_the_lines_said_yes_to_and_never_with_the_others(tmp_path: Path) -> None:
    """It is told wherever the job stands and before ordering; the record shows one occasion."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    desk = at(tmp_path)
    standing = record(desk, number, said("agreed", "A", "D", no=("C",), words="Go.", conditions="under 200"))
    assert {one.words for one in kept(tmp_path, number) if one.answer == "approved"} == {
        "Go. On condition that: under 200"
    }
    assert [one.words for one in kept(tmp_path, number) if one.label == "C"] == ["Go."]
    assert "line A is approved on condition: under 200" in standing.answers.notes
    assert "line 1 is approved on condition: under 200" in whole_job(desk, number).state.beside
    assert (
        f"{number} line A: approved on condition: under 200; see that it is met"
        in look_at_orders(desk, [number]).warnings
    )
    (one,) = answer_record(desk, number).occasions
    assert (len(one.lines), one.words) == (5, "Go. On condition that: under 200")


def test_a_condition_without_a_yes_is_refused(tmp_path: Path) -> None:
    """It could stand with no line."""
    number = quoted(tmp_path)
    with pytest.raises(Refused, match="the condition 'under 200' belongs to a yes"):
        record(at(tmp_path), number, said(no=("agreed",), conditions="under 200"))


def test_a_no_to_what_is_ordered_is_refused_whatever_its_label_is_now(tmp_path: Path) -> None:
    """The keepers are A on revision 2 and B on revision 3; the idler, A now, was never ordered."""
    number, _ = one_of_three(tmp_path)
    place_orders(at(tmp_path), [number], ["A"])
    keepers, idler = (f"[[add_ons]]{FOUND.split('[[add_ons]]')[at]}" for at in (1, 2))
    change(tmp_path, number, BELT + idler + keepers, datetime(2026, 3, 4, 12, 0))
    later = at(tmp_path, datetime(2026, 3, 4, 13, 0))
    with pytest.raises(Refused, match=f"line B of job {number} is already on a purchase order"):
        record(later, number, said(no=("B",), instead=True))
    assert record(later, number, said(no=("A",), instead=True)).words()["A"] == "declined"


def test_a_tolerance_of_the_shop_is_frozen_in_the_revision_and_carries_a_small_rise(tmp_path: Path) -> None:
    """The belt rises from 109.00 to 110.44 (71.25 x 1.55, no list price any more): 1.44 on 253.00 is under 1 %."""
    number = quoted(tmp_path)
    record(at(tmp_path), number, said("agreed"))
    (tmp_path / "shop.toml").write_text("tolerance = { percent = 1 }\n" + SHOP)
    set_up(at(tmp_path), tmp_path)
    sheet(at(tmp_path), tmp_path, "pellbrook", "2026-03-04", ["CV-B880K,Corrivane,Belt B88,,71.25,2,In stock"])
    assert write_quote(at(tmp_path), number, paper).is_new
    found = standing(at(tmp_path), number)
    assert (found.quote.line("1") or found.quote.lines[1]).price == usd("254.44")
    assert found.words() == {"1": "approved", "2": "approved"}
    assert "line 1 is now 254.44 USD before tax" in found.answers.notes[0]


def test_past_its_validity_nothing_is_approved(tmp_path: Path) -> None:
    """Seven days; the last day counts."""
    number = quoted(tmp_path)
    with pytest.raises(Refused, match="was valid to 2026-03-09"):
        record(at(tmp_path, datetime(2026, 3, 10, 8, 0)), number, said("agreed"))
    assert record(at(tmp_path, datetime(2026, 3, 9, 23, 59)), number, said("agreed")).words()["1"] == "approved"
