"""For which of our parts a number must not serve: the must-nots read from the side of the forbidden number."""

from collections.abc import Iterable

from ...basics.equivalence import Bench
from ...basics.family_view import MustNot
from ...basics.part_number import OURS, PartNumber, number_key
from .bench import fits
from .graph import Graph
from .reach import LevelOf, levels


def must_nots(graph: Graph, nodes: Iterable[int], bench: Bench | None = None) -> tuple[MustNot, ...]:
    """Every must-not that forbids one of the numbers at these places, once for each part of ours it protects.

    Our parts stand in their order. A statement about a number that is no part's is told with no part. `bench`: what
    contradicts it is not followed.
    """
    links, forbidden = graph.links, set(nodes)
    bans = sorted(at for some in links.bans.values() for at in some if links.right[at] in forbidden)
    found: list[MustNot] = []
    for at in bans:
        said = links.statements[at]
        if fits(said, bench) == "contradicts":
            continue
        protected = _protected(graph, links.left[at], levels(links, bench))
        codes = [code for code in graph.parts if links.index[OURS, number_key(code)] in protected]
        found += [MustNot(part=graph.parts[code], statement=said) for code in codes]
        if not codes:
            found.append(MustNot(part=None, statement=said))
    return tuple(found)


def perhaps(graph: Graph, number: PartNumber) -> list[int]:
    """The places of the numbers it may be: where a maker is not known, it may be anybody's."""
    maker, key = graph.node(number)
    index = graph.links.index
    if maker:
        return [index[node] for node in ((maker, key), ("", key)) if node in index]
    return [place for node, place in index.items() if key and node[1] == key]


def _protected(graph: Graph, node: int, level_of: LevelOf) -> set[int]:
    """The places from which a path leads to the number, and those of numbers that came after it."""
    return _walked(graph, node, False, level_of) | _walked(graph, node, True, level_of)


def _walked(graph: Graph, node: int, ahead: bool, level_of: LevelOf) -> set[int]:
    links, seen, waiting = graph.links, {node}, [node]
    ways = links.ahead if ahead else links.back
    while waiting:
        here = waiting.pop()
        for at in ways.get(here, ()):
            other = links.other(at, here)
            follows = links.statements[at].relation != "substitute" if ahead else level_of(at) >= 0
            if follows and other not in seen:
                seen.add(other)
                waiting.append(other)
    return seen
