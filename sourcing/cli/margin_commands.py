"""Commands of what jobs earned."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Xlsx, desk
from .output import show, write


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("margins")(margins)


def margins(
    number: Annotated[str | None, typer.Argument(help="One job. Left out: all, lowest margin first.")] = None,
    xlsx: Xlsx = None,
    html: Annotated[Path | None, typer.Option("--html", help="Also write it as a page to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show what jobs earned: quoted, ordered, received; and where it leaked."""
    from ..actions.margins import margins as work_out
    from ..documents.margins import margins_html, margins_text, margins_xlsx

    found = work_out(desk(database, at, ""), number)
    if xlsx:
        write(xlsx, margins_xlsx(found))
    if html:
        write(html, margins_html(found))
    show(found, margins_text(found), json)
