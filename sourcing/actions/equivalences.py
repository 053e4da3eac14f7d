"""Look at the equivalence table: written out to be edited, checked for contradictions, one number looked up."""

from collections.abc import Mapping

from sqlalchemy import Connection

from ..basics.equivalence import Bench, EquivalenceTable
from ..basics.family_view import FamilyView
from ..basics.problem import refused
from ..basics.table_finding import Finding, FindingKind
from ..matching.equivalences.check import check_table
from ..matching.equivalences.family_view import family_view
from ..matching.equivalences.graph import graph_of
from ..matching.equivalences.makers import Makers
from ..matching.equivalences.newest import Sold
from ..matching.equivalences.table_sheets import Row, table_sheets
from ..storage.equivalence import equivalence_table
from ..storage.numbers import nearest
from ..storage.offers import newest_number_keys
from .desk import Desk

ONLY_TO_KNOW: frozenset[FindingKind] = frozenset(("nobody sells it", "doubted", "machine without maker"))


def table_to_write(desk: Desk) -> Mapping[str, tuple[tuple[str, ...], list[Row]]]:
    """The table as worksheets: name, header, rows. Read back, it is the same table with the same numbers."""
    with desk.store.reading() as connection:
        return table_sheets(equivalence_table(connection))


def family_of(desk: Desk, number: str, maker: str = "", bench: Bench | None = None) -> FamilyView:
    """Every family the number belongs to, under any maker unless one is named; what is sold by the newest sheets.

    Refuses a number no statement and no part names, with the most similar ones: to look at, never taken instead.
    """
    with desk.store.reading() as connection:
        table = equivalence_table(connection)
        graph = graph_of(table)
        found = family_view(graph, number, sold_now(connection, graph.makers), bench, maker)
        if not found.families:
            raise refused("number-in-no-statement", found=f"{maker} {number}".strip(), suggestions=_near(table, number))
        return found


def contradictions(desk: Desk) -> tuple[Finding, ...]:
    """Everything in the table a person should look at, what may send a wrong part first."""
    with desk.store.reading() as connection:
        table = equivalence_table(connection)
        return check_table(table, sold_now(connection, Makers(table.aliases)))


def is_contradiction(found: Finding) -> bool:
    """Whether the table contradicts itself there; a doubt or a dead end is only worth knowing."""
    return found.kind not in ONLY_TO_KNOW


def sold_now(connection: Connection, makers: Makers) -> Sold | None:
    """Every number that can be had by the suppliers' newest sheets: by maker and key, by key where no maker is named.

    None where there is no sheet: then it is not known what is sold.
    """
    sold: set[tuple[str, str] | str] = set()
    for key, maker, _ in newest_number_keys(connection, only_sold=True):
        sold.add((makers.key(maker), key) if maker else key)
    return sold or None


def _near(table: EquivalenceTable, number: str) -> tuple[str, ...]:
    ends = (end.printed for one in table.statements for end in (one.left, one.right))
    return nearest(number, {*ends, *(part.code for part in table.parts)})
