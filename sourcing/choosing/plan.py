"""The best plan for many needs over many suppliers, beside what other ways of buying would cost.

The programme decides in whole cents; every order is then priced again by the landed-cost function that single offers
use, and the two must agree to the cent.
"""

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from datetime import date

from ..basics.landed_cost import Arrival, OrderItem
from ..basics.money import Money, total
from ..basics.plan import Alternative, Plan, PlannedOrder, PlanNeed
from ..basics.value import Value
from .programme import Solution, Step, Way, solve


class Choice(Value, frozen=True, kw_only=True):
    """One offer in one quantity for a need: `value` in the supplier's currency, `cost` at the door without charges."""

    item: OrderItem
    value: Money
    cost: Money
    arrival: Arrival


class Market(Value, frozen=True, kw_only=True):
    """What the plan asks of landed cost: price one supplier's items as an order, and his charges as steps."""

    land: Callable[[Sequence[OrderItem]], PlannedOrder]
    steps: Mapping[str, Sequence[Step]]
    currency: str
    supplier_names: Mapping[str, str]


def best_plan(
    needs: Sequence[PlanNeed], choices: Mapping[str, Sequence[Choice]], market: Market, need_by: date | None
) -> Plan:
    """The least landed total that fills every need that can be filled by the day; `choices` by the need's label.

    A need that nobody fills, or not in time, is said in `unfilled` and left out; a plan is never silently late.
    """
    in_time = {need.label: _by(choices.get(need.label, ()), need_by) for need in needs}
    unfilled = [_unfilled(need, choices.get(need.label, ()), need_by) for need in needs if not in_time[need.label]]
    fillable = [need for need in needs if in_time[need.label]]
    pairs = _ways(fillable, in_time)
    solution = solve([way for way, _ in pairs], market.steps) if pairs else None
    if pairs and solution is None:
        unfilled.append("no set of orders satisfies every supplier's minimum order")
    orders = _orders([choice for way, choice in pairs if solution and way in solution.chosen], market)
    plan_total = total((order.landed.total for order in orders), market.currency)
    _agree(solution, plan_total)
    return Plan(
        needs=tuple(needs),
        orders=orders,
        total=plan_total,
        core_charge=total((order.landed.core_charge for order in orders), market.currency),
        latest=_latest(orders),
        proven=bool(solution and solution.proven),
        counted=plan_total,
        notes=_notes(solution, orders),
        alternatives=_alternatives(fillable, in_time, market, plan_total) if solution else (),
        unfilled=tuple(unfilled),
    )


def _by(choices: Sequence[Choice], need_by: date | None) -> list[Choice]:
    if need_by is None:
        return list(choices)
    return [one for one in choices if one.arrival.latest is not None and one.arrival.latest <= need_by]


def _unfilled(need: PlanNeed, choices: Sequence[Choice], need_by: date | None) -> str:
    what = f"{need.label}: {need.quantity} x {need.our_part}"
    dated = [one for one in choices if one.arrival.latest is not None]
    if not choices:
        return f"{what}: nobody offers it on a sheet that holds"
    if not dated:
        return f"{what}: no offer names a day; ask {_supplier(choices[0])}"
    nearest = min(dated, key=lambda one: (one.arrival.latest or date.max, one.cost.amount, one.item.offer.identity))
    return f"{what}: nobody has it here by {need_by}; nearest is {_supplier(nearest)} on {nearest.arrival.latest}"


def _supplier(choice: Choice) -> str:
    return choice.item.offer.supplier


def _ways(needs: Sequence[PlanNeed], choices: Mapping[str, Sequence[Choice]]) -> list[tuple[Way, Choice]]:
    return [(_way(at, choice), choice) for at, need in enumerate(needs) for choice in choices[need.label]]


def _way(need: int, choice: Choice) -> Way:
    offer = choice.item.offer
    return Way(
        need=need,
        supplier=offer.supplier,
        name=(*(str(part) for part in offer.identity), str(choice.item.ordered)),
        value=choice.value.minor(),
        cost=choice.cost.minor(),
        latest=choice.arrival.latest,
    )


def _orders(chosen: Sequence[Choice], market: Market) -> tuple[PlannedOrder, ...]:
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for choice in chosen:
        by_supplier[choice.item.offer.supplier].append(choice.item)
    return tuple(market.land(by_supplier[supplier]) for supplier in sorted(by_supplier))


def _agree(solution: Solution | None, plan_total: Money) -> None:
    if solution and solution.cost != plan_total.minor():
        raise RuntimeError(f"the plan's {solution.cost} cents are {plan_total} when priced again: a bug in the plan")


def _latest(orders: Sequence[PlannedOrder]) -> date | None:
    days = [order.arrival.latest for order in orders]
    return max((day for day in days if day), default=None) if None not in days else None


def _notes(solution: Solution | None, orders: Sequence[PlannedOrder]) -> tuple[str, ...]:
    notes = [
        f"{order.landed.supplier_name}: the order of {order.landed.order_value} passes free freight"
        for order in orders
        for line in order.landed.lines
        if line.name == "Freight" and line.rule.startswith("free from")
    ]
    if solution and solution.tied:
        notes.append("another plan costs the same; this one is complete as soon as any of them")
    if solution and not solution.proven:
        notes.append("time ran out before this plan was proven the cheapest")
    return tuple(notes)


def _alternatives(
    needs: Sequence[PlanNeed], choices: Mapping[str, Sequence[Choice]], market: Market, best: Money
) -> tuple[Alternative, ...]:
    per_line = [min(choices[need.label], key=_cheap) for need in needs]
    result = [_alternative("cheapest price line by line", per_line, market, best)]
    for supplier in sorted({_supplier(one) for need in needs for one in choices[need.label]}):
        mine = [[one for one in choices[need.label] if _supplier(one) == supplier] for need in needs]
        if all(mine):
            name = f"everything from {market.supplier_names[supplier]}"
            result.append(_alternative(name, [min(some, key=_cheap) for some in mine], market, best))
    if all(one.arrival.latest for need in needs for one in choices[need.label]):
        soonest = [min(choices[need.label], key=lambda one: (one.arrival.latest, *_cheap(one))) for need in needs]
        result.append(_alternative("soonest line by line", soonest, market, best))
    return tuple(result)


def _cheap(choice: Choice) -> tuple[object, ...]:
    return choice.cost.amount, choice.item.offer.identity, choice.item.ordered


def _alternative(name: str, chosen: Sequence[Choice], market: Market, best: Money) -> Alternative:
    orders = _orders(chosen, market)
    refusal = next((order.landed.refusal for order in orders if order.landed.refusal), "")
    if refusal:
        return Alternative(name=name, total=None, latest=None, why=refusal)
    cost = total((order.landed.total for order in orders), market.currency)
    gap = cost - best
    freight = total((order.landed.freight for order in orders), market.currency)
    who = ", ".join(order.landed.supplier_name for order in orders)
    words = f"{gap} more" if gap.amount else "the same cost"
    why = f"{words}; {len(orders)} order{'s' if len(orders) > 1 else ''} ({who}), freight {freight}"
    return Alternative(name=name, total=cost, latest=_latest(orders), why=why)
