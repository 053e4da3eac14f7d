"""Candidates, answers, look-ups and number rules on every database: what stays, what goes, which numbers are given."""

from datetime import date, datetime, timedelta

import pytest
from sqlalchemy.exc import IntegrityError

from sourcing.basics.judgement import Judgement, RowKeys, SheetLookedThrough
from sourcing.basics.match import RowMatch
from sourcing.basics.number_rule import NumberRule
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Signed
from sourcing.basics.value import changed
from sourcing.storage.candidates import (
    candidate_rows,
    kept_candidates,
    not_looked_through,
    put_candidates,
    put_looked_through,
    sheet_rows,
)
from sourcing.storage.database import Store, open_store
from sourcing.storage.judgements import add_judgement, judgements, judgements_in_force, take_judgement_back
from sourcing.storage.number_rules import add_rule, kept_rules, withdraw_rule
from sourcing.storage.part_lookups import add_lookup, lookups
from sourcing.storage.sheets import add_sheet, remove_sheet
from tests.storage.kept_values import AT, frame, new_sheet, offer_row, summary

TODAY = date(2026, 1, 30)
SIGNED = Signed(at=AT, who="Greta Lindqvare")
RULE = NumberRule(supplier="pellbrook", kind="suffix", text="-PB")
JUDGED = Judgement(
    candidate=4,
    supplier="stonegarth",
    supplier_number="NW-1 ",
    maker="Norrowby",
    maker_number="0040",
    description="Belt – 36″",
    sheet=9,
    sheet_date=date(2026, 1, 9),
    part="BELT",
    answer="no",
    how="file",
    at=AT,
    who="Greta Lindqvare",
    score=0.1 + 0.2,
    against=True,
    reasons=("one", "two"),
    facts=(0, 3),
    words="the fork",
)


def keep_sheet(store: Store, day: date, *numbers: str, supplier: str = "stonegarth") -> int:
    """A sheet of those numbers, each of Norrowby's; its number."""
    rows = [offer_row(at, one, maker="Norrowby", description=f"Part {one}") for at, one in enumerate(numbers, 2)]
    with store.writing() as connection:
        kept = add_sheet(connection, summary(len(rows)), frame(*rows), new_sheet(supplier, day, f"{day}{numbers}"))
    return kept.sheet


def match(part: str, score: float = 0.75, rank: int = 1) -> RowMatch:
    """What matching says of a row."""
    return RowMatch(
        row=0, part=part, tier="candidate", score=score, rank=rank, reasons=("alike",), facts=(1, 2), against=rank > 1
    )


def put(store: Store, sheet: int, *found: tuple[int, RowMatch]) -> dict[tuple[int, str], int]:
    """Keep candidates of the sheet; offer and part to the candidate's number."""
    with store.writing() as connection:
        put_candidates(connection, sheet, found, AT)
        return {(one.offer, one.part): one.candidate for one in candidate_rows(connection, TODAY)}


def test_rows_of_a_sheet_come_back_column_by_column(store: Store) -> None:
    sheet = keep_sheet(store, date(2026, 1, 9), "NW 1", "NW-2")
    with store.reading() as connection:
        rows = sheet_rows(connection, sheet)
        assert rows.supplier_number == ["NW 1", "NW-2"] and rows.supplier_key == ["NW1", "NW2"]
        assert rows.maker == ["Norrowby"] * 2 and len(rows.place) == len(rows.offer) == 2
        assert sheet_rows(connection, 99).offer == []


def test_a_candidate_comes_back_whole_with_its_offer(store: Store) -> None:
    sheet = keep_sheet(store, date(2026, 1, 9), "NW-1")
    (offer,) = rows_of(store, sheet)
    ((_, number),) = put(store, sheet, (offer, match("BELT", 0.1 + 0.2, 2))).items()
    with store.reading() as connection:
        kept = kept_candidates(connection, [number, 999])[number]
        (row,) = candidate_rows(connection, TODAY, "stonegarth")
        assert candidate_rows(connection, TODAY, "pellbrook") == []
    assert kept.offer.supplier_number == "NW-1" and (kept.part, kept.score, kept.rank) == ("BELT", 0.1 + 0.2, 2)
    assert kept.reasons == ("alike",) and kept.facts == (1, 2) and kept.against is True and kept.found_at == AT
    assert row.keys == RowKeys(supplier="stonegarth", supplier_key="NW1", maker="norrowby", reads="part nw-1")


def rows_of(store: Store, sheet: int) -> list[int]:
    """The offers of the sheet by their numbers in the database."""
    with store.reading() as connection:
        return list(sheet_rows(connection, sheet).offer)


