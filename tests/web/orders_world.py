"""The counter with an order on its way: job 2026-0002 is ordered too, and nothing of it has come."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.orders import place_orders
from sourcing.web.desks import STORE
from tests.web.world import APPROVED, CLERK, NOW, ORDERING, counter

CAME, OPEN = "PO-2026-0001", "PO-2026-0002"
"""An order of which all came, and one of which nothing did."""

BELT, KEEPER, SHEAR, BEARING = 1, 2, 3, 4
"""Lines of the order: the belt, ten keepers in a pack though two are needed, two shear bolts, the bearing."""


def desk_of(app: Flask, at: datetime = NOW, who: str = CLERK) -> Desk:
    """A desk at the counter's own store, to look at what pages did."""
    return Desk(store=app.config[STORE], at=at, who=who)


@contextmanager
def counter_with_order(folder: Path, now: datetime = NOW) -> Iterator[Flask]:
    """The counter two days after job 2026-0002 was ordered."""
    with counter(folder, now=now) as app:
        place_orders(desk_of(app, ORDERING), [APPROVED])
        yield app
