"""The equivalence table ready for questions, kept between two pages: read anew only when it may have changed.

Only for transactions that read: what they see was kept, with its deed in the ledger, in one transaction. A table that
is being changed in the same transaction must be read as it stands there: `evaluate.catalogue` without it.
"""

import unicodedata
from dataclasses import dataclass
from functools import cached_property

from sqlalchemy import Connection

from ..basics.equivalence import OurPart
from ..basics.part_number import number_key
from ..matching.equivalences.graph import Families, families
from ..storage.database import Store
from ..storage.deeds import Since
from ..storage.equivalence import equivalence_table
from ..storage.look_up import table_marks
from .kept_until import KeptUntil
from .our_side import Borne, borne_by

LEAVE_IT = frozenset(
    (
        *("take in job", "change job", "add evidence", "take evidence back", "accept anyway", "take acceptance back"),
        *("add photo", "put photo back", "take photo out", "quote", "give quote", "make link", "revoke link"),
        *("answer", "take back", "decide", "take deposit", "give back deposit", "write bill", "gave an extra away"),
        *("order", "confirm order", "change order", "cancel order", "look ahead", "promise", "claim"),
        *("send back", "take step back"),
        *("receive", "receive anew", "set receipt aside", "import", "undo import", "find candidates"),
        *("add rate", "withdraw rate", "change settings", "change terms"),
    )
)
"""Deeds that leave the table as it is. After any other it is read anew, also after one nobody thought of here."""


@dataclass(frozen=True)
class KnownTable:
    """The families of our parts, worked out one by one when asked for, and which parts bear which number."""

    every: Families
    borne: Borne

    @cached_property
    def codes(self) -> dict[str, OurPart]:
        """Our parts by the key of their code, in the table's order."""
        return {number_key(code): part for code, part in self.every.graph.parts.items()}

    @cached_property
    def words(self) -> tuple[tuple[OurPart, str], ...]:
        """Our parts with their code, name and size as they are compared with what somebody types."""
        return tuple((one, folded(f"{one.code} {one.name} {one.size}")) for one in self.every.graph.parts.values())

    @cached_property
    def printed(self) -> dict[str, str]:
        """Every number of the table and every code of ours as printed, by its key."""
        sides = (number for one in self.every.graph.links.statements for number in (one.left, one.right))
        numbers = (*(number.printed for number in sides), *self.every.graph.parts)
        return {key: one for one in sorted(set(numbers)) if (key := number_key(one))}


def folded(text: str) -> str:
    """The text without case and accents, to be compared with what somebody types in a hurry."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return " ".join("".join(one for one in apart if not unicodedata.combining(one)).split())


def known_table(store: Store, connection: Connection) -> KnownTable:
    """The table as it stands in this transaction, which must be one that reads. One thread at a time reads it anew."""
    with _KEPT.held(connection, store, lambda: _read(connection), table_marks(connection)) as table:
        return table


def _read(connection: Connection) -> KnownTable:
    every = families(equivalence_table(connection))
    return KnownTable(every, borne_by(every))


def _after(table: KnownTable, _: Connection, since: Since) -> KnownTable | None:
    return None if since.done - LEAVE_IT else table


_KEPT = KeptUntil(_after)
