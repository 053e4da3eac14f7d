"""A number that is none of a part's own and leads to it one way: it was replaced, or the part may serve for it."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..basics.equivalence import Path
from ..basics.part_number import OURS, PartNumber
from ..basics.problem import Refused, refused
from ..matching.equivalences.graph import Graph
from ..matching.equivalences.must_nots import perhaps
from ..matching.equivalences.reach import reach
from .evaluate import Catalogue
from .part_under import part_under


@dataclass(frozen=True)
class Led:
    """The way from the number asked for to the part with this code."""

    code: str
    number: PartNumber
    path: Path

    def warning(self) -> str:
        """That the way goes one way, in words: rows under the number itself are no offers of the part."""
        links = "; ".join(map(str, self.path.links))
        return (
            f"{self.number} is not among the numbers of {self.code}; it leads to it one way only ({links}):"
            f" what follows is sold under the numbers of {self.code}, rows under {self.number.printed} itself are not"
            " among it"
        )


def part_asked(found: Catalogue, number: str) -> tuple[str, Led | None]:
    """The code of our part that bears the number, or else of the one it leads to, with the way.

    A must-not is not passed. Refuses a number that does neither, and one that leads to several.
    """
    try:
        return part_under(found, number), None
    except Refused as refusal:
        if refusal.problems[0].code != "number-not-known":
            raise
        ways = {one.code: one for one in ways_to_parts(found.families.graph, number)}
        if len(ways) > 1:
            raise refused("number-of-several", found=number, codes=", ".join(sorted(ways))) from None
        if not ways:
            raise
        led = next(iter(ways.values()))
        return led.code, led


def ways_to_parts(graph: Graph, number: str) -> Iterator[Led]:
    """The ways from the number, which may be any maker's, to parts of ours; to one part there may be several."""
    links = graph.links
    codes = {links.index[graph.node(PartNumber(printed=code, maker=OURS))]: code for code in graph.parts}
    for start in sorted(perhaps(graph, PartNumber(printed=number)), key=links.nodes.__getitem__):
        seen = reach(links, start, _printed(graph, start, number))
        for node in sorted(seen.way.keys() & codes.keys() - seen.forbidden.keys()):
            yield Led(codes[node], seen.number, seen.path(node))


def _printed(graph: Graph, place: int, typed: str) -> PartNumber:
    """The number as the first statement about it prints it."""
    links = graph.links
    about = (*links.ahead.get(place, ()), *links.back.get(place, ()))
    return links.printed(min(about), place) if about else PartNumber(printed=typed)
