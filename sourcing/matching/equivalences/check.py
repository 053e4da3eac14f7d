"""Checks the equivalence table as a whole: what contradicts itself, comes round, leads nowhere or is doubted."""

from collections.abc import Iterable, Iterator
from itertools import chain

from ...basics.equivalence import EquivalenceTable, MakerAlias
from ...basics.part_number import maker_key
from ...basics.table_finding import FINDING_KINDS, Finding
from ..dimensions.size_check import check_size
from .check_loops import loops
from .check_ties import Compare, contradictions, sizes_that_disagree, ties_of_parts
from .components import components
from .graph import Graph, graph_of
from .newest import Sold, sold_places


def check_table(
    table: EquivalenceTable, sold: Sold | None = None, sizes_agree: Compare = check_size
) -> tuple[Finding, ...]:
    """Everything a person should look at, what may send a wrong part first. Linear in the table.

    `sold`: nodes or number keys somebody sells; without it no dead ends are told. `sizes_agree` compares two sizes.
    """
    graph = graph_of(table)
    found = chain(
        contradictions(graph.links),
        loops(graph.links),
        ties_of_parts(table, graph.links),
        sizes_that_disagree(table, graph.links, sizes_agree),
        () if sold is None else _dead_ends(graph, sold),
        _aliases(table.aliases),
        _single(table),
    )
    places = {kind: place for place, kind in enumerate(FINDING_KINDS)}
    return tuple(sorted(found, key=lambda one: (places[one.kind], one.words)))


def _dead_ends(graph: Graph, sold: Sold) -> Iterator[Finding]:
    """Numbers that others were superseded by, that nothing follows and that nobody sells under any of their names."""
    links, sells = graph.links, sold_places(graph, sold)
    same = [at for at, one in enumerate(links.statements) if one.relation == "same part"]
    labels = components(len(links.nodes), [links.left[at] for at in same], [links.right[at] for at in same])
    alive = {label for place, label in enumerate(labels) if sells(place)}
    into: dict[int, list[int]] = {}
    superseded = set()
    for at, one in enumerate(links.statements):
        if one.relation == "superseded by":
            superseded.add(links.left[at])
            into.setdefault(links.right[at], []).append(at)
    for node, statements in into.items():
        if node not in superseded and labels[node] not in alive:
            told = tuple(links.statements[at] for at in statements)
            words = f"{told[0].left} is superseded by {told[0].right}, which nobody sells"
            yield Finding(kind="nobody sells it", words=words, statements=told)


def _aliases(aliases: Iterable[MakerAlias]) -> Iterator[Finding]:
    """Aliases of two makers, which stand for neither, and names that come round."""
    told: dict[str, dict[str, MakerAlias]] = {}
    for one in aliases:
        told.setdefault(maker_key(one.alias), {}).setdefault(maker_key(one.maker), one)
    for several in told.values():
        if len(several) > 1:
            some = tuple(several.values())
            names = " and ".join(sorted(one.maker for one in some))
            words = f"'{some[0].alias}' is said to be {names}; it counts as neither"
            yield Finding(kind="one alias, two makers", words=words, aliases=some)
    yield from _loops_of_makers({key: next(iter(one.values())) for key, one in told.items() if len(one) == 1})


def _loops_of_makers(told: dict[str, MakerAlias]) -> Iterator[Finding]:
    seen: set[str] = set()
    for start in told:
        trail: dict[str, None] = {}
        key = start
        while key in told and key not in seen and key not in trail:
            trail[key] = None
            key = maker_key(told[key].maker)
        if key in trail:
            names = list(trail)[list(trail).index(key) :]
            some = tuple(told[name] for name in names)
            words = f"makers' names come round: {' -> '.join(one.alias for one in (*some, some[0]))}"
            yield Finding(kind="loop of makers", words=words, aliases=some)
        seen.update(trail)


def _single(table: EquivalenceTable) -> Iterator[Finding]:
    """What a statement tells by itself: a doubt, serial numbers of no machine, a machine's number of no maker."""
    for one in table.statements:
        if one.doubt:
            yield Finding(kind="doubted", words=f"doubted, so it counts as unchecked: {one}", statements=(one,))
        if (one.serial_from or one.serial_to) and not one.machine:
            words = f"serial numbers without the machine's model tell nothing: {one}"
            yield Finding(kind="machine without maker", words=words, statements=(one,))
        elif one.machine and not (one.left.maker and one.right.maker):
            words = f"about a machine, but a number has no maker: {one}"
            yield Finding(kind="machine without maker", words=words, statements=(one,))
