"""The last moment to order: backwards from the day by which goods must be at the shop."""

from datetime import date, datetime, time, timedelta

from ..basics.landed_cost import OrderItem
from ..basics.terms import CUT_OFF_NOT_KNOWN
from .arrival import arrival
from .clock import last_moment, on_clock
from .door import Door
from .order_day import order_day


def order_by(item: OrderItem, door: Door, need_by: date, now: datetime) -> datetime | None:
    """The last moment, on the shop's clock, at which ordering still has all of it here by `need_by` by the late end.

    None where it is too late already, or where no day can be named at all. It is a cut-off of the supplier (or the end
    of a day of the shop's, where he is a day behind: goods come on no day before they were ordered), found by the same
    `arrival` that dates an order: an order of this moment is in time, a later one is not. Goods may be sold out sooner;
    bench and receiving days are the caller's to take off `need_by`. Refuses what `arrival` refuses.
    """
    if not _in_time(item, door, need_by, now):
        return None
    midnight = datetime.combine(need_by, time.max)
    if _in_time(item, door, need_by, midnight):
        return midnight
    first, _ = order_day(door, now)
    # Ordering later never brings goods sooner, so the days that are in time come first: halve between the two.
    good, late = first, need_by + timedelta(days=1)  # what counts on a day after need_by is not here by then
    while late - good > timedelta(days=1):
        middle = good + (late - good) // 2
        if _in_time(item, door, need_by, _cut_off(door, middle)):
            good = middle
        else:
            late = middle
    return _end_of_day(item, door, need_by, max(now, _cut_off(door, good)) if good > first else now, good)


def _end_of_day(item: OrderItem, door: Door, need_by: date, moment: datetime, good: date) -> datetime:
    """The last moment in time from that one on, before the supplier's next cut-off: his, or an end of a shop's day."""
    ends = [_cut_off(door, good), *(datetime.combine(moment.date() + timedelta(days=at), time.max) for at in range(2))]
    for end in ends:
        if end > moment and _in_time(item, door, need_by, end):
            moment = end
    return moment


def _in_time(item: OrderItem, door: Door, need_by: date, at: datetime) -> bool:
    latest = arrival(item, door, at).latest
    return latest is not None and latest <= need_by


def _cut_off(door: Door, day: date) -> datetime:
    """The last moment that counts on that day of the supplier, on the shop's clock: his cut-off, or the end of the day
    before where his cut-off is not known."""
    terms, cut_off = door.terms, door.terms.cut_off
    if cut_off == CUT_OFF_NOT_KNOWN:
        day, cut_off = day - timedelta(days=1), time.max
    return on_clock(last_moment(day, cut_off, terms.time_zone), terms.time_zone, door.shop_time_zone)
