"""Points, leads and what moves them."""

import numpy as np
import pytest

from sourcing.basics.match import Judged
from sourcing.matching.likeness.compared import RESPECTS, Compared
from sourcing.matching.likeness.first_points import FIRST_POINTS, LEAD_POINTS, LEADS_BESIDE
from sourcing.matching.likeness.points import Examples, Points, moved, probability
from sourcing.matching.likeness.rivals import NO_RIVAL, lead
from sourcing.matching.likeness.scores import LEAD_STEPS, Twins, first_points, score

FIRST = Points(-2.0, (np.array([1.0, 0.0, -1.0]),))


def test_every_level_has_its_points() -> None:
    """The tables of points and the levels are of one length; agreeing is worth more than contradicting."""
    for table in (FIRST_POINTS, LEADS_BESIDE):
        assert {name: len(points) for name, points in table.items()} == {n: len(v) for n, v in RESPECTS.items()}
    assert all(len(points) == len(LEAD_STEPS) + 1 for points in LEAD_POINTS)
    assert FIRST_POINTS["number"][0] > FIRST_POINTS["number"][3] > FIRST_POINTS["number"][6]


def test_without_examples_nothing_moves() -> None:
    """The first points stay."""
    none = Examples(np.empty((0, 1), dtype=np.int8), np.empty(0), np.empty(0))
    assert moved(FIRST, none, 1.0) is FIRST


def test_examples_move_points_as_far_as_they_are_let() -> None:
    """Many answers against a level lower it; a tighter hold lowers it less."""
    levels = np.zeros((500, 1), dtype=np.int8)
    examples = Examples(levels, np.zeros(500), np.ones(500))
    loose, tight = (moved(FIRST, examples, hold).levels[0][0] for hold in (0.1, 100.0))
    assert loose < tight < FIRST.levels[0][0]


def test_points_are_those_of_logistic_regression() -> None:
    """Reference: scikit-learn's LogisticRegression with the same penalty, around points of nothing."""
    from sklearn.linear_model import LogisticRegression

    rng = np.random.default_rng(3)
    levels = rng.integers(0, 3, (400, 2)).astype(np.int8)
    same = (rng.random(400) < probability(levels[:, 0] - 1.5 * levels[:, 1].astype(float))).astype(float)
    first = Points(0.0, (np.zeros(3), np.zeros(3)))
    found = moved(first, Examples(levels, same, np.ones(400)), 0.5)
    columns = np.column_stack([np.ones(400), *[levels[:, at] == level for at in (0, 1) for level in range(3)]])
    known = LogisticRegression(C=1.0, fit_intercept=False, tol=1e-8, max_iter=1000).fit(columns, same).coef_[0]
    assert np.concatenate([[found.start], *found.levels]) == pytest.approx(known, abs=1e-3)


def test_a_lead_is_before_the_best_other() -> None:
    """The best leads by the gap to the second, the second trails by it, one alone has no rival."""
    of, other = np.array([0, 0, 0, 1]), np.array([7, 8, 9, 7])
    leads = lead(of, other, np.array([5.0, 3.0, 1.0, 2.0]))
    assert leads.tolist() == [2.0, -2.0, -4.0, NO_RIVAL]


def test_the_same_thing_listed_twice_is_no_rival() -> None:
    """Twins share a number: only the third is in the way."""
    leads = lead(np.zeros(3, dtype=int), np.array([7, 7, 9]), np.array([5.0, 4.5, 1.0]))
    assert leads.tolist() == [4.0, 3.5, -4.0]


def _pairs(count: int) -> tuple[Compared, Twins]:
    levels = np.zeros((count, len(RESPECTS)), dtype=np.int8)
    levels[1::2] = [len(names) - 1 for names in RESPECTS.values()]
    places = np.arange(count)
    return Compared(places, places, levels), Twins(places, places)


def test_agreeing_scores_high_and_contradicting_low() -> None:
    """Between 0 and 1, in the order of the evidence."""
    scores = score(*_pairs(2)).score
    assert 0 <= scores[1] < 0.01 and 0.99 < scores[0] <= 1


def test_a_persons_answers_move_the_score() -> None:
    """Twenty refusals of what agrees make it less likely; answers on other respects are left aside."""
    compared, twins = _pairs(2)
    before = score(compared, twins)
    refused = [Judged(facts=tuple(before.facts[0].tolist()), same=False)] * 20
    assert score(compared, twins, refused).score[0] < before.score[0] - 0.05
    assert score(compared, twins, [Judged(facts=(0, 1), same=False)]).score[0] == before.score[0]


def test_three_answers_turn_no_pair_of_another_kind_round() -> None:
    """Three refusals of pairs that agree in all but the number leave what agrees likely."""
    compared, twins = _pairs(2)
    unlike = compared.levels.copy()
    unlike[1] = unlike[0]
    unlike[1, 0] = 6
    compared = Compared(compared.row, compared.part, unlike)
    before = score(compared, twins)
    for answer in (False, True):
        told = [Judged(facts=tuple(before.facts[1].tolist()), same=answer)] * 3
        after = score(compared, twins, told)
        assert after.score[0] == pytest.approx(before.score[0], abs=0.1)
        assert (after.score[0] > 0.5) == (before.score[0] > 0.5)


def test_first_points_are_rebuilt_each_time() -> None:
    """Nobody can spoil them for the next."""
    first_points()[0].levels[0][:] = 99
    assert first_points()[0].levels[0][0] == FIRST_POINTS["number"][0]


def test_a_sheet_with_the_suppliers_own_numbers_teaches_nothing_against_them() -> None:
    """Hundreds of rows agree in words, maker and price and never in number: they stay likely."""
    levels = np.zeros((300, len(RESPECTS)), dtype=np.int8)
    levels[:, list(RESPECTS).index("number")] = 6
    levels[:, list(RESPECTS).index("shared code")] = 4
    levels[:, list(RESPECTS).index("other codes")] = 2
    levels[:, list(RESPECTS).index("number and words")] = 6
    places = np.arange(300)
    few = score(Compared(places[:100], places[:100], levels[:100]), Twins(places, places)).score[0]
    many = score(Compared(places, places, levels), Twins(places, places)).score[0]
    assert many == pytest.approx(few)


def test_a_sheet_without_numbers_does_not_teach_that_nothing_is_the_same() -> None:
    """Hundreds of pairs, each a little less likely than not and without a rival, do not pull one another down."""
    levels = np.zeros((300, len(RESPECTS)), dtype=np.int8)
    reached = {"number": 3, "shared code": 4, "number and words": 4, "price": 4, "longer words": 3, "shorter words": 4}
    for respect, level in (reached | dict.fromkeys(("measures", "colour", "side", "other codes", "kit"), 1)).items():
        levels[:, list(RESPECTS).index(respect)] = level
    places = np.arange(300)
    few = score(Compared(places[:100], places[:100], levels[:100]), Twins(places, places)).score[0]
    many = score(Compared(places, places, levels), Twins(places, places)).score[0]
    assert 0.05 < few < 0.5 and many > few / 2
