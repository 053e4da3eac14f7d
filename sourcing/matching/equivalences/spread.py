"""Where the neighbourhoods of some numbers meet: every number belongs to the nearest of them, linear in the table."""

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass

from ...basics.equivalence import Relation, Statement
from .links import Links

MOST_SHOWN = 30
"""So many statements of a path or a loop are shown; how many more there are is said."""


@dataclass(frozen=True, eq=False)
class Spread:
    """Of every node that is reached: its source, the statement towards it (-1 for a source), how far it is."""

    links: Links
    source: dict[int, int]
    towards: dict[int, int]
    far: dict[int, int]

    def line(self, at: int) -> tuple[tuple[Statement, ...], int]:
        """The statements from the source left of a statement to that right of it, and how many are left out."""
        left, right = self.links.left[at], self.links.right[at]
        shown = [*self._back(left)[::-1], at, *self._back(right)]
        more = self.far[left] + self.far[right] + 1 - len(shown)
        return tuple(self.links.statements[one] for one in shown), more

    def _back(self, node: int) -> list[int]:
        steps: list[int] = []
        while len(steps) < MOST_SHOWN // 2 and (at := self.towards[node]) >= 0:
            steps.append(at)
            node = self.links.other(at, node)
        return steps


def spread(links: Links, sources: Iterable[int], relations: Collection[Relation], *, backwards: bool = False) -> Spread:
    """Walk from all sources at once over statements of these relations; `backwards`: against their direction too."""
    order = sorted(sources, key=links.nodes.__getitem__)
    found = Spread(links, {one: one for one in order}, dict.fromkeys(order, -1), dict.fromkeys(order, 0))
    layer = order
    while layer:
        new: list[int] = []
        for node in layer:
            for at in [*links.ahead.get(node, ()), *(links.back.get(node, ()) if backwards else ())]:
                other = links.other(at, node)
                if other not in found.source and links.statements[at].relation in relations:
                    found.source[other], found.towards[other] = found.source[node], at
                    found.far[other] = found.far[node] + 1
                    new.append(other)
        layer = new
    return found


def meetings(found: Spread, relations: Collection[Relation], meet: Callable[[int, int], object]) -> Iterator[int]:
    """For every two sources that meet, the statement where they are nearest; only where `meet` says they matter."""
    links = found.links
    best: dict[tuple[int, int], tuple[int, int]] = {}
    for at, (left, right) in enumerate(zip(links.left, links.right, strict=True)):
        one, other = found.source.get(left), found.source.get(right)
        if one is None or other is None or one == other or links.statements[at].relation not in relations:
            continue
        pair = (one, other) if one < other else (other, one)
        far = found.far[left] + found.far[right]
        if (pair not in best or far < best[pair][0]) and meet(one, other):
            best[pair] = (far, at)
    return (at for _, at in best.values())
