"""Every number of every part of ours, as columns: what whole sheets are compared with."""

from collections import Counter, deque
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import islice
from typing import Any
from weakref import WeakKeyDictionary

from ...basics.equivalence import STANDINGS, Standing, Statement
from ...basics.part_number import OURS, PartNumber, number_key
from .graph import Graph
from .links import our_number
from .reach import Reach, reach

MOST_PARTS = 3
"""Where a number belongs to more parts than this on average, the table ties nearly everything to everything."""
FEW_ROWS, FEW_IN_PIECE = 100_000, 1_000
"""So many rows are written out in any case: of a table, and of a piece of one that ties much."""
NEAREST = 50
"""What is written out of a part in such a tangle: about these many numbers, the nearest."""
WORST = STANDINGS[-1]
NO_PATH = -1


@dataclass(frozen=True, eq=False)
class NumberBook:
    """One row for a number of a part, in columns of equal length.

    `links`: how many statements lie between, 0 for our own code; -1 where no path leads to the number, which is here
    only because it must not serve. `tangled`: parts tied to so many others that their numbers tell nothing: only the
    nearest are here, all of them unchecked, so that nothing follows from them by itself.
    """

    maker_key: list[str] = field(default_factory=list)
    number_key: list[str] = field(default_factory=list)
    part: list[str] = field(default_factory=list)
    standing: list[Standing] = field(default_factory=list)
    links: list[int] = field(default_factory=list)
    conditional: list[bool] = field(default_factory=list)
    forbidden: list[bool] = field(default_factory=list)
    tangled: tuple[str, ...] = ()

    def columns(self) -> dict[str, list[Any]]:
        """The columns by name, ready for a table."""
        names = ("maker_key", "number_key", "part", "standing", "links", "conditional", "forbidden")
        return {name: getattr(self, name) for name in names}


_WRITTEN: WeakKeyDictionary[Graph, NumberBook] = WeakKeyDictionary()
"""The book of each graph in use; it goes when its graph goes."""


def number_book(graph: Graph) -> NumberBook:
    """The book of all parts: linear in the table. Paths are not written out: `path_words` tells one when asked.

    Of one graph it is written once, however often it is asked for; nobody changes it.
    """
    if graph not in _WRITTEN:
        _WRITTEN[graph] = _number_book(graph)
    return _WRITTEN[graph]


def _number_book(graph: Graph) -> NumberBook:
    book = NumberBook()
    if _wrote_all(book, graph, MOST_PARTS * len(graph.links.nodes) + FEW_ROWS):
        return book
    book, tangled = NumberBook(), list[str]()
    for codes, size in _hanging_together(graph):
        if _few(graph, codes, MOST_PARTS * size + FEW_IN_PIECE):
            for code in codes:
                _write(book, code, _reach_of(graph, code))
            continue
        tangled += codes
        for code in codes:
            _write(book, code, _nearest(graph, code, NEAREST))
    hidden = frozenset(tangled)
    book.standing[:] = [WORST if part in hidden else said for part, said in zip(book.part, book.standing, strict=True)]
    return replace(book, tangled=tuple(sorted(tangled)))


def bearers_of(graph: Graph) -> dict[str, frozenset[str]]:
    """Number key to the codes of our parts that bear it under any maker; in a tangle, to two or more of its parts."""
    book = number_book(graph)
    found: dict[str, set[str]] = {}
    for key, code, links in zip(book.number_key, book.part, book.links, strict=True):
        if links != NO_PATH:
            found.setdefault(key, set()).add(code)
    for key, codes in _tangled_keys(graph, book.tangled):
        found.setdefault(key, set()).update(codes)
    return {key: frozenset(codes) for key, codes in found.items()}


def path_words(graph: Graph, code: str, number: PartNumber) -> str:
    """How the number is our part's, link by link: 'Norrowby NW-1: BELT is the same part as Norrowby NW-1 (maker: x)'.

    Blank where no path leads to it.
    """
    family, node = graph.family(code), graph.node(number)
    return words_of(number, family.paths[node].links) if node in family.paths else ""


