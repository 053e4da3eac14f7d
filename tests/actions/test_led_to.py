"""An old number looked up finds the part by its successor, with the way shown; never the other way round."""

from pathlib import Path

import pytest

from sourcing.actions.compare import ToCompare, compare
from sourcing.actions.desk import Desk
from sourcing.actions.equivalences import family_of
from sourcing.actions.find import find_for_bench, find_part
from sourcing.actions.job_edit import our_part
from sourcing.basics.equivalence import Relation
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Signed
from sourcing.documents.family_words import more_words
from sourcing.storage.statements import state
from tests.actions.judging_shop import MONDAY
from tests.builders import number, statement
from tests.journeys.small_shop import sheet, shop

OLD, NEW = number("NW-77119", "Norrowby"), number("NW-77120", "Norrowby")
ROWS = ["NW-77120,Norrowby,Auger belt B88,189.50,126.90,2,", "NW-77119,Norrowby,Auger belt B88,150.00,99.00,2,"]


def desk_with(folder: Path, relation: Relation) -> Desk:
    """The small shop, where the old number leads to the belt's own."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", ROWS)
    with desk.writing("statement") as pen:
        state(pen.connection, [statement(OLD, relation, NEW, "maker")], Signed(at=MONDAY, who="Oona"), ["list"])
    return desk


def test_the_old_number_finds_the_part_by_its_successor_with_the_way_shown(tmp_path: Path) -> None:
    """The row of the old number itself is no offer of the part: the maker replaced it, nobody said it still serves."""
    desk = desk_with(tmp_path, "superseded by")
    found = find_part(desk, ToCompare(number="nw 77119"))
    assert found.comparison.our_part == "BELT"
    assert [one.priced.offer.supplier_number for one in found.comparison.ranked] == ["NW-77120"]
    (way,) = found.about.ways
    assert way.one_way and way.number == "Norrowby NW-77119" and way.standing == "maker"
    assert way.links[0].startswith("Norrowby NW-77119 is superseded by Norrowby NW-77120")
    assert found.comparison.warnings[0] == (
        "Norrowby NW-77119 is not among the numbers of BELT; it leads to it one way only (Norrowby NW-77119 is"
        " superseded by Norrowby NW-77120 (maker: a test); BELT is the same part as Norrowby NW-77120 (maker: a list)):"
        " what follows is sold under the numbers of BELT, rows under NW-77119 itself are not among it"
    )
    assert find_for_bench(desk, "NW-77119").about.ways == (way,)
    assert "is tied to no part of ours" not in " ".join(more_words(family_of(desk, "NW-77119")))
    assert "Norrowby NW-77119 leads to BELT, one way only." in list(more_words(family_of(desk, "NW-77119")))


def test_a_jobs_line_does_not_take_a_successor_unasked(tmp_path: Path) -> None:
    """Whoever types the old number for a line is asked for the part itself."""
    with pytest.raises(Refused, match="no part of ours is known"):
        our_part(desk_with(tmp_path, "superseded by"), "NW-77119")


def test_a_must_not_is_no_way(tmp_path: Path) -> None:
    """That the one must not serve for the other leads nowhere."""
    desk = desk_with(tmp_path, "must not")
    with pytest.raises(Refused, match="no part of ours is known"):
        compare(desk, "NW-77119", 1, None)
