"""Points for each level of each respect, and how they are moved by examples without leaving what was thought first.

A logistic regression whose coefficients are held near their first values: few examples move them little, many much.
"""

from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

Levels = npt.NDArray[np.int8]
Floats = npt.NDArray[np.float64]


class Points(NamedTuple):
    """`start` and, one array a respect, the points of its levels. Natural log-odds."""

    start: float
    levels: tuple[Floats, ...]

    def of(self, levels: Levels) -> Floats:
        """The log-odds of each pair: one row of levels a pair, one column a respect."""
        total = np.full(len(levels), self.start)
        for at, points in enumerate(self.levels):
            total += points[levels[:, at]]
        return total


class Examples(NamedTuple):
    """Levels of pairs, for each how likely it is the same thing (0 to 1), and how much it weighs."""

    levels: Levels
    same: Floats
    weight: Floats


def moved(first: Points, examples: Examples, hold: float) -> Points:
    """The points that fit the examples best while held to `first`: each point's distance squared costs `hold`."""
    if not np.any(examples.weight > 0):
        return first
    some = _merged(examples)
    columns = _columns(some.levels, first)
    across = columns.T.tocsr()
    from_first = np.concatenate([[first.start], *first.levels])

    def cost(now: Floats) -> tuple[float, Floats]:
        chance = probability(columns @ now)
        away = now - from_first
        said = some.same * np.log(chance) + (1 - some.same) * np.log(1 - chance)
        slope = across @ (some.weight * (chance - some.same)) + 2 * hold * away
        return -(some.weight @ said) + hold * (away @ away), slope

    best = minimize(cost, from_first, jac=True, method="L-BFGS-B", options={"maxiter": 200}).x
    edges = np.cumsum([len(points) for points in first.levels])[:-1]
    return Points(best[0], tuple(np.split(best[1:], edges)))


def probability(log_odds: Floats) -> Floats:
    """Log-odds as a probability, never quite 0 or 1."""
    return np.asarray(1 / (1 + np.exp(-np.clip(log_odds, -30, 30))))


def _merged(examples: Examples) -> Examples:
    """Equal rows of levels as one row that weighs as much as all: most pairs look like many others."""
    teaching = examples.weight > 0
    weight = examples.weight[teaching]
    different, where = np.unique(examples.levels[teaching], axis=0, return_inverse=True)
    total = np.bincount(where.ravel(), weights=weight)
    same = np.bincount(where.ravel(), weights=weight * examples.same[teaching]) / total
    return Examples(different, same, total.astype(np.float64))


def _columns(levels: Levels, points: Points) -> Any:
    """A column for the start and one for each level of each respect: 1 where the pair reaches it. Sparse."""
    sizes = [1, *(len(one) for one in points.levels)]
    firsts = np.cumsum([0, *sizes[:-1]])
    places = np.column_stack([np.zeros(len(levels), dtype=np.int64), levels]) + firsts
    starts = np.arange(len(levels) + 1) * len(sizes)
    return csr_matrix((np.ones(places.size), places.ravel(), starts), shape=(len(levels), sum(sizes)))
