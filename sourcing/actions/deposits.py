"""Deposits: money taken before the work is billed, and given back. Each is kept for ever with who, how and when."""

from decimal import Decimal

from sqlalchemy import Connection

from ..basics.bill import DepositKept
from ..basics.currency import minor_units
from ..basics.money import Money, is_amount, zero
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..quoting.deposit import deposit_of
from ..quoting.deposit_held import deposit_held, deposit_open
from ..quoting.totals import total_of
from ..storage.after_quote import add_deposit, bill_of, deposits
from .answers import Standing, standing_of
from .desk import Desk, Pen


class Deposits(Value, frozen=True, kw_only=True):
    """The deposits of a job. `asked` is what the quote asks for the approved lines, zero where nothing; `open` what of
    it is not taken; `over` what is held above it, None where nothing or the job is billed; `held` what the shop holds
    of the customer's money; `most` what may be held at most. `same_today`: of how many of that day and amount the one
    taken just now is the last; 0 where none was."""

    job: str
    asked: Money
    open: Money | None
    held: Money
    most: Money
    kept: tuple[DepositKept, ...]
    over: Money | None = None
    same_today: int = 0


def deposits_of(desk: Desk, number: str) -> Deposits:
    """What is asked, taken and held for a job. Refuses a job without a quote."""
    with desk.store.reading() as connection:
        return _deposits(connection, standing_of(connection, number))


def take_deposit(desk: Desk, number: str, amount: Decimal, how: str, words: str = "") -> Deposits:
    """Keep money the customer paid ahead; `how` is the way it was paid.

    Refuses an amount that is not above zero, one that would hold more than all lines come to that the customer did not
    decline, and a job that is billed.
    """
    with desk.writing("take deposit") as pen:
        before = _deposits(pen.connection, standing_of(pen.connection, number))
        paid = _paid(number, amount, how, before.held.currency)
        if bill_of(pen.connection, number) is not None:
            raise refused("billed-already", job=number)
        if before.most < before.held + paid:
            raise refused("deposit-above-total", found=paid, job=number, most=before.most, held=before.held)
        found = _keep(pen, number, paid, how, words)
        same = [one for one in found.kept if (one.at.date(), one.amount) == (desk.at.date(), paid)]
        return changed(found, same_today=len(same))


def give_back(desk: Desk, number: str, amount: Decimal, how: str, words: str = "") -> Deposits:
    """Keep that money was given back. Refuses more than is held; after the bill, more than it left over."""
    with desk.writing("give back deposit") as pen:
        before = _deposits(pen.connection, standing_of(pen.connection, number))
        paid = _paid(number, amount, how, before.held.currency)
        if before.held < paid:
            raise refused("deposit-not-held", found=paid, job=number, held=before.held)
        return _keep(pen, number, -paid, how, words)


def deposit_warnings(connection: Connection, number: str) -> tuple[str, ...]:
    """For whoever orders: what is asked ahead and not taken, in a sentence; nothing where all is well."""
    found = _deposits(connection, standing_of(connection, number))
    if found.open is None:
        return ()
    taken = f"; {found.held} of it is taken" if found.held.amount else ""
    return (f"job {number}: a deposit of {found.asked} is asked{taken}, {found.open} is not taken yet",)


def _deposits(connection: Connection, standing: Standing) -> Deposits:
    number = standing.quote.job
    kept, bill = tuple(deposits(connection, number)), bill_of(connection, number)
    words = standing.words()
    asked = deposit_of(standing.quote, [label for label, word in words.items() if word == "approved"])
    held = deposit_held(kept, standing.quote.currency, bill.bill.total.total if bill else None)
    return Deposits(
        job=number,
        asked=asked,
        open=None if bill else deposit_open(asked, kept),
        held=held,
        over=held - asked if bill is None and asked < held else None,
        most=total_of(standing.quote, [label for label, word in words.items() if word != "declined"]).total,
        kept=kept,
    )


def _paid(number: str, amount: Decimal, how: str, currency: str) -> Money:
    paid = Money(amount=amount, currency=currency)
    if not is_amount(amount) or amount <= 0 or paid.rounded() != paid:
        places = minor_units(currency)
        raise refused("deposit-amount", found=amount, job=number, places=places, currency=currency)
    if not how.strip():
        raise refused("deposit-how", job=number)
    return paid.rounded()


def _keep(pen: Pen, number: str, amount: Money, how: str, words: str) -> Deposits:
    desk = pen.desk
    kept = DepositKept(job=number, amount=amount, how=how.strip(), at=desk.at, taken_by=desk.who, words=words)
    add_deposit(pen.connection, kept)
    deed = f"took {amount}" if zero(amount.currency) < amount else f"gave back {-amount}"
    pen.note(number, f"{deed}, {kept.how}{f': {words}' if words else ''}")
    return _deposits(pen.connection, standing_of(pen.connection, number))
