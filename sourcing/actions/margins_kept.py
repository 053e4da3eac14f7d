"""Margins of many jobs, remembered until anything is kept anew: the page and its drawings work them out once.

What was worked out holds as long as the ledger's newest deed is the same, for whatever is kept enters one, and the day
is. One is worked out at a time; who asks for the same meanwhile waits for it.
"""

from collections import OrderedDict
from threading import Lock
from weakref import WeakKeyDictionary

from ..basics.margin import By, Margins
from ..storage.database import Store
from ..storage.deed_rows import last_deed
from .desk import Desk
from .margin_months import Months
from .margins import margins_by

MOST = 8
"""How many are remembered for each open store, the last used."""

Key = tuple[object, ...]

_kept: "WeakKeyDictionary[Store, OrderedDict[Key, Margins]]" = WeakKeyDictionary()
_turn = Lock()


def margins_kept(desk: Desk, by: By, within: Months | None) -> Margins:
    """What `margins_by` says, from memory where nothing was kept since."""
    with _turn:
        with desk.store.reading() as connection:
            newest = last_deed(connection)
        key: Key = (newest, desk.at.date(), by, within)
        mine = _kept.setdefault(desk.store, OrderedDict())
        if key not in mine:
            mine[key] = margins_by(desk, by, within)
        mine.move_to_end(key)
        while len(mine) > MOST:
            mine.popitem(last=False)
        return mine[key]
