"""Commands of the quote: write it, print a revision again."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Day, Json, Who, desk
from .output import show, write

JobNumber = Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("quote")(quote)


def quote(
    number: JobNumber,
    need_by: Day = None,
    revision: Annotated[int | None, typer.Option("--revision", help="Print this revision again instead.")] = None,
    html: Annotated[Path | None, typer.Option("--html", help="Write the paper to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Write the customer's quote as a new revision, or print an old one again to the letter."""
    from ..actions.quotes import reprint, write_quote
    from ..documents.quote_paper import quote_html, quote_text

    at_desk = desk(database, at, who)
    if revision is None:
        written = write_quote(at_desk, number, quote_html, need_by.date() if need_by else None)
        frozen, news = written.frozen, "" if written.is_new else "Nothing has changed; the last revision stands.\n"
    else:
        frozen, news = reprint(at_desk, number, revision), "Printed again as it was made.\n"
    path = html or Path(f"quote-{number}-{frozen.quote.revision}.html")
    write(path, frozen.paper)
    warnings = "".join(f"For the owner: {words}\n" for words in frozen.quote.warnings)
    show(frozen, f"{news}{quote_text(frozen.quote)}\n{warnings}The paper is in {path}.", json)
