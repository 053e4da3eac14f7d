"""Last month's cost worked out again comes out as it was: terms, rates and settings are those of that day."""

from datetime import date, datetime
from pathlib import Path

from sourcing.actions.compare import compare
from sourcing.actions.setup import set_up
from sourcing.actions.terms import set_terms, withdraw_terms
from tests.journeys.small_shop import SHOP, SUPPLIERS, desk_at, sheet, shop

LAST_MONTH, TODAY = datetime(2026, 2, 10, 10, 0), datetime(2026, 3, 10, 10, 0)
BELT = "NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock"
RATES = "currency,into,rate,dated,source\nEUR,USD,1.10,2026-02-01,bank\n"


def landed(folder: Path, at: datetime, supplier: str = "stonegarth") -> dict[str, str]:
    """The lines of what the belt costs at the door at that moment, and the total."""
    found = compare(desk_at(folder, at), "BELT", 1, None)
    (one,) = [one.priced.landed for one in found.ranked if one.priced.offer.supplier == supplier]
    return {"total": str(one.total), **{line.name.split()[0]: str(line.amount) for line in one.lines}}


def test_terms_of_the_day_are_used(tmp_path: Path) -> None:
    """126.90 + 14.95 last month; from March on freight is 17.50 and a handling of 2.00 is asked."""
    desk = shop(tmp_path, LAST_MONTH)
    sheet(desk, tmp_path, "stonegarth", "2026-02-01", [BELT])
    was = landed(tmp_path, LAST_MONTH)
    assert was == {"total": "141.85 USD", "Goods": "126.90 USD", "Freight": "14.95 USD"}
    set_terms(desk, "stonegarth", {"freight.charge": "17.50", "handling": "2.00"}, date(2026, 3, 1))
    assert landed(tmp_path, TODAY)["total"] == "146.40 USD"
    assert landed(tmp_path, LAST_MONTH) == was
    assert landed(tmp_path, datetime(2026, 2, 28, 23, 59)) == was
    withdraw_terms(desk, "stonegarth", date(2026, 3, 1), "he took it back")
    assert landed(tmp_path, TODAY)["total"] == was["total"]


def test_rates_of_the_day_are_used(tmp_path: Path) -> None:
    """126.90 EUR and 14.95 EUR: at 1.10 139.59 and 16.45 (16.445 half up), at 1.20 152.28 and 17.94."""
    (tmp_path / "rates.csv").write_text(RATES)
    desk = shop(tmp_path, LAST_MONTH)
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS.replace('"USD"', '"EUR"', 1))
    set_up(desk, tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-02-01", [BELT.replace("126.90", "EUR 126.90")])
    was = landed(tmp_path, LAST_MONTH)
    assert was == {"total": "156.04 USD", "Goods": "139.59 USD", "Freight": "16.45 USD"}
    (tmp_path / "rates.csv").write_text(f"{RATES}EUR,USD,1.20,2026-03-01,bank\n")
    set_up(desk_at(tmp_path, TODAY), tmp_path)
    assert landed(tmp_path, TODAY)["total"] == "170.22 USD"
    assert landed(tmp_path, LAST_MONTH) == was


def test_settings_of_the_day_are_used(tmp_path: Path) -> None:
    """46 miles at 0.725 are 33.35; from today on a mile costs 0.80, so 36.80."""
    desk = shop(tmp_path, LAST_MONTH)
    sheet(desk, tmp_path, "larkmoor", "2026-02-01", [BELT])
    was = landed(tmp_path, LAST_MONTH, "larkmoor")
    assert was["total"] == "182.25 USD"  # 126.90 + 33.35 + an hour at 22.00
    (tmp_path / "shop.toml").write_text(SHOP.replace("mileage_rate = 0.725", "mileage_rate = 0.80"))
    set_up(desk_at(tmp_path, TODAY), tmp_path)
    assert landed(tmp_path, TODAY, "larkmoor")["total"] == "185.70 USD"
    assert landed(tmp_path, LAST_MONTH, "larkmoor") == was
