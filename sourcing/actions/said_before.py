"""Another price or number that a supplier confirmed before the line was cancelled: it is told where the same is to be
ordered from him again. His days count by themselves, wherever offers are looked at."""

from collections.abc import Iterator

from sqlalchemy import Connection

from ..basics.offer import Offer
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..ordering.order_now import order_now
from ..storage.after_order import events
from ..storage.orders import orders


def said_before(connection: Connection, job: str, offer: Offer) -> tuple[str, ...]:
    """In sentences what he confirmed otherwise of the job's cancelled lines of that offer, as long as his sheet is not
    of a later day than the word."""
    return tuple(
        f"{now.order.supplier_name} said of {offer.supplier_number} on {now.order.number}, cancelled since: {other}"
        for now, line in _cancelled(connection, job, offer)
        for other in _otherwise(now, line, offer)
    )


def _cancelled(connection: Connection, job: str, offer: Offer) -> Iterator[tuple[OrderNow, LineNow]]:
    for order in orders(connection, job):
        now = order_now(order, events(connection, order.number))
        gone = {said.line for event in now.events if event.what == "cancelled" for said in event.lines}
        for line in now.lines:
            mine = (order.supplier, number_key(line.line.supplier_number), line.line.job)
            if line.line.line in gone and mine == (offer.supplier, number_key(offer.supplier_number), job):
                yield now, line


def _otherwise(now: OrderNow, line: LineNow, offer: Offer) -> Iterator[str]:
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
