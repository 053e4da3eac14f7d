"""The front of cost and date, exact with ties, and which of its offers is first at which price of a day of waiting."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from ..basics.choice import DaySpan, RankedOffer
from ..basics.money import from_minor
from .figures import NEVER, Figures


def on_front(some: Sequence[Figures]) -> list[bool]:
    """For each whether no other is at least as cheap and at least as soon, and better in one of both.

    Cost is at the door, without waiting. Offers equal in both are on it together. One without a last day is never on
    it: whether another comes sooner is not known.
    """
    front = [False] * len(some)
    soonest, cost = NEVER, None
    for at in sorted(range(len(some)), key=lambda at: (some[at].total, some[at].latest)):
        one = some[at]
        if one.latest < soonest or (one.latest == soonest != NEVER and one.total == cost):
            soonest, cost = one.latest, one.total
            front[at] = True
    return front


@dataclass(frozen=True, slots=True)
class _Corner:
    offer: RankedOffer
    cents: int
    latest: date


def day_spans(ranked: Sequence[RankedOffer]) -> tuple[DaySpan, ...]:
    """Between which prices of a day which offer is first, from nothing upwards; without gaps, in whole minor units.

    Where two count the same the one that comes sooner is first, as in the ranking. Nothing where no last day is known.
    An offer without one would be set aside as soon as waiting has a price, and does not stand here.
    """
    corners = _corners(ranked)
    if not corners:
        return ()
    turns = [0, *(_turn(one, after) for one, after in pairwise(corners))]
    spans = []
    for at, (corner, first) in enumerate(zip(corners, turns, strict=True)):
        last = turns[at + 1] - 1 if at + 1 < len(turns) else None
        if last is None or last >= first:
            spans.append(_span(corner, first, last))
    return tuple(spans)


def _corners(ranked: Sequence[RankedOffer]) -> list[_Corner]:
    """The corners of the front's lower hull, cheapest and latest first: only these are ever first."""
    hull: list[_Corner] = []
    for new in _distinct(ranked):
        while len(hull) > 1 and _not_steeper(hull[-2], hull[-1], new):
            hull.pop()
        hull.append(new)
    return hull


def _distinct(ranked: Sequence[RankedOffer]) -> list[_Corner]:
    """The front from cheap to dear; of those equal in both the one ranked first."""
    front: dict[tuple[int, date], _Corner] = {}
    for one in ranked:
        if one.on_front and one.priced.arrival.latest:
            cents, latest = one.priced.landed.total.minor(), one.priced.arrival.latest
            front.setdefault((cents, latest), _Corner(one, cents, latest))
    return [front[at] for at in sorted(front)]


def _not_steeper(one: _Corner, middle: _Corner, last: _Corner) -> bool:
    """Whether the middle one is never first: from it on a day is no dearer to save than up to it."""
    here = (middle.cents - one.cents) * (middle.latest - last.latest).days
    there = (last.cents - middle.cents) * (one.latest - middle.latest).days
    return here >= there


def _turn(one: _Corner, sooner: _Corner) -> int:
    """The lowest price of a day, in minor units, at which the sooner and dearer one comes first."""
    return -((one.cents - sooner.cents) // (one.latest - sooner.latest).days)


def _span(corner: _Corner, first: int, last: int | None) -> DaySpan:
    total = corner.offer.priced.landed.total
    return DaySpan(
        from_price=from_minor(first, total.currency),
        to_price=None if last is None else from_minor(last, total.currency),
        place=corner.offer.place,
        supplier_name=corner.offer.priced.supplier_name,
        total=total,
        latest=corner.latest,
    )
