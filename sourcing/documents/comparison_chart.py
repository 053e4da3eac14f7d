"""The worksheet of a comparison with its chart: cost at the door against the last day, the front as steps."""

from collections.abc import Sequence

from ..basics.choice import RankedOffer
from .csv_text import Cell
from .workbook import Table
from .workbook_chart import Scatter

HEADERS = ("Place", "Supplier", "Latest", "Landed cost", "The front", "Currency")
MOST = 1000
"""More points than this tell nothing in a chart; the front is always there."""


def chart_table(ranked: Sequence[RankedOffer]) -> Table:
    """Dated offers as points, then the corners of the front's steps; the chart stands beside them.

    At most a thousand offers, the first places; those without a last day have no point.
    """
    dated = [one for one in ranked if one.priced.arrival.latest]
    rows = [_point(one) for one in dated[:MOST]] + _steps(dated)
    currency = ranked[0].priced.landed.total.currency if ranked else ""
    scatter = Scatter(
        title="Cost at the door against the last day",
        x="Latest",
        x_days=True,
        y="Landed cost",
        line="The front",
        up=f"at the door, {currency}",
    )
    return Table(title="Chart", headers=HEADERS, rows=tuple(rows), scatter=scatter if dated else None)


def _point(one: RankedOffer) -> tuple[Cell, ...]:
    cost = one.priced.landed.total
    return one.place, one.priced.supplier_name, one.priced.arrival.latest, cost.amount, None, cost.currency


def _steps(dated: Sequence[RankedOffer]) -> list[tuple[Cell, ...]]:
    """From the soonest to the cheapest; between two the cost stays until the later day."""
    front = sorted((one for one in dated if one.on_front), key=lambda one: str(one.priced.arrival.latest))
    steps: list[tuple[Cell, ...]] = []
    for one in front:
        cost, day = one.priced.landed.total, one.priced.arrival.latest
        if steps:
            steps.append((None, "", day, None, steps[-1][4], cost.currency))
        steps.append((one.place, one.priced.supplier_name, day, None, cost.amount, cost.currency))
    return steps
