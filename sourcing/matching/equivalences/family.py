"""All numbers one of our parts is sold under, each with the best path of statements to it."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from ...basics.equivalence import OurPart, Path, Statement
from ...basics.part_number import PartNumber
from .bench import fits, why_not_followed
from .links import Links
from .makers import Makers, Node
from .reach import Reach

T = TypeVar("T")


class ByNode(Mapping[Node, T]):
    """What belongs to each of some nodes, worked out when it is asked for; in the order of the nodes' own keys."""

    def __init__(self, links: Links, places: Mapping[int, object], of: Callable[[int], T]) -> None:
        """`places`: the nodes' places; `of`: what belongs to the node at a place."""
        self._links, self._places, self._of = links, places, of

    def __getitem__(self, node: Node) -> T:
        place = self._links.index.get(node)
        if place is None or place not in self._places:
            raise KeyError(node)
        return self._of(place)

    def __contains__(self, node: object) -> bool:
        place = self._links.index.get(node)  # type: ignore[call-overload]
        return place in self._places

    def __iter__(self) -> Iterator[Node]:
        return iter(sorted(map(self._links.nodes.__getitem__, self._places)))

    def __len__(self) -> int:
        return len(self._places)


@dataclass(frozen=True, eq=False)
class Family:
    """A part's numbers by node (maker key, number key): the path to each, and what must not serve, with why.

    Nodes are made with `makers`, so that a maker's other names count as his own.
    """

    part: OurPart
    makers: Makers
    reach: Reach

    @cached_property
    def paths(self) -> Mapping[Node, Path]:
        """The best path to each number, forbidden ones among them."""
        return ByNode(self.reach.links, self.reach.way, self.reach.path)

    @cached_property
    def printed(self) -> Mapping[Node, PartNumber]:
        """Each number as the last statement of its path prints it."""
        return ByNode(self.reach.links, self.reach.way, self.reach.printed)

    @cached_property
    def forbidden(self) -> Mapping[Node, Statement]:
        """What must not serve, with the statement why; not all of it has a path."""
        reach = self.reach
        return ByNode(reach.links, reach.forbidden, lambda node: reach.links.statements[reach.forbidden[node]])

    @cached_property
    def not_followed(self) -> tuple[tuple[Statement, str], ...]:
        """Statements left aside because they contradict the machine on the bench, with the reason in words."""
        return left_aside(self.reach)

    def number_keys(self) -> frozenset[str]:
        """The number keys of every member, for looking offers up."""
        nodes = self.reach.links.nodes
        return frozenset(nodes[place][1] for place in self.reach.way)


def left_aside(reach: Reach) -> tuple[tuple[Statement, str], ...]:
    """Statements about numbers that are reached which the machine on the bench contradicts, and why."""
    if reach.bench is None:
        return ()
    bench, links = reach.bench, reach.links
    places = {at for node in reach.way for some in (links.ahead, links.bans) for at in some.get(node, ())}
    every = [links.statements[at] for at in sorted(places)]
    return tuple((one, why_not_followed(one, bench)) for one in every if fits(one, bench) == "contradicts")


def bearers(every: Iterable[Family]) -> dict[str, frozenset[str]]:
    """Number key to the codes of our parts that bear it under any maker: one code only makes a key unmistakable."""
    found: dict[str, set[str]] = {}
    for family in every:
        for key in family.number_keys():
            found.setdefault(key, set()).add(family.part.code)
    return {key: frozenset(codes) for key, codes in found.items()}
