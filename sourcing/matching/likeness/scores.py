"""From compared pairs to one score between 0 and 1, learnt from the tables themselves and from people's answers.

The score is the probability, by the points of the respects, that row and part are the same thing. First the points of
the respects alone; then each pair's lead before its rivals counts too, since a row is one thing and is listed once or
twice. Without any answers the points are moved a little by the pairs at hand: those that stand before all rivals on
both sides are taken for the same as far as they are likely, all others for different (self-training; D. Yarowsky,
Unsupervised Word Sense Disambiguation Rivaling Supervised Methods, 1995).
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from ...basics.match import Judged
from .compared import RESPECTS, Compared
from .first_points import FIRST_POINTS, LEAD_POINTS, LEADS_BESIDE, START, START_WITH_LEADS
from .points import Examples, Points, moved, probability
from .rivals import lead
from .words_near import Positions

Floats = npt.NDArray[np.float64]
Levels = npt.NDArray[np.int8]

RESPECTS_AT = {respect: at for at, respect in enumerate(RESPECTS)}
OTHER_NUMBER, WORDS_AGREE, MAKER_NAMED = 6, 1, 1
"""Levels of number, shorter words and maker."""

LEAD_STEPS = (8.0, 4.0, 2.0, 0.5, 0.0, -1.0, -3.0)
ROUNDS = 2
HOLD = 30.0
"""How far the tables at hand may move the points: see `points.moved`."""

HOLD_JUDGED = 3.0
"""People's answers move them further. Three must not turn pairs of another kind round; hundreds outweigh any hold."""

FEWEST = 200
"""With fewer rows than this the tables at hand teach nothing reliable: the first points stay."""


class Scored(NamedTuple):
    """The score of each pair, and its levels with the two leads behind them."""

    score: Floats
    facts: Levels


class Twins(NamedTuple):
    """For each row and each part a number that entries share which are the same thing listed twice."""

    rows: Positions
    parts: Positions


def first_points() -> tuple[Points, Points]:
    """The points before anything is learnt: without and with the leads."""
    alone = tuple(np.array(FIRST_POINTS[respect]) for respect in RESPECTS)
    beside = tuple(np.array(LEADS_BESIDE[respect]) for respect in RESPECTS)
    leads = tuple(np.array(points) for points in LEAD_POINTS)
    return Points(START, alone), Points(START_WITH_LEADS, beside + leads)


def score(compared: Compared, twins: Twins, judged: Sequence[Judged] = ()) -> Scored:
    """The score of each pair. `judged`: people's answers with the facts they were given on."""
    alone, beside = taught(compared, twins, _judged_points(first_points(), judged))
    facts = with_leads(compared, twins, alone)
    return Scored(probability(beside.of(facts)), facts)


def taught(compared: Compared, twins: Twins, first: tuple[Points, Points]) -> tuple[Points, Points]:
    """Points without and with the leads, `first` moved by the pairs themselves; unmoved where they are too few.

    Which pairs are taken for the same is always asked of `first`: asked of what it has taught itself, the score grows
    surer of itself with every round, and says no too often (measured on made-up catalogues).
    """
    alone, beside = first
    if len(np.unique(compared.row)) < FEWEST:
        return first
    weight = np.where(_own_numbers(compared), 0.0, 1.0)
    for _ in range(ROUNDS):
        same = _before_all(compared, twins, beside.of(with_leads(compared, twins, alone)))
        alone = moved(first[0], Examples(compared.levels, same, weight), HOLD)
    facts = with_leads(compared, twins, alone)
    same = _before_all(compared, twins, beside.of(facts))
    return alone, moved(beside, Examples(facts, same, weight), HOLD)


def with_leads(compared: Compared, twins: Twins, alone: Points) -> Levels:
    """The levels with two more respects: the lead among the parts of the row, and among the rows of the part."""
    points = alone.of(compared.levels)
    leads = (
        lead(compared.row, twins.parts[compared.part], points),
        lead(compared.part, twins.rows[compared.row], points),
    )
    return np.column_stack([compared.levels, *(np.searchsorted(-np.array(LEAD_STEPS), -one) for one in leads)]).astype(
        np.int8
    )


def _own_numbers(compared: Compared) -> npt.NDArray[np.bool_]:
    """Pairs that agree in all but their numbers, which may be the supplier's own: they teach nothing.

    Otherwise a sheet with the supplier's own numbers would teach that another number is another part.
    """
    at = [compared.levels[:, RESPECTS_AT[respect]] for respect in ("number", "shorter words", "maker")]
    return np.asarray((at[0] == OTHER_NUMBER) & (at[1] <= WORDS_AGREE) & (at[2] <= MAKER_NAMED))


def _before_all(compared: Compared, twins: Twins, points: Floats) -> Floats:
    """How likely each pair is taken to be the same: 0 where a rival stands before it on either side.

    Else its own probability, and halfway from there to 1 where it is likelier than not: a lead on both sides is worth
    something beside the score. Were the less likely taken for different, a sheet on which no number agrees would teach
    that nothing is the same.
    """
    by_row = lead(compared.row, twins.parts[compared.part], points)
    by_part = lead(compared.part, twins.rows[compared.row], points)
    chance = probability(points)
    return np.where((by_row > 0) & (by_part > 0), np.where(points > 0, (1 + chance) / 2, chance), 0.0)


def _judged_points(first: tuple[Points, Points], judged: Sequence[Judged]) -> tuple[Points, Points]:
    """Answers on other facts than today's respects are left aside: the respects have changed since."""
    width = len(RESPECTS) + 2
    fitting = [one for one in judged if len(one.facts) == width]
    if not fitting:
        return first
    facts = np.array([one.facts for one in fitting], dtype=np.int8)
    same = np.array([one.same for one in fitting], dtype=float)
    weight = np.ones(len(fitting))
    alone = moved(first[0], Examples(facts[:, : len(RESPECTS)], same, weight), HOLD_JUDGED)
    return alone, moved(first[1], Examples(facts, same, weight), HOLD_JUDGED)
