"""The search for the least plan: solve, price what was found by the landed-cost rules, tell the programme, again.

The programme never says more than a plan truly costs. A plan is proven least when its true count is no more than what
the solver proved nothing to be below, rounded up to a whole unit.
"""

from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from fractions import Fraction
from math import ceil, inf
from typing import NamedTuple

from ..basics.landed_cost import Arrival, OrderItem
from ..basics.money import from_minor, percent_of, total
from ..basics.plan import PlannedOrder
from ..basics.schedule import ItemSums, Schedule
from ..basics.value import Value, changed
from .choices import Choice, divided
from .model import Outcome
from .programme import Bundle, Conditions, Pick, Programme

TELLING = Fraction(1, 1000)
"""Less than this part of a unit between programme and true cost is the solver's own rounding."""


class Market(Value, frozen=True, kw_only=True):
    """What choosing asks of landed cost and of the shop, as functions and values.

    `land`: one supplier's items as an order with the day it is all here. `see`: an item's sums and arrival. `gathered`:
    suppliers who send an order in one delivery. `today`: from which days of waiting count. `clock`: seconds that
    only rise, to stop by.
    """

    land: Callable[[Sequence[OrderItem]], PlannedOrder]
    see: Callable[[OrderItem], tuple[ItemSums, Arrival]]
    schedules: Mapping[str, Schedule]
    gathered: frozenset[str]
    supplier_names: Mapping[str, str]
    currency: str
    today: date
    clock: Callable[[], float]


class Found(NamedTuple):
    """A plan that can be had: what was picked, its orders, what it counts in minor units, and whether it is least."""

    picks: tuple[Pick, ...]
    orders: tuple[PlannedOrder, ...]
    counted: int
    latest: date | None
    proven: bool

    @property
    def names(self) -> frozenset[tuple[object, ...]]:
        """The choices it holds."""
        return frozenset(pick.choice.name for pick in self.picks)


class Answer(NamedTuple):
    """The best found (None: nothing) and what no plan is below in minor units (None: not known).

    `impossible`: nothing was found for there is nothing, which is more than that time ran out.
    """

    found: Found | None
    bound: int | None
    impossible: bool = False


