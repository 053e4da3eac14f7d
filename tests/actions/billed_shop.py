"""The worked day in a real database: belt agreed and ordered, three things found, two approved, all of it received."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.answers import record
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from tests.journeys.small_shop import desk_at, job_file, sheet, shop, take_in
from tests.journeys.test_worked_days import ADD_ONS, paper, yes

MONDAY, TEAR_DOWN = datetime(2026, 3, 2, 10, 15), datetime(2026, 3, 4, 11, 0)
TELEPHONE, ORDERING, DELIVERY = datetime(2026, 3, 4, 11, 20), datetime(2026, 3, 4, 12, 0), datetime(2026, 3, 9, 9, 0)
BILLING = datetime(2026, 3, 10, 16, 30)
BELT_ORDER, EXTRAS_ORDER = "PO-2026-0001", "PO-2026-0002"
TECHNICIAN = "Piet Halloway-Rusk"


def agreed(folder: Path) -> str:
    """The belt quoted at 278.48 and approved on Monday; the job's number."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "pellbrook", "2026-03-01", ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"])
    stonegarth = [
        "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock",
        "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock",
        "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock",
    ]
    sheet(desk, folder, "stonegarth", "2026-03-01", stonegarth)
    number = take_in(desk, folder, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5')
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    return number


def waiting(folder: Path) -> str:
    """The belt ordered on Monday; three things found on Wednesday, quoted as revision 2 and not answered."""
    number = agreed(folder)
    place_orders(desk_at(folder, MONDAY), [number])
    desk = desk_at(folder, TEAR_DOWN, TECHNICIAN)
    change_job_from(desk, number, job_file(folder, ADD_ONS))
    write_quote(desk, number, paper)
    return number


def answered(folder: Path) -> str:
    """Yes to A, B and their freight D, no to C."""
    number = waiting(folder)
    record(desk_at(folder, TELEPHONE, TECHNICIAN), number, yes("A", "B", "D", no=("C",)))
    return number


def ordered(folder: Path) -> str:
    """Keepers and idler ordered as well, at another supplier than the belt."""
    number = answered(folder)
    place_orders(desk_at(folder, ORDERING), [number])
    return number


def received(folder: Path) -> str:
    """All of it here."""
    number = ordered(folder)
    for order, freight in ((BELT_ORDER, "9.95"), (EXTRAS_ORDER, "14.95")):
        receive(desk_at(folder, DELIVERY), order, Delivery(paper=f"D-{order}", freight=Decimal(freight)))
    return number


def billing(folder: Path) -> Desk:
    """The desk on the day of the bill."""
    return desk_at(folder, BILLING)
