"""The belt quoted on Monday; on Wednesday three things found and quoted as revision 2 (case S04 of the shop's own)."""

from datetime import datetime
from pathlib import Path

from sourcing.actions.answers import Spoken
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.quotes import write_quote
from sourcing.basics.quote import Quote
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in

MONDAY = datetime(2026, 3, 2, 10, 15)
CALLED = datetime(2026, 3, 4, 11, 20)
DALE = "Piet Halloway-Rusk"
BELT = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
FOUND = """
[[add_ons]]
title = "Keepers"
part = "KEEPER"
quantity = 2
hours = 0.3
found = "bent"
why = "they hold the belt in the groove"
if_declined = "the belt may come off"
[[add_ons]]
title = "Idler"
part = "IDLER"
quantity = 1
hours = 0.2
found = "rough"
why = "it burns the belt"
if_declined = "the belt may fail again"
[[add_ons]]
title = "Bar"
part = "BAR"
quantity = 1
hours = 0.5
found = "worn"
why = "the housing wears"
if_declined = "the housing wears"
"""
STONEGARTH = [
    "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock",
    "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock",
    "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock",
]


def paper(quote: Quote) -> str:
    """A paper that is good enough to freeze."""
    return f"{quote.job} {quote.revision} {quote.everything_total.total}"


def quoted(folder: Path) -> str:
    """Revision 1: the belt from Pellbrook, 278.48 with tax, not yet answered."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "pellbrook", "2026-03-01", ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"])
    sheet(desk, folder, "stonegarth", "2026-03-01", STONEGARTH)
    number = take_in(desk, folder, BELT)
    write_quote(desk, number, paper)
    return number


def torn_down(folder: Path, number: str) -> None:
    """Revision 2: with A keepers, B idler, C bar, and D the freight of these."""
    change(folder, number, BELT + FOUND)


def change(folder: Path, number: str, body: str, at: datetime = datetime(2026, 3, 4, 11, 0)) -> None:
    """The job's lines changed and quoted anew."""
    desk = desk_at(folder, at, DALE)
    change_job_from(desk, number, job_file(folder, body))
    assert write_quote(desk, number, paper).is_new


def at(folder: Path, moment: datetime = CALLED, who: str = DALE) -> Desk:
    """Wednesday's desk."""
    return desk_at(folder, moment, who)


def said(*yes: str, no: tuple[str, ...] = (), **fields: object) -> Spoken:
    """The customer by telephone."""
    words: dict[str, object] = {"who": "Maud Tilbrook", "how": "telephone", "contact": "555-0142", **fields}
    return Spoken(yes=yes, no=no, **words)  # type: ignore[arg-type]
