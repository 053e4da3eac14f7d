"""What must be known beside an alarm's ways out: what binds the shop, the deposit, rules that may apply, what was
decided before."""

from collections.abc import Iterator
from datetime import date

from ..basics.alarm import Decision, Differs
from ..basics.money import Money
from ..basics.quote import Quote
from ..basics.value import Value

THIRTY_DAYS = (
    "if it was paid ahead by telephone or over the internet, a federal rule on goods that can't be sent within 30 days "
    "may apply (16 CFR part 435): ask, do not decide by yourself"
)
"""The rule's number is from memory; whether it applies is not for a program to say."""


class Beside(Value, frozen=True, kw_only=True):
    """What an alarm is seen with: the total approved, the day of asking, the deposit held, every day said so far, the
    last decision of the line."""

    approved_total: Money
    today: date
    deposit: Money
    days: tuple[date, ...] = ()
    decision: Decision | None = None


def alarm_notes(quote: Quote, differs: tuple[Differs, ...], beside: Beside) -> tuple[str, ...]:
    """The notes, each a sentence without its full stop."""
    kinds = {one.what for one in differs}
    notes = [_validity(quote, beside)]
    if "date" in kinds and len(beside.days) > 1:
        notes.append(_moved(beside.days))
    if beside.deposit.amount > 0:
        notes += _deposit(quote, beside.deposit, "date" in kinds)
    if beside.decision is not None:
        notes.append(_decided(beside.decision))
    return tuple(notes)


def _validity(quote: Quote, beside: Beside) -> str:
    if beside.today <= quote.valid_to:
        return (
            f"the quote is valid to {quote.valid_to}: as printed it binds the shop to {beside.approved_total} unless "
            "the customer agrees otherwise"
        )
    return (
        f"the quote was valid to {quote.valid_to} and the yes was given in time; whether {beside.approved_total} still "
        "binds the shop is a question for the rules of the place"
    )


def _moved(days: tuple[date, ...]) -> str:
    times = {1: "once", 2: "twice"}.get(len(days) - 1, f"{len(days) - 1} times")
    return f"the day has moved {times} already: {', then '.join(map(str, days))}"


def _deposit(quote: Quote, held: Money, is_late: bool) -> Iterator[str]:
    yield f"{held} is held as deposit: if {quote.customer.name} cancels, all of it goes back, special order or not"
    if is_late and quote.locale.upper().endswith("US"):
        yield THIRTY_DAYS


def _decided(one: Decision) -> str:
    yes = f"; {one.agreed_by} said yes ({one.agreed_how})" if one.agreed_by else ""
    words = f": {one.words}" if one.words else ""
    return f"decided before: {one.way}, by {one.who} on {one.at:%Y-%m-%d %H:%M}{words}{yes}"
