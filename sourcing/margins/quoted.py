"""What a quoted line was to cost, in whole minor units: its goods, its freight, all its charges.

Some figures stand on a kept quote only in the words of its rules, which are frozen with it. They are read from there; a
test holds the words and this reading together.
"""

import re
from decimal import Decimal

from ..basics.margin_facts import BehindFacts, QuotedLine
from ..basics.value import Value
from .minor import minor, reader

CAPPED = re.compile(r"([0-9.]+), capped at list price ([0-9.]+)")
"""What `quoting.pricing` writes where the list price held a price down."""

CHARGES = re.compile(r"share of duty and charges (-?[0-9.]+)")
"""What `quoting.lines` writes of a line's landed cost beside its goods."""


class Cost(Value, frozen=True, kw_only=True, gc=False):
    """The landed cost of a quoted line without what goes on the shelf: `goods` of the need and `charges`. `freight` is
    within `charges`."""

    cost: int = 0
    goods: int = 0
    charges: int = 0
    freight: int = 0


NOTHING = Cost()


def cost_of(line: QuotedLine | None, alone: bool, places: int) -> Cost:
    """What the line was quoted to cost; `alone`: every add-on with a part was declined, so that an agreed line bears
    the charges it has without them, where the quote says what they are."""
    behind = line.behind if line else None
    if line is None or behind is None:
        return NOTHING
    read = reader(places)
    cost = read[behind.cost.amount]
    goods = cost - _charges(line, behind, cost, places)
    freight = None if behind.freight is None else read[behind.freight.amount]
    if alone and behind.cost_alone is not None:
        cost, freight = read[behind.cost_alone.amount], None
    charges = cost - goods
    return Cost(cost=cost, goods=goods, charges=charges, freight=max(charges if freight is None else freight, 0))


def _charges(line: QuotedLine, behind: BehindFacts, cost: int, places: int) -> int:
    """As the rule says; where it does not, what is left of the cost after the pieces needed at their unit cost."""
    found = CHARGES.search(behind.landed_rule)
    if found:
        return reader(places)[found[1]]
    return cost - minor(Decimal(behind.unit_cost.amount) * line.quantity, places)


def capped_from(rule: str, places: int) -> tuple[int, int] | None:
    """The price before and after the list price capped it, as the frozen rule says; None where it did not."""
    found = CAPPED.search(rule) if "capped" in rule else None
    read = reader(places)
    return (read[found[1]], read[found[2]]) if found else None
