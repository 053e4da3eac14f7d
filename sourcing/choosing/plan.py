"""The best plan for many needs over many suppliers, beside what other ways of buying would cost.

The programme decides in whole minor units; every order is priced again by the landed-cost function that single offers
use, and a plan is called proven only where the two agree.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from ..basics.money import from_minor, total
from ..basics.plan import Alternative, FrontPoint, Plan, PlannedOrder, PlanNeed, PlanWishes
from ..basics.problem import refused
from ..basics.value import changed
from .alternatives import alternatives, without_solver
from .choices import Choice
from .dominated import without_dominated
from .plan_front import (
    Point,
    front_of,
    price_of_waiting,
    soonest_of_equal,
    soonest_plan,
    with_price_per_day,
)
from .programme import Conditions
from .search import Answer, Found, Market, Search
from .unfilled import left_out_words, unfilled_words

TIES_AMONG = 400
"""Whether another plan counts the same is looked into among so many choices at most: it takes as long again."""
TIE_SECONDS = 2.0
SECONDS_LATER = 5
NOTHING = Answer(None, None)


def best_plan(
    needs: Sequence[PlanNeed], choices: Mapping[str, Sequence[Choice]], market: Market, wishes: PlanWishes
) -> Plan:
    """The plan that fills every need that can be filled by its day, least in what the wishes count.

    `choices` by the need's label, each made for the need's place in `needs`. A need that nobody fills, or not in time,
    is said in `unfilled` and left out; a plan is never silently late. Refuses wishes that contradict one another.
    """
    check_wishes(needs, wishes)
    in_time = {
        need.label: [one for one in choices.get(need.label, ()) if _in_time(one, need, wishes)] for need in needs
    }
    missing = [need for need in needs if not in_time[need.label]]
    unfilled = [unfilled_words(need, choices.get(need.label, ()), market, wishes) for need in missing]
    fillable = sorted((need for need in needs if in_time[need.label]), key=_by_label)
    fillable, words, search, least = _first_answer(fillable, in_time, market, wishes)
    unfilled += words
    if not fillable:
        return _nothing(needs, tuple(unfilled), market, wishes)
    points, answer = _decide(search, least, market, wishes)
    found = answer.found
    if found is None:
        raise refused("plan-no-time", seconds=wishes.seconds)
    return Plan(
        needs=tuple(needs),
        orders=found.orders,
        total=total((order.landed.total for order in found.orders), market.currency),
        core_charge=total((order.landed.core_charge for order in found.orders), market.currency),
        latest=found.latest,
        proven=found.proven,
        counted=from_minor(found.counted, market.currency),
        waiting=price_of_waiting(found, market, wishes),
        bound=from_minor(answer.bound, market.currency) if answer.bound is not None else None,
        wishes=wishes,
        notes=(*_notes(search, answer, market), *_same_part(needs)),
        alternatives=(
            *alternatives(fillable, search, found, market, wishes),
            *_all_of_it_later(needs, choices, missing, market, wishes),
        ),
        front=_front(points, found, market),
        unfilled=tuple(unfilled),
    )


def check_wishes(needs: Sequence[PlanNeed], wishes: PlanWishes) -> None:
    """Refuses what can't be meant: a quantity below one, a share over 100, an objective without its price, ..."""
    for need in needs:
        if need.quantity < 1:
            raise refused("quantity-below-one", found=need.quantity)
        if need.may_split and need.together:
            raise refused("plan-split-together", found=need.label)
    labels = [need.label for need in needs]
    if len(set(labels)) < len(labels):
        raise refused("plan-label-twice", found=next(one for one in labels if labels.count(one) > 1))
    if wishes.objective == "cost and days" and wishes.value_per_day is None:
        raise refused("plan-no-day-price")
    if wishes.value_per_day is not None and wishes.value_per_day < 0:
        raise refused("plan-day-price-negative", found=wishes.value_per_day)
    if not 0 <= wishes.surplus_credit_percent <= 100:
        raise refused("plan-credit", found=wishes.surplus_credit_percent)
    if wishes.most_suppliers is not None and wishes.most_suppliers < 1:
        raise refused("plan-most-suppliers", found=wishes.most_suppliers)


