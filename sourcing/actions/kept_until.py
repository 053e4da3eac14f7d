"""Something worked out of the whole store, remembered until a deed in the ledger may have changed it.

Every deed stands in the ledger in the same transaction as what it did, whoever wrote it: another page, a command,
another computer. So what was worked out holds as long as the deeds since are about nothing it depends on. Nothing of
it is kept in the database: a counter that starts anew works everything out once.
"""

from collections import OrderedDict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Lock
from typing import Generic, NamedTuple, TypeVar
from weakref import WeakKeyDictionary

from sqlalchemy import Connection

from ..storage.database import Store
from ..storage.deeds import Since, deeds_since, newest_deed
from .desk import Desk

V = TypeVar("V")
Key = tuple[object, ...]


class _Kept(NamedTuple, Generic[V]):
    newest: int
    value: V


class KeptUntil(Generic[V]):
    """Values of each store by what they were asked for; the `most` last used of them are remembered.

    `after` makes a value true after these deeds; None: it is worked out anew. One at a time: what two pages need is
    not worked out twice.
    """

    def __init__(self, after: Callable[[V, Connection, Since], V | None], most: int = 1) -> None:
        self._after, self._most = after, most
        self._kept: WeakKeyDictionary[Store, OrderedDict[Key, _Kept[V]]] = WeakKeyDictionary()
        self._lock = Lock()

    def get(self, connection: Connection, desk: Desk, make: Callable[[], V], *asked: object) -> V:
        """The value of the desk's day as it stands in this transaction, which must not have written anything yet."""
        with self.held(connection, desk.store, make, (desk.at.date(), *asked)) as value:
            return value

    @contextmanager
    def held(self, connection: Connection, store: Store, make: Callable[[], V], key: Key = ()) -> Iterator[V]:
        """The same for a value that holds on every day; nobody else has it until the end."""
        newest = newest_deed(connection)
        with self._lock:
            mine = self._kept.setdefault(store, OrderedDict())
            kept = mine.get(key)
            if kept is not None and newest < kept.newest:  # begun before the last deed: it sees what was
                yield make()
                return
            value = None if kept is None else self._still(kept, connection, newest)
            value = make() if value is None else value
            mine[key] = _Kept(newest, value)
            mine.move_to_end(key)
            while len(mine) > self._most:
                mine.popitem(last=False)
            yield value

    def _still(self, kept: _Kept[V], connection: Connection, newest: int) -> V | None:
        if newest == kept.newest:
            return kept.value
        return self._after(kept.value, connection, deeds_since(connection, kept.newest))
