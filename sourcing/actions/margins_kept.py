"""Margins of many jobs, remembered until anything is kept anew: the page and its drawings work them out once."""

from sqlalchemy import Connection

from ..basics.margin import By, Margins
from ..storage.deeds import Since
from .desk import Desk
from .kept_until import KeptUntil
from .margin_months import Months
from .margins import margins_by


def margins_kept(desk: Desk, by: By, within: Months | None) -> Margins:
    """What `margins_by` says, from memory where nothing was kept since."""
    with desk.store.reading() as connection:
        return _KEPT.get(connection, desk, lambda: margins_by(desk, by, within), by, within)


def _after(_margins: Margins, _: Connection, _since: Since) -> None:
    """Any deed may change what a job earned."""


_KEPT: KeptUntil[Margins] = KeptUntil(_after, most=8)
