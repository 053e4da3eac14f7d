"""A small shop at the moment it quotes: sheets, jobs, its settings edited; for tests of writing quotes."""

from datetime import datetime
from pathlib import Path

from sourcing.actions.desk import Desk
from sourcing.actions.setup import set_up
from sourcing.basics.quote import Quote
from tests.journeys.small_shop import SHOP, SUPPLIERS

MONDAY = datetime(2026, 3, 2, 10, 15)
AFTERNOON = datetime(2026, 3, 2, 14, 40)
BELT = "NW-77120,Norrowby,Belt B88,189.50,126.90,5,In stock"
RISEN = "NW-77120,Norrowby,Belt B88,208.45,139.59,5,In stock"
KEEPER = "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"
IDLER = "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock"
BELT_LINE = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
KEEPERS = '[[add_ons]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0.3\n'
THREE = """
need_by = 2026-03-05
[[agreed]]
title = "Belt"
part = "BELT"
quantity = 1
hours = 1.8
[[agreed]]
title = "Keepers"
part = "KEEPER"
quantity = 2
[[agreed]]
title = "Idler"
part = "IDLER"
quantity = 1
"""


def paper(quote: Quote) -> str:
    """A paper that is good enough to freeze."""
    return f"{quote.job} {quote.revision} {quote.everything_total.total}"


def settle(desk: Desk, folder: Path, old: str = "", new: str = "", **files: str) -> None:
    """Edit shop.toml and suppliers.toml and set the shop up again."""
    text = files.get("shop", SHOP)
    assert old in text
    (folder / "shop.toml").write_text(text.replace(old, new, 1))
    (folder / "suppliers.toml").write_text(files.get("suppliers", SUPPLIERS))
    set_up(desk, folder)
