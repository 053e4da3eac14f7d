"""Measures and sides in two descriptions of one number that can't both be right: a longer cable, a thicker shear pin.

Lengths written roundly agree within their rounding, see `likeness/measures.py`. One measure in common is enough: a
description may name more of them than the other.
"""

from collections.abc import Iterator

from .likeness.measures import INCH, apart, number, significant
from .likeness.said import Said

UNITS = {"length": " mm", "size": ""}
BOTH_SIDES = frozenset(("left", "right"))


def measures_against(its: Said, ours: Said) -> Iterator[str]:
    """Each kind of measure that both descriptions name and in which they have nothing in common, in words."""
    for kind, unit in UNITS.items():
        named = [{amount for each, amount in one.measures if each == kind} for one in (its, ours)]
        left, right = apart(its.measures, ours.measures, kind)
        if named[0] and named[1] and left == named[0] and right == named[1]:
            yield f"{kind} {_listed(left)}{unit}, where ours is {_listed(right)}{unit}"
    left, right = (frozenset(text for text in one.bare if "/" in text) for one in (its, ours))
    if left and right and left.isdisjoint(right):
        yield f"{_listed(left)} in, where ours is {_listed(right)} in"


def bare_against(one: Said, other: Said) -> str:
    """A measure that only one names beside a bare number that only the other names: '17 mm bore' against '3/8 bore'."""
    left, right = apart(one.measures, other.measures, "length")
    for measured, there, beside in ((left, right, other), (right, left, one)):
        bare = beside.bare - (one.bare & other.bare)
        if measured and not there and bare and not any(_is_length(text, measured) for text in bare):
            sizes = _listed(frozenset(f"{amount} mm" for amount in measured))
            return f"sizes that may differ: {sizes} against {_listed(bare)}"
    return ""


def both_sides(one: Said, other: Said) -> str:
    """A pair for left and right under the number of one of the two."""
    if one.sides == other.sides or not one.sides or not other.sides:
        return ""
    both = [side for side in (one.sides, other.sides) if side >= BOTH_SIDES]
    return "one is for both sides, the other for one" if len(both) == 1 else ""


def _is_length(bare: str, measured: frozenset[str]) -> bool:
    """Whether a bare number, as inches or as millimetres, is one of the lengths."""
    amount = number(bare)
    return amount is not None and any(significant(amount * factor) in measured for factor in (INCH, 1))


def _listed(amounts: frozenset[str]) -> str:
    return ", ".join(sorted(amounts))
