"""The supplier's working day on which an order counts: his clock, his cut-off, his days for taking orders."""

from datetime import date, datetime, timedelta

from ..basics.terms import CUT_OFF_NOT_KNOWN, Calendar, Terms
from ..basics.value import changed
from .calendars import WEEK, closed_between, closed_words, first_working_day
from .clock import before_cut_off, exists, is_doubled, on_clock
from .door import Door


def order_day(door: Door, at: datetime) -> tuple[date, str]:
    """The day on which an order of the shop's local moment `at` counts, and how it was reached in words.

    The day is one of the supplier's: beyond a date line it may be the day before the shop's or the one after.
    """
    terms = door.terms
    there = on_clock(at, door.shop_time_zone, terms.time_zone)
    known = terms.cut_off != CUT_OFF_NOT_KNOWN
    before = known and before_cut_off(there, terms.cut_off, terms.time_zone)
    first = there.date() if before else there.date() + timedelta(days=1)
    calendar = order_calendar(terms)
    day = first_working_day(first, calendar)
    side = "before" if before else "after"
    clock = f"{side} the {terms.cut_off:%H:%M} cut-off" if known else "the cut-off is not known, so not that day"
    taken = f", orders are taken on {_listed(terms)}" if terms.order_days else ""
    skipped = closed_words(closed_between(first, day, calendar), "there")
    return day, f"ordered {_moment_words(at, there, door)}, {clock}{taken}: counts on {day}{skipped}"


def order_calendar(terms: Terms) -> Calendar:
    """The supplier's calendar with only those days of the week on which he takes orders."""
    if not terms.order_days:
        return terms.calendar
    return changed(terms.calendar, week=tuple(day for day in terms.calendar.week if day in terms.order_days))


def _listed(terms: Terms) -> str:
    return ", ".join(day for day in WEEK if day in terms.order_days)


def _moment_words(at: datetime, there: datetime, door: Door) -> str:
    """The moment on the shop's clock, and on the supplier's where that shows another."""
    words = f"{at:%Y-%m-%d %H:%M}"
    if at == there:
        return words
    zone = door.shop_time_zone
    if is_doubled(at, zone):
        words += f" ({'second' if at.fold else 'first'} of the two that night)"
    elif not exists(at, zone):
        words += " (left out that night, read as a clock not yet put forward)"
    same_day = at.date() == there.date()
    return f"{words} ({there:%H:%M} there)" if same_day else f"{words} ({there:%Y-%m-%d %H:%M} there)"
