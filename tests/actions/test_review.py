"""A person's yes and no: what is kept, what follows, what does not return, and how it is taken back."""

from pathlib import Path

import pytest

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.maker_names import add_maker_name
from sourcing.actions.review import all_judgements, judge, take_back
from sourcing.actions.statement_deeds import statement_history, withdraw_statement
from sourcing.basics.match import Judged
from sourcing.basics.part_number import OURS
from sourcing.basics.problem import Refused
from sourcing.storage.equivalence import equivalence_table
from sourcing.storage.judgements import judged_examples
from tests.actions.judging_shop import MONDAY, ROWS, find, judging_shop, pairs, waiting
from tests.builders import number
from tests.journeys.small_shop import desk_at, sheet

BELT, KEEPER = ("NW-77210", "BELT"), ("NW-31270", "KEEPER")


def answer(desk: Desk, pair: tuple[str, str], said: str, **more: str) -> str:
    """Answer the candidate of that number and part; the sentence that follows."""
    one = waiting(desk, *pair)
    return judge(desk, one.kept.candidate, said, **more).told  # type: ignore[arg-type]


def ranked(desk: Desk) -> list[str]:
    """The numbers of offers that match BELT by themselves."""
    return sorted(one.priced.offer.supplier_number for one in compare(desk, "BELT", 1, None).ranked)


def test_a_no_keeps_it_away_on_later_sheets_and_from_other_suppliers(tmp_path: Path) -> None:
    """The later sheet writes the number differently; the other supplier has a number of his own beside the maker's."""
    desk = judging_shop(tmp_path)
    told = answer(desk, BELT, "no", words="the fork is another")
    assert "is not BELT; it does not come back, nor does Norrowby's number at another supplier" in told
    assert pairs(desk) == [KEEPER]
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["nw 77210,NORROWBY,Auger belt,190.00,121.00,2,", ROWS[2]])
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-77210,Norrowby,Belt,180.00,118.00,1,"])
    find(desk)
    assert pairs(desk) == [KEEPER]


def test_a_wrong_article_under_the_parts_own_number_is_refused_at_that_supplier_only(tmp_path: Path) -> None:
    """Stonegarth sells a wheel nut under the belt's number; Pellbrook's doubtful row of it still waits."""
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Wheel nut M10,1.50,0.90,2,"])
    own = ("NW-77120", "BELT")
    told = answer(desk, own, "no", words="a wheel nut")
    assert "Only this supplier's row is refused: Norrowby NW-77120 is a number of BELT" in told
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-77120,Norrowby,Belt guard,180.00,118.00,1,"])
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["NW-77120,Norrowby,Nut M10 zinc,1.50,0.90,2,"])
    find(desk)
    assert pairs(desk) == [own] and pairs(desk, "pellbrook") == [own]
    assert [one.offer.supplier for one in compare(desk, "BELT", 1, None).candidates] == ["pellbrook"]


def test_a_number_tied_by_a_statement_nobody_checked_is_refused_everywhere(tmp_path: Path) -> None:
    """DM-15880 is the belt's by a supplier's word only: a no speaks of the number itself."""
    desk = judging_shop(tmp_path, ["DM-15880,Dunmarrow,Belt,150.00,90.00,2,"])
    told = answer(desk, ("DM-15880", "BELT"), "no")
    assert told.endswith("nor does Dunmarrow's number at another supplier")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["DM-15880,Dunmarrow,Belt,180.00,118.00,1,"])
    find(desk)
    assert pairs(desk) == []


def test_a_no_holds_for_the_number_and_part_only(tmp_path: Path) -> None:
    """The same figures of another maker are another number, and another part is another question."""
    desk = judging_shop(tmp_path)
    answer(desk, BELT, "no")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-77210,Dunmarrow,Belt,180.00,118.00,1,"])
    find(desk, "pellbrook")
    assert pairs(desk, "pellbrook") == [BELT]


