"""Everything a number leads to: the best path to each, and what must not serve.

A path follows 'same part' both ways, 'superseded by' and 'substitute' forward only. Of several paths the one whose
weakest statement is best wins, then one without conditions, then the shorter one; among equal ones the number before
the last and the words of the last statement decide, never the order of the table. Loops end by themselves: a number is
visited once.

'Must not' beats every path. It is taken from every number a path leads to, and from older numbers that the part's own
replaced. A number that can be reached only through a forbidden one is forbidden with it.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import product

from ...basics.equivalence import STANDINGS, Bench, Path, Standing, Statement
from ...basics.part_number import PartNumber
from .bench import fits, open_words
from .links import STANDING_PLACE, Links

Tree = dict[int, int]
"""A node to the statement that leads to it, -1 for the start; layer by layer, so that parents come first."""
LevelOf = Callable[[int], int]
"""The level of a statement, see `Links`; -1: not to be followed."""

ANY_LEVEL = 2 * len(STANDINGS) - 1
NONE = frozenset[int]()


@dataclass(frozen=True, eq=False)
class Reach:
    """What `number` leads to. `way`: the tree that holds the best path to a node; `level`: how good that path is.

    `forbidden`: nodes that must not serve, with the statement why, whether or not a path leads to them.
    """

    links: Links
    bench: Bench | None
    start: int
    number: PartNumber
    way: dict[int, Tree]
    level: dict[int, int]
    forbidden: dict[int, int]

    def steps(self, node: int) -> list[int]:
        """The statements from the start to the node."""
        return steps_in(self.links, self.way[node], node)

    def depths(self) -> dict[int, int]:
        """How many statements lie between the start and each node."""
        trees = {id(tree): tree for tree in self.way.values()}
        if len(trees) == 1:
            return _depths(self.links, next(iter(trees.values())))
        each = {one: _depths(self.links, tree) for one, tree in trees.items()}
        return {node: each[id(tree)][node] for node, tree in self.way.items()}

    def path(self, node: int) -> Path:
        """The same as a path; with a machine on the bench it carries only what that leaves open."""
        links = tuple(self.links.statements[at] for at in self.steps(node))
        if self.bench is None:
            return Path(links=links)
        words = (open_words(link, self.bench) for link in links)
        return Path(links=links, still_open=tuple(one for one in words if one))

    def printed(self, node: int) -> PartNumber:
        """The number as the last statement of its path prints it."""
        last = self.way[node][node]
        return self.number if last < 0 else self.links.printed(last, node)

    def standing(self, node: int) -> Standing:
        """The standing of the weakest statement on the way."""
        return STANDINGS[self.level[node] // 2]


def steps_in(links: Links, tree: Tree, node: int) -> list[int]:
    """The statements from the tree's start to the node."""
    steps = []
    while (statement := tree[node]) >= 0:
        steps.append(statement)
        node = links.other(statement, node)
    return steps[::-1]


def _depths(links: Links, tree: Tree) -> dict[int, int]:
    depths: dict[int, int] = {}
    for node, statement in tree.items():
        depths[node] = 0 if statement < 0 else depths[links.other(statement, node)] + 1
    return depths


def reach(links: Links, start: int, number: PartNumber, bench: Bench | None = None) -> Reach:
    """Everything the node `start`, printed as `number`, leads to. `bench`: what contradicts it is not followed."""
    level_of = levels(links, bench)
    way, level = widest(links, start, level_of)
    forbidden = _bans(links, start, way, bench) if links.bans else {}
    barred = frozenset(forbidden).intersection(way) - {start}
    if barred:
        clear, better = widest(links, start, level_of, barred)
        for node in way.keys() - clear.keys() - barred:
            forbidden.setdefault(node, _first_ban(links, way[node], node, forbidden))
        way, level = way | clear, level | better
    return Reach(links, bench, start, number, way, level, forbidden)


def levels(links: Links, bench: Bench | None) -> LevelOf:
    """The level of each statement for the machine on the bench: conditions it fulfils count as none."""
    if bench is None:
        return links.level.__getitem__

    def level_of(at: int) -> int:
        statement = links.statements[at]
        if fits(statement, bench) == "contradicts":
            return -1
        return 2 * STANDING_PLACE[statement.counts_as] + bool(open_words(statement, bench))

    return level_of


