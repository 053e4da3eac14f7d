"""How long the first stays first: the exact point at which one figure's movement changes the first place.

The cost of the offer with the figure moved is worked out anew by whoever asks, for a price that rises may pass a
threshold and a freight that rises may be taxed. Goods and the discount on the whole order are rounded apart, so that a
price that rises by a cent may even make the order a cent cheaper; the point is the first one all the same.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from ..basics.choice import Figure, Ranking, RankWishes, TurningPoint
from ..basics.money import Money, from_minor
from .figures import Figures, figures, key

FAR = 10**12
"""No figure is moved by more minor units than this: far even where one of a currency is worth next to nothing."""


@dataclass(frozen=True)
class Movement:
    """One figure of one offer moved by whole minor units of `currency`: up for the first offer, down for the second.

    `cost(by, discounted)` is the landed cost after a movement of `by` with the discount on the whole order that one of
    `discounted` would bring; None where the supplier would not take the order. Both the same is the true cost. Between
    two `stops` (rising, such movements as pass a threshold) it never falls as the figure alone rises, and never rises
    as the figure the discount is taken of does. `most` is the largest movement that makes sense. `per`: the price is
    for so many pieces.
    """

    figure: Figure
    currency: str
    cost: Callable[[int, int], Money | None]
    stops: tuple[int, ...] = ()
    most: int = FAR
    per: int = 1


def turning_points(
    ranking: Ranking, wishes: RankWishes, asked_on: date, first: Sequence[Movement], second: Sequence[Movement]
) -> tuple[TurningPoint, ...]:
    """For every movement of the first and of the second offer where the first place changes hands.

    The landed cost as a whole is always moved too. Nothing where fewer than two offers are ranked.
    """
    if len(ranking.ranked) < 2:
        return ()
    one, two = (figures(at.priced, wishes, asked_on) for at in ranking.ranked[:2])
    return (
        *(_rises(one, two, movement) for movement in (_whole(one, 1), *first)),
        *(_falls(two, one, movement) for movement in (_whole(two, -1), *second)),
    )


def _whole(one: Figures, sign: Literal[1, -1]) -> Movement:
    return Movement(
        figure="landed cost",
        currency=one.currency,
        cost=lambda cents, _: from_minor(one.total + sign * cents, one.currency),
        most=FAR if sign > 0 else one.total,
    )


def _rises(one: Figures, rival: Figures, movement: Movement) -> TurningPoint:
    lost = first_at(lambda *by: not _before(one, rival, movement.cost(*by)), movement.most, movement.stops)
    what, name, other = _figure_words(movement), one.priced.supplier_name, rival.priced.supplier_name
    if lost is None:
        return _point(one, 1, movement, None, f"{name} stays first however much {what} rises")
    by = from_minor(lost - 1, movement.currency)
    if lost == 1:
        return _point(one, 1, movement, by, f"at any rise of {what} {other} comes before {name}")
    return _point(one, 1, movement, by, f"{name} stays first until {what} rises by more than {by}{_per(movement)}")


def _falls(two: Figures, first: Figures, movement: Movement) -> TurningPoint:
    won = first_at(lambda *by: _before(two, first, movement.cost(*by)), movement.most, movement.stops)
    what, name = _figure_words(movement), two.priced.supplier_name
    if won is None:
        return _point(two, 2, movement, None, f"{name} does not become first however far {what} falls")
    by = from_minor(won, movement.currency)
    return _point(two, 2, movement, by, f"{name} becomes first if {what} falls by {by}{_per(movement)}")


def _before(one: Figures, rival: Figures, cost: Money | None) -> bool:
    """Whether the offer stands before its rival if it costs that much."""
    if cost is None:
        return False
    return key(one.priced, cost.minor() + (one.waiting or 0), one.latest) < rival.key


def first_at(happens: Callable[[int, int], bool], most: int = FAR, stops: Sequence[int] = ()) -> int | None:
    """The smallest whole number from 1 to `most` at which it happens; None where there is none.

    `happens(at, at)` tells. Between two of the `stops` `happens(high, low)` is true wherever it happens at any number
    from low to high; the closer the two the less often it is true in vain.
    """
    return next((at for low, high in _stretches(most, stops) if (at := _first(happens, low, high))), None)


def _stretches(most: int, stops: Sequence[int]) -> Iterator[tuple[int, int]]:
    """From 1 to the most, parted at the stops; after the last stop in stretches that double."""
    low = 1
    for stop in sorted({stop for stop in stops if 1 < stop <= most}):
        yield low, stop - 1
        low = stop
    size = 1024
    while low <= most:
        high = min(low + size, most)
        yield low, high
        low, size = high + 1, size * 2


def _first(happens: Callable[[int, int], bool], low: int, high: int) -> int | None:
    if not happens(high, low):
        return None
    if low == high:
        return low
    middle = (low + high) // 2
    return _first(happens, low, middle) or _first(happens, middle + 1, high)


def _figure_words(movement: Movement) -> str:
    return {"landed cost": "its cost at the door", "freight": "its freight", "price": "its price"}[movement.figure]


def _per(movement: Movement) -> str:
    if movement.figure != "price":
        return ""
    return " each" if movement.per == 1 else f" per {movement.per}"


def _point(one: Figures, place: Literal[1, 2], movement: Movement, by: Money | None, words: str) -> TurningPoint:
    return TurningPoint(
        figure=movement.figure,
        place=place,
        supplier_name=one.priced.supplier_name,
        by=by,
        per=movement.per,
        words=words,
    )
