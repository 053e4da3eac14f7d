"""The recipes' optimum by another solver (CP-SAT of OR-tools), each in a plain formulation of its own.

All is in whole cents, so the answer is exact; an answer that is not proven optimal is refused.
"""

from typing import Any

from ortools.sat.python import cp_model

from tests.choosing.instances import Divided, Shops, Steps


def least_of_shops(shops: Shops) -> int:
    """The least sum of goods, less discounts, plus delivery."""
    model: Any = cp_model.CpModel()
    bought: dict[int, list[tuple[int, Any]]] = {}
    for product, row in enumerate(shops.prices):
        here = {shop: model.new_bool_var(f"x{product}-{shop}") for shop, each in enumerate(row) if each is not None}
        model.add_exactly_one(here.values())
        for shop, taken in here.items():
            bought.setdefault(shop, []).append(((row[shop] or 0) * shops.quantities[product], taken))
    parts = [_shop_cost(model, shops, shop, lines) for shop, lines in bought.items()]
    return _least(model, sum(parts))


def _shop_cost(model: Any, shops: Shops, shop: int, lines: list[tuple[int, Any]]) -> Any:
    most = sum(cents for cents, _ in lines)
    value = model.new_int_var(0, most, f"value{shop}")
    model.add(value == sum(cents * taken for cents, taken in lines))
    used = model.new_bool_var(f"used{shop}")
    for _, taken in lines:
        model.add_implication(taken, used)
    paid = used
    limit = shops.free_from[shop]
    if limit is not None:
        free = model.new_bool_var(f"free{shop}")
        model.add(value >= limit).only_enforce_if(free)
        paid = model.new_bool_var(f"paid{shop}")
        model.add_bool_or(used.negated(), free, paid)
    return value + shops.delivery[shop] * paid - _discount(model, value, most, shops.discounts[shop], shop)


def _discount(model: Any, value: Any, most: int, steps: Steps, shop: int) -> Any:
    """What comes off: the deepest step reached, in per cent of the value, rounded half up to a cent."""
    parts = []
    stands = [model.new_bool_var(f"step{shop}-{at}") for at in range(len(steps))]
    if stands:
        model.add_at_most_one(stands)
    for at, (stand, (limit, percent)) in enumerate(zip(stands, steps, strict=True)):
        model.add(value >= limit).only_enforce_if(stand)
        halves = model.new_int_var(0, 2 * most * percent + 100, f"halves{shop}-{at}")
        model.add(halves == 2 * percent * value + 100)
        whole = model.new_int_var(0, most, f"whole{shop}-{at}")
        model.add_division_equality(whole, halves, 200)
        off = model.new_int_var(0, most, f"off{shop}-{at}")
        model.add(off <= whole)
        model.add(off <= most * stand)
        parts.append(off)
    return sum(parts)


def least_divided(divided: Divided) -> int | None:
    """The least sum for at least so many pieces; None where the stock of so few suppliers does not reach."""
    model: Any = cp_model.CpModel()
    costs, counts, users = [], [], []
    for supplier, steps in enumerate(divided.steps):
        tops = [at - 1 for at, _ in steps[1:]] + [divided.most[supplier]]
        stands = [model.new_bool_var(f"z{supplier}-{at}") for at in range(len(steps))]
        model.add_at_most_one(stands)
        users += stands
        for at, ((bottom, price), top) in enumerate(zip(steps, tops, strict=True)):
            pieces = model.new_int_var(0, divided.most[supplier], f"q{supplier}-{at}")
            model.add(pieces >= bottom * stands[at])
            model.add(pieces <= min(top, divided.most[supplier]) * stands[at])
            counts.append(pieces)
            costs.append(price * pieces)
    model.add(sum(counts) >= divided.pieces)
    if divided.winners is not None:
        model.add(sum(users) <= divided.winners)
    return _least(model, sum(costs)) if _can_be(divided) else None


def _can_be(divided: Divided) -> bool:
    return sum(sorted(divided.most, reverse=True)[: divided.winners]) >= divided.pieces


def _least(model: Any, cost: Any) -> int:
    model.minimize(cost)
    solver: Any = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 7
    if solver.solve(model) != cp_model.OPTIMAL:
        raise RuntimeError("the second solver did not prove its answer")
    least: int = round(solver.objective_value)
    return least
