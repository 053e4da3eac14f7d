"""A supplier's own prefix: proposed by his sheet, confirmed by a person, looked past from then on, withdrawn."""

from pathlib import Path

import pytest

from sourcing.actions.candidates import find_candidates
from sourcing.actions.desk import Desk
from sourcing.actions.number_rules import confirm_number_rule, number_rules, withdraw_number_rule
from sourcing.actions.review import judge
from sourcing.basics.number_rule import NumberRule
from sourcing.basics.part_number import OURS
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Signed
from sourcing.documents.review import number_rules_text
from sourcing.matching.sheet_match import Columns
from sourcing.storage.equivalence import equivalence_table
from sourcing.storage.number_rules import confirmed_rules, rules_by_supplier
from sourcing.storage.statements import state
from tests.actions.judging_shop import MONDAY, find, waiting
from tests.builders import number, statement
from tests.journeys.small_shop import sheet, shop

RULE = NumberRule(supplier="pellbrook", kind="prefix", text="PB-")
KNOWN = ("NW-77120", "NW-31207", "NW-22203", "NW-52626")
ROWS = [f"PB-{one},Norrowby,Part,10.00,8.00,1," for one in (*KNOWN, *(f"OX-{at}17" for at in range(10, 20)))]


def prefixed(folder: Path) -> Desk:
    """The shop with a sheet on which every number has Pellbrook's prefix."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "pellbrook", "2026-03-01", ROWS)
    return desk


def test_a_prefix_on_every_number_is_proposed_with_its_counts(tmp_path: Path) -> None:
    desk = prefixed(tmp_path)
    found = number_rules(desk)
    assert found.kept == () and [one.rule for one in found.proposed] == [RULE]
    text = number_rules_text(found)
    assert "14 of 14 numbers" in text and "sourcing number-rules confirm pellbrook --prefix='PB-'" in text


def test_a_suppliers_own_number_does_not_speak_against_his_prefix(tmp_path: Path) -> None:
    """Somebody has tied his numbers as they stand; they are still the makers' with something before them."""
    desk = prefixed(tmp_path)
    his = [statement(number("BELT", OURS), "same part", number(f"PB-{one}", "pellbrook"), "fitted") for one in KNOWN]
    with desk.writing("test") as pen:
        state(pen.connection, his, Signed(at=MONDAY, who="Greta Lindqvare"), [""] * len(his))
    assert [one.rule for one in number_rules(desk).proposed] == [RULE]


def test_nothing_is_looked_past_before_somebody_confirms_it(tmp_path: Path) -> None:
    """From then on what matches without the prefix is automatic, and the score is handed the others both ways."""
    seen: list[list[str]] = []

    def looks(rows: Columns, *rest: object) -> list[object]:
        seen.append(list(rows.numbers[0]))
        return []

    desk = prefixed(tmp_path)
    find_candidates(desk, match=looks)  # type: ignore[arg-type]
    confirm_number_rule(desk, RULE)
    find_candidates(desk, match=looks)  # type: ignore[arg-type]
    assert seen == [["PBNW77120"], ["PBOX1017", "OX1017"]]


def test_a_confirmed_rule_is_handed_out_until_it_is_withdrawn(tmp_path: Path) -> None:
    """Both stay with who and when; the proposal comes back with the withdrawal."""
    desk = prefixed(tmp_path)
    kept = confirm_number_rule(desk, RULE)
    assert kept.confirmed_by == "Oona Brandeth" and kept.confirmed_at == MONDAY and "14 of 14 numbers" in kept.grounds
    with desk.store.reading() as connection:
        assert confirmed_rules(connection, "pellbrook") == (RULE,) and confirmed_rules(connection, "stonegarth") == ()
        assert rules_by_supplier(connection) == {"pellbrook": (RULE,)}
    assert number_rules(desk).proposed == ()
    gone = withdraw_number_rule(desk, kept.number, "the new catalogue has none")
    assert not gone.holds and "Withdrawn on 2026-03-02 by Oona Brandeth" in number_rules_text(number_rules(desk))
    with desk.store.reading() as connection:
        assert confirmed_rules(connection, "pellbrook") == ()
    assert [one.rule for one in number_rules(desk).proposed] == [RULE]


def test_a_yes_ties_the_makers_number_without_the_prefix(tmp_path: Path) -> None:
    """Else no other supplier's row would ever be found by it."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["PB-NW-31209,Norrowby,Keeper,13.50,6.40,50,", *ROWS])
    confirm_number_rule(desk, RULE)
    find(desk)
    judge(desk, waiting(desk, "PB-NW-31209", "KEEPER").kept.candidate, "yes", "fitted")
    with desk.store.reading() as connection:
        assert equivalence_table(connection).statements[-1].right == number("NW-31209", "Norrowby")


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        (NumberRule(supplier="pellbrook", kind="prefix", text="QQ-"), "has 'QQ-' before it"),
        (NumberRule(supplier="pellbrook", kind="suffix", text="-PB"), "has '-PB' after it"),
        (NumberRule(supplier="nobody", kind="prefix", text="PB-"), "no sheet of 'nobody'"),
    ],
)
def test_a_rule_that_no_number_bears_is_refused(tmp_path: Path, rule: NumberRule, words: str) -> None:
    with pytest.raises(Refused, match=words):
        confirm_number_rule(prefixed(tmp_path), rule)


def test_a_rule_is_confirmed_and_withdrawn_once(tmp_path: Path) -> None:
    desk = prefixed(tmp_path)
    kept = confirm_number_rule(desk, RULE)
    with pytest.raises(Refused, match=f"kept already as number {kept.number}"):
        confirm_number_rule(desk, RULE)
    with pytest.raises(Refused, match="needs a reason"):
        withdraw_number_rule(desk, kept.number, "")
    withdraw_number_rule(desk, kept.number, "gone")
    with pytest.raises(Refused, match="was withdrawn before: gone"):
        withdraw_number_rule(desk, kept.number, "gone")
    with pytest.raises(Refused, match="there is no number rule 99"):
        withdraw_number_rule(desk, 99, "gone")
