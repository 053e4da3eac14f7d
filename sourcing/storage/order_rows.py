"""Orders with all that happened to them, for lists that show many at once; deliveries by the number of their paper."""

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable
from typing import TypeVar

from sqlalchemy import Connection, select

from ..basics.order import OrderEvent, PurchaseOrder, Receipt
from .after_order import events
from .job_tables import RECEIPTS
from .orders import orders, receipts, some_orders

T = TypeVar("T", OrderEvent, Receipt)

MOST_ALONE = 20
"""Orders read one by one; of more than this all orders are read at once, in three queries."""


def orders_with_all(
    connection: Connection, numbers: Collection[str]
) -> list[tuple[PurchaseOrder, list[OrderEvent], list[Receipt]]]:
    """The orders of these numbers with their events and their receipts that count."""
    if len(numbers) <= MOST_ALONE:
        some = some_orders(connection, numbers)
        return [(one, events(connection, one.number), receipts(connection, one.number)) for one in some]
    happened, came = _by_order(events(connection)), _by_order(receipts(connection))
    return [(one, happened[one.number], came[one.number]) for one in orders(connection) if one.number in numbers]


def receipts_of_paper(connection: Connection, is_it: Callable[[str], bool]) -> list[Receipt]:
    """Deliveries that count whose paper's number is the one asked for. Only their orders' deliveries are read whole."""
    rows = connection.execute(select(RECEIPTS.c.order, RECEIPTS.c.paper))
    numbers = dict.fromkeys(row.order for row in rows if is_it(row.paper))
    return [one for number in numbers for one in receipts(connection, number) if is_it(one.paper)]


def _by_order(some: Iterable[T]) -> defaultdict[str, list[T]]:
    found: defaultdict[str, list[T]] = defaultdict(list)
    for one in some:
        found[one.order].append(one)
    return found
