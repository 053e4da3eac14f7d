"""The plan held against brute force: what differs, in sentences; nothing where they agree."""

import itertools
from collections.abc import Iterator, Sequence
from datetime import date
from math import lcm

from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.plan import Plan, PlanNeed
from sourcing.basics.value import changed
from sourcing.landed_cost.quantity import pieces_to_order
from tests.choosing.brute_force import Found, Prices, Tried, brute_force, front_of, quantities, waiting_of
from tests.choosing.trial import Trial

WIDER = 9
"""So many further steps are tried where the plan is better than all that was tried."""


def differences(trial: Trial, plan: Plan) -> list[str]:
    """Every way in which the plan and brute force disagree. What the plan leaves out must be as few needs as can be."""
    filled = {item.need for item in items_of(plan)}
    if len(plan.unfilled) != len(trial.needs) - len(filled):
        return [f"{len(filled)} of {len(trial.needs)} needs are filled, unfilled are {plan.unfilled}"]
    wrong = list(_too_few(trial, filled))
    return wrong + _of_filled(trial.only(filled), plan) if filled else wrong


def _too_few(trial: Trial, filled: set[str]) -> Iterator[str]:
    """Whether one need more could be filled; needs that must come together may be left out together."""
    if any(need.together for need in trial.needs):
        return
    for labels in itertools.combinations([need.label for need in trial.needs], len(filled) + 1):
        best = brute_force(trial.only(labels)).best
        if best:
            yield f"needs {', '.join(labels)} can be filled, at {best[0].count}: {_told(best[0].items)}"


def _of_filled(trial: Trial, plan: Plan) -> list[str]:
    found = brute_force(trial)
    wrong = list(_differences(trial, plan, found))
    if wrong:
        # The plan may order more steps than were tried; that alone is no mistake of its own.
        wider = changed(trial, extra_steps=WIDER)
        wrong = list(_differences(wider, plan, brute_force(wider)))
    return wrong


def items_of(plan: Plan) -> tuple[OrderItem, ...]:
    """All items of the plan's orders."""
    return tuple(one.item for order in plan.orders for one in order.landed.items)


def _differences(trial: Trial, plan: Plan, found: Found) -> Iterator[str]:
    yield from _as_priced_again(trial, plan)
    if not found.best:
        if not _beyond(trial, plan):
            yield f"brute force finds no plan, the plan is {_told(items_of(plan))}"
        return
    yield from _least(trial, plan, found.best[0])
    yield from _front(trial, plan, found)
    yield from _alternatives(trial, plan)


def _as_priced_again(trial: Trial, plan: Plan) -> Iterator[str]:
    """Its own items, put together as brute force puts plans together."""
    own = items_of(plan)
    again = Prices(trial).tried(
        tuple(sorted(own, key=lambda item: [one.label for one in trial.needs].index(item.need)))
    )
    if again is None:
        yield f"the plan breaks a rule: {_told(own)}"
        return
    total = sum(order.landed.total.minor() for order in again.orders)
    for what, ours, theirs in (
        ("total", plan.total.minor(), total),
        ("counted", plan.counted.minor(), again.count),
        ("waiting", plan.waiting.minor() if plan.waiting else 0, waiting_of(trial, again)),
        ("latest", plan.latest, again.latest),
    ):
        if ours != theirs:
            yield f"the plan's {what} is {ours}, priced again {theirs}"
    yield from _allowed(trial, own)


def _allowed(trial: Trial, own: tuple[OrderItem, ...]) -> Iterator[str]:
    """Each need is filled by pieces that its offers are sold in."""
    for need in trial.needs:
        mine = [item for item in own if item.need == need.label]
        if need.may_split or len(mine) == 1:
            wrong = [item for item in mine if not _sold_so(trial, need, item)]
            if not wrong and sum(item.ordered for item in mine) >= need.quantity:
                continue
        yield f"need {need.label} of {need.quantity} is not filled by a way that is allowed: {_told(tuple(mine))}"


def _sold_so(trial: Trial, need: PlanNeed, item: OrderItem) -> bool:
    """Whole packs and multiples, at least the fewest; where a need is not split also no more than the wishes allow."""
    step = lcm(item.offer.pack, item.offer.order_multiple)
    fewest = pieces_to_order(item.offer, 1 if need.may_split else need.quantity)
    if item.ordered < fewest or item.ordered % step:
        return False
    return (
        need.may_split or trial.wishes.more_than_needed == "whatever pays" or item.ordered in _tried(trial, item, need)
    )


def _tried(trial: Trial, item: OrderItem, need: PlanNeed) -> Sequence[int]:
    return quantities(trial, item.offer, need.quantity)


def _beyond(trial: Trial, plan: Plan) -> bool:
    """Whether the plan orders more of something than brute force tried."""
    if trial.wishes.more_than_needed != "whatever pays":
        return False
    needs = {need.label: need for need in trial.needs}
    return any(item.ordered > max(_tried(trial, item, needs[item.need])) for item in items_of(plan))


def _least(trial: Trial, plan: Plan, best: Tried) -> Iterator[str]:
    counted = plan.counted.minor() + (plan.waiting.minor() if plan.waiting else 0)
    least = best.count + waiting_of(trial, best)
    if counted < least and _beyond(trial, plan):
        return
    if counted != least:
        yield f"the plan counts {counted}, the least is {least}: {_told(best.items)}"
    if plan.latest != best.latest:
        yield f"the plan is here by {plan.latest}, another as cheap by {best.latest}: {_told(best.items)}"
    if not plan.proven:
        yield "the plan is not proven"
    if plan.bound is not None and plan.bound != plan.counted:
        yield f"the bound {plan.bound} is not {plan.counted}"


def _front(trial: Trial, plan: Plan, found: Found) -> Iterator[str]:
    if not plan.front and not plan.wishes.front:
        return
    ours = tuple((one.counted.minor(), one.latest or date.max) for one in plan.front)
    same = sorted(ours) == list(found.front)
    if trial.wishes.more_than_needed == "whatever pays":
        # Points with more pieces than were tried may be better, and then there may be more of them.
        ahead = all(any(_at_least_as_good(own, one) for own in ours) for one in found.front)
        same = ahead and list(front_of(ours)) == sorted(ours)
    if not same:
        yield f"the front is {_points(ours)}, by brute force {_points(found.front)}"


def _at_least_as_good(one: tuple[int, date], other: tuple[int, date]) -> bool:
    return one[0] <= other[0] and one[1] <= other[1]


def _alternatives(trial: Trial, plan: Plan) -> Iterator[str]:
    if trial.wishes != changed(trial.wishes, objective="cost", cores_lost=False):
        return
    if trial.wishes.surplus_credit_percent:
        return
    for one in plan.alternatives:
        if one.more is not None and one.total is not None and one.total.minor() < plan.total.minor():
            yield f"'{one.name}' costs {one.total}, less than the plan's {plan.total}"


def _points(points: tuple[tuple[int, date], ...]) -> str:
    return ", ".join(f"{count} by {day}" for count, day in points) or "empty"


def _told(items: tuple[OrderItem, ...]) -> str:
    return "; ".join(f"need {one.need}: {one.ordered} of {one.offer.supplier_number}" for one in items)
