"""How far a pair stands before its rivals: the best other part of the row, the best other row of the part."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from .said import Said
from .words_near import Positions

Floats = npt.NDArray[np.float64]

NO_RIVAL = 12.0
"""The lead, in log-odds, of a pair that has no rival at all."""


def lead(of: Positions, twins: Positions, score: Floats) -> Floats:
    """Score less the best other score of the same group; `NO_RIVAL` at most, and where there is no other.

    `of`: which row (or part) each pair belongs to. `twins`: a number for the other side; entries that are the same
    thing listed twice share one, and are no rivals of each other.
    """
    order = np.lexsort((-score, of))
    group, twin, sorted_score = of[order], twins[order], score[order]
    size = len(of)
    first = np.ones(size, dtype=bool)
    first[1:] = group[1:] != group[:-1]
    start = np.maximum.accumulate(np.where(first, np.arange(size), 0))
    other = twin != twin[start]
    second = np.full(size, -np.inf)
    np.maximum.at(second, start[other], sorted_score[other])
    rival = np.where(other, sorted_score[start], second[start])
    leads = np.empty(size)
    leads[order] = np.clip(sorted_score - rival, -NO_RIVAL, NO_RIVAL)
    return leads


def twins(table: Sequence[Said]) -> Positions:
    """A number for each entry; entries with the same numbers, makers and kind share one. No number: no twin."""
    seen: dict[object, int] = {}
    return np.array([seen.setdefault(_identity(at, one), at) for at, one in enumerate(table)], dtype=np.int64)


def _identity(at: int, one: Said) -> object:
    same = (one.keys, one.makers, one.colours, one.sides, one.things, one.measures, one.generations)
    return same if one.keys else at
