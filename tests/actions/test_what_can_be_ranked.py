"""Offers that are shown with a reason and never ranked: by the foot, a price not yet or no longer firm."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.compare import compare
from sourcing.actions.setup import set_up
from sourcing.basics.offer import LeadTime, PriceBreak
from tests.actions.kept_sheets import keep
from tests.journeys.small_shop import SUPPLIERS, shop
from tests.storage.kept_values import offer_row

MONDAY = datetime(2026, 3, 2, 9, 0)
SHEET_DAY = date(2026, 2, 27)
BELT: dict[str, object] = {
    "maker": "Norrowby",
    "breaks": (PriceBreak(from_quantity=1, price=Decimal("126.90")),),
    "stock": 2,
}


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({"sold_by": "piece"}, ""),
        ({"sold_by": "foot"}, "sold by the foot: say the length needed"),
        ({"sold_by": "metre", "breaks": ()}, "sold by the metre: say the length needed"),
        ({"valid_to": date(2026, 3, 2)}, ""),
        ({"valid_to": date(2026, 3, 1)}, "the price is not firm: it held until 2026-03-01"),
        ({"valid_from": date(2026, 3, 2)}, ""),
        ({"valid_from": date(2026, 3, 3)}, "the price holds from 2026-03-03 only"),
        ({"discount_code": "B", "breaks": (), "list_price": Decimal(199)}, "the sheet gives no net price"),
        ({"sold_by": "foot", "no_longer_available": True}, "no longer available"),
    ],
)
def test_why_an_offer_is_not_ranked(tmp_path: Path, fields: dict[str, object], reason: str) -> None:
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, offer_row(4, "NW-77120", **(BELT | fields)))
    found = compare(desk, "BELT", 1, None)
    assert [one.reason for one in found.set_aside] == ([reason] if reason else [])
    assert len(found.ranked) == (0 if reason else 1)


@pytest.mark.parametrize(
    ("fields", "ranked"),
    [({}, 0), ({"valid_to": date(2026, 3, 31)}, 1), ({"valid_from": date(2026, 2, 27)}, 0)],
)
def test_the_day_a_row_names_counts_before_the_days_of_the_terms(
    tmp_path: Path, fields: dict[str, object], ranked: int
) -> None:
    """Terms: prices hold two days after the sheet's date. The supplier's word on the row is nearer to the price."""
    desk = shop(tmp_path, MONDAY)
    held = SUPPLIERS.replace("transit_days = [2, 2]", "transit_days = [2, 2]\nprices_hold_days = 2", 1)
    (tmp_path / "suppliers.toml").write_text(held)
    set_up(desk, tmp_path)
    keep(desk, "stonegarth", SHEET_DAY, offer_row(4, "NW-77120", **(BELT | fields)))
    assert len(compare(desk, "BELT", 1, None).ranked) == ranked


def test_the_day_a_backorder_leaves_is_its_promise(tmp_path: Path) -> None:
    """Leaves Friday 13 March 2026, two days on the road: Tuesday the 17th; no weekend is worked."""
    desk = shop(tmp_path, MONDAY)
    back = {"stock": 0, "lead_time": LeadTime(text="BO 03/13", leaves_on=date(2026, 3, 13))}
    keep(desk, "stonegarth", SHEET_DAY, offer_row(4, "NW-77120", **(BELT | back)))
    (one,) = compare(desk, "BELT", 1, None).ranked
    assert one.priced.arrival.latest == date(2026, 3, 17)
