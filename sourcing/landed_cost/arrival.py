"""The promise date: from the moment of ordering to the shop's door, as a range of days with its steps in words.

Order moment, cut-off, days until the goods leave (stock or lead time), days on the road, both calendars. The late end
is the one to plan with. What can't be known is said and never taken as today.
"""

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from ..basics.landed_cost import Arrival, OrderItem
from ..basics.offer import LeadTime, Offer
from ..basics.terms import Terms
from .calendars import add_working_days, first_working_day
from .door import Door


def arrival(item: OrderItem, door: Door, at: datetime) -> Arrival:
    """When the ordered pieces are at the shop if they are ordered at `at` (supplier's clock)."""
    terms = door.terms
    day, order_words = _order_day(terms, at)
    leaving = _leaving(item.offer, item.ordered, terms, day)
    if isinstance(leaving, str):
        return Arrival(earliest=None, latest=None, steps=(order_words, leaving))
    first, last, wait_words = leaving
    road = terms.transit_days
    ends = (add_working_days(first, road[0], terms.calendar), add_working_days(last, road[1], terms.calendar))
    earliest, latest = (first_working_day(end, door.shop_calendar) for end in ends)
    leaves = f"leaves {first}" if first == last else f"leaves {first} to {last}"
    steps = (order_words, f"{wait_words}: {leaves}", f"{_range(*road)} on the road")
    return Arrival(earliest=earliest, latest=latest, steps=steps)


def latest_of(arrivals: Sequence[Arrival]) -> Arrival:
    """The arrival of everything together: the latest of each end; not known as soon as one is not."""
    unknown = next((one for one in arrivals if one.latest is None), None)
    if unknown:
        return unknown
    decisive = max(arrivals, key=lambda one: one.latest or date.min)
    earliest = max(one.earliest for one in arrivals if one.earliest is not None)
    return Arrival(earliest=earliest, latest=decisive.latest, steps=decisive.steps)


def _order_day(terms: Terms, at: datetime) -> tuple[date, str]:
    """The supplier's working day on which the order counts."""
    before = at.time() <= terms.cut_off
    day = first_working_day(at.date() if before else at.date() + timedelta(days=1), terms.calendar)
    clock = f"{'before' if before else 'after'} the {terms.cut_off:%H:%M} cut-off"
    return day, f"ordered {at:%Y-%m-%d %H:%M}, {clock}: counts on {day}"


def _leaving(offer: Offer, pieces: int, terms: Terms, day: date) -> tuple[date, date, str] | str:
    """The first and last day on which the goods of an order of `day` may leave, with words; or why none is known."""
    lead = offer.lead_time
    soonest = add_working_days(day, terms.dispatch_days, terms.calendar)
    if offer.stock is not None and offer.stock >= pieces:
        return soonest, soonest, f"{offer.stock} in stock"
    stock = f"stock {offer.stock} of {pieces}" if offer.stock is not None else "stock not stated"
    if lead is None:
        return f"{stock} and no lead time stated"
    if lead.leaves_on is not None:
        return _on_the_day_named(stock, lead, terms, soonest)
    if lead.least is None or lead.most is None:
        return f"{stock}, lead time '{lead.text}' names no day"
    if offer.stock is not None and lead.most == 0:
        # 'In stock' beside a count that does not cover the order: the words are about the pieces that are there.
        return f"{stock}, and '{lead.text}' says nothing of the rest"
    first, last = (
        add_working_days(day, max(days, terms.dispatch_days), terms.calendar) for days in (lead.least, lead.most)
    )
    return first, last, f"{stock}, lead time '{lead.text}'"


def _on_the_day_named(stock: str, lead: LeadTime, terms: Terms, soonest: date) -> tuple[date, date, str]:
    """A day that is past, or before the supplier could send at all, gives way to the soonest he can; it is said."""
    named = lead.leaves_on or soonest
    words = f"{stock}, lead time '{lead.text}' names {named}"
    if named < soonest:
        return soonest, soonest, f"{words}, which is before an order of now can leave"
    leaves = first_working_day(named, terms.calendar)
    return leaves, leaves, words if leaves == named else f"{words}, a day the supplier does not work"


def _range(least: int, most: int) -> str:
    if least == most:
        return f"{most} working day{'s' if most != 1 else ''}"
    return f"{least} to {most} working days"
