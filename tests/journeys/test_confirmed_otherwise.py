"""A price or number that a supplier confirmed stands beside his older offer, until a newer sheet of his comes."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.compare import compare
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import place_orders
from sourcing.basics.order import LineEvent
from tests.actions.order_shop import KEEPER, MONDAY, approved, orders_shop
from tests.journeys.small_shop import desk_at, sheet

ORDER = "PO-2026-0001"
SAID = (
    "Ilse confirmed {} on 2026-03-02 of order PO-2026-0001; his sheet, which is counted here, is older: ask before you "
    "order"
)


def minds(folder: Path, at: datetime = MONDAY) -> tuple[str, ...]:
    """What is to be minded of Stonegarth's offer of the keeper."""
    found = compare(desk_at(folder, at), "NW-31207", 1)
    return found.ranked[0].priced.warnings


def confirmed(folder: Path, **said: object) -> None:
    """Two keepers ordered, and confirmed by Ilse."""
    desk = orders_shop(folder, [KEEPER])
    place_orders(desk, [approved(desk, folder, ("KEEPER", 2))])
    assert not minds(folder)
    line = LineEvent(line=1, **said)  # type: ignore[arg-type]
    confirm(desk, ORDER, Confirmation(lines=(line,), said_by="Ilse"))


def test_a_price_he_confirmed_is_minded(tmp_path: Path) -> None:
    confirmed(tmp_path, unit_price=Decimal("17.20"))
    assert minds(tmp_path) == (SAID.format("17.20 USD each instead of 15.80 USD"),)


def test_a_price_and_a_number_are_told_together(tmp_path: Path) -> None:
    confirmed(tmp_path, unit_price=Decimal("17.20"), number="NW-31208")
    told = SAID.format("17.20 USD each instead of 15.80 USD and the number NW-31208 instead of NW-31207")
    assert minds(tmp_path) == (told,)


def test_what_is_confirmed_as_ordered_is_nothing_to_mind(tmp_path: Path) -> None:
    confirmed(tmp_path, unit_price=Decimal("15.80"), number="NW 31207")
    assert not minds(tmp_path)


def test_it_is_known_from_the_moment_it_was_said_until_a_newer_sheet(tmp_path: Path) -> None:
    confirmed(tmp_path, unit_price=Decimal("17.20"))
    pellbrook = ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"]
    sheet(desk_at(tmp_path, MONDAY), tmp_path, "pellbrook", "2026-03-01", pellbrook)  # another supplier's stays older
    assert not minds(tmp_path, datetime(2026, 3, 2, 8, 0))
    tuesday = datetime(2026, 3, 3, 9, 0)
    assert minds(tmp_path, tuesday)
    sheet(desk_at(tmp_path, tuesday), tmp_path, "stonegarth", "2026-03-03", [KEEPER.replace("15.80", "16.90")])
    assert not minds(tmp_path, tuesday)
