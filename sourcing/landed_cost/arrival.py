"""The promise date: from the moment of ordering to the shop's door, as a range of days with its steps in words.

Order moment on both clocks, cut-off, days until the goods leave (stock or lead time), days on the road, both calendars.
The late end is the one to plan with. What can't be known is said and never taken as today.
"""

from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from functools import lru_cache
from typing import NamedTuple

from ..basics.landed_cost import Arrival, Delivery, OrderItem
from ..basics.offer import LeadTime, Offer
from ..basics.problem import Refused
from ..basics.terms import Split
from ..basics.value import changed
from .calendars import add_working_days, closed_between, closed_words, first_working_day
from .clock import zone_problems
from .date_checks import check_calendar, check_dates, zones_problems
from .door import Door
from .later_word import after_word
from .leaving import Days, Dispatch, Leaving
from .order_day import order_day

TOGETHER = Split()
A_DAY = timedelta(days=1)
MOST_KEPT = 20_000
"""Answers a prepared `Arrivals` keeps; a whole sheet seldom has more different stocks and lead times."""


def arrival(item: OrderItem, door: Door, at: datetime) -> Arrival:
    """When the ordered pieces are at the shop if they are ordered at `at`, the shop's local time.

    Refuses terms and calendars that can't hold, and a supplier with a time zone where the shop has none.
    """
    return arrivals_at(door, at).of(item.offer, item.ordered)


def arrivals_at(door: Door, at: datetime) -> "Arrivals":
    """All that does not depend on the offer, worked out once and kept; for many offers hold on to what this gives:

    `here = arrivals_at(door, at)`, then `here.of(offer, pieces)` for each.
    """
    return _prepared(door, at, at.fold)  # two moments that differ only in their fold count as equal


def order_arrival(items: Sequence[OrderItem], door: Door, at: datetime) -> Arrival:
    """When all of one order is here. Pieces of one offer that serve several needs share its stock."""
    pieces: dict[Offer, int] = {}
    for item in items:
        pieces[item.offer] = pieces.get(item.offer, 0) + item.ordered
    here = arrivals_at(door, at)
    return latest_of([here.of(offer, count) for offer, count in pieces.items()], door.terms.split)


def latest_of(arrivals: Sequence[Arrival], split: Split = TOGETHER) -> Arrival:
    """The arrival of a whole order: the latest of each end; not known as soon as one is not.

    Sent together, all of it is one delivery that leaves with the last; sent as ready, what leaves on the same days goes
    in one. Deliveries that are known are told even where another is not. `arrivals` must not be empty.
    """
    merged = _merged(one for arrival in arrivals for one in arrival.deliveries)
    unknown = next((one for one in arrivals if one.latest is None), None)
    if unknown:
        return changed(unknown, deliveries=merged if split.sends == "as ready" else ())
    decisive = max(arrivals, key=lambda one: one.latest or date.min)
    earliest = max(one.earliest for one in arrivals if one.earliest is not None)
    deliveries = merged if split.sends == "as ready" else _as_one(merged)
    return changed(decisive, earliest=earliest, deliveries=deliveries)


def deliveries_of(arrivals: Sequence[Arrival], split: Split) -> int:
    """In how many deliveries an order comes: 1 if it is sent together, else one for each range of days of leaving.

    What has no day counts as one more, for it will not leave with the others.
    """
    if split.sends == "together":
        return 1
    ranges = {one.leaves for arrival in arrivals for one in arrival.deliveries}
    return max(1, len(ranges) + any(not one.known for one in arrivals))


