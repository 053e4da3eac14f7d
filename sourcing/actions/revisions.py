"""The revisions of a job's quote: listed, compared two by two in words, and every answer to them as a record."""

from collections.abc import Sequence

from sqlalchemy import Connection

from ..basics.approval import AnswerRecord, GivenOut, RevisionRow, Revisions
from ..basics.problem import refused
from ..basics.quote import FrozenQuote
from ..quoting.approvals import may_answer
from ..quoting.authorisation import agreed_on_alarms, occasions
from ..quoting.revisions import compare_quotes
from ..storage.after_quote import decisions, sendings, withdrawals
from ..storage.jobs import job as stored_job
from ..storage.quotes import approvals, quotes
from .answers import standing_of
from .desk import Desk


def revisions(
    desk: Desk, number: str, first: int | None = None, second: int | None = None, owner: bool = False
) -> Revisions:
    """All revisions, and how `second` (None: the newest) differs from `first` (None: the one before `second`).

    `owner`: the differences with supplier and cost, never for the customer. Refuses a revision that is not there.
    """
    with desk.store.reading() as connection:
        every = _every(connection, number)
        rows = _rows(connection, number, every)
    by_number = {frozen.quote.revision: frozen.quote for frozen, _ in every}
    second = max(by_number) if second is None else second
    first = max((one for one in by_number if one < second), default=None) if first is None else first
    for one in (first, second):
        if one is not None and one not in by_number:
            raise refused("no-such-revision", job=number, found=one)
    words = compare_quotes(by_number[first], by_number[second], owner) if first is not None else ()
    return Revisions(
        job=number,
        locale=by_number[second].locale,
        rows=rows,
        compared=(first, second) if first is not None else None,
        differences=words,
    )


def answer_record(desk: Desk, number: str) -> AnswerRecord:
    """Every answer of the job in order, those taken back and declined among them, and which lines wait."""
    with desk.store.reading() as connection:
        every = {frozen.quote.revision: frozen for frozen, _ in _every(connection, number)}
        standing = standing_of(connection, number)
        said = occasions(approvals(connection, number), withdrawals(connection, number), every)
        named_now = stored_job(connection, number).customer
        agreed = agreed_on_alarms(decisions(connection, number), every)
    quote = standing.quote
    waiting = [line for line in quote.lines if standing.answers.of(line.label) == "waiting"]
    machine = quote.machine
    return AnswerRecord(
        job=number,
        shop=quote.shop.name,
        customer=quote.customer.name,
        may_answer=may_answer(named_now),
        machine=", ".join(each for each in (machine.description, machine.maker, machine.model, machine.serial) if each),
        locale=quote.locale,
        occasions=said,
        waiting=tuple(f"{line.label} {line.title}" for line in waiting),
        agreed=agreed,
    )


def _every(connection: Connection, number: str) -> list[tuple[FrozenQuote, str]]:
    stored_job(connection, number)
    every = quotes(connection, number)
    if not every:
        raise refused("no-quote", job=number)
    return every


def _rows(connection: Connection, number: str, every: Sequence[tuple[FrozenQuote, str]]) -> tuple[RevisionRow, ...]:
    given = [
        GivenOut(job=one.job, revision=one.revision, at=one.at, who=one.who, how=one.how, sent_to=one.sent_to)
        for one in sendings(connection, number)
    ]
    return tuple(
        RevisionRow(
            revision=frozen.quote.revision,
            made_at=frozen.quote.made_at,
            made_by=made_by,
            sha256=frozen.sha256,
            valid_to=frozen.quote.valid_to,
            agreed=frozen.quote.agreed_total.total,
            everything=frozen.quote.everything_total.total,
            given=tuple(one for one in given if one.revision == frozen.quote.revision),
        )
        for frozen, made_by in every
    )
