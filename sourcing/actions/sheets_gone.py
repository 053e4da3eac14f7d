"""Sheets taken out since a quote was written or an order placed from them, told where a person works on these."""

from collections.abc import Iterator
from datetime import datetime

from sqlalchemy import Connection

from ..basics.deed import Deed
from ..basics.order_now import OrderNow
from ..basics.quote import QuoteLine
from ..storage.deeds import deeds
from ..storage.sheet_origin import sheet_numbers
from .as_quoted import asks_now, item_of, price_now, quoted_offer
from .desk import Desk
from .evaluate import Catalogue, catalogue_to_read
from .job_now import JobNow, job_now
from .sheet_users import UNDO, is_unconfirmed


def sheets_gone_from_quote(desk: Desk, job: str) -> tuple[Deed, ...]:
    """Sheets taken out after the newest quote of the job was written, where an offer a line was quoted on can't be had
    any more by the sheets that are there, or not at that cost.

    Nothing once it is written anew, and nothing where the sheets that are there say the same.
    """
    with desk.store.reading() as connection:
        seen = job_now(connection, job) if _gone(connection, job) else None  # most jobs have none: nothing is read
        gone = _gone(connection, job, seen.standing.quote.made_at) if seen else ()
        if not gone or seen is None:
            return ()
        found = catalogue_to_read(desk, connection)
        return gone if any(_is_other(found, seen, one) for one in _without_sheet(connection, seen)) else ()


def _is_other(found: Catalogue, seen: JobNow, line: QuoteLine) -> bool:
    offer, _why = quoted_offer(found, line, asks_now(found, seen.job, line))
    if offer is None or line.behind is None:
        return True
    cost, _price = price_now(found, item_of(found, offer, line.label, line.quantity), line.category)
    return cost.rounded() != line.behind.unit_cost.rounded()


def _without_sheet(connection: Connection, seen: JobNow) -> Iterator[QuoteLine]:
    """Lines that may still be ordered as quoted, from sheets that are there no more."""
    words, there = seen.standing.words(), sheet_numbers(connection)
    for line in seen.standing.quote.lines:
        waits = words[line.label] != "declined" and line.label not in seen.on_order
        if line.behind and line.behind.sheet not in there and waits:
            yield line


def sheets_gone_from_order(desk: Desk, now: OrderNow) -> tuple[Deed, ...]:
    """Sheets taken out that an order stands on, as long as the supplier has not confirmed it and nothing came."""
    with desk.store.reading() as connection:
        return _gone(connection, now.order.number, now.order.placed_at) if is_unconfirmed(connection, now) else ()


def _gone(connection: Connection, subject: str, since: datetime = datetime.min) -> tuple[Deed, ...]:
    return tuple(one for one in deeds(connection, subject) if one.deed == UNDO and one.at >= since)
