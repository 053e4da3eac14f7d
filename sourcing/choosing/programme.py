"""The exact plan as a mixed-integer programme in whole cents, solved by HiGHS.

One 0/1 variable for each way to fill a need (an offer in a quantity), one for each step of each supplier's charges.
Each need takes one way. A supplier that is used stands on exactly one of his steps, the one his value of goods
falls in. Least cost first; among plans of equal cost the one that is complete soonest; the input's order never
decides, for ways are sorted by supplier and number before anything is built.
"""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from ..basics.value import Value


class Way(Value, frozen=True, kw_only=True):
    """One way to fill a need. `value` is in minor units of the supplier's currency, `cost` in the shop's.

    `name` is unique and orders the ways.
    """

    need: int
    supplier: str
    name: tuple[str, ...]
    value: int
    cost: int
    latest: date | None


class Step(Value, frozen=True, kw_only=True):
    """From this value of goods on, the supplier's charges are `charge`; `refused`: he takes no such order."""

    from_value: int
    charge: int
    refused: bool


class Solution(Value, frozen=True, kw_only=True):
    """The chosen ways, their cost with charges in minor units, whether it is proven least, whether another ties."""

    chosen: tuple[Way, ...]
    cost: int
    proven: bool
    tied: bool


def solve(ways: Sequence[Way], steps: Mapping[str, Sequence[Step]], seconds: float = 30.0) -> Solution | None:
    """The least-cost choice of one way for each need that has any; None where no choice fits all suppliers' rules."""
    ordered = sorted(ways, key=lambda way: (way.need, way.name))
    least = _Model(ordered, steps, seconds).least_cost()
    if least is None:
        return None
    soonest = _Model(ordered, steps, seconds)
    soonest.cost_at_most(least.cost)
    best = soonest.soonest() or least
    # The second run may only find what the first one proved possible; should it run out of time, the first stands.
    other = _Model(ordered, steps, seconds)
    other.cost_at_most(least.cost)
    other.forbid(best.chosen)
    tied = other.least_cost() is not None
    return Solution(chosen=best.chosen, cost=least.cost, proven=least.proven, tied=tied)


class _Model:
    """One HiGHS model over the ways and steps."""

    def __init__(self, ways: Sequence[Way], steps: Mapping[str, Sequence[Step]], seconds: float) -> None:
        import highspy  # here, not above: the library takes time to load and most commands plan nothing

        solver_kind: Any = highspy.Highs
        self.solver: Any = solver_kind()
        self.solver.silent()
        self.optimal = highspy.HighsModelStatus.kOptimal
        for option, setting in (
            ("mip_rel_gap", 0.0),
            ("mip_abs_gap", 0.5),
            ("time_limit", seconds),
            ("threads", 1),
            ("mip_feasibility_tolerance", 1e-9),
        ):
            self.solver.setOptionValue(option, setting)
        self.ways = ways
        self.take = [self.solver.addBinary() for _ in ways]
        self.cost = self._total(steps)

    def _total(self, steps: Mapping[str, Sequence[Step]]) -> Any:
        for need in sorted({way.need for way in self.ways}):
            self.solver.addConstr(sum(x for x, way in self._pairs() if way.need == need) == 1)
        cost = sum(x * way.cost for x, way in self._pairs())
        for supplier in sorted({way.supplier for way in self.ways}):
            cost = cost + self._charges(supplier, steps[supplier])
        return cost

    def _charges(self, supplier: str, steps: Sequence[Step]) -> Any:
        """Constraints that put the supplier on the right step, and the charge that follows."""
        mine = [(x, way) for x, way in self._pairs() if way.supplier == supplier]
        ceiling = sum(_largest_value(mine, need) for need in {way.need for _, way in mine})
        on = [self.solver.addBinary() for _ in steps]
        value = sum(x * way.value for x, way in mine)
        tops = [step.from_value - 1 for step in steps[1:]] + [max(ceiling, steps[-1].from_value)]
        self.solver.addConstr(value >= sum(z * step.from_value for z, step in zip(on, steps, strict=True)))
        self.solver.addConstr(value <= sum(z * top for z, top in zip(on, tops, strict=True)))
        used = sum(on)
        self.solver.addConstr(used <= 1)
        for x, _ in mine:
            self.solver.addConstr(x <= used)
        self.solver.addConstr(used <= sum(x for x, _ in mine))
        for z, step in zip(on, steps, strict=True):
            if step.refused:
                self.solver.addConstr(z <= 0)
        return sum(z * step.charge for z, step in zip(on, steps, strict=True))

    def _pairs(self) -> list[tuple[Any, Way]]:
        return list(zip(self.take, self.ways, strict=True))

    def cost_at_most(self, cost: int) -> None:
        """Allow only plans of at most this cost."""
        self.solver.addConstr(self.cost <= cost)

    def forbid(self, chosen: Sequence[Way]) -> None:
        """Rule out one plan."""
        self.solver.addConstr(sum(x for x, way in self._pairs() if way in chosen) <= len(chosen) - 1)

    def least_cost(self) -> Solution | None:
        """Solve for the least cost."""
        return self._solve(self.cost)

    def soonest(self) -> Solution | None:
        """Solve for the earliest day on which everything is here; a day not known counts as later than all."""
        days = sorted({way.latest or date.max for way in self.ways})
        last = self.solver.addVariable(0, len(days))
        for x, way in self._pairs():
            self.solver.addConstr(last >= x * days.index(way.latest or date.max))
        return self._solve(last)

    def _solve(self, objective: Any) -> Solution | None:
        self.solver.minimize(objective)
        values = list(self.solver.getSolution().col_value)
        if not values or self.solver.getInfo().primal_solution_status != 2:
            return None
        chosen = tuple(way for x, way in self._pairs() if values[x.index] > 0.5)
        proven = self.solver.getModelStatus() == self.optimal
        cost = round(self.solver.getInfo().objective_function_value)
        return Solution(chosen=chosen, cost=cost, proven=proven, tied=False)


def _largest_value(mine: Sequence[tuple[Any, Way]], need: int) -> int:
    return max(way.value for _, way in mine if way.need == need)
