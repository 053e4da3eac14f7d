"""Which statements of a long table say anything about one number: found step by step, without the rest of the table.

The walk takes the ways `family_view` takes, and a few more; so the small table of what it finds gives the same answer
as the whole one. It is told of statements by number key, and sorts out by maker whose number is meant.
"""

from collections.abc import Iterable, Mapping
from typing import Literal, NamedTuple

from ...basics.equivalence import Relation
from ...basics.part_number import OURS
from .makers import Makers, Node

MOST_STEPS = 200
MOST_TIES = 50_000
"""Farther than so many steps, or among more statements than these, reading the whole table is the quicker way."""


class Tie(NamedTuple):
    """What a statement ties, without what else it says. Makers as written, numbers by their keys."""

    statement: int
    left_maker: str
    left_key: str
    relation: Relation
    right_maker: str
    right_key: str


BACK, AHEAD, OLDER, DOWN, UP, WHOSE, NEWER = 1, 2, 4, 8, 16, 32, 64
"""Why a number is walked from: to find what leads to it, what it leads to, what its part's numbers replaced, what the
kit holds, which kits hold it; and, of a number for which the one looked up must not serve, the parts it protects: those
that bear it or a newer one."""
ALL = BACK | AHEAD | OLDER | DOWN | UP | WHOSE | NEWER
PROTECTED = WHOSE | NEWER
FROM_A_PART = AHEAD | OLDER | DOWN
PASSED_ON: Mapping[tuple[Relation, Literal["left", "right"]], int] = {
    ("same part", "left"): ALL,
    ("same part", "right"): ALL,
    ("superseded by", "left"): AHEAD | NEWER,
    ("superseded by", "right"): BACK | OLDER | WHOSE,
    ("substitute", "left"): AHEAD,
    ("substitute", "right"): BACK | WHOSE,
    ("kit contains", "left"): DOWN,
    ("kit contains", "right"): UP,
}
"""The reasons a statement carries over from the number on its left or right side to the one on the other."""
FORBIDS = AHEAD | OLDER
"""Must-nots count on the left side of numbers walked from for one of these reasons; they lead no further."""


class Around:
    """The walk: ask for the ties of `wanted()` keys, `take` them, and again until nothing is wanted.

    `statements`: those found so far; `codes`: the keys of our own codes met; `too_wide`: give up, read the whole table.
    """

    def __init__(self, makers: Makers, *asked: str) -> None:
        """`asked`: the keys of the numbers to look up, under whatever maker."""
        self._makers, self._asked = makers, frozenset(filter(None, asked))
        self._ties: dict[Node, list[tuple[Tie, Literal["left", "right"]]]] = {}
        self._read: set[str] = set()
        self._why: dict[Node, int] = {}
        self._waiting: list[tuple[Node, int]] = [((OURS, one), ALL) for one in sorted(self._asked)]
        self._steps = self._count = 0
        self.statements: set[int] = set()
        self.codes: set[str] = set()

    @property
    def too_wide(self) -> bool:
        """Whether the walk has become longer than reading everything."""
        return self._steps > MOST_STEPS or self._count > MOST_TIES

    def wanted(self) -> list[str]:
        """The keys of which every tie is to be told next; empty: the walk is done."""
        return sorted({node[1] for node, _ in self._waiting} - self._read)

    def take(self, keys: Iterable[str], ties: Iterable[Tie]) -> None:
        """Walk on: `ties` are all that have one of the keys on either side, each of them once."""
        self._steps += 1
        new = frozenset(keys)
        self._read |= new
        for tie in ties:
            self._count += 1
            # Between a key read now and one read at another step it is told at both: each time under one of its ends.
            if tie.left_key in new:
                self._keep(tie, "left", (self._makers.key(tie.left_maker), tie.left_key))
            if tie.right_key in new:
                self._keep(tie, "right", (self._makers.key(tie.right_maker), tie.right_key))
        later = []
        while self._waiting:
            node, why = self._waiting.pop()
            if node[1] in self._read:
                self._walk(node, why)
            else:
                later.append((node, why))
        self._waiting = later

    def _keep(self, tie: Tie, side: Literal["left", "right"], node: Node) -> None:
        self._ties.setdefault(node, []).append((tie, side))
        if node[1] in self._asked:
            self.statements.add(tie.statement)
            self._waiting.append((node, ALL))
            if tie.relation == "must not" and side == "right":
                self._waiting.append((self._other(tie, side), PROTECTED))

    def _walk(self, node: Node, why: int) -> None:
        before = self._why.get(node, 0)
        if node[0] == OURS:
            self.codes.add(node[1])
            why |= FROM_A_PART if why & BACK else 0
        why |= UP if why & AHEAD else 0  # kits that hold it are told of every number the part is sold under
        new = why & ~before
        if not new:
            return
        self._why[node] = before | new
        for tie, side in self._ties.get(node, ()):
            if tie.relation == "must not":
                if side == "left" and new & FORBIDS:
                    self.statements.add(tie.statement)
                continue
            passed = new & PASSED_ON[tie.relation, side]
            if passed:
                self.statements.add(tie.statement)
                self._waiting.append((self._other(tie, side), passed))

    def _other(self, tie: Tie, side: Literal["left", "right"]) -> Node:
        if side == "left":
            return self._makers.key(tie.right_maker), tie.right_key
        return self._makers.key(tie.left_maker), tie.left_key
