"""A mixed-integer programme being built, and its solving by HiGHS through scipy. It knows nothing of parts or money.

Numbers are whole or exact fractions up to the moment they are handed to the solver; whoever asks checks the answer
with exact figures afterwards.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import inf, isfinite
from typing import Any

from ..basics.quiet import OUTPUT, quiet

Number = int | Fraction | Decimal
Sum = dict[int, Number]
"""A linear sum: variable to factor."""


def plus(sums: Sum, more: Mapping[int, Number], factor: Number = 1) -> Sum:
    """Add `more`, times a factor, to the sum; the sum itself grows and is given back."""
    for at, number in more.items():
        sums[at] = Fraction(sums.get(at, 0)) + Fraction(number) * Fraction(factor)
    return sums


@dataclass(frozen=True)
class Outcome:
    """What the solver found: values of the variables (None: nothing), a bound no solution is below, and whether the
    values are proven best, or that there are none at all. `value` is the objective's."""

    values: Any | None
    value: float
    bound: float
    proven: bool
    impossible: bool


class Model:
    """Variables with a cost each, rows that bound sums of them; least cost is sought."""

    def __init__(self) -> None:
        self.costs: list[Number] = []
        self.tops: list[float] = []
        self.whole: list[int] = []
        self.rows: list[tuple[Sum, float, float]] = []

    def variable(self, cost: Number = 0, top: float = 1, whole: bool = True) -> int:
        """A variable from 0 to `top`, whole unless said otherwise; its number."""
        self.costs.append(cost)
        self.tops.append(top)
        self.whole.append(int(whole))
        return len(self.costs) - 1

    def row(self, sums: Sum, least: Number | float = -inf, most: Number | float = inf) -> None:
        """The sum lies between these."""
        self.rows.append((sums, float(least), float(most)))  # only to hand them to the solver

    def solve(self, seconds: float, objective: Mapping[int, Number] | None = None) -> Outcome:
        """The least cost (or another objective) within so many seconds."""
        # Imported here: it takes time to load, and most commands plan nothing.
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp

        costs = self.costs if objective is None else [objective.get(at, 0) for at in range(len(self.costs))]
        rows = LinearConstraint(self._matrix(), [low for _, low, _ in self.rows], [up for *_, up in self.rows])
        with quiet(OUTPUT):  # the solver now and then prints a word of its own, even where it is told not to
            result: Any = milp(
                [float(cost) for cost in costs],  # only to hand them to the solver
                integrality=np.array(self.whole),
                bounds=Bounds(0, self.tops),
                constraints=rows if self.rows else None,
                options={"mip_rel_gap": 0.0, "time_limit": max(seconds, 0.05)},
            )
        return _outcome(result)

    def _matrix(self) -> Any:
        from scipy import sparse

        entries = [(at, column, factor) for at, (row, _, _) in enumerate(self.rows) for column, factor in row.items()]
        rows, columns = [at for at, _, _ in entries], [column for _, column, _ in entries]
        factors = [float(factor) for *_, factor in entries]  # only to hand them to the solver
        matrix_kind: Any = sparse.csr_array  # its published types know one dimension only
        return matrix_kind((factors, (rows, columns)), shape=(len(self.rows), len(self.costs)))


def _outcome(result: Any) -> Outcome:
    bound = result.mip_dual_bound if result.mip_dual_bound is not None else -inf
    found = result.x is not None
    return Outcome(
        values=result.x,
        value=result.fun if found else inf,
        bound=bound if isfinite(bound) else -inf,
        proven=found and result.status == 0,
        impossible=result.status == 2,
    )
