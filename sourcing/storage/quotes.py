"""Frozen quotes and the customer's answers: added and read. Nothing here changes one once it is kept."""

import hashlib
from collections.abc import Sequence
from decimal import Decimal
from typing import Any

from sqlalchemy import Connection, Row, insert, select

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.problem import refused
from ..basics.quote import FrozenQuote, Quote
from .held_answers import replace_earlier
from .job_tables import APPROVALS, QUOTE_REVISIONS
from .rows import add_row, as_text, as_value

PLAIN_FIELDS = ("job", "revision", "label", "answer", "who", "how", "at", "taken_by", "contact", "words")


def add_quote(connection: Connection, frozen: FrozenQuote, made_by: str) -> None:
    """Keep a revision for ever. Refuses a revision that is there already.

    Raises ValueError where the hash is not the paper's: that would be a slip of the program.
    """
    quote_made = frozen.quote
    if _sha256(frozen.paper) != frozen.sha256:
        raise ValueError(f"the hash of job {quote_made.job} revision {quote_made.revision} is not its paper's")
    if _row(connection, quote_made.job, quote_made.revision) is not None:
        raise refused("revision-taken", job=quote_made.job, revision=quote_made.revision)
    row = {
        "job": quote_made.job,
        "revision": quote_made.revision,
        "body": as_text(quote_made),
        "paper": frozen.paper,
        "sha256": frozen.sha256,
        "made_at": quote_made.made_at,
        "made_by": made_by,
    }
    connection.execute(insert(QUOTE_REVISIONS).values(row))


def newest_quote(connection: Connection, job: str) -> FrozenQuote | None:
    """The job's last revision, None before the first. Refuses a paper that is no longer what was sent."""
    table = QUOTE_REVISIONS
    query = select(table).where(table.c.job == job).order_by(table.c.revision.desc()).limit(1)
    row = connection.execute(query).one_or_none()
    return None if row is None else _frozen(row)


def quote(connection: Connection, job: str, revision: int) -> FrozenQuote:
    """One revision of a job. Refuses where there is none, and a paper that is no longer what was sent."""
    row = _row(connection, job, revision)
    if row is None:
        raise refused("no-such-revision", job=job, found=revision)
    return _frozen(row)


def quotes(connection: Connection, job: str) -> list[tuple[FrozenQuote, str]]:
    """Every revision of a job with who made it, oldest first. Refuses a paper that is no longer what was sent."""
    table = QUOTE_REVISIONS
    query = select(table).where(table.c.job == job).order_by(table.c.revision)
    return [(_frozen(row), row.made_by) for row in connection.execute(query)]


def add_approvals(connection: Connection, new: Sequence[Approval]) -> list[int]:
    """Keep answers after those already there, and give each its number. An earlier answer stays as history.

    An earlier answer to the same line of the same revision, on which nothing was ordered, holds no more.
    """
    rows = [
        {
            "amount": one.amount.amount,
            "currency": one.amount.currency,
            "extra": one.extra.amount if one.extra else None,
            "total_after": one.total_after.amount if one.total_after else None,
            "holds": one.holds,
            **{name: getattr(one, name) for name in PLAIN_FIELDS},
        }
        for one in new
    ]
    for one in new:
        replace_earlier(connection, one)
    return [add_row(connection, APPROVALS, row) for row in rows]


def approvals(connection: Connection, job: str) -> list[tuple[int, Approval]]:
    """Every answer of a job with its number, in the order recorded; of one line's answers the last counts."""
    query = select(APPROVALS).where(APPROVALS.c.job == job).order_by(APPROVALS.c.approval)
    return [(row.approval, _approval(row)) for row in connection.execute(query)]


def _row(connection: Connection, job: str, revision: int) -> Row[Any] | None:
    table = QUOTE_REVISIONS
    query = select(table).where(table.c.job == job, table.c.revision == revision)
    return connection.execute(query).one_or_none()


def _frozen(row: Row[Any]) -> FrozenQuote:
    if _sha256(row.paper) != row.sha256:
        raise refused("quote-damaged", job=row.job, revision=row.revision)
    return FrozenQuote(quote=as_value(row.body, Quote), paper=row.paper, sha256=row.sha256)


def _approval(row: Row[Any]) -> Approval:
    def money(amount: Decimal | None) -> Money | None:
        return None if amount is None else Money(amount=amount, currency=row.currency)

    return Approval(
        amount=Money(amount=row.amount, currency=row.currency),
        extra=money(row.extra),
        total_after=money(row.total_after),
        holds=row.holds,
        **{name: row._mapping[name] for name in PLAIN_FIELDS},
    )


def _sha256(paper: str) -> str:
    return hashlib.sha256(paper.encode()).hexdigest()
