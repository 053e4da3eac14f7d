"""What a supplier said of goods before their line on the order was cancelled: where the same is to be ordered from him
again, his word still counts until a newer sheet of his speaks."""

from collections.abc import Iterator
from datetime import date

from sqlalchemy import Connection

from ..basics.offer import Offer
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..basics.promise import Promise
from ..basics.value import Value
from ..ordering.order_now import order_now
from ..ordering.promised import RECKONED, days_of
from ..storage.after_order import events, promises
from ..storage.orders import orders


class SaidBefore(Value, frozen=True, kw_only=True):
    """The last day he named (None: none) and, in sentences, that day and any other price or number he confirmed."""

    latest: date | None = None
    words: tuple[str, ...] = ()


def said_before(connection: Connection, job: str, offer: Offer) -> SaidBefore:
    """The supplier's last word on the job's cancelled lines of that offer, as long as his sheet is not of a later day
    than the word."""
    latest, words = None, []
    for now, line in _cancelled(connection, job, offer):
        known = [one for one in days_of(line, now.order, promises(connection, job)) if _counts(one, offer)]
        of = f"{now.order.supplier_name} said of {offer.supplier_number} on {now.order.number}, cancelled since"
        if known:
            latest = known[-1].latest
            words.append(f"{of}: here by {latest}")
        words += [f"{of}: {other}" for other in _otherwise(now, line, offer)]
    return SaidBefore(latest=latest, words=tuple(words))


def no_sooner(reckoned: date | None, said: SaidBefore) -> date | None:
    """The last day the goods would be here: by sheet and terms, but no sooner than he has said; None: not known."""
    days = [day for day in (reckoned, said.latest) if day is not None]
    return max(days, default=None)


def _cancelled(connection: Connection, job: str, offer: Offer) -> Iterator[tuple[OrderNow, LineNow]]:
    for order in orders(connection, job):
        now = order_now(order, events(connection, order.number))
        gone = {said.line for event in now.events if event.what == "cancelled" for said in event.lines}
        for line in now.lines:
            mine = (order.supplier, number_key(line.line.supplier_number), line.line.job)
            if line.line.line in gone and mine == (offer.supplier, number_key(offer.supplier_number), job):
                yield now, line


def _counts(one: Promise, offer: Offer) -> bool:
    return one.words != RECKONED and one.said_at.date() >= offer.source.sheet_date


def _otherwise(now: OrderNow, line: LineNow, offer: Offer) -> Iterator[str]:
    """Another price or number than was ordered, where he confirmed it no earlier than the sheet's day."""
    for event in now.events:
        if event.what != "confirmed" or event.at.date() < offer.source.sheet_date:
            continue
        for said in event.lines:
            if said.line != line.line.line:
                continue
            if said.unit_price is not None and said.unit_price != line.line.unit_price:
                yield f"{said.unit_price} {now.order.currency} instead of {line.line.unit_price}"
            if said.number and number_key(said.number) != number_key(line.line.supplier_number):
                yield f"{said.number} instead of {line.line.supplier_number}"
