"""The list of purchase orders: those something is still to come of first, the one due first at the top."""

from collections.abc import Sequence
from datetime import date
from typing import Literal

from sqlalchemy import Connection

from ..basics.order import Receipt
from ..basics.order_now import OrderNow
from ..basics.value import Value
from ..ordering.order_now import good_pieces, open_pieces, order_now
from ..storage.order_rows import every_order
from .desk import Desk

Which = Literal["open", "late", "not confirmed", "all"]
WHICH: tuple[Which, ...] = ("open", "late", "not confirmed", "all")
ROWS = 50
"""Rows of a page."""


class OrderRow(Value, frozen=True, kw_only=True):
    """An order as it stands now. `left`: pieces still to come by line number. `due`: the last day of what is still to
    come, by the last word; None where nothing is to come or no day is known. `only_counted`: papers of which nobody
    said yet what they charge."""

    now: OrderNow
    left: dict[int, int]
    due: date | None
    is_late: bool
    only_counted: tuple[str, ...] = ()

    @property
    def jobs(self) -> tuple[str, ...]:
        """The jobs it has goods for."""
        return tuple(sorted({line.job for line in self.now.order.lines}))

    @property
    def is_open(self) -> bool:
        """Whether something is still to come."""
        return bool(self.left)

    @property
    def word(self) -> Literal["late", "on its way", "not confirmed", "all came", "cancelled"]:
        """Where it stands, in one word."""
        if self.now.cancelled:
            return "cancelled"
        if not self.left:
            return "all came"
        return "late" if self.is_late else "on its way" if self.now.confirmed else "not confirmed"


class OrdersShown(Value, frozen=True, kw_only=True):
    """One page of the list. `first`: number of its first row, counted from 1; `total`: rows in all; `pages` in all.
    `suppliers`: short name and name of everybody anything was ever ordered from."""

    rows: tuple[OrderRow, ...]
    first: int
    total: int
    page: int
    pages: int
    suppliers: tuple[tuple[str, str], ...]


def order_rows(connection: Connection, today: date) -> list[OrderRow]:
    """Every order, oldest number first."""
    return [
        _row(order_now(one, happened), good_pieces(came), _counted(came), today)
        for one, happened, came in every_order(connection)
    ]


def orders_shown(desk: Desk, which: Which = "open", supplier: str = "", job: str = "", page: int = 1) -> OrdersShown:
    """One page of the orders asked for. A page beyond the last is the last."""
    with desk.store.reading() as connection:
        every = order_rows(connection, desk.at.date())
    names = {one.now.order.supplier: one.now.order.supplier_name for one in every}
    found = sorted((one for one in every if _is_asked(one, which, supplier, job)), key=_due_first)
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


def _is_asked(one: OrderRow, which: Which, supplier: str, job: str) -> bool:
    asked = {
        "open": one.is_open or bool(one.only_counted),
        "late": one.is_late,
        "not confirmed": one.is_open and not one.now.confirmed,
        "all": True,
    }
    return asked[which] and supplier in ("", one.now.order.supplier) and (not job or job in one.jobs)


def _due_first(one: OrderRow) -> tuple[bool, date, tuple[int, ...]]:
    """Open ones by the day they are due, those without a day last; then the rest, the newest first."""
    number = tuple(int(part) for part in one.now.order.number.split("-")[1:])
    if one.is_open:
        return False, one.due or date.max, number
    return True, date.max, tuple(-part for part in number)


def _row(now: OrderNow, came: dict[int, int], counted: tuple[str, ...], today: date) -> OrderRow:
    left = open_pieces(now, came)
    days = [one.latest for one in now.lines if one.line.line in left and one.latest]
    due = max(days, default=None)
    return OrderRow(now=now, left=left, due=due, is_late=any(day < today for day in days), only_counted=counted)


def _counted(came: Sequence[Receipt]) -> tuple[str, ...]:
    return tuple(one.paper for one in came if one.only_counted)
