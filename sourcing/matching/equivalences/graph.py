"""The equivalence table ready for questions: built once, one family worked out when it is asked for."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ...basics.equivalence import Bench, EquivalenceTable, OurPart
from ...basics.part_number import OURS, PartNumber, number_key
from .family import Family
from .links import Links, links_of, our_number
from .makers import Makers, Node
from .reach import reach


@dataclass(frozen=True, eq=False)
class Graph:
    """Our parts by code, the makers under all their names, and the statements as links."""

    parts: Mapping[str, OurPart]
    makers: Makers
    links: Links

    def node(self, number: PartNumber) -> Node:
        """Maker key and number key, the maker's other names resolved."""
        return self.makers.node(number)

    def family(self, code: str, bench: Bench | None = None) -> Family:
        """The family of the part with this code; KeyError where there is none.

        `bench`: statements that contradict this machine are not followed, those that fit it carry no warning.
        """
        part = self.parts[code]
        start = self.links.index[OURS, number_key(code)]
        return Family(part, self.makers, reach(self.links, start, our_number(part), bench))


def graph_of(table: EquivalenceTable) -> Graph:
    """Build the graph: a million statements take some seconds."""
    makers = Makers(table.aliases)
    return Graph({part.code: part for part in table.parts}, makers, links_of(table, makers))


class Families(Mapping[str, Family]):
    """Every part's family by its code, each worked out once when it is first asked for."""

    def __init__(self, graph: Graph) -> None:
        """Take the graph; nothing is worked out yet."""
        self.graph = graph
        self._known: dict[str, Family] = {}

    def __getitem__(self, code: str) -> Family:
        if code not in self._known:
            self._known[code] = self.graph.family(code)
        return self._known[code]

    def __contains__(self, code: object) -> bool:
        return code in self.graph.parts

    def __iter__(self) -> Iterator[str]:
        return iter(self.graph.parts)

    def __len__(self) -> int:
        return len(self.graph.parts)


def families(table: EquivalenceTable) -> Families:
    """Every part's family by its code, lazily."""
    return Families(graph_of(table))
