"""The figures on cases worked by hand."""

import pytest

from tests.match_corpus import judge
from tests.match_corpus.figures import Figures, by_kind, figures, summed, together
from tests.match_corpus.judge import Bin, Line, Share

GOLD = {0: frozenset({10}), 1: frozenset({11, 12}), 2: frozenset({13}), 3: frozenset({14})}
"""Rows 0 to 3 have a part, 4 and 5 have none."""

LINES = [
    Line(0, 10, "automatic", 1.0, 1),
    Line(1, 12, "candidate", 0.96, 1),
    Line(1, 99, "candidate", 0.3, 2),
    Line(2, 98, "candidate", 0.7, 1),
    Line(2, 13, "candidate", 0.6, 2),
    Line(4, 97, "automatic", 0.97, 1),
    Line(5, 96, "candidate", 0.2, 1),
]


def test_automatic_counts_only_that_tier() -> None:
    """One of two right, four rows have a part."""
    found = judge.automatic(GOLD, LINES)
    assert found == Share(right=1, given=2, wanted=4)
    assert (found.precision, found.recall) == (0.5, 0.25)
    assert [line.row for line in judge.wrong_automatic(GOLD, LINES)] == [4]


def test_any_place_of_a_part_is_right_and_a_later_rank_counts_among_the_first_five() -> None:
    """Row 1 is listed twice; row 2 has its part second; row 3 is not shown."""
    assert judge.among_first(GOLD, LINES, 5) == 3 / 4
    assert judge.among_first(GOLD, LINES, 1) == 2 / 4


def test_pairs_at_a_threshold_take_the_first_line_only() -> None:
    """At 0.5: rows 0, 1 right, 2 and 4 wrong. F1 = 2*2/(4+4)."""
    found = judge.pairs(GOLD, LINES, 0.5)
    assert found == Share(right=2, given=4, wanted=4)
    assert found.f1 == 0.5
    assert judge.pairs(GOLD, LINES, 0.95) == Share(right=2, given=3, wanted=4)


def test_a_score_on_the_threshold_is_in() -> None:
    """0.7 taken at 0.7."""
    assert judge.pairs(GOLD, LINES, 0.7).given == 4


def test_best_threshold_is_chosen_at_a_score_that_occurs() -> None:
    """At 0.96: two right of three given, F1 4/7, better than 2/5 at 1.0 and 4/8 below."""
    assert judge.best_pairs(GOLD, LINES) == (0.96, Share(2, 3, 4))


def test_equal_scores_are_taken_together() -> None:
    """A right and a wrong line of one score can't be told apart by a threshold, so precision 1 is never reached."""
    lines = [Line(0, 10, "candidate", 0.9, 1), Line(4, 97, "candidate", 0.9, 1)]
    assert judge.recall_at(GOLD, lines, 0.99) == 0.0
    assert judge.recall_at(GOLD, lines, 0.5) == 0.25


def test_recall_at_precision() -> None:
    """Alone the line at 1.0 is wholly right."""
    assert judge.recall_at(GOLD, LINES, 0.99) == 0.25


def test_calibration_puts_a_score_of_one_in_the_last_bin() -> None:
    """First lines only: 0.2 | 0.7 | 0.96, 0.97, 1.0."""
    bins = judge.calibration(GOLD, LINES, (0.0, 0.5, 0.95, 1.0))
    assert [(one.count, one.right) for one in bins] == [(1, 0), (1, 0), (3, 2)]
    assert bins[2].mean_score == pytest.approx((0.96 + 0.97 + 1.0) / 3)


def test_nothing_given_is_wholly_precise_and_finds_nothing() -> None:
    """No division by nothing."""
    found = figures(GOLD, [])
    assert (found.automatic_precision, found.automatic_recall, found.f1, found.best_threshold) == (1.0, 0.0, 0.0, 1.0)
    assert figures({}, []).among_first_five == 1.0


def test_two_first_lines_for_a_row_are_refused() -> None:
    """Each would be counted as an answer."""
    with pytest.raises(ValueError, match="rank 1"):
        judge.firsts([Line(0, 10, "candidate", 0.9, 1), Line(0, 11, "candidate", 0.8, 1)])


def test_only_the_rows_asked_for_are_judged() -> None:
    """Rows 1 and 4 of all."""
    gold, lines = judge.of_rows(GOLD, LINES, {1, 4})
    assert set(gold) == {1}
    assert {line.row for line in lines} == {1, 4}


def test_mean_and_worst_of_seeds() -> None:
    """The worst of wrong ones is the most, of the rest the least."""
    one = figures(GOLD, LINES)
    other = figures(GOLD, [LINES[0]])
    mean, worst = together([one, other])
    assert mean.automatic_wrong == 0.5
    assert worst.automatic_wrong == 1
    assert worst.automatic_precision == 0.5
    assert isinstance(mean, Figures)


def test_bins_of_seeds_add_up() -> None:
    """Counts add, means weigh by count."""
    assert summed([[Bin(0, 1, 1, 0.5, 0)], [Bin(0, 1, 3, 0.5, 3)]]) == [Bin(0, 1, 4, 0.5, 3)]


def test_kinds_show_the_most_wrong_first() -> None:
    """Row 4 was taken by itself and has no part."""
    found = by_kind(["a", "a", "b", "b", "none", "none"], GOLD, LINES)
    assert [(one.kind, one.rows, one.with_part, one.among_five, one.wrong_automatic) for one in found] == [
        ("none", 2, 0, 0, 1),
        ("b", 2, 2, 1, 0),
        ("a", 2, 2, 2, 0),
    ]
