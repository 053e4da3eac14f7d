"""Which pairs match by themselves: the same number, unmistakable, with nothing whatever against it.

A number may be damaged so that it lands on a sister part's; nothing in the number shows that. So a pair waits for a
person as soon as anything beside the number contradicts: measures, side, colour, kind, count, price, a second row under
the same number, or another part whose description is nearer.
"""

from collections.abc import Callable, Mapping, Sequence

import numpy as np
import numpy.typing as npt

from .held_back import AT, DISTINCTIVE, SAME_CODE, SAME_NUMBER
from .likeness.first_points import WORDS_ALONE
from .likeness.prepared import Prepared
from .likeness.said import Said
from .likeness.scores import Scored

Mask = npt.NDArray[np.bool_]

CONTRADICTS: dict[str, tuple[int, ...]] = {
    "other codes": (3,),
    "maker": (3,),
    "measures": (2,),
    "colour": (3,),
    "side": (3,),
    "generation": (3,),
    "used": (1,),
    "price": (6, 7),
}
"""Levels that speak against a match whatever else agrees."""

UNLESS_AGREED: dict[str, tuple[int, ...]] = {"generation": (2,), "made for another": (1,), "kit": (1,)}
"""Levels that speak against a match unless a number or code agrees that one row and one part bear, or the price too.

An accessory or a kit that names the code of what it is for makes that code borne by two, and has another price.
"""
LITTLE_IN_COMMON = 5
"""Level of 'shorter words' that speaks against a match unless number or code and price agree: a damaged number may be
another part's own."""
SAME_PRICE, OF_ONE = 2, 0
"""Up to this level of 'price' the two are within 15 %; level of 'shared code' for a long code borne by one."""

NEARER, MUCH_NEARER = 0.6, 2.0
"""So many points more by its words alone make another part a rival of the number; so many more speak against it."""

MAY_DIFFER: dict[str, tuple[int, ...]] = {
    **{"colour": (2,), "side": (2,), "generation": (2,)},
    **{"shorter words": (5,), "kit": (1,)},
}
"""Levels that may tell two articles of one number apart: what only one states, words that do not agree."""

DIFFER = (("other codes", 2), ("short numbers", 2))
"""Levels that speak against one number being one part: further codes on both sides, other short numbers."""

NO_LEAD = 4
"""From this level of a lead on another row or part is as near or nearer, see `scores.LEAD_STEPS`."""

SHORT_KEY = 5
"""A shorter number is borne by too many things, even of one maker, to be unmistakable without a description."""


def against(facts: npt.NDArray[np.int8]) -> Mask:
    """Whether something beside the number speaks against each pair."""
    same = facts[:, AT["number"]] == SAME_NUMBER
    found = _at_any(facts, CONTRADICTS)
    shared = facts[:, AT["number"]] <= SAME_CODE
    priced = shared & (facts[:, AT["price"]] <= SAME_PRICE)
    agreed = priced | (shared & (facts[:, AT["shared code"]] == OF_ONE))
    found |= (facts[:, AT["shorter words"]] == LITTLE_IN_COMMON) & ~priced
    # 'Belt for 724' under the belt's own number contradicts nothing: `held_back` looks at the words themselves. A kit
    # under the number of what it is for does.
    known = {"made for another": agreed | same, "kit": agreed & ~same}
    for respect, levels in UNLESS_AGREED.items():
        found |= np.isin(facts[:, AT[respect]], levels) & ~known.get(respect, agreed)
    for respect, level in DIFFER:
        found |= same & (facts[:, AT[respect]] == level)
    return np.asarray(found)


def _at_any(facts: npt.NDArray[np.int8], levels: Mapping[str, Sequence[int]]) -> Mask:
    found = np.zeros(len(facts), dtype=bool)
    for respect, some in levels.items():
        found |= np.isin(facts[:, AT[respect]], some)
    return np.asarray(found)


def automatic(ready: Prepared, scored: Scored, doubts: Callable[[int], Sequence[str]]) -> Mask:
    """Which pairs match by themselves. `doubts`: what in words speaks against the pair at a place; see `held_back`."""
    facts, compared = scored.facts, ready.compared
    same = (facts[:, AT["number"]] == SAME_NUMBER) & ~_at_any(facts, MAY_DIFFER)
    leads = (facts[:, -2:] < NO_LEAD).all(axis=1)
    found = same & leads & ~against(facts) & (scored.score >= 0.5)
    unmistakable = BorneOnce(ready)
    for at in np.flatnonzero(found):
        row, part = int(compared.row[at]), int(compared.part[at])
        found[at] = (
            unmistakable(row, part)
            and _says_enough(ready.rows[row], ready.parts[part], facts[at])
            and not _other_figures(ready.rows[row], ready.parts[part])
            and not doubts(int(at))
        )
    return np.asarray(found)


def _other_figures(one: Said, other: Said) -> bool:
    """Whether both name short numbers and not the same: '5 OD' and '5-1/2 OD' share the five."""
    return bool(one.bare and other.bare and one.bare != other.bare)


def _says_enough(one: Said, other: Said, facts: npt.NDArray[np.int8]) -> bool:
    """Descriptions that agree; or none on one side, and then the same maker or a number nobody meets by chance."""
    named = bool(one.makers and other.makers)
    if one.words and other.words:
        return bool(facts[AT["shorter words"]] <= 2 and (named or facts[AT["longer words"]] <= 3))
    return max(map(len, one.keys & other.keys)) >= (SHORT_KEY if named else DISTINCTIVE)


def rival_by_words(ready: Prepared, scored: Scored, by: float = NEARER) -> Mask:
    """Whether another part is nearer to the row `by` so many points by everything but its number."""
    points = np.zeros(len(scored.facts))
    for respect, worth in WORDS_ALONE.items():
        points += np.array(worth)[scored.facts[:, AT[respect]]]
    row = ready.compared.row
    best = np.full(len(ready.rows), -np.inf)
    np.maximum.at(best, row, points)
    return np.asarray(best[row] > points + by)


class BorneOnce:
    """Whether a shared number can mean no other row and no other part, by the makers that are named."""

    def __init__(self, ready: Prepared) -> None:
        self._rows, self._parts = ready.rows, ready.parts
        self._row_keys, self._part_keys = _bearers(ready.rows), _bearers(ready.parts)

    def __call__(self, row: int, part: int) -> bool:
        rows = {at for key in self._shared(row, part) for at in self._row_keys[key]} - {row}
        return not any(_may_be(self._rows[at], self._parts[part]) for at in rows) and not self.other_parts(row, part)

    def other_parts(self, row: int, part: int) -> bool:
        """Whether another part bears the number too and may be meant."""
        parts = {at for key in self._shared(row, part) for at in self._part_keys[key]} - {part}
        return any(_may_be(self._rows[row], self._parts[at]) for at in parts)

    def _shared(self, row: int, part: int) -> frozenset[str]:
        return self._rows[row].keys & self._parts[part].keys


def _may_be(row: Said, part: Said) -> bool:
    """Two makers may use one number; where one is not named, it may be either's."""
    return not row.makers or not part.makers or not row.makers.isdisjoint(part.makers)


def _bearers(table: Sequence[Said]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for at, one in enumerate(table):
        for key in one.keys:
            found.setdefault(key, []).append(at)
    return found
