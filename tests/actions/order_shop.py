"""A shop with approved jobs that wait to be ordered from Stonegarth: 14.95 freight, free from 150.00."""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.quotes import write_quote
from tests.journeys.small_shop import sheet, shop, take_in

MONDAY = datetime(2026, 3, 2, 9, 0)
BELT = "NW-77120,Norrowby,Belt B88,214.00,139.00,2,In stock"
KEEPER = "NW-31207,Norrowby,Keeper,33.00,15.80,50,In stock"
IDLER = "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock"


def orders_shop(folder: Path, rows: Sequence[str] = (BELT, KEEPER, IDLER)) -> Desk:
    """The shop on Monday with Stonegarth's sheet."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", rows)
    return desk


def lines(*parts: tuple[str, int], head: str = "") -> str:
    """The body of a job file: a line for each part and number of pieces."""
    return head + "".join(
        f'\n[[agreed]]\ntitle = "{part}"\npart = "{part}"\nquantity = {pieces}\nhours = 0\n' for part, pieces in parts
    )


def quoted(desk: Desk, folder: Path, *parts: tuple[str, int], head: str = "") -> str:
    """A job quoted; its number."""
    number = take_in(desk, folder, lines(*parts, head=head))
    quote_again(desk, number)
    return number


def quote_again(desk: Desk, number: str) -> None:
    """A new revision if anything has changed."""
    write_quote(desk, number, lambda quote: f"{quote.job} {quote.revision} {quote.everything_total.total}")


def say_yes(desk: Desk, number: str, *labels: str) -> None:
    """The customer's yes by telephone, to the agreed work unless labels are named."""
    record(desk, number, Spoken(yes=labels or ("agreed",), who="Maud Tilbrook", how="telephone"))


def approved(desk: Desk, folder: Path, *parts: tuple[str, int], head: str = "") -> str:
    """A job quoted and approved; its number."""
    number = quoted(desk, folder, *parts, head=head)
    say_yes(desk, number)
    return number
