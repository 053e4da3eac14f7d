"""Promised days of ordered goods: read off an order and what happened to it, and the history of a line's days."""

from collections.abc import Iterable
from itertools import pairwise

from ..basics.order import LineEvent, OrderEvent, PurchaseOrder
from ..basics.order_now import LineNow
from ..basics.promise import Promise

RECKONED = "worked out from the sheet and the terms when it was ordered; the supplier has not said it"

AT_THE_EARLIEST = "at the earliest"
"""How the words of a promise begin where only the first day was named."""


def promises_from_order(order: PurchaseOrder) -> tuple[Promise, ...]:
    """The days expected when the order was placed, line by line; nothing where no day could be worked out.

    They are the shop's own reckoning, so the shop stands as who said it.
    """
    if order.expected is None:
        return ()
    earliest, latest = order.expected
    return tuple(
        Promise(
            kind="parts here",
            job=line.job,
            order=order.number,
            line=line.line,
            earliest=earliest,
            latest=latest,
            said_by=order.shop_name,
            said_at=order.placed_at,
            taken_by=order.placed_by,
            words=RECKONED,
        )
        for line in order.lines
    )


def promises_from_event(order: PurchaseOrder, event: OrderEvent) -> tuple[Promise, ...]:
    """The days the supplier named, for each line of which he named one. One day alone stands for both."""
    jobs = {line.line: line.job for line in order.lines}
    dated = [said for said in event.lines if said.line in jobs and (said.earliest or said.latest)]
    return tuple(_promise(order, event, said, jobs[said.line]) for said in dated)


def days_of(now: LineNow, order: PurchaseOrder, promises: Iterable[Promise]) -> tuple[Promise, ...]:
    """Every day ever named for the line's goods, oldest word first; the last one is what holds.

    `promises` are those kept for the job. One that names no order is about all goods of the job, one that names no
    line about the whole order. The days of the order and of what happened to it are among them, whether or not they
    were kept as promises too.
    """
    line = now.line
    kept = [
        one
        for one in promises
        if one.kind == "parts here"
        and one.job == line.job
        and one.order in ("", order.number)
        and one.line in (None, line.line)
    ]
    known = {(one.earliest, one.latest, one.said_at) for one in kept}
    told = [one for one in _told(now, order) if (one.earliest, one.latest, one.said_at) not in known]
    return tuple(sorted((*told, *kept), key=lambda one: one.said_at))


def moved(days: Iterable[Promise]) -> int:
    """How often the last day was changed by a later word."""
    last = [one.latest for one in days]
    return sum(1 for before, after in pairwise(last) if before != after)


def _told(now: LineNow, order: PurchaseOrder) -> Iterable[Promise]:
    for one in now.days:
        yield Promise(
            kind="parts here",
            job=now.line.job,
            order=order.number,
            line=now.line.line,
            earliest=one.earliest,
            latest=one.latest,
            said_by=one.said_by or order.shop_name,
            said_at=one.at,
            taken_by="" if one.said_by else order.placed_by,
            words="" if one.said_by else RECKONED,
        )


def _promise(order: PurchaseOrder, event: OrderEvent, said: LineEvent, job: str) -> Promise:
    latest = said.latest or said.earliest
    earliest = said.earliest or said.latest
    assert latest is not None and earliest is not None  # only dated lines come here
    at_least = "" if said.latest else AT_THE_EARLIEST
    return Promise(
        kind="parts here",
        job=job,
        order=order.number,
        line=said.line,
        earliest=earliest,
        latest=latest,
        said_by=event.said_by or order.supplier_name,
        said_at=event.at,
        taken_by=event.who,
        words="; ".join(words for words in (at_least, event.words) if words),
    )