def test_a_number_is_kept_for_the_same_pair_and_never_given_again(store: Store) -> None:
    """Looking anew changes the score, adds a part and takes one away; a later one gets a number of its own."""
    sheet = keep_sheet(store, date(2026, 1, 9), "NW-1", "NW-2")
    one, two = rows_of(store, sheet)
    first = put(store, sheet, (one, match("BELT")), (two, match("KEEPER")))
    second = put(store, sheet, (one, match("BELT", 0.5)), (one, match("IDLER", 0.4, 2)))
    assert second[one, "BELT"] == first[one, "BELT"] and (two, "KEEPER") not in second
    assert second[one, "IDLER"] not in first.values()
    with store.reading() as connection:
        assert kept_candidates(connection, [second[one, "BELT"]])[second[one, "BELT"]].score == 0.5
    put(store, sheet)
    last = put(store, sheet, (two, match("BAR")))
    assert last[two, "BAR"] > max(*first.values(), *second.values())


def test_candidates_go_with_their_sheet_and_with_a_newer_one(store: Store) -> None:
    old = keep_sheet(store, date(2026, 1, 9), "NW-1")
    put(store, old, (rows_of(store, old)[0], match("BELT")))
    new = keep_sheet(store, date(2026, 1, 16), "NW-1")
    with store.reading() as connection:
        assert candidate_rows(connection, TODAY) == []  # the older sheet counts no more
    assert len(put(store, new, (rows_of(store, new)[0], match("BELT")))) == 1
    with store.writing() as connection:
        remove_sheet(connection, new, TODAY)
        assert candidate_rows(connection, TODAY) == []


def test_which_sheets_nobody_has_looked_through(store: Store) -> None:
    """Only those that count; a newer sheet is to be looked through again."""
    sheet = keep_sheet(store, date(2026, 1, 9), "NW-1")
    done = SheetLookedThrough(
        sheet=sheet,
        supplier="stonegarth",
        file="a.csv",
        sheet_date=date(2026, 1, 9),
        rows=1,
        automatic=0,
        with_candidates=1,
        like_none=0,
        candidates=1,
        at=AT,
    )
    with store.writing() as connection:
        assert not_looked_through(connection, TODAY) == [sheet]
        put_looked_through(connection, done)
        put_looked_through(connection, done)
        assert not_looked_through(connection, TODAY) == []
    new = keep_sheet(store, date(2026, 1, 16), "NW-1")
    with store.reading() as connection:
        assert not_looked_through(connection, TODAY) == [new]


def test_an_answer_comes_back_to_the_letter_and_outlives_its_sheet(store: Store) -> None:
    """The candidate and the sheet it names are not there at all."""
    with store.writing() as connection:
        number = add_judgement(connection, JUDGED)
    with store.reading() as connection:
        assert judgements(connection) == [changed(JUDGED, judgement=number)]
        assert judgements(connection, 4) == judgements_in_force(connection) == judgements(connection)
        assert judgements(connection, 5) == []


def test_an_answer_taken_back_stays(store: Store) -> None:
    later = Signed(at=datetime(2026, 1, 13, 8, 0), who="Oona Brandeth")
    with store.writing() as connection:
        number = add_judgement(connection, JUDGED)
        take_judgement_back(connection, number, later, "wrong drawing")
        assert judgements_in_force(connection) == []
        (one,) = judgements(connection)
    assert not one.in_force and one.words == "the fork"
    assert (one.taken_back_at, one.taken_back_by, one.taken_back_why) == (later.at, "Oona Brandeth", "wrong drawing")


@pytest.mark.parametrize("wrong", [{"standing": "fitted"}, {"answer": "yes"}, {"answer": "perhaps"}, {"how": "guess"}])
def test_an_answer_that_contradicts_itself_is_not_kept(store: Store, wrong: dict[str, str]) -> None:
    with pytest.raises(IntegrityError), store.writing() as connection:
        add_judgement(connection, changed(JUDGED, **wrong))


def test_look_ups_are_counted_once_a_day(store: Store) -> None:
    """Ten look-ups of one morning are one question of one customer."""
    with store.writing() as connection:
        for minutes in range(10):
            add_lookup(connection, "BELT", AT + timedelta(minutes=minutes))
        add_lookup(connection, "BELT", AT + timedelta(days=1))
        add_lookup(connection, "KEEPER", AT)
        assert lookups(connection) == {"BELT": 2, "KEEPER": 1}


def test_a_note_is_given_up_where_somebody_else_writes(address: str) -> None:
    """It is not waited for: the store's patience would be a minute."""
    with open_store(address, 60) as store, open_store(address, 60) as other:
        with store.writing(), pytest.raises(Refused, match="somebody else is writing"), other.noting():
            pass
        with other.noting() as connection:
            add_lookup(connection, "BELT", AT)
            if connection.dialect.name == "sqlite":
                assert connection.exec_driver_sql("PRAGMA busy_timeout").scalar() == 0
        with store.reading() as connection:
            assert lookups(connection) == {"BELT": 1}


def test_a_number_rule_stays_with_who_and_when(store: Store) -> None:
    with store.writing() as connection:
        kept = add_rule(connection, RULE, "9 of 9", SIGNED)
        assert kept.rule == RULE and kept.holds and kept.confirmed_by == "Greta Lindqvare"
        withdraw_rule(connection, kept.number, SIGNED, "catalogue changed")
        again = add_rule(connection, RULE, "9 of 9", SIGNED)
        assert again.number > kept.number
        assert [one.holds for one in kept_rules(connection)] == [False, True]
