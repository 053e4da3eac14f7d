"""The slow obvious twin of the plan: every way to fill every need, each order priced by landed cost itself.

Nothing here is taken from the programme that the product solves: plans are made one after the other, what a rule
forbids is thrown away, and the rest are compared. Written to be read, for two or three needs.
"""

import itertools
from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import date, datetime
from decimal import Decimal
from math import lcm

from sourcing.basics.landed_cost import Arrival, LandedItem, OrderItem
from sourcing.basics.money import Money, total
from sourcing.basics.offer import Offer
from sourcing.basics.plan import PlannedOrder, PlanNeed
from sourcing.basics.value import Value, changed
from sourcing.landed_cost.arrival import arrivals_at, deliveries_of, latest_of
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.quantity import pieces_to_order, sensible_quantities
from sourcing.landed_cost.sums import item_sums
from tests.choosing.trial import Trial

Items = tuple[OrderItem, ...]
"""One way to fill a need, or a whole plan."""


class Tried(Value, frozen=True, kw_only=True):
    """One plan that keeps every rule: `count` in minor units of the shop's currency, as the wishes count,
    without the price of its days."""

    items: Items
    orders: tuple[PlannedOrder, ...]
    count: int
    latest: date | None


class Found(Value, frozen=True, kw_only=True):
    """What trying everything gives. `best` is empty where no plan keeps every rule.

    `best`: all plans that none beats in what the objective asks. `front`: (count, latest) of every plan that no other
    beats in both, dearest and soonest last; plans whose day is not known stand in it under `date.max`.
    """

    best: tuple[Tried, ...]
    front: tuple[tuple[int, date], ...]
    tried: int


def brute_force(trial: Trial) -> Found:
    """Every plan there is, up to the trial's extra steps."""
    prices = Prices(trial)
    kept = [plan for items in all_plans(trial) if (plan := prices.tried(items))]
    if not kept:
        return Found(best=(), front=(), tried=0)
    least = min(rank_of(trial, plan) for plan in kept)
    best = tuple(plan for plan in kept if rank_of(trial, plan) == least)
    return Found(best=best, front=front_of([(plan.count, plan.latest or date.max) for plan in kept]), tried=len(kept))


def rank_of(trial: Trial, plan: Tried) -> tuple[object, ...]:
    """What the objective makes least, then what decides among equals. A day not known is later than all."""
    day, wishes = plan.latest or date.max, trial.wishes
    if wishes.objective == "date":
        return day, plan.count
    if wishes.objective == "cost and days":
        # A plan whose day is not known has no price of its days: it is taken only where no other is.
        return plan.latest is None, plan.count + waiting_of(trial, plan), day
    return plan.count, day


def waiting_of(trial: Trial, plan: Tried) -> int:
    """The price of the days until it is here, in minor units; nothing where days are not counted or known."""
    wishes = trial.wishes
    if wishes.objective != "cost and days" or wishes.value_per_day is None or plan.latest is None:
        return 0
    waited = wishes.value_per_day * (plan.latest - trial.at.date()).days
    return Money(amount=waited, currency="USD").rounded().minor()


def front_of(points: Sequence[tuple[int, date]]) -> tuple[tuple[int, date], ...]:
    """The points that no other beats in one respect while being at least as good in the other, cheapest first."""
    front: list[tuple[int, date]] = []
    for count, day in sorted(set(points)):
        if not front or day < front[-1][1]:
            front.append((count, day))
    return tuple(front)


def all_plans(trial: Trial) -> Iterator[Items]:
    """One way for each need, in every combination, whatever the rules say of it; none where a need has no way."""
    for chosen in itertools.product(*(ways_of(trial, need) for need in trial.needs)):
        yield tuple(item for way in chosen for item in way)


def ways_of(trial: Trial, need: PlanNeed) -> list[Items]:
    """Every way to fill one need: one offer in each quantity, or where it may be split every division over offers."""
    offers = [offer for offer in trial.offers.get(need.label, ()) if _can_be_weighed(trial, need, offer)]
    ways: set[tuple[int, ...]] = set()
    for shares in itertools.product(range(need.quantity + 1), repeat=len(offers)):
        if sum(shares) == need.quantity and (need.may_split or need.quantity in shares):
            each = [quantities(trial, offer, share) for offer, share in zip(offers, shares, strict=True)]
            ways.update(itertools.product(*each))
    return [_items(trial, need, offers, pieces) for pieces in sorted(ways)]


def _can_be_weighed(trial: Trial, need: PlanNeed, offer: Offer) -> bool:
    """An offer whose fewest pieces have no weight, size or duty is in no plan, even where freight would be free."""
    fewest = pieces_to_order(offer, 1 if need.may_split else need.quantity)
    item = OrderItem(need=need.label, offer=offer, needed=fewest, ordered=fewest)
    try:
        item_sums(item, trial.doors[offer.supplier])
    except ValueError:
        return False
    return True


def _items(trial: Trial, need: PlanNeed, offers: Sequence[Offer], pieces: Sequence[int]) -> Items:
    """So many pieces of each offer. What is here first is used first, by offer where several come on one day: what the
    others bring beyond the need is surplus."""
    bare = [
        OrderItem(need=need.label, offer=offer, needed=0, ordered=count)
        for offer, count in zip(offers, pieces, strict=True)
        if count
    ]
    open_part, items = need.quantity, []
    for item in sorted(bare, key=lambda one: (_here(trial, one) or date.max, one.offer.identity)):
        used = min(open_part, item.ordered)
        open_part -= used
        items.append(changed(item, needed=used))
    return tuple(items)


