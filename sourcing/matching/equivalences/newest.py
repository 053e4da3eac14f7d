"""The newest number of a chain of supersessions that somebody sells, or where the chain ends in nothing."""

from collections.abc import Callable, Collection
from dataclasses import dataclass

from ...basics.equivalence import Bench
from ...basics.family_view import DeadEnd, Newest, Orderable
from ...basics.part_number import OURS, PartNumber
from .graph import Graph
from .links import Links
from .makers import Node
from .reach import LevelOf, Reach, levels, widest

Sold = Collection[Node | str]
"""What is sold: (maker key, number key) under any of the maker's names, or the number key alone where none is named."""


@dataclass(frozen=True)
class Chain:
    """Of some nodes those that are the newest sold ones, and the ends of supersessions that nobody sells."""

    newest: frozenset[int]
    dead: frozenset[int]


def newest(graph: Graph, number: PartNumber, sold: Sold, bench: Bench | None = None) -> Newest:
    """Follow 'superseded by' from the number to the newest one that is sold; the path tells how trusted each step is.

    From our own code every number that 'same part' ties to it is followed too. A number is newest where none that is
    sold comes after it; in a loop all that are sold are. Several are returned where the chain forks, best path first.
    What must not serve is neither returned nor followed. Of a number no statement names nothing is found.
    """
    links = graph.links
    start = links.index.get(graph.node(number))
    if start is None:
        return Newest()
    level_of = _only_chains(links, levels(links, bench), number.maker == OURS)
    way, level = widest(links, start, level_of)
    barred = frozenset(links.right[at] for node in way for at in links.bans.get(node, ())) - {start}
    if barred.intersection(way):
        way, level = widest(links, start, level_of, barred)
    found = Reach(links, bench, start, number, way, level, {})
    chain = chain_of(links, way, sold_places(graph, sold), level_of)
    order = sorted(chain.newest, key=lambda node: (level[node], -len(found.steps(node)), links.nodes[node]))
    dead = sorted(chain.dead, key=links.nodes.__getitem__)
    return Newest(
        orderable=tuple(Orderable(number=found.printed(node), path=found.path(node)) for node in order),
        dead_ends=tuple(DeadEnd(number=found.printed(node), path=found.path(node)) for node in dead),
    )


def sold_places(graph: Graph, sold: Sold) -> Callable[[int], bool]:
    """Whether the number at a place is sold: by its node, or by its key alone."""
    nodes, key = graph.links.nodes, graph.makers.key
    known = {one if isinstance(one, str) else (key(one[0]), one[1]) for one in sold}
    return lambda place: nodes[place] in known or nodes[place][1] in known


def chain_of(links: Links, among: Collection[int], is_sold: Callable[[int], bool], level_of: LevelOf) -> Chain:
    """The newest sold of these nodes and the dead ends among them, by the supersessions between them."""
    after = {node: _after(links, node, among, level_of) for node in among}
    before: dict[int, list[int]] = {}
    for node, later in after.items():
        for one in later:
            before.setdefault(one, []).append(node)
    ages = _ages(after)
    sold = {node for node in among if is_sold(node)}
    beaten = _beaten(before, ages, {ages[node] for node in sold})
    dead = (node for node in before if not after[node] and node not in sold)
    return Chain(frozenset(node for node in sold if ages[node] not in beaten), frozenset(dead))


def _only_chains(links: Links, level_of: LevelOf, from_ours: bool) -> LevelOf:
    followed = ("superseded by", "same part") if from_ours else ("superseded by",)
    return lambda at: level_of(at) if links.statements[at].relation in followed else -1


def _after(links: Links, node: int, among: Collection[int], level_of: LevelOf) -> list[int]:
    return [
        links.right[at]
        for at in links.ahead.get(node, ())
        if links.statements[at].relation == "superseded by" and links.right[at] in among and level_of(at) >= 0
    ]


def _ages(after: dict[int, list[int]]) -> dict[int, int]:
    """A label for each node, the same for nodes of one loop."""
    if not any(after.values()):
        return {node: node for node in after}
    from .components import components  # scipy takes its time to load, and most parts need none of it

    places = {node: place for place, node in enumerate(after)}
    pairs = [(places[node], places[one]) for node, later in after.items() for one in later]
    labels = components(len(places), [one for one, _ in pairs], [other for _, other in pairs], both_ways=True)
    return {node: labels[place] for node, place in places.items()}


def _beaten(before: dict[int, list[int]], ages: dict[int, int], sold_ages: set[int]) -> set[int]:
    """The labels after which something sold comes: walked back from what is sold, each loop as one."""
    members: dict[int, list[int]] = {}
    for node, age in ages.items():
        members.setdefault(age, []).append(node)
    beaten: set[int] = set()
    waiting = list(sold_ages)
    while waiting:
        age = waiting.pop()
        for node in members[age]:
            for one in before.get(node, ()):
                if ages[one] != age and ages[one] not in beaten:
                    beaten.add(ages[one])
                    waiting.append(ages[one])
    return beaten
