"""Look at the equivalence table: written out to be edited, checked for contradictions, one number looked up."""

from collections.abc import Mapping
from datetime import date

from sqlalchemy import Connection

from ..basics.equivalence import Bench, EquivalenceTable
from ..basics.family_view import FamilyView
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..basics.table_finding import Finding, FindingKind
from ..matching.equivalences.around import Around, Tie
from ..matching.equivalences.check import check_table
from ..matching.equivalences.family_view import family_view
from ..matching.equivalences.graph import Graph, graph_of
from ..matching.equivalences.makers import Makers
from ..matching.equivalences.newest import Sold
from ..matching.equivalences.table_sheets import Row, table_sheets
from ..storage.equivalence import equivalence_table, maker_aliases, printed_numbers, table_of, ties_of_keys
from ..storage.numbers import nearest
from ..storage.offers import newest_number_keys
from ..storage.sold_numbers import is_anything_sold, sold_with_keys
from ..storage.statements import newest_change
from .desk import Desk

ONLY_TO_KNOW: frozenset[FindingKind] = frozenset(("nobody sells it", "doubted", "machine without maker", "said before"))
MOST_KEYS = 100_000
"""Of more numbers than these it is quicker to read all that is sold."""


def table_to_write(desk: Desk) -> Mapping[str, tuple[tuple[str, ...], list[Row]]]:
    """The table as worksheets: name, header, rows. Read back, it is the same table with the same numbers.

    Each statement says which change of the table was the newest, so that taking it in undoes nothing done since.
    """
    with desk.store.reading() as connection:
        return table_sheets(equivalence_table(connection), newest_change(connection))


def family_of(desk: Desk, number: str, maker: str = "", bench: Bench | None = None) -> FamilyView:
    """Every family the number belongs to, under any maker unless one is named; what is sold by the newest sheets.

    Refuses a number no statement and no part names, with the most similar ones: to look at, never taken instead.
    """
    with desk.store.reading() as connection:
        graph = graph_of(table_around(connection, number))
        found = family_view(graph, number, _sold_of(connection, graph, desk.at.date()), bench, maker)
        if not found.families:
            near = nearest(number, printed_numbers(connection))
            raise refused("number-in-no-statement", found=f"{maker} {number}".strip(), suggestions=near)
        return found


def table_around(connection: Connection, number: str) -> EquivalenceTable:
    """As much of the table as is needed to look the number up: the answer is the whole table's.

    The whole of it where the number hangs together with very much.
    """
    return hanging_together(connection, number) or equivalence_table(connection)


def hanging_together(connection: Connection, *numbers: str) -> EquivalenceTable | None:
    """As much of the table as hangs together with these numbers; None where that is very much."""
    found = Around(Makers(maker_aliases(connection)), *map(number_key, numbers))
    while keys := found.wanted():
        if found.too_wide:
            return None
        found.take(keys, (Tie(*tie) for tie in ties_of_keys(connection, keys)))
    return table_of(connection, found.statements, found.codes)


def contradictions(desk: Desk) -> tuple[Finding, ...]:
    """Everything in the table a person should look at, what may send a wrong part first."""
    with desk.store.reading() as connection:
        table = equivalence_table(connection)
        return check_table(table, _sold_of(connection, graph_of(table), desk.at.date()))


def is_contradiction(found: Finding) -> bool:
    """Whether the table contradicts itself there; a doubt or a dead end is only worth knowing."""
    return found.kind not in ONLY_TO_KNOW


def sold_now(connection: Connection, makers: Makers, day: date) -> Sold | None:
    """Every number that can be had by that day's newest sheets: by maker and key, by key where no maker is named.

    None where there is no sheet: then it is not known what is sold.
    """
    sold: set[tuple[str, str] | str] = set()
    for key, maker, _ in newest_number_keys(connection, day, only_sold=True):
        sold.add((makers.key(maker), key) if maker else key)
    return sold or None


def _sold_of(connection: Connection, graph: Graph, day: date) -> Sold | None:
    """Of the graph's numbers those that are sold; None as in `sold_now`."""
    keys = sorted({key for _, key in graph.links.nodes})
    if len(keys) > MOST_KEYS:
        return sold_now(connection, graph.makers, day)
    if not is_anything_sold(connection, day):
        return None
    sold = sold_with_keys(connection, keys, day)
    return {(graph.makers.key(maker), key) if maker else key for key, maker in sold}
