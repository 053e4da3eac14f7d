"""A shop of settings and three suppliers' terms, for tests that change terms."""

from datetime import datetime
from pathlib import Path

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.setup import set_up

SHOP = """
currency = "USD"
locale = "en_US"
labour_rate = 96.00
technician_cost = 34.00
clerk_cost = 22.00
mileage_rate = 0.725
markup_bands = [{ from_cost = 0, multiplier = 2.00 }]
[shop]
name = "Wickenby Yard Machine Repair"
"""

SUPPLIERS = """[[supplier]]
supplier = "stonegarth"
name = "Stonegarth Trade Parts"
starts_on = 2025-01-01
currency = "USD"
cut_off = 14:00:00
transit_days = [2, 2]
freight = { rule = "flat", charge = 14.95, free_from = 150.00 }

[[supplier]]
supplier = "pellbrook"
name = "Pellbrook Power Parts"
starts_on = 2025-01-01
currency = "USD"
cut_off = 15:00:00
transit_days = [3, 3]
minimum_order = 30.00
small_order_fee = 5.00
freight = { rule = "flat", charge = 9.95 }

[[supplier]]
supplier = "larkmoor"
name = "Larkmoor Wholesale"
starts_on = 2025-01-01
currency = "USD"
transit_days = [0, 0]
freight = { rule = "pick-up", round_trip_miles = 46, round_trip_hours = 1.0 }
"""


def shop(folder: Path, at: datetime) -> Desk:
    """The shop set up, its desk at that moment."""
    (folder / "shop.toml").write_text(SHOP)
    (folder / "suppliers.toml").write_text(SUPPLIERS)
    desk = desk_at(folder, at)
    set_up(desk, folder)
    return desk


def desk_at(folder: Path, at: datetime) -> Desk:
    """The same shop at another moment."""
    return open_desk(str(folder / "sourcing.db"), at, "Oona Brandeth")
