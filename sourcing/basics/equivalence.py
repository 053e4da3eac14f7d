"""Statements that numbers stand for the same part, and the path of statements from one number to another."""

from collections.abc import Mapping
from datetime import date
from typing import Literal

from .asked import Asked
from .part_number import PartNumber
from .value import Value

Relation = Literal["same part", "superseded by", "substitute", "kit contains", "must not"]
"""`left relation right`. 'superseded by': the maker replaced left by right. 'substitute': right serves where left
is asked for, one way, under the condition. 'must not': right must not serve where left is asked for."""

SENTENCES: Mapping[Relation, str] = {
    "same part": "{left} is the same part as {right}",
    "superseded by": "{left} is superseded by {right}",
    "substitute": "{right} may serve for {left}",
    "kit contains": "{left} contains {count} x {right}",
    "must not": "{right} must not serve for {left}",
}
"""The relations as sentences, so that nobody mistakes the direction; in files and options they are single words."""

Standing = Literal["fitted", "maker", "supplier", "unchecked"]
"""How far a statement is trusted, best first: the shop fitted it and it served; the maker's document; a supplier
says so; nobody checked."""

STANDINGS: tuple[Standing, ...] = ("fitted", "maker", "supplier", "unchecked")

GOOD_STANDING: frozenset[Standing] = frozenset(("fitted", "maker"))
"""Standings on which a match may be automatic; the others wait for a person."""


_BEFORE_A_THING = frozenset(
    (
        *("with", "without", "on", "in", "for", "from", "if", "when", "where", "while", "until", "before", "after"),
        *("at", "by", "up", "above", "below", "between"),
    )
)
"""Words a condition may begin with and then reads well after 'only'."""


def only_words(condition: str) -> str:
    """A condition a person wrote, as it reads after a statement: 'only with spacer', 'only if the deck is old'."""
    return f"only {when_words(condition)}"


def when_words(condition: str) -> str:
    """The same without 'only': 'with spacer', 'if the deck is old', 'for machine NW-826'."""
    first, _, rest = condition.partition(" ")
    if first.casefold().rstrip(",") == "only" and rest:
        return when_words(rest)
    if first in ("machine", "serial"):
        return f"for {condition}"
    return condition if first.casefold() in _BEFORE_A_THING else f"if {condition}"


class Statement(Value, frozen=True, kw_only=True):
    """One line of the equivalence table. `row` is its row in the table it was read from, for messages.

    `condition` is in words. `machine` (its model) and `serial_from`, `serial_to` (both inclusive; blank: open) say for
    which machine it holds; blank: for every one. `doubt` is why somebody doubts it; it then counts as unchecked.
    `number` is its number in the shop's table, None before it is kept.
    """

    left: PartNumber
    relation: Relation
    right: PartNumber
    standing: Standing
    source: str
    stated_on: date
    stated_by: str
    condition: str = ""
    machine: str = ""
    serial_from: str = ""
    serial_to: str = ""
    count: int = 1
    doubt: str = ""
    row: int | None = None
    number: int | None = None

    @property
    def counts_as(self) -> Standing:
        """How far it is trusted now: what somebody doubts is unchecked until the doubt is answered."""
        return "unchecked" if self.doubt else self.standing

    @property
    def holds_when(self) -> str:
        """The condition with machine and serial numbers, in words; blank where it always holds."""
        span = ""
        if self.serial_from or self.serial_to:
            span = f" serial {self.serial_from or 'any'} to {self.serial_to or 'any'}"
        machine = f"machine {self.machine}{span}" if self.machine else span.strip()
        return "; ".join(part for part in (self.condition, machine) if part)

    @property
    def claim(self) -> str:
        """What it says of the two numbers, as a sentence whose direction nobody can mistake."""
        return SENTENCES[self.relation].format(left=self.left, count=self.count, right=self.right)

    def __str__(self) -> str:
        when = ""
        if self.holds_when:
            when = (
                f" {when_words(self.holds_when)}" if self.relation == "must not" else f", {only_words(self.holds_when)}"
            )
        doubted = f", doubted: {self.doubt}" if self.doubt else ""
        return f"{self.claim}{when} ({self.standing}: {self.source}{doubted})"


class Bench(Value, frozen=True, kw_only=True):
    """The machine a part is wanted for: its model and serial number as its tag says; blank: not known.

    `component` is a part of it with a tag of its own (a gearbox by another maker): statements may speak of its model.
    """

    machine: str = ""
    serial: str = ""
    component: str = ""
    component_serial: str = ""


class Path(Value, frozen=True, kw_only=True):
    """The statements from our part to a number, in order. No statement at all: the number is our part's own.

    `still_open`: the conditions nobody has settled; None where no machine was named, so that all of them are open.
    """

    links: tuple[Statement, ...] = ()
    still_open: tuple[str, ...] | None = None

    @property
    def standing(self) -> Standing:
        """As good as the weakest statement; a path without statements is the shop's own word: fitted."""
        return max((link.counts_as for link in self.links), key=STANDINGS.index, default="fitted")

    @property
    def conditions(self) -> tuple[str, ...]:
        """The conditions the path holds under, in order, without blanks; settled ones are left out."""
        if self.still_open is not None:
            return self.still_open
        return tuple(link.holds_when for link in self.links if link.holds_when)


class OurPart(Value, frozen=True, kw_only=True):
    """The shop's own entry for a part. `size` is a designation by a published standard ('B36'), blank if none.

    `asked` is what an offer must say or must not contradict beside the size: cord, cover, cogs, side, pair or set.
    """

    code: str
    name: str
    size: str = ""
    category: str = ""
    note: str = ""
    asked: Asked = Asked()


class MakerAlias(Value, frozen=True, kw_only=True):
    """Another way suppliers write a maker's name. `alias` is what sheets say, `maker` the name the shop uses."""

    alias: str
    maker: str


class EquivalenceTable(Value, frozen=True, kw_only=True):
    """The shop's parts, the statements about numbers, and the other names of makers.

    `as_of`: only of a table read from a file, and there only of rows that say so: from the row of a statement to the
    number of the table's newest change when the row was written out.
    """

    parts: tuple[OurPart, ...]
    statements: tuple[Statement, ...]
    aliases: tuple[MakerAlias, ...] = ()
    as_of: Mapping[int, int] = {}
