"""Record a customer's answers to the newest revision, and tell where a quote stands."""

from collections.abc import Mapping, Sequence

from sqlalchemy import Connection

from ..basics.approval import Answers, Approval
from ..basics.problem import refused
from ..basics.quote import DocumentTotal, Quote
from ..basics.value import Value
from ..quoting.approvals import Given, answers, check_freight_line, how_given, record_answers, standing_answers
from ..quoting.totals import total_of
from ..storage.jobs import job as stored_job
from ..storage.orders import orders
from ..storage.quotes import add_approvals, approvals, newest_quote, quote
from .desk import Desk


class Spoken(Value, frozen=True, kw_only=True):
    """What the customer said: labels approved and declined, who said it and how, number or address, the words."""

    yes: tuple[str, ...] = ()
    no: tuple[str, ...] = ()
    who: str
    how: str
    contact: str = ""
    words: str = ""


class Standing(Value, frozen=True, kw_only=True):
    """A job's newest quote with its answers. `approval_of` gives the stored number of each line's holding answer."""

    quote: Quote
    answers: Answers
    approved: DocumentTotal
    approval_of: Mapping[str, int]

    def words(self) -> dict[str, str]:
        """Answers by label."""
        return dict(self.answers.by_label)


def record(desk: Desk, number: str, spoken: Spoken) -> Standing:
    """Keep the answers, all or none, and say where the quote stands. A line not named stays as it was."""
    with desk.writing("answer") as pen:
        newest = _newest(pen.connection, number)
        ordered = [line.label for order in orders(pen.connection, number) for line in order.lines if line.job == number]
        new = record_answers(newest, spoken.yes, spoken.no, _given(desk, spoken), ordered)
        add_approvals(pen.connection, new)
        standing = standing_of(pen.connection, number)
        check_freight_line(standing.quote, dict(standing.answers.by_label))
        said = ", ".join(f"{one.label} {one.answer}" for one in new)
        pen.note(number, f"{spoken.who} by {spoken.how}: {said}")
        return standing


def _given(desk: Desk, spoken: Spoken) -> Given:
    return Given(
        who=spoken.who,
        how=how_given(spoken.how),
        at=desk.at,
        taken_by=desk.who,
        contact=spoken.contact,
        words=spoken.words,
    )


def standing(desk: Desk, number: str) -> Standing:
    """Where the job's newest quote stands."""
    with desk.store.reading() as connection:
        return standing_of(connection, number)


def standing_of(connection: Connection, number: str) -> Standing:
    """Where the job's newest quote stands, on an open connection."""
    newest = _newest(connection, number)
    kept = approvals(connection, number)
    earlier = {one.revision: quote(connection, number, one.revision).quote for _, one in kept}
    holding = standing_answers(newest, [one for _, one in kept], earlier)
    approved = total_of(newest, [label for label, one in holding.items() if one.answer == "approved"])
    return Standing(
        quote=newest,
        answers=answers(newest, holding, approved),
        approved=approved,
        approval_of={label: _stored(one, kept) for label, one in holding.items()},
    )


def _stored(approval: Approval, kept: Sequence[tuple[int, Approval]]) -> int:
    return next(at for at, one in kept if one is approval)


def _newest(connection: Connection, number: str) -> Quote:
    stored_job(connection, number)
    last = newest_quote(connection, number)
    if last is None:
        raise refused("no-quote", job=number)
    return last.quote
