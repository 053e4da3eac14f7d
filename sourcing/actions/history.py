"""The ledger: who did what when, in order."""

from sqlalchemy import Connection

from ..basics.deed import Deed
from ..basics.value import changed
from ..storage.deeds import deeds
from ..storage.orders import orders
from .desk import Desk


def history(desk: Desk, subject: str | None) -> tuple[Deed, ...]:
    """Every deed, or those about one job or sheet, oldest first. A job's deeds are also those about its orders."""
    with desk.store.reading() as connection:
        return tuple(deeds(connection)) if subject is None else deeds_of(connection, subject)


def deeds_of(connection: Connection, subject: str) -> tuple[Deed, ...]:
    """Deeds about a job with its orders, or about a sheet, in the order they were entered."""
    return tuple(deeds(connection, subject, *(one.number for one in orders(connection, subject))))


WITHOUT_COSTS = frozenset(
    (
        *("take in job", "change job", "add photo", "take photo out", "put photo back", "add evidence"),
        *("take evidence back", "give quote", "answer", "take back", "promise", "make link", "revoke link"),
    )
)
"""Deeds whose sentences never hold what the shop pays."""


def for_the_bench(some: tuple[Deed, ...]) -> tuple[Deed, ...]:
    """The deeds without the sentence of any that may hold what the shop pays: who did what when is for everybody."""
    return tuple(one if one.deed in WITHOUT_COSTS else changed(one, detail="") for one in some)
