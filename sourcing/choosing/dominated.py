"""Offers that can't be in a best plan, taken out before solving: dearer than another by more than any charge may move.

Nothing that could tie is taken out, and nothing where leaving one supplier for another may break a rule of the order.
"""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from fractions import Fraction
from math import inf

from ..basics.schedule import Schedule
from .choices import Choice
from .programme import Conditions

ROUNDINGS = 4
"""Units that rounding a charge up here and down there may add to an order."""


def without_dominated(
    choices: Sequence[Choice], conditions: Conditions, schedules: Mapping[str, Schedule]
) -> list[Choice]:
    """The choices less those that another of the same need beats whatever else is ordered."""
    if conditions.most_suppliers is not None or conditions.credit_percent or conditions.cores_lost:
        return list(choices)
    if len(set(conditions.need_by)) > 1:
        return list(choices)  # a later piece at another supplier might keep what is needed sooner waiting there
    fixed = {need for group in conditions.together for need in group} | conditions.divided
    moves = {supplier: _Moves(schedule) for supplier, schedule in schedules.items()}
    shared = _shared(choices)
    by_need: dict[int, list[Choice]] = defaultdict(list)
    for one in choices:
        by_need[one.need].append(one)
    kept: list[Choice] = []
    for need, some in by_need.items():
        kept += some if need in fixed else _undominated(some, moves, shared)
    return kept


def _undominated(some: Sequence[Choice], moves: Mapping[str, "_Moves"], shared: set[object]) -> list[Choice]:
    days: list[date] = []
    least: list[Fraction | float] = []
    for one in sorted(some, key=lambda one: one.latest):
        worst: Fraction | float = inf
        if one.item.offer.identity not in shared:
            worst = moves[one.supplier].most_with(one)
        days.append(one.latest)
        least.append(min(worst, least[-1] if least else inf))

    def beaten(one: Choice) -> bool:
        other = least[bisect_right(days, one.latest) - 1]
        return other + moves[one.supplier].lost_without() < one.own_cost()

    return [one for one in some if not beaten(one)]


class _Moves:
    """How far a supplier's charges can move when one more item is ordered of him, or one less."""

    def __init__(self, schedule: Schedule) -> None:
        self._steady = not any(step.refused for step in schedule.steps) and all(
            step.known for step in schedule.freight_steps
        )
        self._steady = (
            self._steady and schedule.heaviest is None and schedule.freight_per_kg is None and not schedule.packed
        )
        self._steady = self._steady and not any(step.discount_percent for step in schedule.steps)
        self._steady = self._steady and all(one.least is None and one.most is None for one in schedule.percents)
        weight = max((step.freight for step in schedule.weight_steps), default=0)
        fixed = sum(one.fixed for one in schedule.percents)
        self._most = (
            max(step.fees for step in schedule.steps)
            + max(step.freight for step in schedule.freight_steps)
            + weight
            + schedule.oversize_once
            + fixed
            + 1
        )
        self._later = schedule.later_delivery
        self._factor = Fraction(1)
        for one in schedule.percents:
            share = sum((Fraction(factor) for _, factor in one.of), Fraction(0)) * Fraction(one.percent) / 100
            self._factor *= 1 + abs(share)

    def most_with(self, one: Choice) -> Fraction | float:
        """The most the item can cost with all that its order may add."""
        if not self._steady:
            return inf
        later = self._later * max(1, len(one.arrival.deliveries) + (not one.arrival.known))
        return (one.own_cost() + self._most + later + ROUNDINGS) * self._factor

    def lost_without(self) -> Fraction | float:
        """The most the other items of the order can cost more when this one is not ordered with them."""
        return self._most * self._factor if self._steady else inf


def _shared(choices: Sequence[Choice]) -> set[object]:
    """Offers with a stated stock that several needs could take."""
    needs: dict[object, set[int]] = defaultdict(set)
    for one in choices:
        if one.item.offer.stock is not None:
            needs[one.item.offer.identity].add(one.need)
    return {identity for identity, some in needs.items() if len(some) > 1}
