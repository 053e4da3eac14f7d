"""The shop's exchange rates at the desk: the table, and a rate added with its day and source."""

from collections.abc import Sequence
from datetime import date

from ..basics.currency import is_currency
from ..basics.problem import Problem, refused
from ..basics.rate import Rate
from ..basics.typed import amount
from ..basics.value import Value
from ..storage.shop import put_rates, rates, settings_on
from .desk import Desk
from .setup_warnings import of_rates

FAR = 2
"""A rate of more than so many times the last, or less than that part of it, is more likely mistyped than moved."""
ROWS = 50
"""Rows of a page."""


class RatesNow(Value, frozen=True, kw_only=True):
    """The table into the shop's currency, the newest day first; one page of it, whose first row is number `first` of
    all, counted from 1; and by currency the rate that holds today."""

    into: str
    every: tuple[Rate, ...]
    rows: tuple[Rate, ...]
    first: int
    page: int
    pages: int
    holding: tuple[Rate, ...]


def rates_now(desk: Desk, page: int = 1) -> RatesNow:
    """The rates there are. A page beyond the last is the last. Refuses where the shop was never set up."""
    with desk.store.reading() as connection:
        into = settings_on(connection, desk.at.date()).currency
        found = rates(connection, into).rates
    holding = {one.currency: one for one in found if one.dated <= desk.at.date()}
    every = tuple(sorted(found, key=lambda one: (-one.dated.toordinal(), one.currency)))
    pages = max(-(-len(every) // ROWS), 1)
    here = min(max(page, 1), pages)
    start = (here - 1) * ROWS
    return RatesNow(
        into=into,
        every=every,
        rows=every[start : start + ROWS],
        first=start + 1,
        page=here,
        pages=pages,
        holding=tuple(holding.values()),
    )


def add_rate(
    desk: Desk, currency: str, rate: str, dated: date | None, source: str, sure: bool = False
) -> tuple[Problem, ...]:
    """Keep a rate into the shop's currency, of that day (left out: the desk's). One of the same day is replaced.

    The answer is what to mind: another rate stood there, or the day is to come. Refuses what is no rate above zero,
    no currency, the shop's own, a rate without a source, and unless somebody is `sure` one far from the last.
    """
    code, number = currency.strip().upper(), amount(rate.strip())
    if not is_currency(code):
        raise refused("unknown-currency", found=code[:30])
    with desk.writing("add rate") as pen:
        into = settings_on(pen.connection, desk.at.date()).currency
        new = Rate(currency=code, into=into, rate=number, dated=dated or desk.at.date(), source=source.strip())
        if number <= 0 or code == into or not new.source:
            raise refused("rates-row", found=f"{code} {into} {number} {new.dated} {new.source}".strip())
        if not sure:
            _refuse_far(rates(pen.connection, into).rates, new)
        told = tuple(of_rates(pen.connection, [new], desk.at.date()))
        put_rates(pen.connection, [new])
        pen.note("rates", f"{new.words()} ({new.source})")
    return told


def _refuse_far(kept: Sequence[Rate], new: Rate) -> None:
    """A point forgotten makes everything of a supplier a hundred times too dear."""
    others = [one for one in kept if one.currency == new.currency and one.dated != new.dated]
    last = max((one for one in others if one.dated < new.dated), key=lambda one: one.dated, default=None)
    beside = last or min(others, key=lambda one: one.dated, default=None)
    if beside and not beside.rate / FAR <= new.rate <= beside.rate * FAR:
        raise refused("rate-far-off", found=new.words(), last=beside.words())
