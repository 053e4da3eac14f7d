"""All numbers one of our parts is sold under, each with the best path of statements to it.

From our part a path follows 'same part' both ways, 'superseded by' and 'substitute' forward only. Among several paths
the one whose weakest statement is best wins, then the shorter one. A 'must not' from any number of the family beats
every path. Loops end by themselves: a number is visited once.
"""

import heapq
import itertools
from collections import defaultdict
from collections.abc import Iterable, Mapping

from ..basics.equivalence import STANDINGS, EquivalenceTable, OurPart, Path, Statement
from ..basics.part_number import OURS, PartNumber
from ..basics.value import Value

Node = tuple[str, str]


class Family(Value, frozen=True, kw_only=True):
    """A part's numbers by node (maker key, number key): the path to each, and what must not serve, with why."""

    part: OurPart
    paths: Mapping[Node, Path]
    printed: Mapping[Node, PartNumber]
    forbidden: Mapping[Node, Statement]

    def number_keys(self) -> frozenset[str]:
        """The number keys of every member, for looking offers up."""
        return frozenset(key for _, key in self.paths)


def our_number(part: OurPart) -> PartNumber:
    """The shop's own code as a part number."""
    return PartNumber(printed=part.code, maker=OURS)


def families(table: EquivalenceTable) -> dict[str, Family]:
    """Every part's family by its code."""
    links, bans = _links(table.statements), _bans(table.statements)
    return {part.code: _family(part, links, bans) for part in table.parts}


def bearers(every: Iterable[Family]) -> dict[str, frozenset[str]]:
    """Number key to the codes of our parts that bear it under any maker: one code only makes a key unmistakable."""
    found: dict[str, set[str]] = defaultdict(set)
    for family in every:
        for _, key in family.paths:
            found[key].add(family.part.code)
    return {key: frozenset(codes) for key, codes in found.items()}


def _links(statements: Iterable[Statement]) -> dict[Node, list[tuple[PartNumber, Statement]]]:
    links: dict[Node, list[tuple[PartNumber, Statement]]] = defaultdict(list)
    for statement in statements:
        if statement.relation in ("same part", "superseded by", "substitute"):
            links[statement.left.node].append((statement.right, statement))
        if statement.relation == "same part":
            links[statement.right.node].append((statement.left, statement))
    return links


def _bans(statements: Iterable[Statement]) -> dict[Node, list[Statement]]:
    bans: dict[Node, list[Statement]] = defaultdict(list)
    for statement in statements:
        if statement.relation == "must not":
            bans[statement.left.node].append(statement)
    return bans


def _family(
    part: OurPart,
    links: Mapping[Node, list[tuple[PartNumber, Statement]]],
    bans: Mapping[Node, list[Statement]],
) -> Family:
    start = our_number(part)
    paths: dict[Node, Path] = {}
    printed: dict[Node, PartNumber] = {}
    # Widest path: weakest standing so far, then links, then the words of the links, so that the order of the table
    # never decides; the counter only keeps the heap from comparing values.
    turn = itertools.count()
    queue: list[tuple[int, int, tuple[str, ...], int, PartNumber, tuple[Statement, ...]]]
    queue = [(0, 0, (), next(turn), start, ())]
    while queue:
        weakest, length, words, _, number, taken = heapq.heappop(queue)
        if number.node in paths:
            continue
        paths[number.node], printed[number.node] = Path(links=taken), number
        for other, statement in links.get(number.node, ()):
            if other.node not in paths:
                worse = max(weakest, STANDINGS.index(statement.standing))
                said = (*words, str(statement))
                heapq.heappush(queue, (worse, length + 1, said, next(turn), other, (*taken, statement)))
    forbidden = {ban.right.node: ban for node in paths for ban in bans.get(node, ())}
    return Family(part=part, paths=paths, printed=printed, forbidden=forbidden)
