"""Numbers of the newest sheets that are near those of a part, kept between two pages: looked for anew only where a
deed may have changed which sheets are the newest, for it is a look through all numbers of all of them.

Only for transactions that read, as `known_table`.
"""

from datetime import date

from sqlalchemy import Connection

from ..matching.equivalences.family import Family
from ..matching.look_alikes import NearKeys, near_keys, near_lengths
from ..storage.database import Store
from ..storage.deeds import Since
from ..storage.offers import newest_keys_of_length
from .kept_until import KeptUntil
from .known_table import LEAVE_IT

LEAVE_SHEETS = LEAVE_IT - {"import", "undo import"}
MOST = 200
"""Parts remembered: those of the jobs of some days."""


def near_of(connection: Connection, family: Family, day: date) -> NearKeys:
    """The numbers of that day's newest sheets near the family's, looked for now."""
    return near_keys(family, newest_keys_of_length(connection, near_lengths(family), day))


def near_now(store: Store, connection: Connection, family: Family, day: date) -> NearKeys:
    """The same as it was found before, if it still holds."""
    asked = (day, family.part.code, frozenset(family.printed), frozenset(family.forbidden))
    with _KEPT.held(connection, store, lambda: near_of(connection, family, day), asked) as found:
        return found


def _after(found: NearKeys, _: Connection, since: Since) -> NearKeys | None:
    return None if since.done - LEAVE_SHEETS else found


_KEPT: KeptUntil[NearKeys] = KeptUntil(_after, most=MOST)
