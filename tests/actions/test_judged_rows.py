"""A yes to a row whose number is ours already: it has an effect she can see, with her name, until it is taken back."""

from pathlib import Path

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.review import judge, take_back
from tests.actions.judging_shop import find, judging_shop, pairs, waiting
from tests.journeys.small_shop import sheet

KEEPER = ("NW-31207", "KEEPER")


def shown(desk: Desk) -> tuple[list[str], list[tuple[str, str, bool]]]:
    """The suppliers of offers that can be ranked with what is to be minded; those a person judges, held back or not."""
    found = compare(desk, "KEEPER", 1, None)
    ranked = [one.priced.warnings[0] if one.priced.warnings else one.priced.supplier_name for one in found.ranked]
    return ranked, [(one.offer.supplier, one.reasons[0], one.vetoed) for one in found.candidates]


def test_a_yes_to_a_row_whose_words_say_less_lets_it_count_with_her_name(tmp_path: Path) -> None:
    """The maker's list ties the number; 'Belt' may be short for a belt keeper, and only she has looked."""
    desk = judging_shop(tmp_path, ["NW-31207,Norrowby,Belt,13.50,6.40,50,"])
    ranked, waits = shown(desk)
    why = "ours is keeper, which its words do not name: whether they mean it is not known"
    assert ranked == [] and waits == [("stonegarth", why, False)]
    candidate = waiting(desk, *KEEPER).kept.candidate
    told = judge(desk, candidate, "yes", words="the drawing is the keeper's").told
    assert "stonegarth's row NW-31207 counts as KEEPER from now on, on the word of Oona Brandeth" in told
    ranked, waits = shown(desk)
    assert waits == [] and pairs(desk) == []
    word = "judged to be KEEPER by Oona Brandeth on 2026-03-02: the drawing is the keeper's"
    assert ranked == [f"{word} (although: {why})"]
    take_back(desk, candidate, "it was the belt")
    assert shown(desk)[0] == [] and pairs(desk) == [KEEPER]


def test_a_row_that_reads_otherwise_later_or_at_another_supplier_is_a_new_question(tmp_path: Path) -> None:
    """Her yes is to the words she read."""
    desk = judging_shop(tmp_path, ["NW-31207,Norrowby,Belt guard,13.50,6.40,50,"])
    judge(desk, waiting(desk, *KEEPER).kept.candidate, "yes", words="the drawing is the keeper's")
    assert len(shown(desk)[0]) == 1
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["NW-31207,Norrowby,Belt guard for 724,13.50,6.40,50,"])
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-31207,Norrowby,Belt guard,12.50,5.40,50,"])
    find(desk)
    ranked, waits = shown(desk)
    assert ranked == [] and [one[::2] for one in waits] == [("pellbrook", True), ("stonegarth", True)]


def test_a_yes_that_can_not_count_says_where_to_go_on(tmp_path: Path) -> None:
    """A belt of another section under the belt's number: no yes makes it fit."""
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Auger belt A88,189.50,120.00,2,"])
    told = judge(desk, waiting(desk, "NW-77120", "BELT").kept.candidate, "yes", words="fits").told
    assert "still not ordered by itself: " in told and "section" in told
    assert told.endswith("a person's word at the job's line ('sourcing accept-anyway')")
