"""What lists of all jobs show, remembered between two pages: worked out anew only for what a deed has changed.

Every deed stands in the ledger with what it is about, in the same transaction as what it did. So what was worked out of
a job or an order holds until the ledger has a newer deed about it, whoever wrote it: another page, a command, another
computer. Nothing here is kept in the database; a counter that starts anew works everything out once.
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date
from threading import Lock
from typing import TypeVar
from weakref import WeakKeyDictionary

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.job_state import JobFacts
from ..basics.money import Money
from ..basics.order_row import OrderRow
from ..basics.promise import OpenPromise
from ..storage.database import Store
from ..storage.deeds import newest_deed, subjects_after
from ..storage.orders import lines_of_orders

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
    newest: int = 0
    on: date | None = None

    def forget(self, subjects: Iterable[str], orders: dict[str, set[str]], on: date) -> None:
        """Forget what deeds about these subjects may have changed; what is about none of them is about everything.

        `orders`: the jobs of each order. What waits to go back also follows from the terms of the day, and how
        many days a promise is over from the day.
        """
        if self.on != on:
            self.back.clear()
            self.promised.clear()
            self.on = on
        of_job: dict[str, set[str]] = {}
        for order, jobs in orders.items():
            for job in jobs:
                of_job.setdefault(job, set()).add(order)
        for subject in subjects:
            if subject in orders:
                self._forget(orders[subject], {subject})
            elif any(subject in known for known in (of_job, self.facts, self.held, self.promised)):
                self._forget({subject}, of_job.get(subject, set()))
            elif not UNRELATED.fullmatch(subject):
                self.back.clear()

    def _forget(self, jobs: Iterable[str], orders: Iterable[str]) -> None:
        for job in jobs:
            self.facts.pop(job, None)
            self.held.pop(job, None)
            self.promised.pop(job, None)
        for order in orders:
            self.back.pop(order, None)
            self.rows.pop(order, None)


_KEPT: WeakKeyDictionary[Store, tuple[Lock, Remembered]] = WeakKeyDictionary()
_MAKING = Lock()


T = TypeVar("T")


def with_remembered(
    store: Store, connection: Connection, on: date, use: Callable[[Remembered, dict[str, set[str]]], T]
) -> T:
    """What `use` makes of what is remembered as it stands in this transaction, and of the jobs of every order.

    `use` adds to it what is missing. One at a time: what two pages need is not worked out twice. A transaction that
    began before what is remembered was last worked out gets a memory of its own.
    """
    with _MAKING:
        lock, kept = _KEPT.setdefault(store, (Lock(), Remembered()))
    newest, orders = newest_deed(connection), lines_of_orders(connection)
    with lock:
        if newest < kept.newest:
            return use(Remembered(on=on, newest=newest), orders)
        kept.forget(subjects_after(connection, kept.newest), orders, on)
        kept.newest = newest
        return use(kept, orders)
