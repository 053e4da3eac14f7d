"""Whose eyes a refusal is for: one whose facts may be what the shop pays is told to nobody who must not know that."""

from collections.abc import Sequence

from ..basics.problem import Problem
from .words import _

WITH_COSTS_IN_THEM = frozenset(
    {
        "given-away-already",
        "given-away-amount",
        "freight-unknown-order",
        "bands-contradict",
        "price-doubted",
        "line-about-prices",
        "line-applied",
        "discount-above",
        "discount-disagrees",
        "discount-unclear",
        "multiplier-unreadable",
        "break-without-quantity",
        "price-basis-differs",
        "price-basis-unsaid",
        "price-unreadable",
        "price-ambiguous",
        "price-not-positive",
        "price-other-currency",
    }
)
"""Kinds whose facts hold a cost, a cell of a price column, or a figure the shop's prices are made with."""


def told_to(problems: Sequence[Problem], sees_costs: bool) -> tuple[Problem, ...]:
    """The problems as this person may read them: without costs, only that there is something to ask the clerk."""
    return tuple(one if sees_costs or one.code not in WITH_COSTS_IN_THEM else _only_that(one) for one in problems)


def _only_that(one: Problem) -> Problem:
    what = _("the reason has in it what the shop pays, which is for the clerk's eyes")
    remedy = _("ask the clerk and name '{code}'").format(code=one.code)
    return Problem(code=one.code, what=what, remedy=remedy)
