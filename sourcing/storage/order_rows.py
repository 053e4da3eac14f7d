"""All orders with all that happened to them, read in three queries: for lists, which show many orders at once."""

from collections import defaultdict
from collections.abc import Iterable
from typing import TypeVar

from sqlalchemy import Connection

from ..basics.order import OrderEvent, PurchaseOrder, Receipt
from .after_order import events
from .orders import orders, receipts

T = TypeVar("T", OrderEvent, Receipt)


def every_order(connection: Connection) -> list[tuple[PurchaseOrder, list[OrderEvent], list[Receipt]]]:
    """Every order with its events and its receipts that count, oldest number first."""
    happened, came = _by_order(events(connection)), _by_order(receipts(connection))
    return [(one, happened[one.number], came[one.number]) for one in orders(connection)]


def _by_order(some: Iterable[T]) -> defaultdict[str, list[T]]:
    found: defaultdict[str, list[T]] = defaultdict(list)
    for one in some:
        found[one.order].append(one)
    return found
