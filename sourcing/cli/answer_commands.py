"""Commands of the customer's word: a quote given out, answers to its lines, a yes taken back, revisions compared."""

from __future__ import annotations

from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]
By = Annotated[str, typer.Option("--by", help="Who gave the answer.")]
How = Annotated[str, typer.Option("--how", help="in person, telephone, text, e-mail or customer's page.")]
Contact = Annotated[str, typer.Option("--contact", help="Number called, or address.")]
Words = Annotated[str, typer.Option("--words", help="What the customer said.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("given")(given)
    app.command("answer")(answer)
    app.command("take-back")(take_back)
    app.command("answers")(answers)
    app.command("revisions")(revisions)


def given(
    number: JobNumber,
    how: Annotated[str, typer.Option("--how", help="in person, telephone, text, e-mail, customer's page or post.")],
    to: Annotated[str, typer.Option("--to", help="Number or address it went to.")] = "",
    revision: Annotated[int | None, typer.Option("--revision", help="Which one. Left out: the newest.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Note that you gave a quote to the customer. The program itself sends nothing."""
    from ..actions.sendings import given as give
    from ..documents.revisions import given_text

    out = give(desk(database, at, who), number, revision, how, to)
    show(out, given_text(out), json)


def answer(
    number: JobNumber,
    by: By,
    how: How,
    yes: Annotated[list[str] | None, typer.Option("--yes", help="Line approved: a label, or 'agreed'.")] = None,
    no: Annotated[list[str] | None, typer.Option("--no", help="Line declined: a label, or 'agreed'.")] = None,
    contact: Contact = "",
    words: Words = "",
    condition: Annotated[str, typer.Option("--condition", help="On which condition the yes is given.")] = "",
    revision: Annotated[int | None, typer.Option("--revision", help="Revision answered. Left out: the newest.")] = None,
    instead: Annotated[bool, typer.Option("--instead", help="It takes the place of a contrary answer.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record a customer's answers. A line not named stays as it was: silence is no yes."""
    from ..actions.answers import Spoken, record
    from ..documents.answers import answers_text

    spoken = Spoken(
        yes=tuple(yes or ()),
        no=tuple(no or ()),
        who=by,
        how=how,
        contact=contact,
        words=words,
        revision=revision,
        instead=instead,
        conditions=condition,
    )
    standing = record(desk(database, at, who), number, spoken)
    show(standing.answers, answers_text(standing.quote, standing.answers), json)


def take_back(
    number: JobNumber,
    line: Annotated[list[str], typer.Option("--line", help="Line whose yes is taken back: a label, or 'agreed'.")],
    by: By,
    how: How,
    contact: Contact = "",
    words: Words = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """The customer takes a yes back, as long as nothing is ordered on it. The line waits again."""
    from ..actions.answers import TakenBack, withdraw
    from ..documents.answers import answers_text

    taken = TakenBack(labels=tuple(line), who=by, how=how, contact=contact, words=words)
    standing = withdraw(desk(database, at, who), number, taken)
    show(standing.answers, answers_text(standing.quote, standing.answers), json)


def answers(
    number: JobNumber, database: Database = DEFAULT_DATABASE, at: At = None, who: Who = "", json: Json = False
) -> None:
    """Show every answer of a job in order, those declined and taken back among them, with the customer's words."""
    from ..actions.revisions import answer_record
    from ..documents.authorisation import record_text

    record = answer_record(desk(database, at, who), number)
    show(record, record_text(record), json)


def revisions(
    number: JobNumber,
    first: Annotated[
        int | None, typer.Option("--from", help="Compare from this one. Left out: the one before.")
    ] = None,
    second: Annotated[int | None, typer.Option("--to", help="Compare with this one. Left out: the newest.")] = None,
    owner: Annotated[bool, typer.Option("--owner", help="With supplier and cost: not for the customer.")] = False,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """List the revisions of a job's quote, and say in words how two of them differ."""
    from ..actions.revisions import revisions as all_of
    from ..documents.revisions import revisions_text

    found = all_of(desk(database, at, who), number, first, second, owner)
    show(found, revisions_text(found), json)
