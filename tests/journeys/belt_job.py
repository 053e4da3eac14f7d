"""The job with three numbers that disagree: four offers of its belt, four lines of evidence."""

from datetime import datetime
from pathlib import Path

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import take_in_job
from sourcing.actions.quotes import write_quote
from sourcing.basics.quote import Quote
from tests.journeys.small_shop import sheet, shop

MONDAY = datetime(2026, 3, 2, 10, 15)

JOB = """
complaint = "Auger stops under load"
received_on = 2026-03-02
ready_by = 2026-03-12
[customer]
name = "Maud Tilbrook"
[machine]
description = "two-stage snow thrower"
maker = "Norrowby"
model = "NW-4210"
serial = "1048221"
component = "Ostrevik gearbox"
component_maker = "Ostrevik"
component_model = "OV-88T"
"""

BELT_LINE = """
[[agreed]]
title = "Auger drive belt"
part = "BELT"
quantity = 1
hours = 1.5
[agreed.asked]
cord = "aramid"
cover = "wrapped"
[[agreed.evidence]]
kind = "machine list"
maker = "Norrowby"
number = "NW-77120"
size = "B88"
words = "aramid cord, wrapped cover"
model = "NW-4210"
photo = "plate.jpg"
[[agreed.evidence]]
kind = "component list"
maker = "Ostrevik"
number = "OV-20417"
size = "B88"
words = "aramid cord, wrapped cover"
model = "OV-88T"
[[agreed.evidence]]
kind = "printed on the removed part"
number = "4L880"
[[agreed.evidence]]
kind = "removed part measured"
words = "about 89 in outside, glazed"
"""


def take_in(desk: Desk, folder: Path, lines: str) -> str:
    """The job taken in; its number."""
    (folder / "job.toml").write_text(JOB + lines)
    return take_in_job(desk, folder / "job.toml").number


def paper(quote: Quote) -> str:
    """A paper that is good enough to freeze."""
    return f"{quote.job} {quote.revision} {quote.everything_total.total}"


def three_numbers(folder: Path) -> tuple[Desk, str]:
    """Four offers of the belt, one of them of another section; the job with its four lines of evidence."""
    desk = shop(folder, MONDAY)
    sheet(
        desk, folder, "larkmoor", "2026-03-01", ["OV-20417,Ostrevik,Belt B88 aramid wrapped,184.99,118.40,2,In stock"]
    )
    sheet(desk, folder, "stonegarth", "2026-03-01", ["NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock"])
    pellbrook = [
        "CV-B880K,Corrivane,Belt B88 aramid cord,109.00,71.25,2,In stock",
        "DM-15880,Dunmarrow,Belt 4L880 fits tight,24.99,18.60,9,In stock",
    ]
    sheet(desk, folder, "pellbrook", "2026-03-01", pellbrook)
    return desk, take_in(desk, folder, BELT_LINE)


def approved(desk: Desk, number: str) -> None:
    """A quote and the customer's yes."""
    write_quote(desk, number, paper)
    record(desk, number, Spoken(yes=("agreed",), no=(), who="Maud Tilbrook", how="telephone"))
