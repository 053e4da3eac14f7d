"""Keep that a person gave a quote to the customer. The program itself sends nothing to anyone."""

from typing import get_args

from ..basics.approval import GivenBy, GivenOut
from ..basics.problem import refused
from ..basics.quote import Quote
from ..basics.value import changed
from ..quoting.approvals import one_way
from ..storage.after_quote import Sending, add_sending
from ..storage.jobs import job as stored_job
from ..storage.quotes import newest_quote, quote
from .desk import Desk


def given(desk: Desk, number: str, revision: int | None, how: str, to: str) -> GivenOut:
    """Keep that this revision (None: the newest) was handed over, read out or sent, how, and to which number or
    address (blank: not noted). Refuses a revision that is not there, another word for how, and a moment before it was
    made. The notes say what to look out for.
    """
    with desk.writing("give quote") as pen:
        stored_job(pen.connection, number)
        newest = newest_quote(pen.connection, number)
        if newest is None:
            raise refused("no-quote", job=number)
        paper = newest.quote if revision is None else quote(pen.connection, number, revision).quote
        if desk.at < paper.made_at:
            raise refused("given-before-made", job=number, revision=paper.revision, made=paper.made_at, at=desk.at)
        out = GivenOut(job=number, revision=paper.revision, at=desk.at, who=desk.who, how=_way(how), sent_to=to)
        add_sending(
            pen.connection,
            Sending(job=out.job, revision=out.revision, at=out.at, who=out.who, how=out.how, sent_to=out.sent_to),
        )
        pen.note(number, f"gave revision {out.revision} to the customer: {out.how}{' ' if to else ''}{to}")
        return changed(out, notes=_notes(paper, newest.quote, desk))


def _way(how: str) -> GivenBy:
    for known in get_args(GivenBy):
        if one_way(how) == known:
            return known  # type: ignore[no-any-return]
    raise refused("unknown-word", found=how, column="how", known=", ".join(get_args(GivenBy)))


def _notes(paper: Quote, newest: Quote, desk: Desk) -> tuple[str, ...]:
    notes = []
    if paper.revision != newest.revision:
        notes.append(f"revision {newest.revision} is newer: only what both have in common can be approved on this one")
    if desk.at.date() > paper.valid_to:
        notes.append(f"it was valid to {paper.valid_to}: make a new revision before the customer answers")
    return tuple(notes)
