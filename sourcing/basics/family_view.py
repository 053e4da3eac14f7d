"""One number looked up: the whole family it belongs to, the path to each number, and what a drawing needs."""

from .equivalence import Bench, OurPart, Path, Standing, Statement
from .part_number import PartNumber
from .value import Value


class Member(Value, frozen=True, kw_only=True):
    """A number of the family with the best path to it. `steps`: how many statements lie between, 0 the start itself.

    `sold`: whether a supplier sells it, None where nobody asked; `newest`: the end of its chain of supersessions, as
    far as it is sold; `forbidden`: the statement why it must not serve, also where the path only leads through such a
    number; `asked`: the number that was looked up.
    """

    number: PartNumber
    path: Path
    standing: Standing
    conditions: tuple[str, ...] = ()
    steps: int = 0
    sold: bool | None = None
    newest: bool = False
    forbidden: Statement | None = None
    asked: bool = False


class FamilyEdge(Value, frozen=True, kw_only=True):
    """A line of a drawing: from member to member (their places in `members`), as the statement reads.

    `on_path`: it belongs to the best path to one of its ends.
    """

    left: int
    right: int
    statement: Statement
    on_path: bool


class Banned(Value, frozen=True, kw_only=True):
    """A number that must not serve and that no path leads to, with the statement that says so."""

    number: PartNumber
    statement: Statement


class MustNot(Value, frozen=True, kw_only=True):
    """The number looked up must not serve for this part of ours, by this statement.

    `part` is None where the statement protects a number that is no part's of ours.
    """

    part: OurPart | None
    statement: Statement


class KitItem(Value, frozen=True, kw_only=True):
    """What a kit holds, or a kit that holds our part: how many in one kit, by which statements.

    `count` is None where statements disagree on it. Kits in kits are counted through: 2 x 3 are 6.
    """

    number: PartNumber
    count: int | None
    links: tuple[Statement, ...]


class NotFollowed(Value, frozen=True, kw_only=True):
    """A statement left aside for the machine on the bench, and why."""

    statement: Statement
    why: str


class DeadEnd(Value, frozen=True, kw_only=True):
    """The end of a chain of supersessions that nobody sells, with the chain."""

    number: PartNumber
    path: Path


class PartFamily(Value, frozen=True, kw_only=True):
    """The family of one of our parts, or, where `part` is None, of a number that is tied to none.

    `members` stand by steps, the start first. `contents`: what it holds where it is a kit; `in_kits`: kits that hold
    it: a kit is never the part itself. `dead_ends` only where it is known what is sold.
    """

    part: OurPart | None
    members: tuple[Member, ...]
    edges: tuple[FamilyEdge, ...] = ()
    banned: tuple[Banned, ...] = ()
    contents: tuple[KitItem, ...] = ()
    in_kits: tuple[KitItem, ...] = ()
    not_followed: tuple[NotFollowed, ...] = ()
    dead_ends: tuple[DeadEnd, ...] = ()
    left_out: int = 0


class FamilyView(Value, frozen=True, kw_only=True):
    """A number looked up: one family for each of our parts that bears it. None at all: no statement names it.

    `must_not`: for which other parts of ours it must not serve, though no path ties it to them. `left_out`: how many
    more families there are, in a table that ties very much together.
    """

    asked: str
    families: tuple[PartFamily, ...] = ()
    must_not: tuple[MustNot, ...] = ()
    bench: Bench | None = None
    left_out: int = 0


class Orderable(Value, frozen=True, kw_only=True):
    """A number that is sold and that nothing sold comes after, with the path to it."""

    number: PartNumber
    path: Path


class Newest(Value, frozen=True, kw_only=True):
    """Where the supersessions of a number end: what can be ordered, best path first, and ends that nobody sells."""

    orderable: tuple[Orderable, ...] = ()
    dead_ends: tuple[DeadEnd, ...] = ()