def words_of(number: PartNumber, links: tuple[Statement, ...]) -> str:
    """The number and its statements in words."""
    return f"{number}: " + ("; ".join(map(str, links)) or "our own number")


def _wrote_all(book: NumberBook, graph: Graph, most: int) -> bool:
    """Write the numbers of all parts, but stop where they get more than so many."""
    for code in graph.parts:
        _write(book, code, _reach_of(graph, code))
        if len(book.part) > most:
            return False
    return True


def _few(graph: Graph, codes: Iterable[str], most: int) -> bool:
    """Whether these parts have at most so many numbers in all: counted by a plain walk, and no further than that."""
    for code in codes:
        most -= len(_nearest(graph, code, most + 1).way)
        if most < 0:
            return False
    return True


def _reach_of(graph: Graph, code: str) -> Reach:
    return reach(graph.links, _start(graph, code), our_number(graph.parts[code]))


def _start(graph: Graph, code: str) -> int:
    return graph.links.index[OURS, number_key(code)]


def _write(book: NumberBook, code: str, found: Reach) -> None:
    depths = found.depths()
    for node, depth in depths.items():
        standing, conditional = divmod(found.level[node], 2)
        _row(book, found, node, (code, STANDINGS[standing], depth, bool(conditional)))
    for node, ban in found.forbidden.items():
        if node not in found.way:
            _row(book, found, node, (code, found.links.statements[ban].counts_as, NO_PATH, False))


def _row(book: NumberBook, found: Reach, node: int, said: tuple[str, Standing, int, bool]) -> None:
    maker, key = found.links.nodes[node]
    book.maker_key.append(maker)
    book.number_key.append(key)
    book.part.append(said[0])
    book.standing.append(said[1])
    book.links.append(said[2])
    book.conditional.append(said[3])
    book.forbidden.append(node in found.forbidden)


def _hanging_together(graph: Graph) -> Iterator[tuple[list[str], int]]:
    """Our parts by the piece of the table they hang in, and how many numbers it has."""
    labels = _labels(graph)
    sizes = Counter(labels)
    pieces: dict[int, list[str]] = {}
    for code in graph.parts:
        pieces.setdefault(labels[_start(graph, code)], []).append(code)
    for label, codes in pieces.items():
        yield codes, sizes[label]


def _labels(graph: Graph) -> list[int]:
    from .components import components  # scipy takes its time to load, and few tables need this

    links = graph.links
    followed = [at for some in links.ahead.values() for at in some]
    return components(len(links.nodes), [links.left[at] for at in followed], [links.right[at] for at in followed])


def _nearest(graph: Graph, code: str, most: int) -> Reach:
    """About so many of the nearest numbers of a part, however good their paths, and what is forbidden of them."""
    links, start = graph.links, _start(graph, code)
    tree, waiting = {start: -1}, deque([start])
    while waiting and len(tree) < most:
        node = waiting.popleft()
        for at in islice(links.ahead.get(node, ()), most):
            other = links.other(at, node)
            if other not in tree:
                tree[other] = at
                waiting.append(other)
    forbidden = {links.right[at]: at for node in tree for at in links.bans.get(node, ())}
    way, level = dict.fromkeys(tree, tree), dict.fromkeys(tree, 0)
    return Reach(links, None, start, our_number(graph.parts[code]), way, level, forbidden)


def _tangled_keys(graph: Graph, tangled: tuple[str, ...]) -> Iterator[tuple[str, list[str]]]:
    """Every number key in a tangle, with two of the parts in it: enough to say that it is not one part's alone."""
    if not tangled:
        return
    labels, two = _labels(graph), dict[int, list[str]]()
    for code in tangled:
        some = two.setdefault(labels[_start(graph, code)], [])
        if len(some) < 2:
            some.append(code)
    for (_, key), label in zip(graph.links.nodes, labels, strict=True):
        if label in two:
            yield key, two[label]
