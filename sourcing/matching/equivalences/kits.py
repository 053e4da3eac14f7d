"""What a kit holds, kits within it counted through, and the kits that hold a number. A kit is never the part itself.

Statements about a number hold for the same part under its other numbers. Where statements disagree on a count there is
none. A kit that comes to contain itself ends where it comes round; the check names it.
"""

from collections import deque
from collections.abc import Iterable

from ...basics.equivalence import Bench, Statement
from ...basics.family_view import KitItem
from .bench import fits
from .links import Links, Places
from .reach import Tree, steps_in

MOST_KITS = 1_000
"""About so many items of a kit, or kits that hold a part, are listed, no more."""

Line = tuple[int | None, int]
"""How many, and the statement."""


def kit_contents(links: Links, start: int, bench: Bench | None = None) -> tuple[KitItem, ...]:
    """Everything the kit at this place holds, nearest first; counts of all ways added up: 2 x 3 and 1 are 7.

    The statements of an item are those of the shortest way to it; what contradicts the bench is not counted.
    """
    kits = _Kits(links, bench)
    counts: dict[int, int | None] = {start: 1}
    for kit in kits.before_what_they_hold(start):
        for item, (count, _) in kits.lines(kit).items():
            if (kit, item) not in kits.round:
                counts[item] = _plus(counts.get(item, 0), _times(counts[kit], count))
    ways = kits.ways(start)
    return tuple(
        KitItem(
            number=links.statements[way[-1]].right,
            count=counts[item],
            links=tuple(links.statements[at] for at in way),
        )
        for item, way in ways.items()
    )


def kits_holding(links: Links, nodes: Iterable[int], bench: Bench | None = None) -> tuple[KitItem, ...]:
    """The kits that hold one of these nodes, and kits that hold those; how many by the way that is shown."""
    kits = _Kits(links, bench)
    seen = set(nodes)
    waiting: deque[tuple[int, int | None, list[int]]] = deque(
        (node, 1, []) for node in sorted(seen, key=links.nodes.__getitem__)
    )
    found: list[KitItem] = []
    while waiting and len(found) < MOST_KITS:
        node, times, way = waiting.popleft()
        for kit, between in kits.around(node).items():
            if kit in seen:
                continue
            count, at = _times(times, _one_count(links, between)), between[0]
            said = tuple(links.statements[one] for one in (at, *way))
            found.append(KitItem(number=links.printed(at, kit), count=count, links=said))
            tree = kits.alike[kits.root(kit)]
            new = [alike for alike in tree if alike not in seen]
            seen.update(new)
            waiting += (
                (alike, count, [*reversed(steps_in(links, tree, alike)), at, *way])
                for alike in new
                if alike in links.held
            )
    return tuple(found)


def way_back(links: Links, start: int, kit: int) -> tuple[Statement, ...] | None:
    """The statements by which the number at `start` is, or holds, the one at `kit`, fewest first; None where it is not.

    Such a number must not be put into that kit: it would come to contain itself.
    """
    tree: Tree = {start: -1}
    waiting = deque([start])
    while waiting and kit not in tree:
        here = waiting.popleft()
        same = (at for at in links.ahead.get(here, ()) if links.statements[at].relation == "same part")
        for at in (*same, *links.holds.get(here, ())):
            other = links.other(at, here)
            if other not in tree:
                tree[other] = at
                waiting.append(other)
    return tuple(links.statements[at] for at in steps_in(links, tree, kit)) if kit in tree else None


class _Kits:
    """Kits and what they hold, the same part under several numbers taken as one: known by the number met first.

    `alike`: of each, the tree of "same part" statements to its other numbers. `round`: from a kit to what holds it.
    """

    def __init__(self, links: Links, bench: Bench | None) -> None:
        self._links, self._bench = links, bench
        self._root: dict[int, int] = {}
        self._lines: dict[int, dict[int, Line]] = {}
        self.alike: dict[int, Tree] = {}
        self.round: set[tuple[int, int]] = set()

    def root(self, node: int) -> int:
        """The number that stands for this one and the same part under other numbers."""
        if node not in self._root:
            ties: Tree = {node: -1}
            waiting = deque([node])
            while waiting:
                here = waiting.popleft()
                for at in self._links.ahead.get(here, ()):
                    other = self._links.other(at, here)
                    if self._links.statements[at].relation == "same part" and other not in ties:
                        ties[other] = at
                        waiting.append(other)
            self._root.update(dict.fromkeys(ties, node))
            self.alike[node] = ties
        return self._root[node]

    def lines(self, kit: int) -> dict[int, Line]:
        """What a kit holds, each with how many and a statement."""
        if kit not in self._lines:
            said: dict[int, list[int]] = {}
            for node in self.alike[self.root(kit)]:
                for at in self._holding(self._links.holds, node):
                    said.setdefault(self.root(self._links.right[at]), []).append(at)
            self._lines[kit] = {item: (_one_count(self._links, some), some[0]) for item, some in said.items()}
        return self._lines[kit]

    def around(self, node: int) -> dict[int, list[int]]:
        """The kits that hold the number, each with the statements that say so."""
        said: dict[int, list[int]] = {}
        for at in self._holding(self._links.held, node):
            said.setdefault(self._links.left[at], []).append(at)
        return said

    def _holding(self, places: Places, node: int) -> list[int]:
        every = places.get(node, [])
        return [at for at in every if fits(self._links.statements[at], self._bench) != "contradicts"]

    def before_what_they_hold(self, start: int) -> list[int]:
        """The kit and all it holds, each before its contents; ties that come round are kept in `round`."""
        done: list[int] = []
        state = {self.root(start): False}
        stack = [(start, iter(self.lines(start)))]
        while stack:
            kit, items = stack[-1]
            item = next(items, None)
            if item is None:
                state[kit] = True
                done.append(kit)
                stack.pop()
            elif item not in state:
                state[item] = False
                stack.append((item, iter(self.lines(item))))
            elif not state[item]:
                self.round.add((kit, item))
        return done[::-1]

    def ways(self, start: int) -> dict[int, list[int]]:
        """Everything the kit holds but itself, nearest first, with the statements of the shortest way."""
        ways: dict[int, list[int]] = {start: []}
        waiting = deque([start])
        while waiting and len(ways) <= MOST_KITS:
            kit = waiting.popleft()
            for item, (_, at) in self.lines(kit).items():
                if item not in ways:
                    ties = steps_in(self._links, self.alike[self.root(kit)], self._links.left[at])
                    ways[item] = [*ways[kit], *ties, at]
                    waiting.append(item)
        del ways[start]
        return ways


def _one_count(links: Links, statements: Iterable[int]) -> int | None:
    counts = {links.statements[at].count for at in statements}
    return counts.pop() if len(counts) == 1 else None


def _times(one: int | None, other: int | None) -> int | None:
    return None if one is None or other is None else one * other


def _plus(one: int | None, other: int | None) -> int | None:
    return None if one is None or other is None else one + other
