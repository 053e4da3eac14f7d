"""The list of purchase orders: those something is still to come of first, the one due first at the top."""

from collections.abc import Collection, Iterator
from datetime import date
from typing import Literal

from sqlalchemy import Connection

from ..basics.order_row import OrderRow
from ..basics.value import Value
from ..ordering.order_now import good_pieces, open_pieces, order_now
from ..storage.order_rows import orders_with_all
from .desk import Desk
from .remembered import Remembered, with_remembered

Which = Literal["open", "late", "not confirmed", "all"]
WHICH: tuple[Which, ...] = ("open", "late", "not confirmed", "all")
ROWS = 50
"""Rows of a page."""


class OrdersShown(Value, frozen=True, kw_only=True):
    """One page of the list. `first`: number of its first row, counted from 1; `total`: rows in all; `pages` in all.
    `suppliers`: short name and name of everybody anything was ever ordered from."""

    rows: tuple[OrderRow, ...]
    first: int
    total: int
    page: int
    pages: int
    suppliers: tuple[tuple[str, str], ...]


def order_rows(desk: Desk, connection: Connection) -> list[OrderRow]:
    """Every order, oldest number first; what no deed has changed is remembered from the page before."""

    def use(kept: Remembered, orders: dict[str, set[str]]) -> list[OrderRow]:
        missing = {number for number in orders if number not in kept.rows}
        if missing:
            kept.rows |= {row.number: row for row in _rows(connection, missing)}
        return sorted((kept.rows[number] for number in orders), key=lambda row: row.serial)

    return with_remembered(desk.store, connection, desk.at.date(), use)


def orders_shown(desk: Desk, which: Which = "open", supplier: str = "", job: str = "", page: int = 1) -> OrdersShown:
    """One page of the orders asked for. A page beyond the last is the last."""
    with desk.store.reading() as connection:
        every = order_rows(desk, connection)
    names = {one.now.order.supplier: one.now.order.supplier_name for one in every}
    asked = (one for one in every if _is_asked(one, which, desk.at.date()))
    mine = (one for one in asked if supplier in ("", one.now.order.supplier) and (not job or job in one.jobs))
    found = sorted(mine, key=_due_first)
    pages = max(-(-len(found) // ROWS), 1)
    here = min(max(page, 1), pages)
    start = (here - 1) * ROWS
    return OrdersShown(
        rows=tuple(found[start : start + ROWS]),
        first=start + 1,
        total=len(found),
        page=here,
        pages=pages,
        suppliers=tuple(sorted(names.items(), key=lambda one: one[1].casefold())),
    )


def _is_asked(one: OrderRow, which: Which, today: date) -> bool:
    asked = {
        "open": one.is_open or bool(one.only_counted),
        "late": one.is_late(today),
        "not confirmed": one.is_open and not one.now.confirmed,
        "all": True,
    }
    return asked[which]


def _due_first(one: OrderRow) -> tuple[bool, date, tuple[int, ...]]:
    """Open ones by the day they are due, those without a day last; then the rest, the newest first."""
    if one.is_open:
        return False, one.due or date.max, one.serial
    return True, date.max, tuple(-part for part in one.serial)


def _rows(connection: Connection, numbers: Collection[str]) -> Iterator[OrderRow]:
    for bought, happened, came in orders_with_all(connection, numbers):
        now = order_now(bought, happened)
        left = open_pieces(now, good_pieces(came))
        days = [one.latest for one in now.lines if one.line.line in left and one.latest]
        yield OrderRow(
            now=now,
            left=left,
            due=max(days, default=None),
            first_due=min(days, default=None),
            papers=tuple(one.paper for one in came),
            only_counted=tuple(one.paper for one in came if one.only_counted),
        )
