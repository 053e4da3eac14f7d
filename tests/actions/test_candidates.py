"""Candidates are found on newest sheets, for rows no number settles; the queue is ordered by worth."""

from datetime import timedelta
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.candidates import find_candidates
from sourcing.actions.compare import compare
from sourcing.actions.import_sheets import undo_import
from sourcing.actions.part_lookups import note_lookup
from sourcing.actions.review_queue import review_queue
from sourcing.actions.setup import set_up
from sourcing.actions.statement_deeds import set_standing
from sourcing.basics.part_number import OURS
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Signed
from sourcing.matching.sheet_match import Columns
from sourcing.storage.equivalence import equivalence_table
from sourcing.storage.statements import state
from tests.actions.judging_shop import MONDAY, ROWS, by_numbers, find, judging_shop, pairs, queue, waiting
from tests.builders import number, statement, usd
from tests.journeys.small_shop import SUPPLIERS, desk_at, sheet, shop, take_in

BELT, KEEPER = ("NW-77210", "BELT"), ("NW-31270", "KEEPER")


def test_every_row_is_automatic_a_candidate_or_like_none(tmp_path: Path) -> None:
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", ROWS)
    (done,) = find(desk)
    assert (done.rows, done.automatic, done.with_candidates, done.like_none) == (4, 1, 2, 1)
    assert done.rows == done.automatic + done.with_candidates + done.like_none
    assert pairs(desk) == [BELT, KEEPER]


def test_the_score_is_handed_our_numbers_makers_words_and_prices(tmp_path: Path) -> None:
    """Price: the middle of the part's automatic offers over all suppliers, in the shop's currency by its own rate."""
    seen: list[tuple[Columns, Columns, list[str]]] = []

    def looks(rows: Columns, parts: Columns, codes: list[str], *rest: object) -> list[object]:
        seen.append((rows, parts, codes))
        return []

    suppliers = SUPPLIERS.replace('currency = "USD"\ncut_off = 15', 'currency = "EUR"\ncut_off = 15')
    assert suppliers != SUPPLIERS
    desk = shop(tmp_path, MONDAY)
    (tmp_path / "suppliers.toml").write_text(suppliers)
    (tmp_path / "rates.csv").write_text("currency,into,rate,dated,source\nEUR,USD,1.10,2026-02-27,bank\n")
    set_up(desk, tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", ROWS)
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["OV-20417,Ostrevik,Belt B88,180.00,100.00,1,"])
    find_candidates(desk, match=looks)  # type: ignore[arg-type]
    rows, parts, codes = seen[0]
    assert codes == ["BELT", "KEEPER", "IDLER", "BAR"]
    assert parts.numbers[0] == ["BELT", "CVB880K", "DM15880", "NW77120", "OV20417"]
    assert parts.makers[0] == ["corrivane", "dunmarrow", "norrowby", "ostrevik"]
    assert parts.description[0] == "Auger drive belt B88"
    assert parts.price[0] == (Decimal("126.90") + Decimal("110.00")) / 2
    assert parts.price[1] is None
    assert rows.numbers == [["NW77210"], ["NW31270"], ["ZZ1"]] and rows.makers[2] == ["dunmarrow"]
    assert rows.price[0] == Decimal("120.00")
    assert len(seen) == 1  # the other sheet has no row left to ask about


def test_a_number_that_must_not_serve_attracts_nothing(tmp_path: Path) -> None:
    """It would bring up what somebody has found not to fit; a row that bears it is shown with the ban."""
    desk = judging_shop(tmp_path, ["DM-15881,Dunmarrow,Belt,150.00,99.00,1,"])
    assert pairs(desk) == [("DM-15881", "BELT")]
    ban = statement(number("BELT", OURS), "must not", number("DM-15880", "Dunmarrow"), "fitted")
    with desk.writing("test") as pen:
        state(pen.connection, [ban], Signed(at=MONDAY, who="Greta Lindqvare"), [""])
    find(desk)
    assert pairs(desk) == []
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", ["DM-15880,Dunmarrow,Belt B88,150.00,99.00,1,"])
    find(desk)
    (one,) = queue(desk).shown
    assert one.kept.against and "must not serve" in one.kept.reasons[0]