def _here(trial: Trial, item: OrderItem) -> date | None:
    return arrivals_at(trial.doors[item.offer.supplier], trial.at).of(item.offer, item.ordered).latest


def quantities(trial: Trial, offer: Offer, share: int) -> Sequence[int]:
    """The order quantities the wishes allow for so many pieces needed; none of it where none is needed."""
    if not share:
        return (0,)
    more, fewest = trial.wishes.more_than_needed, pieces_to_order(offer, share)
    if more == "never":
        return (fewest,)
    if more == "cheaper break":
        return sensible_quantities(offer, share, trial.doors[offer.supplier].terms.breaks)
    step = lcm(offer.pack, offer.order_multiple)
    return range(fewest, fewest + step * (trial.extra_steps + 1), step)


class Prices:
    """Orders priced once each: the same order stands in many plans."""

    def __init__(self, trial: Trial) -> None:
        self.trial = trial
        self.needs = {need.label: need for need in trial.needs}
        self.priced: dict[Items, PlannedOrder | None] = {}

    def tried(self, items: Items) -> Tried | None:
        """The plan with its count, or None where a rule of the wishes, a need or a supplier forbids it."""
        shares = _by_supplier(items)
        most = self.trial.wishes.most_suppliers
        if (most is not None and len(shares) > most) or not self._may_stand(items):
            return None
        orders = [self._order(share) for share in shares]
        taken = tuple(order for order in orders if order is not None)
        if len(taken) < len(orders):
            return None
        latest = _last([order.arrival.latest for order in taken])
        return Tried(items=items, orders=taken, count=count_of(self.trial, taken), latest=latest)

    def _may_stand(self, items: Items) -> bool:
        return _together(items, self.needs) and (not self.trial.wishes.in_stock_only or _stock_covers(items))

    def _order(self, items: Items) -> PlannedOrder | None:
        if items not in self.priced:
            self.priced[items] = self._priced(items)
        return self.priced[items]

    def _priced(self, items: Items) -> PlannedOrder | None:
        """The order, or None where the supplier refuses it, its cost is not known or one of its needs gets it late."""
        door = self.trial.doors[items[0].offer.supplier]
        split = door.terms.split
        comes = _arrivals(items, door, self.trial.at)
        whole = latest_of(tuple(comes.values()), split)
        waits = split.sends == "together"
        if any(self._late(item, whole if waits else comes[item.offer]) for item in items):
            return None
        landed = landed_order(items, door, deliveries_of(tuple(comes.values()), split))
        if landed.refusal or landed.missing:
            return None
        return PlannedOrder(landed=landed, arrival=whole)

    def _late(self, item: OrderItem, comes: Arrival) -> bool:
        day = self.trial.day_of(self.needs[item.need])
        return day is not None and (comes.latest is None or comes.latest > day)


def _forced(trial: Trial, one: LandedItem) -> Money:
    """What the surplus that packs and minimums force cost, less the largest discount on an order."""
    item, terms = one.item, trial.doors[one.item.offer.supplier].terms
    forced = min(item.surplus, pieces_to_order(item.offer, item.needed) - item.needed)
    off = max((discount.percent for discount in terms.order_discounts), default=Decimal(0))
    cost = one.goods_cost.amount * forced / item.ordered * (1 - off / 100)
    return Money(amount=cost, currency=one.goods_cost.currency).rounded()


def count_of(trial: Trial, orders: Sequence[PlannedOrder]) -> int:
    """Landed totals, less the credit for surplus of needs that are not divided, plus lost cores."""
    wishes, currency = trial.wishes, orders[0].landed.total.currency
    landed = [one for order in orders for one in order.landed.items]
    whole = {need.label for need in trial.needs if not need.may_split}
    surplus = total((_forced(trial, one) for one in landed if one.item.need in whole), currency)
    credit = Money(amount=surplus.amount * wishes.surplus_credit_percent / Decimal(100), currency=currency).rounded()
    count = total((order.landed.total for order in orders), currency) - credit
    if wishes.cores_lost:
        count = count + total((one.core_charge for one in landed), currency)
    return count.minor()


def _arrivals(items: Items, door: Door, at: datetime) -> dict[Offer, Arrival]:
    """When each offer's pieces are here: those that serve several needs share its stock."""
    pieces: dict[Offer, int] = defaultdict(int)
    for item in items:
        pieces[item.offer] += item.ordered
    return {offer: arrivals_at(door, at).of(offer, count) for offer, count in pieces.items()}


def _by_supplier(items: Items) -> list[Items]:
    shares: dict[str, list[OrderItem]] = defaultdict(list)
    for item in items:
        shares[item.offer.supplier].append(item)
    return [tuple(shares[supplier]) for supplier in sorted(shares)]


def _together(items: Items, needs: dict[str, PlanNeed]) -> bool:
    """Needs with the same word come from one supplier."""
    suppliers: dict[str, set[str]] = defaultdict(set)
    for item in items:
        suppliers[needs[item.need].together].add(item.offer.supplier)
    return all(len(who) == 1 for word, who in suppliers.items() if word)


def _stock_covers(items: Items) -> bool:
    """The pieces of each offer, over all needs that take it, are there."""
    ordered: dict[tuple[object, ...], int] = defaultdict(int)
    for item in items:
        ordered[item.offer.identity] += item.ordered
    return all(item.offer.stock is not None and ordered[item.offer.identity] <= item.offer.stock for item in items)


def _last(days: Sequence[date | None]) -> date | None:
    known = [day for day in days if day is not None]
    return max(known) if len(known) == len(days) else None
