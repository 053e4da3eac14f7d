"""What lists of all jobs show, remembered between two pages: worked out anew only for what a deed has changed.

What was worked out of a job or an order holds until the ledger has a newer deed about it (see kept_until.py).
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date
from typing import TypeVar

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.job_state import JobFacts
from ..basics.money import Money
from ..basics.order_row import OrderRow
from ..basics.promise import OpenPromise
from ..storage.database import Store
from ..storage.deeds import Since
from ..storage.orders import lines_of_orders
from .kept_until import KeptUntil

T = TypeVar("T")
UNRELATED = re.compile(r"(candidate|sheet|statement) \d+|people|makers")
"""What deeds can be about without a job or an order being any different."""


@dataclass
class Remembered:
    """By job its facts, what of its deposits is left after the bill, and what is promised in it and open; by order what
    of it waits to go back, and how lists of orders show it."""

    facts: dict[str, JobFacts] = field(default_factory=dict)
    held: dict[str, Money | None] = field(default_factory=dict)
    promised: dict[str, tuple[OpenPromise, ...]] = field(default_factory=dict)
    back: dict[str, tuple[GoodsBackOpen, ...]] = field(default_factory=dict)
    rows: dict[str, OrderRow] = field(default_factory=dict)
    since: set[str] = field(default_factory=set)
    on: date | None = None

    def bring_to(self, on: date, orders: dict[str, set[str]]) -> None:
        """Forget what the deeds since may have changed; what is about no job or order is about everything.

        `since`: what they are about. `orders`: the jobs of each order. What waits to go back also follows from the
        terms of the day, and how many days a promise is over from the day.
        """
        if self.on != on:
            self.back.clear()
            self.promised.clear()
            self.on = on
        of_job: dict[str, set[str]] = {}
        for order, jobs in orders.items():
            for job in jobs:
                of_job.setdefault(job, set()).add(order)
        for subject in self.since:
            if subject in orders:
                self._forget(orders[subject], {subject})
            elif any(subject in known for known in (of_job, self.facts, self.held, self.promised)):
                self._forget({subject}, of_job.get(subject, set()))
            elif not UNRELATED.fullmatch(subject):
                self.back.clear()
        self.since = set()

    def _forget(self, jobs: Iterable[str], orders: Iterable[str]) -> None:
        for job in jobs:
            self.facts.pop(job, None)
            self.held.pop(job, None)
            self.promised.pop(job, None)
        for order in orders:
            self.back.pop(order, None)
            self.rows.pop(order, None)


def with_remembered(
    store: Store, connection: Connection, on: date, use: Callable[[Remembered, dict[str, set[str]]], T]
) -> T:
    """What `use` makes of what is remembered as it stands in this transaction, and of the jobs of every order.

    `use` adds to it what is missing. A transaction that began before the last deed gets a memory of its own.
    """
    orders = lines_of_orders(connection)
    with _KEPT.held(connection, store, Remembered) as kept:
        kept.bring_to(on, orders)
        return use(kept, orders)


def _after(kept: Remembered, _: Connection, since: Since) -> Remembered:
    kept.since |= since.subjects
    return kept


_KEPT = KeptUntil(_after)