def conditions_of(needs: Sequence[PlanNeed], market: Market, wishes: PlanWishes) -> Conditions:
    """What a plan for these needs must hold to; needs by their place here."""
    words = sorted({need.together for need in needs if need.together})
    return Conditions(
        needs=len(needs),
        divided=frozenset(at for at, need in enumerate(needs) if need.may_split),
        together=tuple(tuple(at for at, need in enumerate(needs) if need.together == word) for word in words),
        need_by=tuple(need.need_by or wishes.need_by for need in needs),
        gathered=market.gathered,
        most_suppliers=wishes.most_suppliers,
        cores_lost=wishes.cores_lost,
        credit_percent=wishes.surplus_credit_percent,
        in_stock_only=wishes.in_stock_only,
    )


def _by_label(need: PlanNeed) -> tuple[int, str]:
    """Among plans that tie, which one is shown must not hang on the order of the needs: '2' before '10' before 'A1'."""
    return len(need.label), need.label


def _in_time(one: Choice, need: PlanNeed, wishes: PlanWishes) -> bool:
    day = need.need_by or wishes.need_by
    return day is None or one.latest <= day


def _first_answer(
    fillable: list[PlanNeed], in_time: Mapping[str, Sequence[Choice]], market: Market, wishes: PlanWishes
) -> tuple[list[PlanNeed], list[str], Search, Answer]:
    """The needs that can be filled with one another, words for those that can't, the search and its least plan."""
    words: list[str] = []
    while True:
        search = _search(fillable, in_time, market, wishes)
        answer = search.best() if fillable else NOTHING
        if fillable and not answer.impossible and not (answer.found and answer.found.proven):
            answer = _or_guessed(search, answer)
        if not fillable or answer.found is not None or not answer.impossible:
            return fillable, words, search, answer
        out = search.fewest_left_out()
        if not out:
            return fillable, words, search, NOTHING
        words += [left_out_words(fillable[at], wishes) for at in sorted(out)]
        fillable = [need for at, need in enumerate(fillable) if at not in out]


def _or_guessed(search: Search, answer: Answer) -> Answer:
    """Where time ran out: what can be had without a search, if that is cheaper than what the search found."""
    guess = without_solver(search)
    if guess is None or (answer.found is not None and answer.found.counted <= guess.counted):
        return answer
    return Answer(guess, answer.bound)


def _search(
    needs: Sequence[PlanNeed], in_time: Mapping[str, Sequence[Choice]], market: Market, wishes: PlanWishes
) -> Search:
    conditions = conditions_of(needs, market, wishes)
    every = [one.placed(at) for at, need in enumerate(needs) for one in in_time[need.label]]
    kept = without_dominated(every, conditions, market.schedules)
    return Search(kept, conditions, market, wishes.seconds, every)


def _all_of_it_later(
    needs: Sequence[PlanNeed],
    choices: Mapping[str, Sequence[Choice]],
    missing: Sequence[PlanNeed],
    market: Market,
    wishes: PlanWishes,
) -> list[Alternative]:
    """Where needs are missing only for their day: the soonest plan that fills all of them, late as it is."""
    if not missing or not all(choices.get(need.label) for need in needs):
        return []
    anytime = [changed(need, need_by=None) for need in needs]
    search = _search(anytime, choices, market, changed(wishes, need_by=None, seconds=SECONDS_LATER))
    least = search.best()
    if least.found is None:
        return []
    found = soonest_plan(search, least.found).found or least.found
    cost = total((order.landed.total for order in found.orders), market.currency)
    who = ", ".join(order.landed.supplier_name for order in found.orders)
    why = f"not in time, but every need is filled; {len(found.orders)} order{'s'[: len(found.orders) > 1]} ({who})"
    return [Alternative(name="all of it, as soon as can be", total=cost, latest=found.latest, why=why)]


