"""Supersessions that come round, and kits that come to contain themselves."""

from collections.abc import Iterator, Sequence

from ...basics.equivalence import Relation
from ...basics.table_finding import Finding, FindingKind
from .components import components
from .links import Links, Places
from .reach import Tree
from .spread import MOST_SHOWN


def loops(links: Links) -> Iterator[Finding]:
    """Every knot of supersessions and of kits, each with one shortest loop in it."""
    yield from _loops(links, "superseded by", links.ahead)
    yield from _loops(links, "kit contains", links.holds)


def _loops(links: Links, relation: Relation, ahead: Places) -> Iterator[Finding]:
    every = [at for at, one in enumerate(links.statements) if one.relation == relation]
    starts, ends = [links.left[at] for at in every], [links.right[at] for at in every]
    labels = components(len(links.nodes), starts, ends, both_ways=True)
    knots: dict[int, list[int]] = {}
    for at, left, right in zip(every, starts, ends, strict=True):
        if labels[left] == labels[right]:
            knots.setdefault(labels[left], []).append(at)
    for inside in knots.values():
        yield _loop(links, relation, inside)


def _loop(links: Links, relation: Relation, inside: Sequence[int]) -> Finding:
    """A shortest loop through the first number of the knot, in the order of the numbers' keys."""
    after: Places = {}
    for at in inside:
        after.setdefault(links.left[at], []).append(at)
    start = min(after, key=links.nodes.__getitem__)
    steps = _round(links, start, after)
    shown = [links.statements[at] for at in steps[:MOST_SHOWN]]
    names = " -> ".join(str(one.left) for one in shown)
    end = f" -> {shown[0].left}" if len(steps) <= MOST_SHOWN else f" and {len(steps) - MOST_SHOWN} more"
    kind: FindingKind = "loop of supersession" if relation == "superseded by" else "kit contains itself"
    said = "supersessions come round" if relation == "superseded by" else "the kit comes to contain itself"
    return Finding(kind=kind, words=f"{said}: {names}{end}", statements=tuple(shown), more=len(inside) - len(shown))


def _round(links: Links, start: int, after: Places) -> list[int]:
    """The statements of a shortest way from a number back to itself."""
    tree: Tree = {}
    layer = [start]
    while layer and start not in tree:
        new = []
        for node in layer:
            for at in after.get(node, ()):
                if links.right[at] not in tree:
                    tree[links.right[at]] = at
                    new.append(links.right[at])
        layer = new
    steps = [tree[start]]
    while links.left[steps[-1]] != start:
        steps.append(tree[links.left[steps[-1]]])
    return steps[::-1]