def test_a_number_that_names_no_maker_is_refused_at_its_own_supplier_only(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, ["NW-77210,,Auger belt B88,189.50,120.00,2,"])
    told = answer(desk, BELT, "no")
    assert told.endswith("it does not come back")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-77210,,Belt,180.00,118.00,1,"])
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["NW-77210,,Auger belt B88,199.50,121.00,2,"])
    find(desk)
    assert pairs(desk, "pellbrook") == [BELT] and pairs(desk, "stonegarth") == []


def test_another_name_of_the_maker_is_the_same_maker(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    answer(desk, BELT, "no")
    add_maker_name(desk, "Norrowby Parts", "Norrowby")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-77210,Norrowby Parts,Belt,180.00,118.00,1,"])
    find(desk)
    assert pairs(desk, "pellbrook") == []


def test_what_was_refused_waits_again_once_it_is_taken_back(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    candidate = waiting(desk, *BELT).kept.candidate
    answer(desk, BELT, "no")
    with pytest.raises(Refused, match="needs a reason"):
        take_back(desk, candidate, " ")
    later = desk_at(tmp_path, MONDAY.replace(hour=15), "Piet Halloway-Rusk")
    told = take_back(later, candidate, "looked at the wrong drawing").told
    assert "is taken back; it waits again" in told and pairs(desk) == [BELT, KEEPER]
    (one,) = all_judgements(desk)
    assert (one.who, one.answer, one.taken_back_by) == ("Oona Brandeth", "no", "Piet Halloway-Rusk")
    assert one.taken_back_at == later.at and one.taken_back_why == "looked at the wrong drawing"
    with pytest.raises(Refused, match="no answer to candidate"):
        take_back(desk, candidate, "again")


def test_a_yes_of_fitted_standing_makes_the_number_match_by_itself(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    assert ranked(desk) == ["NW-77120"]
    told = answer(desk, BELT, "yes", standing="fitted", words="on Maud's machine, served the winter")
    assert "kept as fitted for BELT" in told and "match by themselves from now on" in told
    assert ranked(desk) == ["NW-77120", "NW-77210"] and pairs(desk) == [KEEPER]
    (judged,) = all_judgements(desk)
    kept = statement_history(desk, judged.statement or 0)
    said = kept.statement
    assert (said.left, said.relation, said.right) == (number("BELT", OURS), "same part", number("NW-77210", "Norrowby"))
    assert said.source == "judged on stonegarth's sheet of 2026-03-01" and said.stated_by == "Oona Brandeth"
    assert said.stated_on == MONDAY.date() and "served the winter" in kept.events[0].reason
    assert "yes to BELT" in history(desk, f"candidate {judged.candidate}")[0].detail


def test_an_unchecked_yes_is_shown_and_orders_nothing(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    told = answer(desk, BELT, "yes")
    assert "kept as unchecked" in told and "not ordered by itself, until somebody has fitted it" in told
    assert ranked(desk) == ["NW-77120"] and pairs(desk) == [KEEPER]
    (shown,) = [one for one in compare(desk, "BELT", 1, None).candidates if one.offer.supplier_number == "NW-77210"]
    assert "the weakest statement is only 'unchecked'" in "; ".join(shown.reasons)


def test_a_yes_taken_back_withdraws_its_statement_and_the_same_yes_restores_it(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    candidate = waiting(desk, *BELT).kept.candidate
    answer(desk, BELT, "yes", standing="fitted")
    take_back(desk, candidate, "it was the wrong machine")
    assert ranked(desk) == ["NW-77120"] and pairs(desk) == [BELT, KEEPER]
    (one,) = all_judgements(desk)
    kept = statement_history(desk, one.statement or 0)
    assert kept.withdrawn and "taken back: it was the wrong machine" in (kept.last.reason if kept.last else "")
    answer(desk, BELT, "yes", standing="fitted")
    again = all_judgements(desk)[-1]
    assert again.statement == one.statement and ranked(desk) == ["NW-77120", "NW-77210"]
    assert [event.what for event in statement_history(desk, one.statement or 0).events] == [
        "stated",
        "withdrawn",
        "restored",
    ]


def test_a_statement_withdrawn_meanwhile_does_not_hinder_taking_back(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    candidate = waiting(desk, *BELT).kept.candidate
    answer(desk, BELT, "yes")
    withdraw_statement(desk, all_judgements(desk)[0].statement or 0, "did not fit")
    take_back(desk, candidate, "it did not fit")
    assert pairs(desk) == [BELT, KEEPER]


def test_a_number_of_the_suppliers_own_is_tied_as_his(tmp_path: Path) -> None:
    """The row names no maker: the statement is about Stonegarth's number."""
    desk = judging_shop(tmp_path, ["NW-77210,,Auger belt B88,189.50,120.00,2,"])
    answer(desk, BELT, "yes", standing="fitted")
    with desk.store.reading() as connection:
        assert equivalence_table(connection).statements[-1].right == number("NW-77210", "stonegarth")
    assert ranked(desk) == ["NW-77210"]


def test_a_row_that_calls_its_maker_ours_does_not_become_our_code(tmp_path: Path) -> None:
    """'(ours)' on a supplier's sheet is nobody's name."""
    desk = judging_shop(tmp_path, ["NW-77210,(ours),Auger belt B88,189.50,120.00,2,"])
    answer(desk, BELT, "yes", standing="fitted")
    with desk.store.reading() as connection:
        assert equivalence_table(connection).statements[-1].right.maker == "stonegarth"


def test_one_answer_to_one_candidate(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    candidate = waiting(desk, *BELT).kept.candidate
    answer(desk, BELT, "no")
    with pytest.raises(Refused, match="Oona Brandeth said no to BELT"):
        judge(desk, candidate, "yes")
    with pytest.raises(Refused, match="no candidate number 999"):
        judge(desk, 999, "no")


def test_a_yes_against_which_something_speaks_asks_for_words(tmp_path: Path) -> None:
    """And the size still keeps it from being ordered by itself, which is said."""
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Auger belt A36,150.00,99.00,1,"])
    pair = ("NW-77120", "BELT")
    with pytest.raises(Refused, match="something speaks against candidate"):
        answer(desk, pair, "yes", standing="fitted")
    assert all_judgements(desk) == ()
    told = answer(desk, pair, "yes", standing="fitted", words="the sheet has the size wrong")
    assert "still not ordered by itself" in told


def test_a_number_is_not_tied_to_two_of_our_parts(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Auger belt A36,150.00,99.00,1,"])
    with desk.writing("test") as pen:
        from sourcing.basics.match import RowMatch
        from sourcing.storage.candidates import put_candidates, sheet_rows

        (offer,) = sheet_rows(pen.connection, 1).offer
        wrong = RowMatch(row=0, part="KEEPER", tier="candidate", score=0.9, rank=1, reasons=("said so",), facts=(1,))
        put_candidates(pen.connection, 1, [(offer, wrong)], desk.at)
    with pytest.raises(Refused, match="Norrowby NW-77120 is tied to our part BELT already, by statement 1"):
        answer(desk, ("NW-77120", "KEEPER"), "yes")


def test_what_is_learnt_are_answers_in_force_with_what_was_shown(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    candidate = waiting(desk, *KEEPER).kept.candidate
    answer(desk, BELT, "yes")
    answer(desk, KEEPER, "no")
    with desk.store.reading() as connection:
        assert judged_examples(connection) == [Judged(facts=(8,), same=True), Judged(facts=(8,), same=False)]
    take_back(desk, candidate, "not sure")
    with desk.store.reading() as connection:
        assert judged_examples(connection) == [Judged(facts=(8,), same=True)]


def test_a_refused_number_is_gone_from_the_comparison_until_it_is_taken_back(tmp_path: Path) -> None:
    """It looked like one of the part's numbers there; a person has said that it is not."""
    desk = judging_shop(tmp_path)

    def asked() -> list[str]:
        return [one.offer.supplier_number for one in compare(desk, "BELT", 1, None).candidates]

    assert "NW-77210" in asked()
    candidate = waiting(desk, *BELT).kept.candidate
    answer(desk, BELT, "no")
    assert "NW-77210" not in asked()
    take_back(desk, candidate, "a slip of the finger")
    assert "NW-77210" in asked()
