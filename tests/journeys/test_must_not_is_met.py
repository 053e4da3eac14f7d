"""What the shop once learnt must not serve is met wherever its number turns up, though no path ties it to the part."""

from pathlib import Path

import pytest

from sourcing.actions.accept_anyway import OfferNamed, accept_anyway
from sourcing.actions.compare import ForLine, compare
from sourcing.actions.desk import Desk
from sourcing.actions.equivalences import family_of
from sourcing.actions.identity import add_evidence
from sourcing.actions.orders import place_orders
from sourcing.actions.statement_add import Told, add_statement
from sourcing.basics.evidence import Evidence
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from tests.journeys.belt_job import BELT_LINE, MONDAY, approved, take_in
from tests.journeys.small_shop import sheet, shop

BAN = Told(
    left="Norrowby:NW-77120", relation="must not", right="Dunmarrow:DL-4L88", source="job 2025-0311", standing="fitted"
)
RIGHT_ROW = "NW-77120,Norrowby,Belt B88 aramid wrapped,189.50,126.90,2,In stock"
BANNED_ROW = "DL-4L88,Dunmarrow,Belt B88 aramid wrapped,24.99,18.60,9,In stock"
PLAIN_LINE = BELT_LINE[: BELT_LINE.index("[[agreed.evidence]]")]


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A shop whose supplier sells the right belt and, cheaper, the one that must not serve."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [RIGHT_ROW, BANNED_ROW])
    return desk


def test_the_look_up_and_the_comparison_show_it(desk: Desk, tmp_path: Path) -> None:
    """Held back with the statement, and no word goes past it; before it was stated nobody knew of the number."""
    assert compare(desk, "BELT", 1, None).candidates == ()
    add_statement(desk, BAN)
    (met,) = family_of(desk, "dl4l88").must_not
    assert met.part and met.part.code == "BELT"
    found = compare(desk, "BELT", 1, None)
    assert [one.priced.offer.supplier_number for one in found.ranked] == ["NW-77120"]
    (held,) = found.candidates
    assert held.vetoed and held.reasons[0].startswith("Dunmarrow DL-4L88 must not serve for Norrowby NW-77120 (fitted")
    number = take_in(desk, tmp_path, PLAIN_LINE)
    with pytest.raises(Refused, match="if that statement is wrong, withdraw it first"):
        accept_anyway(desk, number, "1", OfferNamed(supplier="stonegarth", number="DL-4L88"), "cheap")


def test_on_another_machine_it_is_not_forbidden(desk: Desk, tmp_path: Path) -> None:
    """Nor is it taken for the part: no path leads to it."""
    add_statement(desk, changed(BAN, machine="NW-9"))
    number = take_in(desk, tmp_path, PLAIN_LINE)
    found = compare(desk, "BELT", None, None, ForLine(job=number, label="1"))
    assert found.candidates == ()


def test_evidence_that_names_it_says_so_and_holds_the_order(desk: Desk, tmp_path: Path) -> None:
    add_statement(desk, BAN)
    number = take_in(desk, tmp_path, PLAIN_LINE)
    approved(desk, number)
    machine = Evidence(kind="machine list", maker="Dunmarrow", number="DL-4L88", model="NW-4210")
    found = add_evidence(desk, number, "1", machine).identity
    (seen,) = found.seen
    assert seen.use == "open" and not found.settled
    assert "Dunmarrow DL-4L88 can't be BELT: Dunmarrow DL-4L88 must not serve for Norrowby NW-77120" in seen.words
    assert any("must not serve" in words for words in found.conflicts)
    with pytest.raises(Refused, match="is not ordered"):
        place_orders(desk, [number])


def test_a_removed_part_that_must_not_serve_is_said_to_be_one(desk: Desk, tmp_path: Path) -> None:
    """A clue never settles which part it is, and here it is no other number of the same part."""
    add_statement(desk, BAN)
    number = take_in(desk, tmp_path, PLAIN_LINE)
    add_evidence(desk, number, "1", Evidence(kind="machine list", maker="Norrowby", number="NW-77120", model="NW-4210"))
    stamped = Evidence(kind="printed on the removed part", maker="Dunmarrow", number="DL-4L88")
    found = add_evidence(desk, number, "1", stamped).identity
    assert found.part == "BELT"
    assert found.seen[1].words.startswith("a number that must not be fitted again: Dunmarrow DL-4L88 must not serve")


def test_a_damaged_number_is_no_evidence(desk: Desk, tmp_path: Path) -> None:
    number = take_in(desk, tmp_path, PLAIN_LINE)
    with pytest.raises(Refused, match=r"names a damaged number, '1\.2E\+5'"):
        add_evidence(desk, number, "1", Evidence(kind="machine list", maker="Norrowby", number="1.2E+5"))


def test_who_asks_for_a_forbidden_number_is_told_the_ban(desk: Desk) -> None:
    """And not to add it to the table."""
    add_statement(desk, BAN)
    with pytest.raises(Refused, match="is forbidden: Dunmarrow DL-4L88 must not serve for Norrowby NW-77120"):
        compare(desk, "DL-4L88", 1, None)


def test_who_asks_for_a_substitute_is_told_that_only_one_way_is_stated(desk: Desk) -> None:
    """The part's own numbers are shown, and that nobody said they serve for it."""
    add_statement(desk, changed(BAN, relation="substitute", right="Dunmarrow:DB-1", condition="with the smaller idler"))
    (told,) = compare(desk, "DB-1", 1, None).warnings
    assert told.startswith("only one way is stated, Dunmarrow DB-1 may serve for Norrowby NW-77120")
    assert told.endswith("whether what follows serves for DB-1 is not known")
    assert compare(desk, "NW-77120", 1, None).warnings == ()
