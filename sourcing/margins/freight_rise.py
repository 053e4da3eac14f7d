"""Freight above what an order was placed with: looked at over the whole order, then told line by line.

A split order shares its freight over other lines than were reckoned with; what one line bears more another bears less.
Only what the order pays more in all is a loss: first what deliveries after the first one charged, the rest is dearer
freight.
"""

from collections.abc import Sequence

from ..basics.value import Value
from .came import AsCame
from .minor import shared
from .ordered import AsOrdered


class Rise(Value, frozen=True, kw_only=True, gc=False):
    """A line's freight as charged less its share as ordered, in three parts: `second` of later deliveries, `dearer`
    (below zero: cheaper), and `moved` between lines, which comes to nothing once all of the order is here. `charged`
    and `ordered` are the order's freight in all, `later` what of it came with later deliveries."""

    second: int = 0
    dearer: int = 0
    moved: int = 0
    charged: int = 0
    ordered: int = 0
    later: int = 0


NO_RISE = Rise()


def rises_of(ordered: Sequence[AsOrdered], came: Sequence[AsCame], is_here: Sequence[bool]) -> list[Rise]:
    """By line; those not all here have none. Until everything is here, freight not yet charged is no gain."""
    charged, placed = [one.freight for one in came], [one.carrier for one in ordered]
    if charged == placed:
        return [NO_RISE] * len(came)
    paid, reckoned, later = sum(charged), sum(placed), sum([one.later for one in came])
    whole = paid - reckoned if all(is_here) else max(paid - reckoned, 0)
    here = [at for at, is_one in enumerate(is_here) if is_one]
    fair = shared(whole, [charged[at] for at in here])
    second = shared(min(later, max(whole, 0)), [max(one, 0) for one in fair] if later else fair)
    rises = [NO_RISE] * len(came)
    for at, mine, of_it in zip(here, fair, second, strict=True):
        rises[at] = Rise(
            second=of_it,
            dearer=mine - of_it,
            moved=charged[at] - placed[at] - mine,
            charged=paid,
            ordered=reckoned,
            later=later,
        )
    return rises
