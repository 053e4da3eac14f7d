"""Extras given away: fitted without the customer's yes. They are on record for the owner, and never on a bill."""

from decimal import Decimal

from sqlalchemy import Connection

from ..basics.bill import GivenAway
from ..basics.currency import minor_units
from ..basics.money import Money
from ..basics.problem import refused
from ..storage.after_quote import add_given_away, given_away
from ..storage.jobs import job as stored_job
from ..storage.quotes import newest_quote
from .desk import Desk

MOST_DIGITS = 9
"""Digits before the point of what an extra may cost: more is a slip of the hand."""


def gave_away(
    desk: Desk, number: str, said: tuple[str, str], cost: Decimal, price: Decimal | None = None
) -> tuple[GivenAway, ...]:
    """Keep that an extra was given away on a job, in the currency of its quote; everything given away on it.

    `said`: what was fitted, and why without asking. `price`: what it would have been charged at before tax, if known.
    It can be recorded before the bill and after it. Refuses a job without a quote, a cost or price not above zero, what
    is recorded already, and words left blank.
    """
    what, words = (" ".join(text.split()) for text in said)
    with desk.writing("gave an extra away") as pen:
        stored_job(pen.connection, number)
        quote = newest_quote(pen.connection, number)
        if quote is None:
            raise refused("no-quote", job=number)
        for missing, text in (("what it is", what), ("why", words)):
            if not text:
                raise refused("given-away-words", job=number, what=missing)
        _check_new(pen.connection, number, what)
        one = GivenAway(
            job=number,
            what=what,
            cost=_amount(number, "cost", cost, quote.quote.currency),
            price=None if price is None else _amount(number, "price", price, quote.quote.currency),
            words=words,
            at=desk.at,
            who=desk.who,
        )
        add_given_away(pen.connection, one)
        pen.note(number, f"{what}, cost {one.cost}{_never_charged(one)}: fitted without a yes, never billed; {words}")
        return tuple(given_away(pen.connection, number))


def given_away_on(desk: Desk, number: str) -> tuple[GivenAway, ...]:
    """Everything given away on a job, in the order recorded. Refuses an unknown job."""
    with desk.store.reading() as connection:
        stored_job(connection, number)
        return tuple(given_away(connection, number))


def _check_new(connection: Connection, number: str, what: str) -> None:
    for one in given_away(connection, number):
        if one.what.casefold() == what.casefold():
            raise refused("given-away-already", job=number, found=one.what, cost=one.cost)


def _amount(number: str, what: str, amount: Decimal, currency: str) -> Money:
    asked, places = Money(amount=amount, currency=currency), minor_units(currency)
    if not amount.is_finite() or amount <= 0 or amount.adjusted() >= MOST_DIGITS or asked.rounded() != asked:
        raise refused("given-away-amount", job=number, what=what, found=amount, currency=currency, places=places)
    return asked.rounded()


def _never_charged(one: GivenAway) -> str:
    return "" if one.price is None else f", price never charged {one.price}"
