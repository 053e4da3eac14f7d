"""A whole sheet at the door: every row once, with its cost and day or with why there is none."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.landed import landed_offers
from sourcing.actions.landed_sheet import landed_sheet
from sourcing.basics.offer import LeadTime
from sourcing.basics.problem import Refused
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import MONDAY, SHEET_DAY, new_terms, priced
from tests.builders import usd
from tests.journeys.small_shop import shop


def test_a_whole_sheet_at_the_door(tmp_path: Path) -> None:
    """Every row is there once: with its cost and day, or with why there is none, counted."""
    desk = shop(tmp_path, MONDAY)
    rows = [
        priced("NW-1", "126.90"),
        priced("NW-2", "8.00", pack=10, stock=50),
        priced("NW-3", "1.00", breaks=()),
        priced("NW-4", "1.00", stock=0, lead_time=LeadTime(text="call")),
        priced("NW-5", "1.00", no_longer_available=True),
        priced("NW-6", "1.00", breaks=()),
    ]
    keep(desk, "stonegarth", date(2026, 1, 5), priced("NW-1", "99.00"))
    keep(desk, "stonegarth", SHEET_DAY, *(row | {"row": 4 + at} for at, row in enumerate(rows)))
    keep(desk, "stonegarth", date(2026, 3, 3), priced("NW-1", "150.00"))
    found = landed_sheet(desk, "stonegarth")
    assert found.sheet_date == SHEET_DAY
    assert (found.offers, found.priced, found.dated) == (6, 3, 2)
    assert [(one.words, one.offers) for one in found.not_priced] == [
        ("the sheet gives no net price", 2),
        ("no longer available", 1),
    ]
    assert [one.landed for one in found.rows[:2]] == [usd("141.85"), usd("94.95")]
    assert found.rows[1].pieces == 10 and found.rows[1].latest == date(2026, 3, 4)
    assert found.rows[3].landed == usd("15.95") and "names no day" in found.rows[3].no_day


def test_reasons_are_counted_once_whatever_the_number(tmp_path: Path) -> None:
    """Two goods without a weight are one reason; in each row its own number stands."""
    desk = shop(tmp_path, MONDAY)
    by_weight = 'freight = { rule = "by weight", weight_bands = [{ to_weight = 5, charge = 9 }] }'
    flat = 'freight = { rule = "flat", charge = 14.95, free_from = 150.00 }'
    new_terms(desk, tmp_path, (flat, by_weight), starts="2026-02-01")
    heavy = (priced("NW-3", "1.00", weight_kg=Decimal(at)) | {"row": 4 + at} for at in (6, 7))
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-1", "1.00"), priced("NW-2", "1.00") | {"row": 5}, *heavy)
    found = landed_sheet(desk, "stonegarth")
    assert [one.offers for one in found.not_priced] == [2, 2] and found.priced == 0
    assert "weight of NW-1 is not stated" in found.rows[0].why_not
    assert any("weight of the goods is not stated" in one.words for one in found.not_priced)


def test_a_sheet_costs_what_each_offer_costs_alone(tmp_path: Path) -> None:
    """The quick way and the named lines agree, with splits, minimums, discounts and duty."""
    desk = shop(tmp_path, MONDAY)
    more = """transit_days = [2, 2]
minimum_order = 9
discount_percent = 7
duty_percent = 2.5
duty_rates = [{ percent = 9, origin = "DE" }]
split = { sends = "as ready", later_charge = 6 }
order_discounts = [{ from_value = 90, percent = 3 }]
"""
    new_terms(desk, tmp_path, ("transit_days = [2, 2]", more), starts="2026-02-01")
    week = LeadTime(text="1 week", least=5, most=5)
    rows = [
        priced(f"NW-{at}", f"{at * at}.{at:02d}", stock=at % 3, pack=1 + at % 2, lead_time=week, origin=origin)
        | {"row": 4 + at}
        for at, origin in enumerate(("DE", "US", "") * 5, 1)
    ]
    keep(desk, "stonegarth", SHEET_DAY, *rows)
    for row in landed_sheet(desk, "stonegarth").rows:
        (alone,) = landed_offers(desk, "stonegarth", row.supplier_number)
        assert alone.landed is not None
        assert row.landed == (None if alone.why_not else alone.landed.total)
        assert row.why_not == alone.why_not
        assert alone.arrival is not None and row.latest == alone.arrival.latest


def test_a_supplier_without_terms_or_in_another_currency_is_not_priced(tmp_path: Path) -> None:
    """Every row says why; nothing is refused, for the rest of a mixed sheet may be good."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "tavishollow", SHEET_DAY, priced("NW-1", "1.00"))
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-1", "1.00", currency="EUR"), priced("NW-2", "2.00") | {"row": 5})
    assert landed_sheet(desk, "tavishollow").rows[0].why_not == "there are no terms for tavishollow"
    found = landed_sheet(desk, "stonegarth")
    assert found.rows[0].why_not == "the sheet is in EUR, the terms are in USD" and found.priced == 1
    with pytest.raises(Refused):
        landed_sheet(desk, "kesselried")
