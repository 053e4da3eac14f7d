"""Commands of the customer's word: answers to the lines of a quote."""

from __future__ import annotations

from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("answer")(answer)


def answer(
    number: JobNumber,
    by: Annotated[str, typer.Option("--by", help="Who gave the answer.")],
    how: Annotated[str, typer.Option("--how", help="in person, telephone, text, e-mail or customer's page.")],
    yes: Annotated[list[str] | None, typer.Option("--yes", help="Line approved: a label, or 'agreed'.")] = None,
    no: Annotated[list[str] | None, typer.Option("--no", help="Line declined: a label, or 'agreed'.")] = None,
    contact: Annotated[str, typer.Option("--contact", help="Number called, or address.")] = "",
    words: Annotated[str, typer.Option("--words", help="What the customer said, conditions included.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Record a customer's answers to the newest revision. A line not named stays as it was: silence is no yes."""
    from ..actions.answers import Spoken, record
    from ..documents.answers import answers_text

    spoken = Spoken(yes=tuple(yes or ()), no=tuple(no or ()), who=by, how=how, contact=contact, words=words)
    standing = record(desk(database, at, who), number, spoken)
    show(standing.answers, answers_text(standing.quote, standing.answers), json)
