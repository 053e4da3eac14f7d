"""A shop whose dealer's rows, terms and one placed order the tests of landed cost look at."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.setup import set_up
from sourcing.basics.offer import PriceBreak
from tests.actions.kept_sheets import keep
from tests.journeys.small_shop import SUPPLIERS, shop, take_in
from tests.storage.kept_values import offer_row

MONDAY = datetime(2026, 3, 2, 9, 0)
SHEET_DAY = date(2026, 2, 27)


def priced(number: str, price: str, **fields: object) -> dict[str, object]:
    """A row of a sheet with one net price and stock."""
    breaks = (PriceBreak(from_quantity=1, price=Decimal(price)),)
    row = offer_row(4, number, **({"maker": "Norrowby", "breaks": breaks, "stock": 5} | fields))
    return row


def new_terms(desk: Desk, folder: Path, *changes: tuple[str, str], starts: str = "2026-04-01") -> None:
    """Stonegarth's terms from a later day on."""
    text = "[[supplier]]" + SUPPLIERS.split("[[supplier]]")[1]
    for old, new in (("2025-01-01", starts), *changes):
        assert old in text
        text = text.replace(old, new)
    (folder / "suppliers.toml").write_text(text)
    set_up(desk, folder)


def ordered(folder: Path, *changes: tuple[str, str]) -> str:
    """A belt and two keepers, quoted, approved and ordered from Stonegarth; the order's number.

    `changes` are of the terms it is ordered under.
    """
    desk = shop(folder, MONDAY)
    if changes:
        new_terms(desk, folder, *changes, starts="2026-02-01")
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "126.90"), priced("NW-31207", "6.20") | {"row": 5})
    lines = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1\n'
    lines += '[[agreed]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0\n'
    job = take_in(desk, folder, lines)
    write_quote(desk, job, lambda quote: f"{quote.job} {quote.everything_total.total}")
    record(desk, job, Spoken(yes=("agreed",), who="Maud Tilbrook", how="telephone"))
    return place_orders(desk, [job]).orders[0].number
