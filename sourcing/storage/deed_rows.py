"""The ledger by pages: the newest deeds first, of one person, about one thing, of some days, and how many there are."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import ColumnElement, Connection, func, select, true

from ..basics.deed import Deed
from ..basics.value import Value
from .job_tables import DEEDS


class Which(Value, frozen=True, kw_only=True):
    """Which deeds: blank fields and None ask for all. `after` and `before` are moments; `before` is left out."""

    who: str = ""
    subject: str = ""
    after: datetime | None = None
    before: datetime | None = None


def deeds_newest_first(connection: Connection, which: Which, first: int, most: int) -> list[Deed]:
    """So many deeds from the row of that number on, the newest row being 0."""
    query = select(DEEDS).where(_asked(which)).order_by(DEEDS.c.deed.desc()).offset(first).limit(most)
    return [
        Deed(at=row.at, who=row.who, deed=row.done, subject=row.subject, detail=row.detail)
        for row in connection.execute(query)
    ]


def how_many_deeds(connection: Connection, which: Which) -> int:
    """How many there are."""
    return connection.execute(select(func.count()).select_from(DEEDS).where(_asked(which))).scalar_one()


def who_did_deeds(connection: Connection) -> Sequence[str]:
    """Everybody who ever did something, by name."""
    return list(connection.execute(select(DEEDS.c.who).distinct().order_by(DEEDS.c.who)).scalars())


def _asked(which: Which) -> ColumnElement[bool]:
    asked: ColumnElement[bool] = true()
    if which.who:
        asked &= DEEDS.c.who == which.who
    if which.subject:
        asked &= DEEDS.c.subject == which.subject
    if which.after:
        asked &= DEEDS.c.at >= which.after
    if which.before:
        asked &= DEEDS.c.at < which.before
    return asked


def subjects_of(connection: Connection, done: Sequence[str]) -> set[str]:
    """What was ever done by one of these deeds was done about these."""
    return set(connection.execute(select(DEEDS.c.subject).where(DEEDS.c.done.in_(done)).distinct()).scalars())
