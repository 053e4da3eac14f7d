"""Our parts as matching sees them, remembered between two pages: a long table is not read anew for every answer."""

import re

from sqlalchemy import Connection

from ..storage.deeds import Since
from ..storage.judgements import judgements
from .desk import Desk
from .kept_until import KeptUntil
from .known_table import known_table
from .our_side import OurSide, our_side_of

ANSWERED = re.compile(r"candidate (\d+)")
LET_PASS = re.compile(r"(PO-)?\d{4}-\d{4,}|people")
"""Deeds about jobs, orders and people leave table, sheets, terms and number rules as they are."""


def our_side_now(connection: Connection, desk: Desk) -> OurSide:
    """As `our_side`, in a transaction that has not written anything yet."""

    def make() -> OurSide:
        table = known_table(desk.store, connection)
        return our_side_of(connection, table.every, desk.at.date(), table.borne)

    return _KEPT.get(connection, desk, make)


def _after(side: OurSide, connection: Connection, since: Since) -> OurSide | None:
    """A no makes no statement."""
    answered, others = answered_in(since)
    if others or any(one.answer == "yes" for number in answered for one in judgements(connection, number)):
        return None
    return side


def answered_in(since: Since) -> tuple[list[int], bool]:
    """The candidates that were answered, and whether there are deeds about more than those, jobs and orders."""
    found = {one: ANSWERED.fullmatch(one) for one in since.subjects}
    answered = [int(match.group(1)) for match in found.values() if match]
    return answered, any(match is None and not LET_PASS.fullmatch(one) for one, match in found.items())


_KEPT = KeptUntil(_after)
