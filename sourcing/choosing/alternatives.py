"""Other ways to buy the same needs, beside the plan: what each costs more, and why."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from ..basics.landed_cost import CostKind
from ..basics.money import Money, from_minor, total
from ..basics.plan import Alternative, PlannedOrder, PlanNeed, PlanWishes
from .choices import Choice
from .plan_front import soonest_possible
from .programme import Pick
from .search import Found, Market, Search, latest_day

SECONDS = 2.0
"""No other way is looked for longer than this: it is only for comparison."""
NOT_AS_ASKED = "it does not hold to what was asked of the plan (suppliers, days, stock, what comes together)"
OUT_OF_TIME = "time ran out before any such plan was found"
MOST_ALONE = 5
"""So many suppliers who could fill everything alone are shown, the cheapest first."""


def alternatives(
    needs: Sequence[PlanNeed], search: Search, plan: Found, market: Market, wishes: PlanWishes
) -> tuple[Alternative, ...]:
    """The cheapest price line by line, one supplier for everything, and the soonest; not the plan itself."""
    beside = _Beside(plan, search, market)
    result = []
    per_line = _line_by_line(search)
    if per_line is not None:
        result.append(_line_by_line_beside(per_line, search, beside))
    result += _alone(needs, search, beside, wishes)
    sooner = _soonest(search, plan)
    if sooner is not None:
        result.append(beside.alternative("soonest", sooner.orders))
    return tuple(result)


def without_solver(search: Search) -> Found | None:
    """What can be had without a search, where time ran out before one found anything: line by line or of one supplier.

    None where none of these holds to what was asked.
    """
    guesses = [_line_by_line(search)]
    for supplier in sorted({one.supplier for one in search.choices}):
        mine = [one for one in search.choices if one.supplier == supplier]
        guesses.append(_line_by_line(Search(mine, search.conditions, search.market, SECONDS)))
    tried = [_as_asked(picks, search) for picks in guesses if picks is not None]
    found = [one for one in tried if one is not None]
    return min(found, key=lambda one: one.counted)._replace(proven=False) if found else None


def _as_asked(picks: Sequence[Pick], search: Search) -> Found | None:
    """These picks as a plan, if they hold to what was asked."""
    alone = [pick.choice.alone_at(pick.further, search.market.see) for pick in picks]
    return Search(alone, search.conditions, search.market, SECONDS).best().found


def _line_by_line(search: Search) -> list[Pick] | None:
    """Each need's cheapest offer in one piece, charges not looked at."""
    picks = []
    for need in range(search.conditions.needs):
        mine = [one for one in search.choices if one.need == need]
        whole = [Pick(one, further) for one in mine if (further := one.to_fill()) is not None]
        if not whole:
            return None
        picks.append(min(whole, key=lambda pick: (_own_cost(pick, search), pick.choice.name)))
    return picks


def _own_cost(pick: Pick, search: Search) -> int:
    return pick.choice.alone_at(pick.further, search.market.see).own_cost()


def _line_by_line_beside(picks: Sequence[Pick], search: Search, beside: "_Beside") -> Alternative:
    name = "cheapest price line by line"
    alternative = beside.alternative(name, search.orders_of(picks))
    if alternative.total is None:
        return alternative
    if _as_asked(picks, search) is None:
        return Alternative(name=name, total=None, latest=None, why=NOT_AS_ASKED)
    return alternative


def _alone(needs: Sequence[PlanNeed], search: Search, beside: "_Beside", wishes: PlanWishes) -> list[Alternative]:
    by_supplier: dict[str, list[Choice]] = defaultdict(list)
    for one in search.every:
        by_supplier[one.supplier].append(one)
    every = [
        _alone_at(some, search, beside)
        for _, some in sorted(by_supplier.items())
        if len({one.need for one in some}) == len(needs)
    ]
    every.sort(key=lambda one: (one.total is None, one.total.amount if one.total else 0, one.name))
    return every[:MOST_ALONE]


