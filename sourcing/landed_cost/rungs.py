"""Which quantities of an offer are worth considering for a need: the fewest, each better break, and more where it pays.

More than the fewest can pay in two ways: a price break makes the line cheaper, or the order's value passes a threshold
(free freight, a minimum order, an order discount). Beyond the highest threshold, or for more than all charges together
could save, nothing is gained. Quantities of one price and one day make a ladder of even steps.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import inf, lcm
from typing import NamedTuple

from ..basics.offer import Offer
from ..basics.plan import MoreThanNeeded
from ..basics.schedule import Schedule
from .door import Door
from .prepared import prepared
from .quantity import BreakRule, goods_minor, pieces_to_order, sensible_quantities


class Rung(NamedTuple):
    """A first quantity in pieces and how many further steps of `step` pieces cost alike; none: `more` is 0.

    `least`: the fewest pieces of a divided need for which the first quantity may be bought; each step is for as many
    more. None: more than needed may be bought wherever it pays.
    """

    pieces: int
    step: int
    more: int
    least: int | None = None


class Gain(NamedTuple):
    """What more goods at a supplier can gain: at most so much (shop's minor units), and only up to this value of goods
    (supplier's minor units); `always` up to this value whatever it costs (an order is refused below it)."""

    saving: Fraction
    up_to: int
    always: int


def gain_of(schedule: Schedule) -> Gain:
    """What more goods can gain by this schedule."""
    up_to = max((*(one.from_value for one in schedule.steps), *(one.from_value for one in schedule.freight_steps)))
    weight = max((one.freight for one in schedule.weight_steps), default=0)
    fixed = max(one.fees for one in schedule.steps) + max(one.freight for one in schedule.freight_steps) + weight
    factor = 1 + sum((abs(Fraction(one.percent)) / 100 for one in schedule.percents), Fraction(0)) * 2
    unlimited = (
        schedule.freight_per_kg is not None or schedule.packed or any(one.discount_percent for one in schedule.steps)
    )
    barred = [
        after.from_value for before, after in zip(schedule.steps, schedule.steps[1:], strict=False) if before.refused
    ]
    barred += [
        after.from_value
        for before, after in zip(schedule.freight_steps, schedule.freight_steps[1:], strict=False)
        if not before.known
    ]
    return Gain(
        saving=fixed * factor + len(schedule.percents),
        up_to=up_to,
        always=up_to if unlimited else max(barred, default=0),
    )


def rungs(offer: Offer, needed: int, door: Door, asked: tuple[MoreThanNeeded, bool, bool], gain: Gain) -> list[Rung]:
    """The ladders for a need of so many pieces. `asked`: when more may be bought, whether the need may be divided,
    whether only stock counts. Empty where the offer can't fill any of it so.
    """
    more_than_needed, may_split, in_stock_only = asked
    step = lcm(offer.pack, offer.order_multiple)
    fewest = pieces_to_order(offer, 1 if may_split else needed)
    enough = pieces_to_order(offer, needed)
    last: float = offer.stock if in_stock_only and offer.stock is not None else inf
    if in_stock_only and offer.stock is None:
        return []
    ends = sorted({*_starts(offer, fewest, step), *([_after_stock(offer, step)] if offer.stock is not None else [])})
    starts = [start for start in ends if fewest <= start <= last]
    if fewest not in starts and fewest <= last:
        starts.insert(0, fewest)
    if not starts:
        return []
    ladders = [
        Rung(start, step, _further(start, following, step))
        for start, following in zip(starts, [*starts[1:], last + 1], strict=True)
    ]
    worth = list(_worth(offer, enough, door, (more_than_needed, may_split), gain, ladders))
    if not may_split or more_than_needed == "whatever pays":
        return worth
    return [one for rung in worth for one in _shares(offer, rung, needed, more_than_needed, door.terms.breaks)]


def _shares(
    offer: Offer, rung: Rung, needed: int, more_than_needed: MoreThanNeeded, breaks: BreakRule
) -> Iterator[Rung]:
    """The rung with the fewest pieces each quantity may be bought for; a cheaper break may be bought for fewer."""
    plain = rung.pieces - rung.step + 1
    least = 1 if rung.pieces == pieces_to_order(offer, 1) else plain
    if more_than_needed == "cheaper break":
        fewer = range(1, min(least, needed + 1))
        least = next((share for share in fewer if _is_sensible(offer, rung.pieces, share, breaks)), least)
    if least == plain or not rung.more:
        yield rung._replace(least=least)
        return
    yield Rung(rung.pieces, rung.step, 0, least)
    yield Rung(rung.pieces + rung.step, rung.step, rung.more - 1, rung.pieces + 1)


def _is_sensible(offer: Offer, pieces: int, share: int, breaks: BreakRule) -> bool:
    return pieces in sensible_quantities(offer, share, breaks)


def _starts(offer: Offer, fewest: int, step: int) -> Iterator[int]:
    yield fewest
    for one in offer.breaks:
        yield -(-max(one.from_quantity, fewest) // step) * step


def _after_stock(offer: Offer, step: int) -> int:
    return ((offer.stock or 0) // step + 1) * step


def _further(start: int, following: float, step: int) -> int:
    return int((following - 1 - start) // step) if following < inf else 10**9


def _worth(
    offer: Offer, enough: int, door: Door, asked: tuple[MoreThanNeeded, bool], gain: Gain, ladders: list[Rung]
) -> Iterator[Rung]:
    """The part of each ladder that can pay: up to what is enough where a need may be divided, beyond it by `asked`."""
    more_than_needed, may_split = asked
    breaks, step = door.terms.breaks, ladders[0].step if ladders else 1
    best = goods_minor(offer, enough, breaks)
    for one in ladders:
        top = one.pieces + one.more * step
        if top < enough:
            yield one  # only where the need may be divided
            continue
        within = [Rung(one.pieces, step, (enough - one.pieces) // step)] if one.pieces < enough and may_split else []
        start = max(one.pieces, enough)
        goods = goods_minor(offer, start, breaks)
        if start == enough or (more_than_needed != "never" and goods < best):
            best = min(best, goods)
            further = _paying(offer, start, top, door, gain) if more_than_needed == "whatever pays" else 0
            yield Rung(within[0].pieces, step, within[0].more + further) if within else Rung(start, step, further)
        elif more_than_needed == "whatever pays" and _pays(
            offer, start, goods_minor(offer, enough, breaks), door, gain
        ):
            yield Rung(start, step, _paying(offer, start, top, door, gain))


def _pays(offer: Offer, pieces: int, least: int, door: Door, gain: Gain) -> bool:
    """Whether so many pieces can still gain something: the quantity one step lower must be below a threshold."""
    breaks = door.terms.breaks
    fewer = pieces - lcm(offer.pack, offer.order_multiple)
    goods = goods_minor(offer, fewer, breaks) if fewer >= offer.breaks[0].from_quantity else 0
    before = goods * (1 - Fraction(door.terms.discount_percent) / 100) - 1  # thresholds look at discounted goods
    if before < gain.always:
        return True
    extra = (goods_minor(offer, pieces, breaks) - least) * Fraction(prepared(door).factor)
    return before < gain.up_to and extra <= gain.saving


def _paying(offer: Offer, start: int, top: int, door: Door, gain: Gain) -> int:
    """How many further steps from `start` can pay, found by halving."""
    step = lcm(offer.pack, offer.order_multiple)
    least = goods_minor(offer, start, door.terms.breaks)
    low, high = 0, max(0, min((top - start) // step, 100_000))
    while low < high:
        middle = (low + high + 1) // 2
        if _pays(offer, start + middle * step, least, door, gain):
            low = middle
        else:
            high = middle - 1
    return low
