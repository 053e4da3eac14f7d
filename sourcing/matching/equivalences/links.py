"""The statements of a table as links between numbered nodes: built once, walked many times.

Nodes and statements are known by their places in lists, so that a million of them fit and are walked quickly.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from ...basics.equivalence import STANDINGS, EquivalenceTable, OurPart, Relation, Statement
from ...basics.part_number import OURS, PartNumber, number_keys
from .makers import Makers, Node

STANDING_PLACE = {standing: place for place, standing in enumerate(STANDINGS)}
FOLLOWED: frozenset[Relation] = frozenset(("same part", "superseded by", "substitute"))
Places = dict[int, list[int]]
"""A node's place to the places of statements."""


@dataclass(frozen=True, eq=False)
class Links:
    """`left`, `right`, `level`: of each statement. `ahead`: the statements to follow from a node, `back`: against
    their direction; 'same part' stands in both of both ends. `bans` by their left side, `holds` by the kit, `held` by
    what it holds.

    A level is twice the place of the standing, best 0, and one more where the statement holds only under a condition.
    """

    statements: Sequence[Statement]
    nodes: list[Node] = field(default_factory=list)
    index: dict[Node, int] = field(default_factory=dict)
    left: list[int] = field(default_factory=list)
    right: list[int] = field(default_factory=list)
    level: list[int] = field(default_factory=list)
    ahead: Places = field(default_factory=dict)
    back: Places = field(default_factory=dict)
    bans: Places = field(default_factory=dict)
    holds: Places = field(default_factory=dict)
    held: Places = field(default_factory=dict)

    def other(self, statement: int, node: int) -> int:
        """The node at the statement's other end."""
        left = self.left[statement]
        return self.right[statement] if left == node else left

    def printed(self, statement: int, node: int) -> PartNumber:
        """The number of that node as this statement prints it."""
        said = self.statements[statement]
        return said.left if self.left[statement] == node else said.right


def our_number(part: OurPart) -> PartNumber:
    """The shop's own code as a part number."""
    return PartNumber(printed=part.code, maker=OURS)


def links_of(table: EquivalenceTable, makers: Makers) -> Links:
    """The table's links; every part of ours is a node, also where no statement names it."""
    links = Links(statements=table.statements)
    _nodes(links, map(our_number, table.parts), makers)
    links.left.extend(_nodes(links, (one.left for one in table.statements), makers))
    links.right.extend(_nodes(links, (one.right for one in table.statements), makers))
    links.level.extend(map(_level, table.statements))
    for at, (one, left, right) in enumerate(zip(table.statements, links.left, links.right, strict=True)):
        if one.relation in FOLLOWED:
            links.ahead.setdefault(left, []).append(at)
            links.back.setdefault(right, []).append(at)
            if one.relation == "same part":
                links.ahead.setdefault(right, []).append(at)
                links.back.setdefault(left, []).append(at)
        elif one.relation == "must not":
            links.bans.setdefault(left, []).append(at)
        else:
            links.holds.setdefault(left, []).append(at)
            links.held.setdefault(right, []).append(at)
    return links


def _nodes(links: Links, numbers: Iterable[PartNumber], makers: Makers) -> list[int]:
    every = list(numbers)
    keys = number_keys([one.printed for one in every])
    found = []
    for one, key in zip(every, keys, strict=True):
        node = makers.key(one.maker), key
        place = links.index.setdefault(node, len(links.nodes))
        if place == len(links.nodes):
            links.nodes.append(node)
        found.append(place)
    return found


def _level(one: Statement) -> int:
    conditional = bool(one.condition or one.machine or one.serial_from or one.serial_to)
    return 2 * STANDING_PLACE[one.counts_as] + conditional
