"""Near numbers kept between two pages are those of the sheets that count now, of the part as it is now."""

from pathlib import Path

from sourcing.actions.desk import Desk
from sourcing.actions.evaluate import catalogue, catalogue_to_read, evaluate
from sourcing.actions.import_sheets import sheets, undo_import
from tests.journeys.belt_job import MONDAY
from tests.journeys.small_shop import sheet, shop

NEAR = "NW-77121,Norrowby,Auger drive belt,60.00,41.00,3,1"
FAR = "QX-90001,Norrowby,Auger drive belt,60.00,41.00,3,1"


def near(desk: Desk) -> list[str]:
    """Numbers that may be the belt's by being near one of its own, as a page finds them; the same as without memory."""
    with desk.store.reading() as connection:
        kept = evaluate(catalogue_to_read(desk, connection), "BELT", 1)
        anew = evaluate(catalogue(connection, desk.at), "BELT", 1)
    assert kept == anew
    return [one.offer.supplier_number for one in kept.candidates]


def test_they_follow_the_sheets(tmp_path: Path) -> None:
    """A sheet taken in brings one, the next one has it no more, and taken out again the first counts."""
    desk = shop(tmp_path, MONDAY)
    assert near(desk) == []
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [NEAR, FAR])
    assert near(desk) == ["NW-77121"]
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", [FAR])
    assert near(desk) == []
    undo_import(desk, max(one.sheet for one in sheets(desk)))
    assert near(desk) == ["NW-77121"]