class Arrivals:
    """When offers of one supplier are at the door if they are ordered at one moment."""

    def __init__(self, door: Door, at: datetime) -> None:
        _refuse_what_cannot_hold(door)
        self._door, self._today = door, at.date()
        self._day, self._order_words = order_day(door, at)
        self._dispatch = Dispatch(door.terms, self._day)
        self._ways: dict[tuple[Days, ...], _Way] = {}
        self._kept: dict[tuple[int | None, LeadTime | None, int], Arrival] = {}

    def of(self, offer: Offer, pieces: int) -> Arrival:
        """When so many pieces of the offer are here; the offer must be of this supplier."""
        asked = (offer.stock, offer.lead_time, pieces)
        found = self._kept.get(asked)
        if found is None:
            if len(self._kept) >= MOST_KEPT:
                self._kept.clear()
            found = self._kept[asked] = self._arrival(self._dispatch.leaving(offer, pieces), pieces)
        return after_word(found, self._door, offer, pieces) if self._door.later_words else found

    def _arrival(self, leaving: Leaving, pieces: int) -> Arrival:
        parts, gathered = leaving.parts, False
        if self._door.terms.split.sends == "together":
            if not leaving.rest_known:
                parts = ()
            elif len(parts) > 1:
                parts, gathered = ((pieces, _latest(days for _, days in parts)),), True
        way = self._way(tuple(days for _, days in parts))
        both = zip(parts, way.arrives, strict=True)
        sent = tuple([Delivery(pieces=count, leaves=days, arrives=arrives) for (count, days), arrives in both])
        if not leaving.rest_known:
            known = tuple(_part_words(one, pieces) for one in sent)
            steps = (self._order_words, *known, leaving.words)
            return Arrival(earliest=None, latest=None, steps=steps, deliveries=sent)
        leaves = f"leaves {_days_words(sent[0].leaves)}{', all together' if gathered else ''}"
        several = tuple(_part_words(one, pieces) for one in sent) if len(sent) > 1 else ()
        waits = f"{leaving.words}: {'leaves in parts' if several else leaves}{way.skipped}"
        steps = (self._order_words, waits, *way.steps, *several)
        earliest, latest = _latest(way.arrives)
        return Arrival(earliest=earliest, latest=latest, steps=steps, deliveries=sent)

    def _way(self, ranges: tuple[Days, ...]) -> "_Way":
        if ranges not in self._ways:
            self._ways[ranges] = self._work_out(ranges)
        return self._ways[ranges]

    def _work_out(self, ranges: tuple[Days, ...]) -> "_Way":
        """The way of what leaves on those ranges of days, and what is skipped: each closed day is told once."""
        calendar, here = self._door.terms.calendar, self._door.shop_calendar
        ends = [self._ends(days) for days in ranges]
        last = max((days[1] for days in ranges), default=self._day)
        waiting = closed_between(self._day + A_DAY, last + A_DAY, calendar)
        on_road = {
            one
            for days, (_, end) in zip(ranges, ends, strict=True)
            for one in closed_between(days[1] + A_DAY, end + A_DAY, calendar)
        }
        road = f"{_range(*self._door.terms.transit_days)} on the road"
        arrives = [(first_working_day(first, here), first_working_day(end, here)) for first, end in ends]
        at_door = [pair for days in zip(ends, arrives, strict=True) for pair in zip(*days, strict=True)]
        return _Way(
            arrives=tuple(arrives),
            skipped=closed_words(waiting, "there"),
            steps=(road + closed_words(sorted(on_road - set(waiting)), "there"), *self._door_words(at_door)),
        )

    def _ends(self, leaves: Days) -> Days:
        """When the carrier is at the door, working or not. Never before the shop's day of ordering, which may be a day
        ahead of the supplier's."""
        calendar, road = self._door.terms.calendar, self._door.terms.transit_days
        first, last = (add_working_days(day, count, calendar) for day, count in zip(leaves, road, strict=True))
        return max(first, self._today), max(last, self._today)

    def _door_words(self, days: Iterable[Days]) -> tuple[str, ...]:
        """The shop is closed when the carrier would come: from which day to which, and why if it is not the week."""
        waits = sorted({one for one in days if one[0] != one[1]})
        calendar = self._door.shop_calendar
        return tuple(
            f"the shop does not work on {end}, so {opens}{closed_words(closed_between(end, opens, calendar), 'here')}"
            for end, opens in waits
        )


class _Way(NamedTuple):
    """`arrives` for each range of leaving; the rest are words."""

    arrives: tuple[Days, ...]
    skipped: str
    steps: tuple[str, ...]


@lru_cache(maxsize=256)
def _prepared(door: Door, at: datetime, fold: int) -> Arrivals:
    return Arrivals(door, at.replace(fold=fold))


def _refuse_what_cannot_hold(door: Door) -> None:
    problems = (
        *check_dates(door.terms),
        *zones_problems(door.terms, door.shop_time_zone),
        *zone_problems(door.shop_time_zone, "the shop"),
        *check_calendar(door.shop_calendar, "the shop"),
    )
    if problems:
        raise Refused(*problems)


def _merged(deliveries: Iterable[Delivery]) -> tuple[Delivery, ...]:
    """What leaves on the same days in one delivery, the soonest first."""
    by_days: dict[Days, Delivery] = {}
    for one in sorted(deliveries, key=lambda one: (one.leaves, one.arrives)):
        before = by_days.get(one.leaves)
        by_days[one.leaves] = changed(one, pieces=one.pieces + before.pieces) if before else one
    return tuple(by_days.values())


def _as_one(deliveries: Sequence[Delivery]) -> tuple[Delivery, ...]:
    """All of it in one delivery that leaves with the last."""
    if not deliveries:
        return ()
    leaves, arrives = _latest(one.leaves for one in deliveries), _latest(one.arrives for one in deliveries)
    return (Delivery(pieces=sum(one.pieces for one in deliveries), leaves=leaves, arrives=arrives),)


def _latest(ranges: Iterable[Days]) -> Days:
    """The latest of each end."""
    firsts, lasts = zip(*ranges, strict=True)
    return max(firsts), max(lasts)


def _part_words(one: Delivery, pieces: int) -> str:
    return f"{one.pieces} of {pieces} leave {_days_words(one.leaves)} and are here {_days_words(one.arrives)}"


def _days_words(days: Days) -> str:
    return f"{days[0]}" if days[0] == days[1] else f"{days[0]} to {days[1]}"


def _range(least: int, most: int) -> str:
    if least == most:
        return f"{most} working day{'s' if most != 1 else ''}"
    return f"{least} to {most} working days"
