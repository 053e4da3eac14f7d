"""Whose eyes a refusal is for: one whose facts may be what the shop pays is told to nobody who must not know that."""

from collections.abc import Sequence

from ..basics.problem import Problem
from ..basics.value import changed
from .words import _, later

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


AT_THE_BENCH = {
    "number-not-known": later("leave the part blank and say it in your own words, or ask the clerk which part it is"),
}
"""What helps who has no page of same parts, by the kind of refusal."""


def told_to(problems: Sequence[Problem], sees_costs: bool) -> tuple[Problem, ...]:
    """The problems as this person may read them: without costs, only that there is something to ask the clerk; and
    without a remedy on a page she does not have."""
    return tuple(problems) if sees_costs else tuple(map(_at_the_bench, problems))


def _at_the_bench(one: Problem) -> Problem:
    if one.code in WITH_COSTS_IN_THEM:
        return _only_that(one)
    remedy = AT_THE_BENCH.get(one.code)
    return changed(one, remedy=_(remedy)) if remedy else one


def _only_that(one: Problem) -> Problem:
    what = _("the reason has in it what the shop pays, which is for the clerk's eyes")
    remedy = _("ask the clerk and name '{code}'").format(code=one.code)
    return Problem(code=one.code, what=what, remedy=remedy)
