"""The front of cost and date: the least plan for each day by which all of it may be here, from late to soon."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from ..basics.money import Money
from ..basics.plan import PlanWishes
from .search import Answer, Found, Market, Search

A_DAY = timedelta(days=1)


class Point(NamedTuple):
    """A plan of the front with the bound of its search."""

    answer: Answer
    found: Found


def front_of(search: Search, least: Answer) -> list[Point]:
    """From the least plan on, each cheapest among those that are complete sooner than the one before.

    A day not known is later than all. Where time runs out the front ends; its last point then is not proven, for a
    sooner one may be there.
    """
    points: list[Point] = []
    answer = least
    while answer.found is not None:
        found = answer.found
        if points and found.counted <= points[-1].found.counted:
            points.pop()  # as cheap and sooner
        points.append(Point(answer, found))
        answer = _sooner(search, found)
    if points and not answer.impossible:
        last = points[-1].found._replace(proven=False)
        points[-1] = Point(Answer(last, points[0].answer.bound), last)
    return points


def _sooner(search: Search, found: Found) -> Answer:
    soonest = soonest_possible(search)
    limit = found.latest - A_DAY if found.latest is not None else last_known_day(search)
    if soonest is None or limit is None or limit < soonest:
        return Answer(None, None, impossible=True)
    return search.best(limit) if search.seconds_left > 0 else Answer(None, None)


def soonest_plan(search: Search, known: Found) -> Answer:
    """The cheapest plan that is complete on the soonest day any is, going up from the soonest day; `known` is complete,
    so later days are not tried. Nothing found: time ran out.
    """
    soonest = soonest_possible(search)
    days = sorted({one.latest for one in search.choices if soonest is not None and one.latest >= soonest})
    for day in days:
        if day == date.max or (known.latest is not None and day > known.latest):
            break
        answer = search.best(day)
        if answer.found is not None or not answer.impossible:
            return answer
    return Answer(known, known.counted if known.proven else None)


def soonest_of_equal(search: Search, least: Answer) -> Answer:
    """Among plans that count the same, one that is complete soonest."""
    answer = least
    while answer.found is not None and answer.found.proven and search.seconds_left > 0:
        found = answer.found
        soonest = soonest_possible(search)
        if soonest is None or (found.latest is not None and found.latest <= soonest):
            return answer
        limit = found.latest - A_DAY if found.latest is not None else last_known_day(search)
        other = search.best(limit, ceiling=found.counted).found if limit is not None else None
        if other is None or other.counted > found.counted:
            return answer
        answer = Answer(other, answer.bound)
    return answer


def with_price_per_day(points: Sequence[Point], market: Market, wishes: PlanWishes) -> Answer:
    """The point that is least with each calendar day of waiting at the stated price; the sooner where two are equal.

    A plan whose day is not known can't be counted so, unless it is the only one. Proven only where every point is.
    """
    known = [point for point in points if point.found.latest is not None]
    if not known:
        return points[0].answer

    def counted(point: Point) -> tuple[int, date]:
        waiting = price_of_waiting(point.found, market, wishes)
        return point.found.counted + (waiting.minor() if waiting else 0), point.found.latest or date.max

    chosen = min(known, key=counted).answer
    if all(point.found.proven for point in points) or chosen.found is None:
        return chosen
    return Answer(chosen.found._replace(proven=False), points[0].answer.bound)


def price_of_waiting(found: Found, market: Market, wishes: PlanWishes) -> Money | None:
    """The calendar days until the plan is complete at the stated price; None where days are not counted or known."""
    if wishes.objective != "cost and days" or wishes.value_per_day is None or found.latest is None:
        return None
    days = max(0, (found.latest - market.today).days)
    return Money(amount=wishes.value_per_day * days, currency=market.currency).rounded()


def soonest_possible(search: Search) -> date | None:
    """No plan is complete before this day: each need's soonest choice, the latest of them. None: a need has no day."""
    soonest: dict[int, date] = {}
    for one in search.choices:
        soonest[one.need] = min(one.latest, soonest.get(one.need, date.max))
    day = max(soonest.values(), default=date.max)
    return None if day == date.max else day


def last_known_day(search: Search) -> date | None:
    """The last day any choice names."""
    return max((one.latest for one in search.choices if one.latest != date.max), default=None)
