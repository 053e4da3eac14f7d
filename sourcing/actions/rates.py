"""The shop's exchange rates at the desk: the table, and a rate added with its day and source."""

from datetime import date

from sqlalchemy import Connection

from ..basics.currency import is_currency
from ..basics.deed import Deed
from ..basics.problem import Problem, refused
from ..basics.rate import Rate
from ..basics.typed import amount
from ..basics.value import Value, changed
from ..storage.shop import put_rates, rates, remove_rate, settings_on
from .desk import Desk
from .far_asked import ask, far_rates
from .rates_gone import SUBJECT, WITHDRAW, come_back, taken_back
from .setup_warnings import after_it_is_kept, of_rates

ROWS = 50
"""Rows of a page."""


class RatesNow(Value, frozen=True, kw_only=True):
    """The table into the shop's currency, the newest day first; one page of it, whose first row is number `first` of
    all, counted from 1; by currency the rate that holds today; and what was taken back, with who and why, newest
    first."""

    into: str
    every: tuple[Rate, ...]
    rows: tuple[Rate, ...]
    first: int
    page: int
    pages: int
    holding: tuple[Rate, ...]
    taken_back: tuple[Deed, ...]


class RateGone(Value, frozen=True, kw_only=True):
    """A rate taken back, or that would be. `instead` holds on its day without it; None: no rate does then.

    `told`: what to mind once it is gone.
    """

    rate: Rate
    instead: Rate | None
    told: tuple[Problem, ...] = ()


def rates_now(desk: Desk, page: int = 1) -> RatesNow:
    """The rates there are. A page beyond the last is the last. Refuses where the shop was never set up."""
    with desk.store.reading() as connection:
        into = settings_on(connection, desk.at.date()).currency
        found = rates(connection, into).rates
        gone = tuple(reversed(taken_back(connection)))
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
        taken_back=gone,
    )


def add_rate(
    desk: Desk, currency: str, rate: str, dated: date | None, source: str, sure: bool = False
) -> tuple[Problem, ...]:
    """Keep a rate into the shop's currency, of that day (left out: the desk's). One of the same day is replaced.

    The answer is what to mind: another rate stood there, or the day is to come. Refuses what is no rate above zero,
    no currency, the shop's own, a rate without a source, and unless somebody is `sure` one far from the last or one
    that was taken back before.
    """
    code, number = currency.strip().upper(), amount(rate.strip())
    if not is_currency(code):
        raise refused("unknown-currency", found=code[:30])
    with desk.writing("add rate") as pen:
        into = settings_on(pen.connection, desk.at.date()).currency
        new = Rate(currency=code, into=into, rate=number, dated=dated or desk.at.date(), source=source.strip())
        if number <= 0 or code == into or not new.source:
            raise refused("rates-row", found=f"{code} {into} {number} {new.dated} {new.source}".strip())
        kept = rates(pen.connection, into).rates
        ask((*far_rates(kept, [new]), *come_back(pen.connection, [new])), sure)
        replaced = [one for one in kept if (one.currency, one.dated) == (code, new.dated) and one != new]
        told = tuple(of_rates(pen.connection, [new], desk.at.date()))
        put_rates(pen.connection, [new])
        until_now = f"; until now {replaced[0].rate} ({replaced[0].source})" if replaced else ""
        pen.note(SUBJECT, f"{new.words()} ({new.source}){until_now}")
    return told


def look_at_rate(desk: Desk, currency: str, dated: date) -> RateGone:
    """What `withdraw_rate` would take back; nothing is done. Refuses a rate that is not there."""
    with desk.store.reading() as connection:
        return _gone(connection, desk, currency, dated)


def withdraw_rate(desk: Desk, currency: str, dated: date, why: str) -> RateGone:
    """Take the rate of that day back, for a reason: the one before it holds on. The deed keeps what it said.

    What is written already (quotes, orders, papers taken in) keeps the rate it was worked out with. Refuses a rate that
    is not there, and a blank reason.
    """
    with desk.writing(WITHDRAW) as pen:
        gone = _gone(pen.connection, desk, currency, dated)
        if not why.strip():
            raise refused("rate-needs-why")
        remove_rate(pen.connection, gone.rate)
        holds = gone.instead.words() if gone.instead else "none"
        pen.note(SUBJECT, f"{gone.rate.words()} ({gone.rate.source}), because: {why.strip()}; in its place: {holds}")
        return changed(gone, told=after_it_is_kept(pen.connection, desk.at.date()))


def _gone(connection: Connection, desk: Desk, currency: str, dated: date) -> RateGone:
    into, code = settings_on(connection, desk.at.date()).currency, currency.strip().upper()
    mine = [one for one in rates(connection, into).rates if one.currency == code]
    gone = next((one for one in mine if one.dated == dated), None)
    if gone is None:
        known = ", ".join(str(one.dated) for one in mine) or "none yet"
        raise refused("no-such-rate", found=code[:30], into=into, dated=dated, known=known)
    before = [one for one in mine if one.dated < dated]
    return RateGone(rate=gone, instead=before[-1] if before else None)
