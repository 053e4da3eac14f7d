"""The ledger: who did what when, in order."""

from ..basics.deed import Deed
from ..storage.deeds import deeds
from .desk import Desk


def history(desk: Desk, subject: str | None) -> tuple[Deed, ...]:
    """Every deed, or those about one job or sheet, oldest first."""
    with desk.store.reading() as connection:
        return tuple(deeds(connection, subject))
