"""A small invented shop in a folder, for journeys: settings, two dealers and one to drive to, a table, sheets."""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

import openpyxl

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.jobs import take_in_job
from sourcing.actions.setup import set_up

SHOP = """
currency = "USD"
locale = "en_US"
labour_rate = 96.00
technician_cost = 34.00
clerk_cost = 22.00
mileage_rate = 0.725
freight_to_customer = "billed"
supplies = { percent_of_labour = 5, most = 12.00 }
markup_bands = [
  { from_cost = 0.00, multiplier = 2.50 }, { from_cost = 5.00, multiplier = 2.00 },
  { from_cost = 20.00, multiplier = 1.70 }, { from_cost = 50.00, multiplier = 1.55 },
  { from_cost = 100.00, multiplier = 1.40 },
]
taxes = [{ name = "Sales tax", percent = 7, on = ["parts", "freight"], starts_on = 2026-01-01 }]
[shop]
name = "Wickenby Yard Machine Repair"
"""

SUPPLIERS = """
[[supplier]]
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

PARTS = [("BELT", "Auger drive belt", "B88"), ("KEEPER", "Belt keeper", ""), ("IDLER", "Idler", ""), ("BAR", "Bar", "")]

STATEMENTS = [
    ("BELT", "Norrowby", "NW-77120", "maker"),
    ("BELT", "Ostrevik", "OV-20417", "maker"),
    ("BELT", "Corrivane", "CV-B880K", "fitted"),
    ("BELT", "Dunmarrow", "DM-15880", "supplier"),
    ("KEEPER", "Norrowby", "NW-31207", "maker"),
    ("IDLER", "Norrowby", "NW-22203", "maker"),
    ("BAR", "Norrowby", "NW-52626", "maker"),
]

HEADER = "Part Number,Brand,Description,List,Dealer Net,Stock,Lead Time"


def shop(folder: Path, at: datetime) -> Desk:
    """The shop set up, its desk at that moment."""
    (folder / "shop.toml").write_text(SHOP)
    (folder / "suppliers.toml").write_text(SUPPLIERS)
    equivalence_file(folder / "equivalence.xlsx")
    desk = desk_at(folder, at)
    set_up(desk, folder)
    return desk


def desk_at(folder: Path, at: datetime, who: str = "Oona Brandeth") -> Desk:
    """The same shop at another moment."""
    return open_desk(str(folder / "sourcing.db"), at, who)


def sheet(desk: Desk, folder: Path, supplier: str, day: str, rows: Sequence[str]) -> None:
    """Import a sheet of a supplier: rows of number, brand, description, list, net, stock, lead time."""
    (folder / supplier).mkdir(exist_ok=True)
    path = folder / supplier / f"prices-{day}.csv"
    path.write_text("\n".join([HEADER, *rows]) + "\n")
    import_sheets(desk, [path], Said())


def job_file(folder: Path, body: str) -> Path:
    """A job file for Maud Tilbrook's machine with these lines."""
    path = folder / "job.toml"
    head = """
complaint = "Auger stops under load"
received_on = 2026-03-02
"""
    path.write_text(head + body + '\n[customer]\nname = "Maud Tilbrook"\n[machine]\ndescription = "snow thrower"\n')
    return path


def take_in(desk: Desk, folder: Path, body: str) -> str:
    """Take that job in; its number."""
    return take_in_job(desk, job_file(folder, body)).number


def equivalence_file(path: Path) -> None:
    """Write the shop's equivalence table, as a person edits it."""
    book = openpyxl.Workbook()
    parts = book.active
    assert parts is not None
    parts.title = "parts"
    parts.append(["code", "name", "size"])
    for row in PARTS:
        parts.append(row)
    statements = book.create_sheet("statements")
    header = "left maker,left number,relation,right maker,right number,standing,source,stated on,stated by"
    statements.append(header.split(","))
    for code, maker, number, standing in STATEMENTS:
        statements.append(
            ["(ours)", code, "same part", maker, number, standing, "a list", "2026-01-02", "Oona Brandeth"]
        )
    book.save(path)
