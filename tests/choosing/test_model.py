"""The bare programme: sums of variables, least cost, and what is said where nothing is found."""

from fractions import Fraction
from types import SimpleNamespace

import pytest

from sourcing.choosing.model import Model, Sum, _outcome, plus


def test_sums_add_up_by_variable() -> None:
    """Factors of one variable are summed exactly, and the sum that is added to is the one given back."""
    first: Sum = {0: 1, 1: Fraction(1, 3)}
    assert plus(first, {1: 2, 2: 1}, Fraction(1, 2)) is first
    assert first == {0: 1, 1: Fraction(4, 3), 2: Fraction(1, 2)}


def test_least_cost_within_the_rows() -> None:
    """Two of three things must be taken: the two cheapest, 3 + 4."""
    model = Model()
    costs = [model.variable(cost=cost) for cost in (5, 3, 4)]
    model.row(dict.fromkeys(costs, 1), least=2)
    outcome = model.solve(5)
    assert (outcome.value, outcome.bound, outcome.proven, outcome.impossible) == (7, 7, True, False)
    assert outcome.values is not None and [round(one) for one in outcome.values] == [0, 1, 1]


def test_whole_variables_are_whole_and_others_are_not() -> None:
    """Twice x is at least 3: x is 2, or 1.5 where it need not be whole."""
    for whole, value in ((True, 2), (False, 1.5)):
        model = Model()
        one = model.variable(cost=1, top=5, whole=whole)
        model.row({one: 2}, least=3)
        assert model.solve(5).value == value


def test_another_objective_leaves_the_costs_alone() -> None:
    """The dearer of two is taken when the other is what must be few."""
    model = Model()
    cheap, dear = model.variable(cost=1), model.variable(cost=9)
    model.row({cheap: 1, dear: 1}, least=1)
    values = model.solve(5, objective={cheap: 1}).values
    assert values is not None and [round(one) for one in values] == [0, 1]
    assert model.solve(5).value == 1


def test_what_can_not_be_is_impossible_and_not_out_of_time() -> None:
    """Two of one variable that is at most 1."""
    model = Model()
    one = model.variable(cost=1)
    model.row({one: 1}, least=2)
    outcome = model.solve(5)
    assert outcome.values is None and outcome.impossible and not outcome.proven


@pytest.mark.parametrize("bound", [None, float("-inf"), float("nan")])  # only as the solver gives it
def test_a_bound_that_is_no_number_is_no_bound(bound: float | None) -> None:
    """Out of time (status 1) with something found and no bound: it is not proven, and nothing is below minus infinity.

    Status words: documentation of scipy.optimize.milp (0 optimal, 1 limit reached, 2 infeasible).
    """
    outcome = _outcome(SimpleNamespace(x=[1.0], fun=4.0, status=1, mip_dual_bound=bound))
    assert outcome.bound == float("-inf")  # only as the solver gives it
    assert not outcome.proven and not outcome.impossible and outcome.value == 4


def test_nothing_found_in_time_is_neither_proven_nor_impossible() -> None:
    """Out of time with nothing at all: the value is no number to compare with."""
    outcome = _outcome(SimpleNamespace(x=None, fun=None, status=1, mip_dual_bound=3.0))
    assert (outcome.values, outcome.value, outcome.bound) == (None, float("inf"), 3)  # only as the solver gives it
    assert not outcome.proven and not outcome.impossible
