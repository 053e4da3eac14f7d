"""What follows an order: confirmations, changes, cancellations, promised days, goods going back. Added and read."""

from collections.abc import Iterable
from datetime import date, datetime, time

from sqlalchemy import Connection, insert, select, update

from ..basics.order import GoodsBack, OrderEvent
from ..basics.promise import Promise
from .after_tables import GOODS_BACK, ORDER_EVENTS, PROMISES
from .job_tables import PURCHASE_ORDER_LINES
from .rows import as_text, as_value


def add_event(connection: Connection, one: OrderEvent) -> None:
    """Keep what happened to an order."""
    row = {"order": one.order, "what": one.what, "at": one.at, "body": as_text(one)}
    connection.execute(insert(ORDER_EVENTS).values(row))


def events(connection: Connection, order: str | None = None) -> list[OrderEvent]:
    """What happened to an order, or to all, in the order it was recorded."""
    query = select(ORDER_EVENTS.c.body).order_by(ORDER_EVENTS.c.event)
    if order is not None:
        query = query.where(ORDER_EVENTS.c.order == order)
    return [as_value(body, OrderEvent) for body in connection.execute(query).scalars()]


def events_since(connection: Connection, day: date) -> list[OrderEvent]:
    """What happened to any order on that day or after, in the order it was recorded."""
    table = ORDER_EVENTS
    query = select(table.c.body).where(table.c.at >= datetime.combine(day, time())).order_by(table.c.event)
    return [as_value(body, OrderEvent) for body in connection.execute(query).scalars()]


def let_go(connection: Connection, order: str, lines: Iterable[int]) -> None:
    """Lines that are cancelled before any of them came let go of the customer's yes: it can be ordered on anew, or
    taken back. The database refuses it for a line of which something came."""
    table = PURCHASE_ORDER_LINES
    for line in lines:
        same = (table.c.order == order) & (table.c.line == line)
        gone = {"cancelled": "yes", "approval": None, "answer": None, "holds": None}
        connection.execute(update(table).where(same).values(gone))


def standing_lines(connection: Connection) -> set[tuple[str, str]]:
    """Job and label of every line that stands on an order, cancelled ones left out."""
    table = PURCHASE_ORDER_LINES
    query = select(table.c.job, table.c.label).where(table.c.cancelled == "no")
    return {(row.job, row.label) for row in connection.execute(query)}


def standing_on(connection: Connection, job: str) -> list[tuple[str, str, int]]:
    """Label, order and line of each line of the job that stands on an order, cancelled ones left out."""
    table = PURCHASE_ORDER_LINES
    query = select(table.c.label, table.c.order, table.c.line).where(table.c.job == job, table.c.cancelled == "no")
    return [(row.label, row.order, row.line) for row in connection.execute(query.order_by(table.c.order, table.c.line))]


def add_promise(connection: Connection, one: Promise) -> None:
    """Keep a promised day beside the earlier ones."""
    connection.execute(insert(PROMISES).values({"job": one.job, "order": one.order, "body": as_text(one)}))


def promises(connection: Connection, job: str | None = None) -> list[Promise]:
    """Promised days of a job, or all, in the order they were said."""
    query = select(PROMISES.c.body).order_by(PROMISES.c.promise)
    if job is not None:
        query = query.where(PROMISES.c.job == job)
    return [as_value(body, Promise) for body in connection.execute(query).scalars()]


def add_goods_back(connection: Connection, one: GoodsBack) -> None:
    """Keep a step of an old part or of goods going back, or the word that takes the last one back. The database
    refuses a line that no order has."""
    row = {"order": one.order, "line": one.line, "body": as_text(one)}
    connection.execute(insert(GOODS_BACK).values(row))


def goods_back(connection: Connection, order: str | None = None) -> list[GoodsBack]:
    """Steps of things going back, of an order or all, in the order recorded. What was taken back as taken down wrongly
    is left out, and so is the word that took it back: `every_step_back` has both."""
    counts: list[GoodsBack] = []
    for one in every_step_back(connection, order):
        if one.takes_back:
            counts.pop(max(at for at, step in enumerate(counts) if is_same_pile(step, one)))
        else:
            counts.append(one)
    return counts


def is_same_pile(one: GoodsBack, other: GoodsBack) -> bool:
    """Whether both are about the old parts, or both about the goods, of one line of one order."""
    return (one.order, one.line, one.kind) == (other.order, other.line, other.kind)


def every_step_back(connection: Connection, order: str | None = None) -> list[GoodsBack]:
    """Every step ever taken down, taken back or not, with the words that took some back."""
    query = select(GOODS_BACK.c.body).order_by(GOODS_BACK.c.step)
    if order is not None:
        query = query.where(GOODS_BACK.c.order == order)
    return [as_value(body, GoodsBack) for body in connection.execute(query).scalars()]
