"""What is remembered of a supplier's columns, and the numbers by which one nobody knows may be told."""

from collections.abc import Mapping

from sqlalchemy import Connection

from ..basics.part_number import number_keys
from ..basics.sheet import Field
from ..basics.value import Value
from ..storage.equivalence import printed_numbers
from ..storage.sheets import break_quantities, meanings


class KnownColumns(Value, frozen=True, kw_only=True):
    """What is remembered of a supplier's columns: by header what each means, and from how many pieces a price holds.

    `ours`: keys of the numbers in the shop's table of same parts, by which a column may be known.
    """

    meanings: Mapping[str, Field]
    quantities: Mapping[str, int]
    ours: frozenset[str] = frozenset()


def known_columns(connection: Connection, supplier: str) -> KnownColumns:
    """What was said before of the supplier's columns, and the numbers of the table of same parts."""
    return KnownColumns(
        meanings=meanings(connection, supplier),
        quantities=break_quantities(connection, supplier),
        ours=frozenset(number_keys(sorted(printed_numbers(connection)))),
    )
