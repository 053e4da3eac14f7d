"""One number looked up: every family it belongs to, with what a person or a drawing needs to see how."""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from ...basics.equivalence import Bench, OurPart
from ...basics.family_view import (
    Banned,
    DeadEnd,
    FamilyEdge,
    FamilyView,
    Member,
    NotFollowed,
    PartFamily,
)
from ...basics.part_number import OURS, PartNumber, number_key
from .family import left_aside
from .graph import Graph
from .kits import kit_contents, kits_holding
from .links import Links, our_number
from .must_nots import must_nots, perhaps
from .newest import Chain, Sold, chain_of, sold_places
from .reach import Reach, levels, reach

MOST_MEMBERS = 400
"""So many numbers of one family are shown, the nearest; how many are left out is said."""
MOST_FAMILIES = 20
MOST_WALKED = 100_000
"""So many families are shown, no more, and none after so many numbers were walked through."""
Start = tuple[OurPart | None, int, PartNumber]


def family_view(
    graph: Graph, number_or_code: str, sold: Sold | None = None, bench: Bench | None = None, maker: str = ""
) -> FamilyView:
    """The families of every part of ours that bears the number, under any maker unless one is named.

    A number that no part of ours bears is shown with what it leads to itself. `sold`: nodes or number keys that are
    sold, None where that is not known; `bench`: the machine the part is wanted for.
    """
    nodes = _nodes(graph, PartNumber(printed=number_or_code, maker=maker))
    starts = _starts(graph, nodes, number_or_code)
    sells = None if sold is None else sold_places(graph, sold)
    families: list[PartFamily] = []
    walked = 0
    for part, start, number in starts[:MOST_FAMILIES]:
        found = reach(graph.links, start, number, bench)
        families.append(_part_family(part, found, nodes, sells))
        walked += len(found.way)
        if walked > MOST_WALKED:
            break
    bearing = {part.code for part, _, _ in starts if part}
    forbidding = perhaps(graph, PartNumber(printed=number_or_code, maker=maker))
    return FamilyView(
        asked=number_or_code,
        families=tuple(families),
        must_not=tuple(
            one for one in must_nots(graph, forbidding, bench) if one.part is None or one.part.code not in bearing
        ),
        bench=bench,
        left_out=len(starts) - len(families),
    )


def _nodes(graph: Graph, asked: PartNumber) -> list[int]:
    """The nodes that bear the number, in the order of their makers."""
    if asked.maker:
        place = graph.links.index.get(graph.node(asked))
        return [] if place is None else [place]
    key = asked.key
    return [
        place for _, place in sorted((node, at) for node, at in graph.links.index.items() if key and node[1] == key)
    ]


def _starts(graph: Graph, nodes: Iterable[int], asked: str) -> list[Start]:
    """Where a family starts: at each part of ours that bears a node, and at nodes that none bears."""
    parts: set[str] = set()
    unbound: list[Start] = []
    for node in nodes:
        codes = _codes_bearing(graph, node)
        parts.update(codes)
        if not codes:
            unbound.append((None, node, _printed(graph.links, node, asked)))
    links = graph.links
    bearing = [part for code, part in graph.parts.items() if code in parts]
    bound = [(part, links.index[OURS, number_key(part.code)], our_number(part)) for part in bearing]
    return [*bound, *unbound]


def _codes_bearing(graph: Graph, node: int) -> list[str]:
    """The codes of our parts a path leads from to the node, walked back against the statements."""
    links, seen = graph.links, {node}
    waiting = list(seen)
    while waiting:
        node = waiting.pop()
        for at in links.back.get(node, ()):
            other = links.other(at, node)
            if other not in seen:
                seen.add(other)
                waiting.append(other)
    return [code for code in graph.parts if links.index[OURS, number_key(code)] in seen]


def _printed(links: Links, node: int, asked: str) -> PartNumber:
    """The number as the first statement about it prints it."""
    for places in (links.ahead, links.back, links.bans, links.holds, links.held):
        for at in places.get(node, ()):
            return links.printed(at, node)
    bans = (at for some in links.bans.values() for at in some if links.right[at] == node)
    for at in bans:
        return links.printed(at, node)
    return PartNumber(printed=asked, maker=links.nodes[node][0])


def _part_family(
    part: OurPart | None, found: Reach, asked: Collection[int], sells: Callable[[int], bool] | None
) -> PartFamily:
    links = found.links
    depths = found.depths()
    order = sorted(found.way, key=lambda node: (depths[node], found.level[node], links.nodes[node]))
    shown = order[:MOST_MEMBERS]
    clear = found.way.keys() - (found.forbidden.keys() - {found.start})
    selling = _selling(found, clear, sells)
    return PartFamily(
        part=part,
        members=tuple(_member(found, node, depths[node], selling, asked) for node in shown),
        edges=tuple(_edges(found, shown)),
        banned=_banned(found),
        contents=kit_contents(links, found.start, found.bench),
        in_kits=kits_holding(links, clear, found.bench),
        not_followed=tuple(NotFollowed(statement=one, why=why) for one, why in left_aside(found)),
        dead_ends=tuple(
            DeadEnd(number=found.printed(node), path=found.path(node))
            for node in sorted(selling.chain.dead, key=links.nodes.__getitem__)
        ),
        left_out=len(order) - len(shown),
    )


@dataclass(frozen=True)
class _Selling:
    """Whether a number is sold (None: not known), and how the supersessions of the family end."""

    sells: Callable[[int], bool | None]
    chain: Chain


def _selling(found: Reach, clear: Collection[int], sells: Callable[[int], bool] | None) -> _Selling:
    if sells is None:
        return _Selling(lambda node: None, Chain(frozenset(), frozenset()))
    return _Selling(sells, chain_of(found.links, clear, sells, levels(found.links, found.bench)))


def _member(found: Reach, node: int, steps: int, selling: _Selling, asked: Collection[int]) -> Member:
    path, ban = found.path(node), found.forbidden.get(node)
    return Member(
        number=found.printed(node),
        path=path,
        standing=path.standing,
        conditions=path.conditions,
        steps=steps,
        sold=selling.sells(node),
        newest=node in selling.chain.newest,
        forbidden=None if ban is None else found.links.statements[ban],
        asked=node in asked,
    )


def _banned(found: Reach) -> tuple[Banned, ...]:
    links = found.links
    apart = sorted(found.forbidden.keys() - found.way.keys(), key=links.nodes.__getitem__)
    bans = [(node, found.forbidden[node]) for node in apart]
    return tuple(Banned(number=links.printed(ban, node), statement=links.statements[ban]) for node, ban in bans)


def _edges(found: Reach, shown: Sequence[int]) -> Iterator[FamilyEdge]:
    """Every statement between two of the shown numbers, each once, in the order of the table."""
    links = found.links
    places = {node: place for place, node in enumerate(shown)}
    on_path = {found.way[node][node] for node in shown}
    between = {at for node in shown for some in (links.ahead, links.bans) for at in some.get(node, ())}
    for at in sorted(between):
        left, right = places.get(links.left[at]), places.get(links.right[at])
        if left is not None and right is not None:
            said = links.statements[at]
            yield FamilyEdge(left=left, right=right, statement=said, on_path=at in on_path)
