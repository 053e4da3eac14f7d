"""Commands of alarms: what is no longer as approved, and the way out a person takes."""

from __future__ import annotations

from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk, one_word
from .output import show

WAYS = ("hold", "ask", "switch")


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("alarms")(alarms)
    app.command("decide")(decide)


def alarms(
    job: Annotated[str | None, typer.Argument(help="One job. Left out: all that are not billed.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show what is no longer as the customer approved it, and the three ways out: hold, ask, switch."""
    from ..actions.alarms import alarms as look
    from ..documents.alarms import alarms_text

    found = look(desk(database, at, ""), job)
    show(found, alarms_text(found), json)


def decide(
    job: Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")],
    label: Annotated[str, typer.Argument(help="Line of the quote: 1, 2 or A, B.")],
    way: Annotated[
        str, typer.Argument(help="hold: keep the price; ask: ask for the new price; switch: buy elsewhere.")
    ],
    words: Annotated[str, typer.Option("--words", help="Why, or what was said.")] = "",
    agreed_by: Annotated[str, typer.Option("--agreed-by", help="Who said yes to what the customer is asked.")] = "",
    how: Annotated[str, typer.Option("--how", help="How: in person, telephone, text, e-mail or customer's page.")] = "",
    contact: Annotated[str, typer.Option("--contact", help="Number called, or address.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take a way out of an alarm. It is kept with who decided; nothing is sent and no paper changes by it."""
    from ..actions.decide import Agreed
    from ..actions.decide import decide as take
    from ..documents.alarms import decided_text

    agreed = Agreed(who=agreed_by, how=how, contact=contact) if agreed_by or how or contact else None
    found = take(desk(database, at, who), job, label, one_word(way, "way", WAYS), words, agreed)  # type: ignore[arg-type]
    show(found, decided_text(found.decision, found.cancelled, found.next_steps), json)