class Search:
    """Finds least plans among choices; what it learns of true costs holds for every later question."""

    def __init__(
        self,
        choices: Sequence[Choice],
        conditions: Conditions,
        market: Market,
        seconds: float,
        every: Sequence[Choice] | None = None,
    ) -> None:
        """`every`: the choices before dominated ones were taken out, for other ways to buy; left out: the same."""
        self.every = tuple(choices if every is None else every)
        self.choices, self.conditions, self.market = list(choices), conditions, market
        self._until = market.clock() + seconds
        self._bundles: list[Bundle] = []
        self._late = late_arrivals(self.choices, market)

    @property
    def seconds_left(self) -> float:
        """How long it may go on."""
        return self._until - self.market.clock()

    def best(
        self,
        limit: date | None = None,
        ceiling: int | None = None,
        without: frozenset[tuple[object, ...]] = frozenset(),
        seconds: float = inf,
    ) -> Answer:
        """The least plan that is complete by `limit`, counts at most `ceiling`, and does not hold all of `without`."""
        best: Found | None = None
        until = min(self._until, self.market.clock() + seconds)
        while True:
            programme = self._programme(limit, ceiling, without)
            if not programme.fillable():
                return Answer(None, None, impossible=True)
            outcome = programme.solve(until - self.market.clock())
            if outcome.impossible:
                return Answer(best and best._replace(proven=True), best.counted if best else None, best is None)
            bound = _whole_bound(outcome)
            if outcome.values is None:
                return Answer(best, bound)
            picks = programme.picks(outcome)
            found = self._priced(picks)
            if found and (best is None or found.counted < best.counted):
                best = found
            if best and outcome.proven and bound is not None and best.counted <= bound:
                return Answer(best._replace(proven=True), bound)
            true = found.counted if found else None
            if not self._learn(programme, outcome, picks, true) or self.market.clock() > until:
                return Answer(best, bound)

    def count_of(self, orders: Sequence[PlannedOrder]) -> int:
        """What orders count: their landed totals, with cores that are lost, less what surplus counts as got back.

        Only surplus that packs and minimums force counts; that of a need that may come from several offers does not.
        """
        currency = self.market.currency
        count = total((order.landed.total for order in orders), currency)
        if self.conditions.cores_lost:
            count += total((order.landed.core_charge for order in orders), currency)
        whole = {one.item.need for one in self.every if one.need not in self.conditions.divided}
        if not self.conditions.credit_percent:
            return count.minor()
        items = [one.item for order in orders for one in order.landed.items if one.item.need in whole]
        surplus = from_minor(sum(self.market.see(item)[0].surplus for item in items), currency)
        return (count - percent_of(surplus, self.conditions.credit_percent)).minor()

    def orders_of(self, picks: Sequence[Pick]) -> tuple[PlannedOrder, ...]:
        """The picks as one order for each supplier."""
        by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
        for item in self._items(picks):
            by_supplier[item.offer.supplier].append(item)
        return tuple(self.market.land(by_supplier[supplier]) for supplier in sorted(by_supplier))

    def fewest_left_out(self) -> frozenset[int]:
        """The needs that must be left out so that the others can be filled together; none where time runs out."""
        programme = self._programme(None, None, frozenset())
        left = programme.leave_out()
        outcome = programme.model.solve(max(self.seconds_left, 1), objective=dict.fromkeys(left.values(), 1))
        if outcome.values is None or not outcome.proven:
            return frozenset()
        return frozenset(need for need, at in left.items() if outcome.values[at] > 0.5)

    def _programme(self, limit: date | None, ceiling: int | None, without: frozenset[tuple[object, ...]]) -> Programme:
        programme = Programme(self.choices, self.conditions, self.market.schedules, self._late, limit)
        for bundle in self._bundles:
            programme.charge(bundle)
        if without:
            programme.forbid(without)
        if ceiling is not None:
            programme.at_most(ceiling)
        return programme

    def _priced(self, picks: Sequence[Pick]) -> Found | None:
        orders = self.orders_of(picks)
        if any(order.landed.refusal or order.landed.missing for order in orders):
            return None
        return Found(tuple(picks), orders, self.count_of(orders), latest_day(orders), False)

    def _learn(self, programme: Programme, outcome: Outcome, picks: Sequence[Pick], true: int | None) -> bool:
        """Where the programme knew less than the true cost: tell it. False: there was nothing to learn."""
        by_supplier: dict[str, list[Pick]] = defaultdict(list)
        for pick in picks:
            by_supplier[pick.choice.supplier].append(pick)
        learnt = False
        for supplier, mine in sorted(by_supplier.items()):
            order = self.market.land(self._items(mine))
            landed = order.landed
            barred = bool(landed.refusal or landed.missing)
            lost = landed.core_charge.minor() if self.conditions.cores_lost else 0
            more = landed.total.minor() + lost - programme.cost_of(supplier, outcome)
            if barred or more > TELLING:
                learnt = True
                self._keep(supplier, mine, None if barred else more)
        # What surplus of a divided need counts as got back is known of the whole plan only.
        if not learnt and true is not None and true - Fraction(outcome.value) > TELLING:
            learnt = True
            self._keep("", picks, true - Fraction(round(outcome.value, 6)))
        return learnt

    def _keep(self, supplier: str, picks: Sequence[Pick], more: Fraction | None) -> None:
        """Keep what exactly these picks cost more; those on a ladder are put on their own first."""
        ladders = [pick for pick in picks if pick.choice.more]
        for pick in ladders:
            self.choices.remove(pick.choice)
            self.choices += divided(pick.choice, pick.further, self.market.see)
        if not ladders:
            self._bundles.append(Bundle(supplier, frozenset(pick.choice.name for pick in picks), more))

    def _items(self, picks: Sequence[Pick]) -> list[OrderItem]:
        """The items of the picks; of a divided need's, what comes first is used first, the rest is surplus."""
        result: list[OrderItem] = []
        open_part: dict[int, Fraction] = {}
        for pick in sorted(picks, key=lambda one: (one.choice.latest, one.choice.name)):
            item = pick.choice.at(pick.further)
            if pick.choice.need in self.conditions.divided:
                still = open_part.get(pick.choice.need, Fraction(1))
                needed = min(item.ordered, ceil(still * pick.choice.full))
                open_part[pick.choice.need] = max(still - Fraction(needed, pick.choice.full), Fraction(0))
                item = changed(item, needed=needed)
            result.append(item)
        return result


def latest_day(orders: Sequence[PlannedOrder]) -> date | None:
    """The day all orders are here; None as soon as one has no day."""
    days = [order.arrival.latest for order in orders]
    return max((day for day in days if day), default=None) if None not in days else None


def late_arrivals(choices: Sequence[Choice], market: Market) -> dict[tuple[object, ...], Arrival]:
    """When offers that several needs share come once they are asked for more than their stock."""
    needs: dict[tuple[object, ...], set[int]] = defaultdict(set)
    one_of: dict[tuple[object, ...], Choice] = {}
    for one in choices:
        if one.item.offer.stock is not None:
            needs[one.item.offer.identity].add(one.need)
            one_of[one.item.offer.identity] = one
    shared = {identity: one_of[identity] for identity, some in needs.items() if len(some) > 1}
    return {identity: market.see(_beyond_stock(one.item))[1] for identity, one in shared.items()}


def _beyond_stock(item: OrderItem) -> OrderItem:
    """The item in more pieces than there are."""
    return changed(item, ordered=max(item.ordered, (item.offer.stock or 0) + 1))


def _whole_bound(outcome: Outcome) -> int | None:
    """What no plan is below, as a whole number; the solver's own rounding is taken off first."""
    if outcome.bound == -inf:
        return None
    return ceil(outcome.bound - 0.01 - 1e-9 * abs(outcome.bound))