def test_a_price_without_a_rate_is_no_price(tmp_path: Path) -> None:
    """And the row still waits, after those whose worth is known."""
    desk = shop(tmp_path, MONDAY)
    suppliers = SUPPLIERS.replace('currency = "USD"\ncut_off = 15', 'currency = "EUR"\ncut_off = 15')
    (tmp_path / "suppliers.toml").write_text(suppliers)
    set_up(desk, tmp_path)
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["NW-77201,Norrowby,Auger belt B88,900.00,800.00,1,"])
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", ROWS)
    find(desk)
    assert pairs(desk) == [BELT, KEEPER, ("NW-77201", "BELT")]
    last = queue(desk).shown[-1]
    assert last.price is None and last.worth is None


def test_what_is_asked_for_often_comes_first(tmp_path: Path) -> None:
    """A keeper looked up on thirty days is worth more than a belt asked for once: 30 x 6.40 against 120.00.

    Twice on one day is once.
    """
    desk = judging_shop(tmp_path)
    assert [one.worth for one in queue(desk).shown] == [usd("12.00"), usd("0.64")]
    take_in(desk, tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 5\n')
    assert [one.worth for one in queue(desk).shown] == [usd("120.00"), usd("0.64")]
    for day in range(30):
        for _ in range(2):
            note_lookup(desk_at(tmp_path, MONDAY + timedelta(days=day)), "KEEPER")
    shown = queue(desk).shown
    assert [(one.part.code, one.asked, one.worth) for one in shown] == [
        ("KEEPER", 30, usd("192.00")),
        ("BELT", 1, usd("120.00")),
    ]


def test_comparing_counts_as_asking_and_never_waits_for_a_writer(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    compare(desk, "BELT", 1, None)
    assert waiting(desk, *BELT).asked == 1
    with desk.store.writing():
        other = desk_at(tmp_path, MONDAY)
        assert compare(other, "BELT", 1, None).our_part == "BELT"
    assert waiting(desk, *BELT).asked == 1


def test_a_part_found_again_keeps_its_number(tmp_path: Path) -> None:
    """A file that somebody has taken along still fits; and only sheets not looked through are, unless asked."""
    desk = judging_shop(tmp_path)
    before = {one.kept.candidate for one in queue(desk).shown}
    assert find_candidates(desk, again=False, match=by_numbers) == ()
    find(desk)
    assert {one.kept.candidate for one in queue(desk).shown} == before


def test_a_newer_sheet_takes_the_place_of_the_older(tmp_path: Path) -> None:
    """And before anybody has looked through it, nothing of the older sheet is shown, and that is said."""
    desk = judging_shop(tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", [*ROWS[:1], "NW-22230,Norrowby,Idler,39.95,22.50,5,"])
    assert pairs(desk) == [] and queue(desk).not_looked_through == (2,)
    find(desk)
    assert pairs(desk) == [("NW-22230", "IDLER")] and queue(desk).not_looked_through == ()
    undo_import(desk, 2)
    assert queue(desk).not_looked_through == (1,)
    find(desk)
    assert pairs(desk) == [BELT, KEEPER]


def test_a_number_tied_by_a_weak_statement_waits_with_the_reason(tmp_path: Path) -> None:
    """DM-15880 is BELT's by a supplier's word only."""
    desk = judging_shop(tmp_path, ["DM-15880,Dunmarrow,Belt B88,150.00,99.00,1,"])
    (one,) = queue(desk).shown
    assert one.part.code == "BELT" and "the weakest statement is only 'supplier'" in one.kept.reasons[0]


def test_a_size_that_contradicts_speaks_against(tmp_path: Path) -> None:
    """The number is BELT's, the row says another belt."""
    desk = judging_shop(tmp_path, ["NW-77120,Norrowby,Auger belt A36,150.00,99.00,1,"])
    (one,) = queue(desk).shown
    assert one.kept.against and one.part.code == "BELT"


def test_what_a_statement_has_settled_meanwhile_waits_no_more(tmp_path: Path) -> None:
    """The table was changed after the candidates were found."""
    desk = judging_shop(tmp_path, ["DM-15880,Dunmarrow,Belt B88,150.00,99.00,1,"])
    with desk.store.reading() as connection:
        weak = next(one for one in equivalence_table(connection).statements if one.standing == "supplier")
    set_standing(desk, weak.number or 0, "fitted", "fitted it to Maud's machine")
    assert pairs(desk) == []


def test_an_unknown_supplier_is_refused(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    with pytest.raises(Refused, match="no sheet of 'nobody'"):
        find(desk, "nobody")


def test_only_so_many_rows_are_shown_and_all_are_counted(tmp_path: Path) -> None:
    desk = judging_shop(tmp_path)
    shown = review_queue(desk, "stonegarth", 1)
    assert (shown.rows, shown.candidates, len(shown.shown)) == (2, 2, 1)
