"""Statements that numbers stand for the same part, and the path of statements from one number to another."""

from datetime import date
from typing import Literal

from .part_number import PartNumber
from .value import Value

Relation = Literal["same part", "superseded by", "substitute", "kit contains", "must not"]
"""`left relation right`. 'superseded by': the maker replaced left by right. 'substitute': right serves where left
is asked for, one way, under the condition. 'must not': right must not serve where left is asked for."""

Standing = Literal["fitted", "maker", "supplier", "unchecked"]
"""How far a statement is trusted, best first: the shop fitted it and it served; the maker's document; a supplier
says so; nobody checked."""

STANDINGS: tuple[Standing, ...] = ("fitted", "maker", "supplier", "unchecked")

GOOD_STANDING: frozenset[Standing] = frozenset(("fitted", "maker"))
"""Standings on which a match may be automatic; the others wait for a person."""


class Statement(Value, frozen=True, kw_only=True):
    """One line of the equivalence table. `row` is its row in the table it was read from, for messages."""

    left: PartNumber
    relation: Relation
    right: PartNumber
    standing: Standing
    source: str
    stated_on: date
    stated_by: str
    condition: str = ""
    count: int = 1
    row: int | None = None

    def __str__(self) -> str:
        times = f" {self.count} x" if self.relation == "kit contains" else ""
        when = f" when {self.condition}" if self.condition else ""
        return f"{self.left} {self.relation}{times} {self.right}{when} ({self.standing}: {self.source})"


class Path(Value, frozen=True, kw_only=True):
    """The statements from our part to a number, in order. No statement at all: the number is our part's own."""

    links: tuple[Statement, ...] = ()

    @property
    def standing(self) -> Standing:
        """As good as the weakest statement; a path without statements is the shop's own word: fitted."""
        return max((link.standing for link in self.links), key=STANDINGS.index, default="fitted")

    @property
    def conditions(self) -> tuple[str, ...]:
        """The conditions the path holds under, in order, without blanks."""
        return tuple(link.condition for link in self.links if link.condition)


class OurPart(Value, frozen=True, kw_only=True):
    """The shop's own entry for a part. `size` is a designation by a published standard ('B36'), blank if none."""

    code: str
    name: str
    size: str = ""
    category: str = ""
    note: str = ""


class EquivalenceTable(Value, frozen=True, kw_only=True):
    """The shop's parts and the statements about numbers."""

    parts: tuple[OurPart, ...]
    statements: tuple[Statement, ...]
