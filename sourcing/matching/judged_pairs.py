"""A person's answers about pairs of the two tables at hand: what to learn from, and what is settled."""

from collections.abc import Mapping

import numpy as np

from ..basics.match import Judged
from .likeness.prepared import Prepared
from .likeness.scores import first_points, with_leads

Answers = Mapping[tuple[int, int], bool]
"""(position of the row, position of the part) to whether a person says that it is the same part."""


def examples(ready: Prepared, answers: Answers) -> list[Judged]:
    """The facts of each answered pair that was compared, to learn from; pairs nobody would compare teach nothing."""
    if not answers:
        return []
    pairs = zip(ready.compared.row.tolist(), ready.compared.part.tolist(), strict=True)
    places = [(at, answers[pair]) for at, pair in enumerate(pairs) if pair in answers]
    facts = with_leads(ready.compared, ready.twins, first_points()[0])
    return [Judged(facts=tuple(facts[at].tolist()), same=same) for at, same in places]


def refused(ready: Prepared, answers: Answers) -> np.ndarray:
    """Which compared pairs a person has refused: they do not return."""
    pairs = zip(ready.compared.row.tolist(), ready.compared.part.tolist(), strict=True)
    return np.array([answers.get(pair) is False for pair in pairs], dtype=bool)
