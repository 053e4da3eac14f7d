"""The plainest way to a plan: one binary for each offer of each need, freight paid or free, all given to HiGHS at once.

It knows flat freight that may be free from a value of goods, and nothing else. Written for measuring against, so it is
as short and quick as a formulation of this kind can be made with scipy.
"""

from collections.abc import Sequence
from typing import Any

from tests.choosing.instances import Shops


def plain_optimum(shops: Shops, seconds: float = 120.0) -> int:
    """The least sum in cents; refuses an answer that HiGHS does not call optimal."""
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_array

    places = [
        (need, shop) for need, row in enumerate(shops.prices) for shop, each in enumerate(row) if each is not None
    ]
    width = len(places) + 2 * len(shops.delivery)
    rows, lows, highs = _constraints(shops, places)
    entries = [(at, column, factor) for at, row in enumerate(rows) for column, factor in row.items()]
    down, across, factors = zip(*entries, strict=True)
    matrix: Any = csr_array
    costs = [line_cost(shops, *place) for place in places] + list(shops.delivery) + [0] * len(shops.delivery)
    result = milp(
        np.array(costs, dtype=np.float64),
        integrality=[1] * width,
        bounds=Bounds(0, 1),
        constraints=LinearConstraint(matrix((factors, (down, across)), shape=(len(rows), width)), lows, highs),
        options={"mip_rel_gap": 0.0, "time_limit": seconds},
    )
    if result.status != 0:
        raise RuntimeError(result.message)
    return round(result.fun)


def _constraints(shops: Shops, places: Sequence[tuple[int, int]]) -> tuple[list[dict[int, int]], list[int], list[int]]:
    """Every need once; nothing from a shop whose freight is neither paid nor free; free only from its value on."""
    rows: list[dict[int, int]] = []
    lows: list[int] = []
    highs: list[int] = []
    taken, many = len(places), len(shops.delivery)
    by_need: list[dict[int, int]] = [{} for _ in shops.prices]
    value: list[dict[int, int]] = [{} for _ in shops.delivery]
    for at, (need, shop) in enumerate(places):
        by_need[need][at] = 1
        value[shop][at] = line_cost(shops, need, shop)
        rows.append({at: 1, taken + shop: -1, taken + many + shop: -1})
        lows.append(-1)
        highs.append(0)
    rows += by_need
    lows += [1] * len(by_need)
    highs += [1] * len(by_need)
    for shop, goods in enumerate(value):
        limit = shops.free_from[shop]
        total = sum(goods.values())
        rows.append({**goods, taken + many + shop: -(total + 1 if limit is None else limit)})
        lows.append(0)
        highs.append(total)
    return rows, lows, highs


def line_cost(shops: Shops, need: int, shop: int) -> int:
    """Cents of a need's pieces at a shop that has them."""
    return (shops.prices[need][shop] or 0) * shops.quantities[need]


def by_line(shops: Shops) -> int:
    """What it costs to take the cheapest offer of every line and pay the freight that follows."""
    goods: dict[int, int] = {}
    for need, row in enumerate(shops.prices):
        here = [(line_cost(shops, need, shop), shop) for shop, each in enumerate(row) if each is not None]
        cost, shop = min(here)
        goods[shop] = goods.get(shop, 0) + cost
    return sum(goods.values()) + sum(freight_of(shops, shop, value) for shop, value in goods.items())


def freight_of(shops: Shops, shop: int, value: int) -> int:
    """Freight of an order of this value."""
    limit = shops.free_from[shop]
    return 0 if limit is not None and value >= limit else shops.delivery[shop]