def _alone_at(some: Sequence[Choice], search: Search, beside: "_Beside") -> Alternative:
    name = f"everything from {beside.market.supplier_names[some[0].supplier]}"
    mine = Search(some, search.conditions, search.market, SECONDS)
    answer = mine.best()
    if answer.found is not None:
        return beside.alternative(name, answer.found.orders)
    if not answer.impossible:
        return Alternative(name=name, total=None, latest=None, why=OUT_OF_TIME)
    per_line = _line_by_line(mine)
    tried = beside.alternative(name, mine.orders_of(per_line)) if per_line else None
    why = tried.why if tried and tried.total is None else NOT_AS_ASKED
    return Alternative(name=name, total=None, latest=None, why=why)


def _soonest(search: Search, plan: Found) -> Found | None:
    """The cheapest plan that is complete on the soonest day any is; the plan itself where it is that. None where a need
    has no day, or where time runs out."""
    soonest = soonest_possible(search)
    if soonest is None:
        return None
    for day in sorted({one.latest for one in search.choices if one.latest >= soonest}):
        if plan.latest is not None and day >= plan.latest:
            return plan
        answer = search.best(day, seconds=SECONDS)
        if answer.found is not None or not answer.impossible:
            return answer.found
    return None


class _Beside:
    """Compares orders with the plan's."""

    def __init__(self, plan: Found, search: Search, market: Market) -> None:
        self.market, self._plan, self._search = market, plan, search
        self._total = total((order.landed.total for order in plan.orders), market.currency)
        self._by_kind = _by_kind(plan.orders, market.currency)

    def alternative(self, name: str, orders: Sequence[PlannedOrder]) -> Alternative:
        """These orders as an alternative, or why they can't be had."""
        hindrance = next((words for order in orders for words in _hindrances(order)), "")
        if hindrance:
            return Alternative(name=name, total=None, latest=None, why=hindrance)
        cost = total((order.landed.total for order in orders), self.market.currency)
        more = cost - self._total
        why = f"{self._counted(orders, more)}{self._why(orders, more)}"
        return Alternative(name=name, total=cost, latest=latest_day(orders), why=why, more=more)

    def _counted(self, orders: Sequence[PlannedOrder], more: Money) -> str:
        """What it counts more, where the wishes count something else than the total."""
        counted = from_minor(self._search.count_of(orders) - self._plan.counted, self.market.currency)
        return f"counts {counted} more with what was asked to be counted; " if counted != more else ""

    def _why(self, orders: Sequence[PlannedOrder], more: Money) -> str:
        if _items(orders) == _items(self._plan.orders):
            return "it is this plan"
        gap = f"{more} more" if more.amount > 0 else f"{-more} less" if more.amount < 0 else "the same cost"
        who = ", ".join(order.landed.supplier_name for order in orders)
        mine = _by_kind(orders, self.market.currency)
        differing = [
            f"{kind} {mine.get(kind, nothing).amount} instead of {self._by_kind.get(kind, nothing).amount}"
            for kind in dict.fromkeys((*self._by_kind, *mine))
            for nothing in (self._total - self._total,)
            if mine.get(kind, nothing) != self._by_kind.get(kind, nothing)
        ]
        because = f": {', '.join(differing)}" if differing else ""
        return f"{gap}{because}; {len(orders)} order{'s' if len(orders) > 1 else ''} ({who})"


def _items(orders: Sequence[PlannedOrder]) -> set[tuple[object, ...]]:
    """What is bought for which need, in which quantity."""
    items = (one.item for order in orders for one in order.landed.items)
    return {(item.need, item.offer.identity, item.ordered) for item in items}


def _hindrances(order: PlannedOrder) -> Iterator[str]:
    if order.landed.refusal:
        yield order.landed.refusal
    yield from order.landed.open_questions


def _by_kind(orders: Sequence[PlannedOrder], currency: str) -> dict[CostKind, Money]:
    sums: dict[CostKind, list[Money]] = defaultdict(list)
    for order in orders:
        for line in order.landed.lines:
            sums[line.kind].append(line.amount)
    return {kind: total(some, currency) for kind, some in sums.items()}
