"""Everything that waits to go back, or for credit: worked out anew only where a deed changed something."""

from ..basics.claim import GoodsBackOpen
from .desk import Desk
from .goods_back import waiting_of_orders
from .remembered import Remembered, with_remembered


def back_list(desk: Desk) -> tuple[GoodsBackOpen, ...]:
    """What waits, the earliest last day first; those without a last day follow, by the day since which they wait."""
    with desk.store.reading() as connection:

        def use(kept: Remembered, orders: dict[str, set[str]]) -> list[GoodsBackOpen]:
            missing = [order for order in orders if order not in kept.back]
            if missing:
                kept.back |= waiting_of_orders(connection, desk, missing)
            return [one for waiting in kept.back.values() for one in waiting]

        found = with_remembered(desk.store, connection, desk.at.date(), use)
    return tuple(sorted(found, key=lambda one: (one.due is None, one.due or one.since, one.since, one.order, one.line)))