def widest(
    links: Links, start: int, level_of: LevelOf, barred: frozenset[int] = NONE
) -> tuple[dict[int, Tree], dict[int, int]]:
    """The tree and level of the best path to every node that can be reached without the barred ones.

    One walk for each level there is: of the nodes first met on it none can be reached by better statements, and a walk
    layer by layer finds the fewest.
    """
    seen: set[int] = set()
    whole = _tree(links, start, level_of, ANY_LEVEL, barred, seen)
    if len(seen) <= 1:
        return dict.fromkeys(whole, whole), {node: max(seen, default=0) for node in whole} | {start: 0}
    way: dict[int, Tree] = {}
    level: dict[int, int] = {}
    for most in _levels_to_try(seen):
        tree = _tree(links, start, level_of, most, barred)
        new = tree.keys() - way.keys()
        way.update(dict.fromkeys(new, tree))
        level.update(dict.fromkeys(new, most))
        if len(way) == len(whole):
            break
    return way, level | {start: 0}


def _levels_to_try(seen: Iterable[int]) -> list[int]:
    """Every standing met with and without conditions, the better first: a path may mix what it was met with."""
    standings, conditional = {level // 2 for level in seen}, {level % 2 for level in seen}
    return sorted(2 * standing + condition for standing, condition in product(standings, conditional))


def _tree(
    links: Links, start: int, level_of: LevelOf, most: int, barred: frozenset[int], seen: set[int] | None = None
) -> Tree:
    """The walk layer by layer over statements of at most that standing and conditions; the levels met go to `seen`."""
    tree, layer = {start: -1}, [start]
    standing, conditions = most // 2, most % 2
    while layer:
        ways: dict[int, list[int]] = {}
        for node in layer:
            for at in links.ahead.get(node, ()):
                level = level_of(at)
                if level < 0 or level // 2 > standing or level % 2 > conditions:
                    continue
                other = links.other(at, node)
                if seen is not None and other not in barred:
                    seen.add(level)
                if other not in tree and other not in barred:
                    ways.setdefault(other, []).append(at)
        for node, found in ways.items():
            tree[node] = found[0] if len(found) == 1 else _first(links, node, found)
        layer = list(ways)
    return tree


def _first(links: Links, node: int, statements: Sequence[int]) -> int:
    """Of several statements that lead to a node: by the number they come from, then by their words."""
    nodes = [links.nodes[links.other(at, node)] for at in statements]
    first = min(nodes)
    some = [at for at, come_from in zip(statements, nodes, strict=True) if come_from == first]
    return some[0] if len(some) == 1 else min(some, key=lambda at: _words(links.statements[at]))


def _words(statement: Statement) -> tuple[str, str, str]:
    return str(statement), statement.stated_on.isoformat(), statement.stated_by


def _bans(links: Links, start: int, reached: Iterable[int], bench: Bench | None) -> dict[int, int]:
    """What must not serve, by node: said of a number that is reached or of an older one of the part's own."""
    found: dict[int, list[int]] = {}
    for node in {*reached, *_older(links, start)}:
        for at in links.bans.get(node, ()):
            if fits(links.statements[at], bench) != "contradicts":
                found.setdefault(links.right[at], []).append(at)
    return {node: min(bans, key=lambda at: _words(links.statements[at])) for node, bans in found.items()}


def _older(links: Links, start: int) -> set[int]:
    """The number itself, the same part under other numbers, and everything these have superseded."""
    found, waiting = {start}, [start]
    while waiting:
        node = waiting.pop()
        for at in links.back.get(node, ()):
            other = links.other(at, node)
            if links.statements[at].relation != "substitute" and other not in found:
                found.add(other)
                waiting.append(other)
    return found


def _first_ban(links: Links, tree: Tree, node: int, forbidden: dict[int, int]) -> int:
    """The statement that forbids the first forbidden number on the way to the node."""
    ban = -1
    while (statement := tree[node]) >= 0:
        ban = forbidden.get(node, ban)
        node = links.other(statement, node)
    return ban
