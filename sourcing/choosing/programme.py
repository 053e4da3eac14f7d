"""The exact plan as a mixed-integer programme in whole cents, solved by HiGHS through scipy.

One 0/1 variable for each way to fill a need (an offer in a quantity), one for each step of each supplier's charges.
Each need takes one way. A supplier that is used stands on exactly one of his steps, the one his value of goods falls
in. Least cost first; among plans of equal cost the one that is complete soonest; the input's order never decides, for
ways are sorted by supplier and number before anything is built.
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


Row = dict[int, float]
"""A row of the constraint matrix: variable to factor. Whole numbers below 2**53, which a float holds exactly."""


def solve(ways: Sequence[Way], steps: Mapping[str, Sequence[Step]], seconds: float = 30.0) -> Solution | None:
    """The least-cost choice of one way for each need that has any; None where no choice fits all suppliers' rules.

    `seconds` bounds each of the runs; where it ends the first one early, `proven` is False.
    """
    model = _Model(sorted(ways, key=lambda way: (way.need, way.name)), steps, seconds)
    least = model.least_cost()
    if least is None:
        return None
    model.cost_at_most(least.cost)
    # The second run can only find what the first proved possible; should it run out of time, the first stands.
    best = model.soonest() or least
    model.forbid(best.chosen)
    tied = model.least_cost() is not None
    return Solution(chosen=best.chosen, cost=least.cost, proven=least.proven, tied=tied)


class _Model:
    """The ways and steps as a matrix, grown by one constraint at a time."""

    def __init__(self, ways: Sequence[Way], steps: Mapping[str, Sequence[Step]], seconds: float) -> None:
        self.ways, self.seconds = ways, seconds
        self.rows: list[tuple[Row, float, float]] = []
        self.cost: Row = {at: way.cost for at, way in enumerate(ways)}
        self.width = len(ways)
        for need in sorted({way.need for way in ways}):
            self.rows.append(({at: 1 for at, way in enumerate(ways) if way.need == need}, 1, 1))
        for supplier in sorted({way.supplier for way in ways}):
            self._charge(supplier, steps[supplier])
        self.last = self.width  # one more variable, used for the day everything is here
        self.width += 1

    def _charge(self, supplier: str, steps: Sequence[Step]) -> None:
        """Constraints that put a supplier on the right step, and the charge that follows."""
        mine = {at: way for at, way in enumerate(self.ways) if way.supplier == supplier}
        largest = {
            need: max(w.value for w in mine.values() if w.need == need) for need in {w.need for w in mine.values()}
        }
        on = range(self.width, self.width + len(steps))
        self.width += len(steps)
        tops = [step.from_value - 1 for step in steps[1:]] + [max(sum(largest.values()), steps[-1].from_value)]
        value: Row = {at: way.value for at, way in mine.items()}
        bottoms = {z: -step.from_value for z, step in zip(on, steps, strict=True)}
        self.rows.append(({**value, **bottoms}, 0, _INFINITE))
        self.rows.append(({**value, **{z: -top for z, top in zip(on, tops, strict=True)}}, -_INFINITE, 0))
        self.rows.append((dict.fromkeys(on, 1), 0, 1))
        for at in mine:
            self.rows.append(({at: 1, **dict.fromkeys(on, -1)}, -_INFINITE, 0))
        self.rows.append(({**dict.fromkeys(mine, -1), **dict.fromkeys(on, 1)}, -_INFINITE, 0))
        for z, step in zip(on, steps, strict=True):
            self.cost[z] = step.charge
            if step.refused:
                self.rows.append(({z: 1}, 0, 0))

    def cost_at_most(self, cost: int) -> None:
        """Allow only plans of at most this cost."""
        self.rows.append((self.cost, -_INFINITE, cost))

    def forbid(self, chosen: Sequence[Way]) -> None:
        """Rule out one plan."""
        row: Row = {at: 1 for at, way in enumerate(self.ways) if way in chosen}
        self.rows.append((row, -_INFINITE, len(chosen) - 1))

    def least_cost(self) -> Solution | None:
        """Solve for the least cost."""
        return self._solve(self.cost)

    def soonest(self) -> Solution | None:
        """Solve for the earliest day on which everything is here; a day not known counts as later than all."""
        days = sorted({way.latest or date.max for way in self.ways})
        for at, way in enumerate(self.ways):
            self.rows.append(({at: days.index(way.latest or date.max), self.last: -1}, -_INFINITE, 0))
        return self._solve({self.last: 1})

    def _solve(self, objective: Row) -> Solution | None:
        # Imported here: it takes time to load, and most commands plan nothing.
        from scipy.optimize import Bounds, LinearConstraint, milp

        upper = [1.0] * self.width
        upper[self.last] = len(self.ways) + 1
        result = milp(
            [objective.get(at, 0) for at in range(self.width)],
            integrality=[1] * self.width,
            bounds=Bounds(0, upper),
            constraints=LinearConstraint(
                self._matrix(), [low for _, low, _ in self.rows], [up for *_, up in self.rows]
            ),
            options={"mip_rel_gap": 0.0, "time_limit": self.seconds},
        )
        if result.x is None:
            return None
        chosen = tuple(way for at, way in enumerate(self.ways) if result.x[at] > 0.5)
        return Solution(chosen=chosen, cost=round(result.fun), proven=result.status == 0, tied=False)

    def _matrix(self) -> Any:
        from scipy import sparse

        entries = [(at, column, factor) for at, (row, _, _) in enumerate(self.rows) for column, factor in row.items()]
        rows, columns, factors = zip(*entries, strict=True)
        matrix_kind: Any = sparse.csr_array  # its published types know one dimension only
        return matrix_kind((factors, (rows, columns)), shape=(len(self.rows), self.width), dtype=float)


_INFINITE = float("inf")
