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

BY_WORDS = ("shorter words", "longer words", "spelling", "measures", "short numbers", "colour", "side", "used", "price")
NEARER = 1.0
"""So many points more by its words alone make another part a rival of the number."""

COLOUR_ONCE = 2
"""A colour that only one of them states may tell two articles of one number apart."""

NO_LEAD = 4
"""From this level of a lead on another row or part is as near or nearer, see `scores.LEAD_STEPS`."""

SHORT_KEY = 5
"""A shorter number is borne by too many things to be unmistakable where the descriptions do not agree."""


def against(facts: npt.NDArray[np.int8]) -> Mask:
    """Whether something beside the number speaks against each pair."""
    found = np.zeros(len(facts), dtype=bool)
    for respect, levels in CONTRADICTS.items():
        found |= np.isin(facts[:, AT[respect]], levels)
    return np.asarray(found)


def automatic(ready: Prepared, scored: Scored, asked: Mapping[int, object]) -> Mask:
    """Which pairs match by themselves. `asked`: rows whose number a spreadsheet may have made of another."""
    facts, compared = scored.facts, ready.compared
    same = (facts[:, AT["number"]] == 0) & (facts[:, AT["colour"]] != COLOUR_ONCE)
    leads = (facts[:, -2:] < NO_LEAD).all(axis=1)
    found = same & leads & ~against(facts) & (scored.score >= 0.5) & ~_rival_by_words(ready, scored)
    unmistakable = _borne_once(ready)
    for at in np.flatnonzero(found):
        row, part = int(compared.row[at]), int(compared.part[at])
        found[at] = (
            row not in asked
            and unmistakable(row, part)
            and _says_enough(ready, facts[at], row)
            and not (_contradicts_itself(ready.rows[row]) or _contradicts_itself(ready.parts[part]))
        )
    return np.asarray(found)


def _contradicts_itself(one: Said) -> bool:
    """Whether the description names a number a slip away from the row's own, or its own as what it is made for."""
    if "made for another" in one.things and one.keys & one.codes:
        return True
    others = one.codes - one.keys
    return any(slip_kind(code, key) is not None for code in others for key in one.keys)


def _says_enough(ready: Prepared, facts: npt.NDArray[np.int8], row: int) -> bool:
    """A short number, or one whose maker is not named on both sides, needs a description that does not contradict."""
    words_agree = facts[AT["shorter words"]] <= 3
    short = max(map(len, ready.rows[row].keys)) < SHORT_KEY
    if short and not words_agree:
        return False
    described = bool(ready.rows[row].words)
    return facts[AT["maker"]] == 0 or words_agree or not described


def _rival_by_words(ready: Prepared, scored: Scored) -> Mask:
    """Whether another part is nearer to the row by everything but its number."""
    points = np.zeros(len(scored.facts))
    for respect in BY_WORDS:
        points += np.array(FIRST_POINTS[respect])[scored.facts[:, AT[respect]]]
    row = ready.compared.row
    best = np.full(len(ready.rows), -np.inf)
    np.maximum.at(best, row, points)
    return np.asarray(best[row] > points + NEARER)


class _borne_once:
    """Whether a row's number is borne by no other row that may mean the same maker, and by no other part."""

    def __init__(self, ready: Prepared) -> None:
        self._rows, self._parts = ready.rows, ready.parts
        self._row_keys, self._part_keys = _bearers(ready.rows), _bearers(ready.parts)

    def __call__(self, row: int, part: int) -> bool:
        shared = self._rows[row].keys & self._parts[part].keys
        rows = {at for key in shared for at in self._row_keys[key]}
        parts = {at for key in shared for at in self._part_keys[key]}
        return _alone(self._rows, row, rows) and _alone(self._parts, part, parts)


def _bearers(table: Sequence[Said]) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for at, one in enumerate(table):
        for key in one.keys:
            found.setdefault(key, []).append(at)
    return found


def _alone(table: Sequence[Said], own: int, bearers: set[int]) -> bool:
    """Two makers may use one number; where a maker is not named, it may be either's."""
    makers = table[own].makers
    return all(at == own or (makers and table[at].makers and makers.isdisjoint(table[at].makers)) for at in bearers)