def _same_part(needs: Sequence[PlanNeed]) -> list[str]:
    """Needs of one part are planned line by line, as they are approved: a shared pack or break is not looked for."""
    by_part: dict[str, list[str]] = defaultdict(list)
    for need in needs:
        by_part[need.our_part].append(need.label)
    return [
        f"lines {', '.join(labels)} ask for the same part, {part}: each is planned as a line of its own; as one need "
        "they may share a pack or reach a price break"
        for part, labels in by_part.items()
        if len(labels) > 1
    ]


def _decide(search: Search, least: Answer, market: Market, wishes: PlanWishes) -> tuple[list[Point], Answer]:
    """The plan the objective asks for, and the front as far as it was worked out."""
    if least.found is None:
        return [], least
    if wishes.objective == "cost" and not wishes.front:
        found = soonest_of_equal(search, least)
        return [], found
    if wishes.objective == "date" and not wishes.front:
        return [], _soonest(search, [Point(least, least.found)])
    points = front_of(search, least)
    if wishes.objective == "date":
        return points, _soonest(search, points)
    if wishes.objective == "cost and days":
        return points, with_price_per_day(points, market, wishes)
    return points, points[0].answer


def _soonest(search: Search, points: Sequence[Point]) -> Answer:
    """The soonest plan: looked for from the soonest day on, so that a short time is not spent on the cheap end."""
    last = points[-1]
    if last.found.proven and len(points) > 1:
        return last.answer
    first = soonest_plan(search, last.found)
    return first if first.found is not None else last.answer._replace(found=last.found._replace(proven=False))


def _front(points: Sequence[Point], chosen: Found, market: Market) -> tuple[FrontPoint, ...]:
    return tuple(
        FrontPoint(
            total=total((order.landed.total for order in point.found.orders), market.currency),
            counted=from_minor(point.found.counted, market.currency),
            latest=point.found.latest,
            suppliers=tuple(order.landed.supplier_name for order in point.found.orders),
            proven=point.found.proven,
            chosen=point.found.names == chosen.names and point.found.counted == chosen.counted,
        )
        for point in points
    )


def _notes(search: Search, answer: Answer, market: Market) -> tuple[str, ...]:
    found = answer.found
    assert found is not None
    notes = [words for order in found.orders for words in _order_notes(order)]
    if found.proven and search.seconds_left > 0 and len(search.choices) <= TIES_AMONG and _tied(search, found):
        notes.append("another plan costs the same; this one is complete as soon as any of them")
    notes += _cores_not_stated(found) if search.conditions.cores_lost else []
    if not found.proven:
        notes.append("time ran out before this plan was proven the cheapest")
    return tuple(notes)


def _cores_not_stated(found: Found) -> list[str]:
    items = [one.item for order in found.orders for one in order.landed.items]
    named = [item.offer.supplier_number for item in items if item.offer.core_charge is None]
    return [f"no core charge is stated for {', '.join(named)}: none is counted as lost there"] if named else []


def _order_notes(order: PlannedOrder) -> list[str]:
    landed, notes = order.landed, []
    if any(line.name == "Freight" and line.rule.startswith("free from") for line in landed.lines):
        notes.append(f"{landed.supplier_name}: the order of {landed.order_value} passes free freight")
    for item in landed.items:
        fewest = item.item.ordered - item.item.surplus
        if item.item.surplus and item.item.surplus >= max(item.item.offer.pack, item.item.offer.order_multiple):
            more = f"{item.item.ordered} x {item.item.offer.supplier_number} for {fewest} needed"
            notes.append(f"{landed.supplier_name}: {more}: fewer are not sold, or would count more in the whole plan")
    return notes


def _tied(search: Search, found: Found) -> bool:
    other = search.best(found.latest, found.counted, found.names, TIE_SECONDS).found
    return other is not None and other.counted == found.counted


def _nothing(needs: Sequence[PlanNeed], unfilled: tuple[str, ...], market: Market, wishes: PlanWishes) -> Plan:
    nothing = from_minor(0, market.currency)
    return Plan(
        needs=tuple(needs),
        orders=(),
        total=nothing,
        core_charge=nothing,
        latest=None,
        proven=False,
        counted=nothing,
        wishes=wishes,
        unfilled=unfilled,
    )
