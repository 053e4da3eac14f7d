"""Points for each level of each respect, and how they are moved by examples without leaving what was thought first.

A logistic regression whose coefficients are held near their first values: few examples move them little, many much.
"""

from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize

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
    from_first = np.concatenate([[first.start], *first.levels])

    def cost(now: Floats) -> tuple[float, Floats]:
        chance = probability(columns @ now)
        away = now - from_first
        said = some.same * np.log(chance) + (1 - some.same) * np.log(1 - chance)
        slope = columns.T @ (some.weight * (chance - some.same)) + 2 * hold * away
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


def _columns(levels: Levels, points: Points) -> Floats:
    """A column for the start and one for each level of each respect: 1 where the pair reaches it."""
    sizes = [len(one) for one in points.levels]
    table = np.zeros((len(levels), 1 + sum(sizes)))
    table[:, 0] = 1
    at = 1
    for respect, size in enumerate(sizes):
        table[np.arange(len(levels)), at + levels[:, respect]] = 1
        at += size
    return table
