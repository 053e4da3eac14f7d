"""When ordered pieces may leave the supplier: what is in stock at once, the rest by lead time or on a day named.

What can't be known is said in words and gives no day. Lead times are working days from the day the order counts on.
"""

from datetime import date, timedelta
from typing import NamedTuple

from ..basics.offer import LeadTime, Offer
from ..basics.terms import Terms
from .calendars import add_working_days, first_working_day

LONGEST_WAIT = 2600
"""Working days, about ten years: a longer lead time, or a day named beyond it, stands for 'no idea' in a supplier's
list (common practice, no source)."""

Days = tuple[date, date]
"""The first and last day of a range."""


class Leaving(NamedTuple):
    """What leaves when. `parts`: pieces with the range of days on which they leave, those in stock first.

    `rest_known`: whether the parts are all of it. `words` say what it was read from.
    """

    parts: tuple[tuple[int, Days], ...]
    words: str
    rest_known: bool


class Dispatch:
    """How soon a supplier sends what is ordered on a day. Keeps what it has worked out, by lead time."""

    def __init__(self, terms: Terms, day: date) -> None:
        self._terms, self._day = terms, day
        soonest = add_working_days(day, terms.dispatch_days, terms.calendar)
        self._soonest: Days = (soonest, soonest)
        self._by_lead_time: dict[LeadTime | None, tuple[Days | None, str]] = {}

    def leaving(self, offer: Offer, pieces: int) -> Leaving:
        """When so many pieces of the offer leave: all from stock, all by lead time, or some of each."""
        stock = offer.stock
        if stock is not None and stock >= pieces:
            return Leaving(((pieces, self._soonest),), f"{stock} in stock", True)
        days, lead = self._wait(offer.lead_time)
        have = f"stock {stock} of {pieces}" if stock is not None else "stock not stated"
        if days and stock is not None and self._is_of_the_stock(offer):
            days, lead = None, f"and {lead}, no longer than sending takes, says nothing of the rest"
        elif days and stock is not None and _says_at_once(offer.lead_time):
            # 'In stock' beside a count that does not cover the order: the words are about the pieces that are there.
            days, lead = None, f"and {lead.removeprefix('lead time ')} says nothing of the rest"
        words = f"{have} {lead}" if offer.lead_time is None else f"{have}, {lead}"
        if not stock or stock < 0 or days == self._soonest:
            return Leaving(((pieces, days),), words, True) if days else Leaving((), words, False)
        there = (stock, self._soonest)
        return Leaving((there, (pieces - stock, days)), words, True) if days else Leaving((there,), words, False)

    def _is_of_the_stock(self, offer: Offer) -> bool:
        """Whether some pieces are there and the lead time is no longer than sending these takes: a list that gives the
        days to send what is in stock says nothing of getting more (common practice, no source)."""
        lead, some = offer.lead_time, offer.stock is not None and offer.stock > 0
        if not some or lead is None or lead.leaves_on is not None or not lead.most:
            return False
        return lead.most <= max(self._terms.dispatch_days, 1)

    def _wait(self, lead: LeadTime | None) -> tuple[Days | None, str]:
        if lead not in self._by_lead_time:
            self._by_lead_time[lead] = self._work_out(lead)
        return self._by_lead_time[lead]

    def _work_out(self, lead: LeadTime | None) -> tuple[Days | None, str]:
        if lead is None:
            return None, "and no lead time stated"
        words = f"lead time '{lead.text}'"
        if lead.leaves_on is not None:
            return self._on_the_day_named(lead.leaves_on, words)
        if lead.least is None or lead.most is None:
            return None, f"{words} names no day"
        if not 0 <= lead.least <= lead.most:
            return None, f"{words} is no range of days ({lead.least} to {lead.most})"
        if lead.most > LONGEST_WAIT:
            return None, f"{words} is longer than a wait can be, so it names no day"
        first, last = (
            add_working_days(self._day, max(days, self._terms.dispatch_days), self._terms.calendar)
            for days in (lead.least, lead.most)
        )
        return (first, last), words

    def _on_the_day_named(self, named: date, words: str) -> tuple[Days | None, str]:
        """A day that is past, or before the supplier could send at all, gives way to the soonest he can; it is said."""
        words = f"{words} names {named}"
        if named < self._soonest[0]:
            return self._soonest, f"{words}, which is before an order of now can leave"
        if named - self._day > timedelta(days=LONGEST_WAIT * 7 // 5):
            return None, f"{words}, which is later than a wait can be, so it is no day"
        leaves = first_working_day(named, self._terms.calendar)
        return (leaves, leaves), words if leaves == named else f"{words}, a day the supplier does not work"


def _says_at_once(lead: LeadTime | None) -> bool:
    return lead is not None and lead.leaves_on is None and lead.most == 0
