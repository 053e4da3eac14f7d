"""Measures in two descriptions of one number that can't both be right: a longer cable, a thicker shear pin.

Lengths written roundly agree within their rounding, see `likeness/measures.py`. One measure in common is enough: a
description may name more of them than the other.
"""

from collections.abc import Iterator

from .likeness.measures import apart
from .likeness.said import Said

UNITS = {"length": " mm", "size": ""}


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


def _listed(amounts: frozenset[str]) -> str:
    return ", ".join(sorted(amounts))
