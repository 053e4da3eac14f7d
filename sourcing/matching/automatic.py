"""Which pairs match by themselves: the same number, unmistakable, with nothing whatever against it.

A number may be damaged so that it lands on a sister part's; nothing in the number shows that. So a pair waits for a
person as soon as anything beside the number contradicts: measures, side, colour, kind, count, price, a second row under
the same number, or another part whose description is nearer.
"""

from collections.abc import Mapping, Sequence

import numpy as np
import numpy.typing as npt

from .likeness.compared import RESPECTS
from .likeness.first_points import FIRST_POINTS
from .likeness.prepared import Prepared
from .likeness.said import Said
from .likeness.scores import Scored
from .numbers.slip_kinds import slip_kind

Mask = npt.NDArray[np.bool_]
AT = {respect: at for at, respect in enumerate(RESPECTS)}

CONTRADICTS: dict[str, tuple[int, ...]] = {
    "other codes": (3,),
    "maker": (3,),
    "shorter words": (5,),
    "measures": (2,),
    "colour": (3,),
    "side": (3,),
    "generation": (2, 3),
    "used": (1,),
    "made for another": (1,),
    "kit": (1,),
    "price": (6, 7),
}
"""Levels that speak against a match whatever the numbers say."""

OPPOSITES = (
    *(("intake", "exhaust"), ("inlet", "outlet"), ("inner", "outer"), ("inside", "outside"), ("hex", "square")),
    *(("male", "female"), ("threaded", "plain"), ("cogged", "wrapped"), ("cogged", "plain"), ("aramid", "polyester")),
    *(("auger", "traction"), ("drive", "driven"), ("driver", "driven"), ("mulching", "lift"), ("gasket", "diaphragm")),
    *(("small", "large"), ("short", "long"), ("wide", "narrow"), ("low", "high"), ("single", "double")),
    *(("single", "dual"), ("straight", "bent"), ("straight", "angled"), ("open", "closed"), ("open", "sealed")),
    *(("sealed", "shielded"), ("solid", "pneumatic"), ("paper", "foam"), ("steel", "poly"), ("steel", "plastic")),
    *(("steel", "aluminum"), ("metal", "plastic"), ("manual", "electric"), ("electric", "recoil"), ("gas", "electric")),
    *(("ball", "needle"), ("flat", "grooved"), ("extension", "compression")),
)
"""Words that tell sister parts apart (common practice, no source)."""

BY_WORDS = ("shorter words", "longer words", "spelling", "measures", "short numbers", "colour", "side", "used", "price")
NEARER = 0.6
"""So many points more by its words alone make another part a rival of the number."""

MAY_DIFFER = (("colour", 2), ("side", 2), ("other codes", 2), ("short numbers", 2))
"""Levels that may tell two articles of one number apart: what only one states, other codes, short numbers."""

NO_LEAD = 4
"""From this level of a lead on another row or part is as near or nearer, see `scores.LEAD_STEPS`."""

DISTINCTIVE = 7
"""A number of so many characters is not met by chance; a shorter one without maker and description is."""

SHORT_KEY = 5
"""A shorter number is borne by too many things, even of one maker, to be unmistakable without a description."""


def against(facts: npt.NDArray[np.int8]) -> Mask:
    """Whether something beside the number speaks against each pair."""
    found = np.zeros(len(facts), dtype=bool)
    for respect, levels in CONTRADICTS.items():
        found |= np.isin(facts[:, AT[respect]], levels)
    return np.asarray(found)


def automatic(ready: Prepared, scored: Scored, asked: Mapping[int, object]) -> Mask:
    """Which pairs match by themselves. `asked`: rows whose number a spreadsheet may have made of another."""
    facts, compared = scored.facts, ready.compared
    same = facts[:, AT["number"]] == 0
    for respect, level in MAY_DIFFER:
        same &= facts[:, AT[respect]] != level
    leads = (facts[:, -2:] < NO_LEAD).all(axis=1)
    found = same & leads & ~against(facts) & (scored.score >= 0.5) & ~_rival_by_words(ready, scored)
    unmistakable = _BorneOnce(ready)
    for at in np.flatnonzero(found):
        row, part = int(compared.row[at]), int(compared.part[at])
        found[at] = (
            row not in asked
            and unmistakable(row, part)
            and _says_enough(ready.rows[row], ready.parts[part], facts[at])
            and _count(ready.rows[row]) == _count(ready.parts[part])
            and not opposed(ready.rows[row], ready.parts[part])
            and not (_contradicts_itself(ready.rows[row]) or _contradicts_itself(ready.parts[part]))
        )
    return np.asarray(found)


def _count(one: Said) -> frozenset[str]:
    """How many a pack holds; one where nothing is said. 'Shear pin' and 'shear pin 10/pk' have two prices."""
    return frozenset(amount for kind, amount in one.measures if kind == "count") or frozenset(("1",))


def opposed(one: Said, other: Said) -> str:
    """The two words, one in each description, that no part is at once; blank where there are none."""
    for left, right in (*OPPOSITES, *((b, a) for a, b in OPPOSITES)):
        if left in one.words and right in other.words and left not in other.words and right not in one.words:
            return f"{left} against {right}"
    return ""


def _contradicts_itself(one: Said) -> bool:
    """Whether the description names a number a slip away from the row's own, or its own as what it is made for."""
    if "made for another" in one.things and one.keys & one.codes:
        return True
    others = one.codes - one.keys
    return any(slip_kind(code, key) is not None for code in others for key in one.keys)


def _says_enough(one: Said, other: Said, facts: npt.NDArray[np.int8]) -> bool:
    """Descriptions that agree; or none on one side, and then the same maker or a number nobody meets by chance."""
    named = bool(one.makers and other.makers)
    if one.words and other.words:
        return bool(facts[AT["shorter words"]] <= 2 and (named or facts[AT["longer words"]] <= 3))
    return max(map(len, one.keys & other.keys)) >= (SHORT_KEY if named else DISTINCTIVE)


def _rival_by_words(ready: Prepared, scored: Scored) -> Mask:
    """Whether another part is nearer to the row by everything but its number."""
    points = np.zeros(len(scored.facts))
    for respect in BY_WORDS:
        points += np.array(FIRST_POINTS[respect])[scored.facts[:, AT[respect]]]
    row = ready.compared.row
    best = np.full(len(ready.rows), -np.inf)
    np.maximum.at(best, row, points)
    return np.asarray(best[row] > points + NEARER)


class _BorneOnce:
    """Whether a shared number can mean no other row and no other part, by the makers that are named."""

    def __init__(self, ready: Prepared) -> None:
        self._rows, self._parts = ready.rows, ready.parts
        self._row_keys, self._part_keys = _bearers(ready.rows), _bearers(ready.parts)

    def __call__(self, row: int, part: int) -> bool:
        shared = self._rows[row].keys & self._parts[part].keys
        rows = {at for key in shared for at in self._row_keys[key]} - {row}
        parts = {at for key in shared for at in self._part_keys[key]} - {part}
        return not any(_may_be(self._rows[at], self._parts[part]) for at in rows) and not any(
            _may_be(self._rows[row], self._parts[at]) for at in parts
        )


def _may_be(row: Said, part: Said) -> bool:
    """Two makers may use one number; where one is not named, it may be either's."""
    return not row.makers or not part.makers or not row.makers.isdisjoint(part.makers)


def _bearers(table: Sequence[Said]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for at, one in enumerate(table):
        for key in one.keys:
            found.setdefault(key, []).append(at)
    return found
