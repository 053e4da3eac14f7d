"""The whole ledger by pages, for the owner: it names costs and markup bands where they were changed."""

from datetime import date, datetime, time, timedelta

from ..basics.deed import Deed
from ..basics.value import Value
from ..storage.deed_rows import Which, deeds_newest_first, how_many_deeds, who_did_deeds
from .desk import Desk

ROWS = 50
"""Rows of a page."""


class DeedsAsked(Value, frozen=True, kw_only=True):
    """Which deeds: of one person, about one job, order, sheet or supplier, from and to these days; blank: all."""

    who: str = ""
    about: str = ""
    since: date | None = None
    until: date | None = None


class DeedsShown(Value, frozen=True, kw_only=True):
    """One page of deeds, the newest first. `first`: number of its first row, counted from 1; `who`: everybody who
    ever did something."""

    rows: tuple[Deed, ...]
    first: int
    total: int
    page: int
    pages: int
    who: tuple[str, ...]


def deeds_shown(desk: Desk, asked: DeedsAsked, page: int = 1) -> DeedsShown:
    """One page of the deeds asked for. A page beyond the last is the last."""
    which = Which(
        who=asked.who,
        subject=asked.about,
        after=_start(asked.since),
        before=_start(asked.until + timedelta(days=1) if asked.until and asked.until < date.max else None),
    )
    with desk.store.reading() as connection:
        total = how_many_deeds(connection, which)
        pages = max(-(-total // ROWS), 1)
        here = min(max(page, 1), pages)
        first = (here - 1) * ROWS
        rows = deeds_newest_first(connection, which, first, ROWS)
        who = who_did_deeds(connection)
    return DeedsShown(rows=tuple(rows), first=first + 1, total=total, page=here, pages=pages, who=tuple(who))


def _start(day: date | None) -> datetime | None:
    return datetime.combine(day, time.min) if day else None
