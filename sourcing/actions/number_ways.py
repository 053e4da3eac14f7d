"""Whether one number may serve where another is asked for: the path of statements each way, or why there is none."""

from collections.abc import Iterator

from ..basics.equivalence import Path, Statement
from ..basics.part_number import PartNumber, number_key
from ..basics.value import Value
from ..matching.equivalences.graph import Graph, graph_of
from ..matching.equivalences.links import our_number
from ..matching.equivalences.reach import reach
from ..storage.equivalence import equivalence_table
from .desk import Desk
from .equivalences import hanging_together

MOST_WAYS = 12
"""Two numbers may stand under several makers each: so many pairs are told."""


class Way(Value, frozen=True, kw_only=True):
    """`other` where `one` is asked for. `forbidden`: the statement why it must not serve, whatever the path says."""

    one: PartNumber
    other: PartNumber
    path: Path
    forbidden: Statement | None = None


class Ways(Value, frozen=True, kw_only=True):
    """Every way from one number to the other and back; `there` and `back` empty: no statement leads that way."""

    there: tuple[Way, ...]
    back: tuple[Way, ...]


def ways_between(desk: Desk, one: str, other: str) -> Ways:
    """The best path for every pair of makers the two numbers stand under. Only what the table says, nothing near."""
    with desk.store.reading() as connection:
        graph = graph_of(hanging_together(connection, one, other) or equivalence_table(connection))
        return Ways(there=tuple(_ways(graph, one, other)), back=tuple(_ways(graph, other, one)))


def _ways(graph: Graph, one: str, other: str) -> Iterator[Way]:
    starts, ends = _nodes(graph, one), _nodes(graph, other)
    pairs = [(start, end) for start in starts for end in ends if start != end]
    for start, end in pairs[:MOST_WAYS]:
        found = reach(graph.links, start, _printed(graph, start, one))
        ban = found.forbidden.get(end)
        if end in found.way or ban is not None:
            yield Way(
                one=_printed(graph, start, one),
                other=_printed(graph, end, other),
                path=found.path(end) if end in found.way else Path(),
                forbidden=None if ban is None else graph.links.statements[ban],
            )


def _nodes(graph: Graph, number: str) -> list[int]:
    key = number_key(number)
    return [place for node, place in sorted(graph.links.index.items()) if key and node[1] == key]


def _printed(graph: Graph, place: int, typed: str) -> PartNumber:
    """The number as our part or a statement about it prints it."""
    links = graph.links
    for at, said in enumerate(links.statements):
        if links.left[at] == place:
            return said.left
        if links.right[at] == place:
            return said.right
    ours = (our_number(part) for part in graph.parts.values())
    return next((one for one in ours if links.index.get(one.node) == place), PartNumber(printed=typed, maker=""))
