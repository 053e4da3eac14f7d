"""Something worked out of the whole store, remembered until a deed in the ledger may have changed it.

Every deed stands in the ledger in the same transaction as what it did, whoever wrote it: another page, a command,
another computer. So what was worked out holds as long as the deeds since are about nothing it depends on.
"""

from collections.abc import Callable
from datetime import date
from threading import Lock
from typing import Generic, NamedTuple, TypeVar
from weakref import WeakKeyDictionary

from sqlalchemy import Connection

from ..storage.database import Store
from ..storage.deeds import newest_deed, subjects_after
from .desk import Desk

V = TypeVar("V")


class _Kept(NamedTuple, Generic[V]):
    newest: int
    day: date
    value: V


class KeptUntil(Generic[V]):
    """One value for each store. `after` makes the value true after deeds about these subjects; None: work it out anew.

    A day that is over makes it old too. One at a time: what two pages need is not worked out twice.
    """

    def __init__(self, after: Callable[[V, Connection, set[str]], V | None]) -> None:
        self._after = after
        self._kept: WeakKeyDictionary[Store, _Kept[V]] = WeakKeyDictionary()
        self._lock = Lock()

    def get(self, connection: Connection, desk: Desk, make: Callable[[], V]) -> V:
        """The value as it stands in this transaction, which must not have written anything yet."""
        newest, day = newest_deed(connection), desk.at.date()
        with self._lock:
            kept = self._kept.get(desk.store)
            if kept is not None and newest < kept.newest:  # begun before the last deed: it sees what was
                return make()
            value = self._value(kept, connection, newest, day)
            value = make() if value is None else value
            self._kept[desk.store] = _Kept(newest, day, value)
            return value

    def _value(self, kept: _Kept[V] | None, connection: Connection, newest: int, day: date) -> V | None:
        if kept is None or kept.day != day:
            return None
        if newest == kept.newest:
            return kept.value
        return self._after(kept.value, connection, subjects_after(connection, kept.newest))
