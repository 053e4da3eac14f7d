"""Commands of promised days: keep one, and see what is open, oldest first."""

from __future__ import annotations

from datetime import date, datetime
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, Xlsx, desk
from .output import show, write

if TYPE_CHECKING:
    from ..basics.promise import PromiseKind

DAY = ["%Y-%m-%d"]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("promise")(promise)
    app.command("promises")(promises)


def promise(
    job: Annotated[str, typer.Argument(help="Number of the job, such as 2026-0001.")],
    said_by: Annotated[str, typer.Option("--said-by", help="Who said it: the supplier, the shop or the customer.")],
    parts_here: Annotated[datetime | None, typer.Option("--parts-here", formats=DAY, help="Parts at the shop.")] = None,
    ready: Annotated[datetime | None, typer.Option("--machine-ready", formats=DAY, help="Machine ready.")] = None,
    core: Annotated[datetime | None, typer.Option("--core-back", formats=DAY, help="Old part at the supplier.")] = None,
    goods: Annotated[datetime | None, typer.Option("--goods-back", formats=DAY, help="Goods at the supplier.")] = None,
    answer: Annotated[datetime | None, typer.Option("--answer", formats=DAY, help="Somebody answers.")] = None,
    to: Annotated[datetime | None, typer.Option("--to", formats=DAY, help="Last day, where it is a range.")] = None,
    words: Annotated[str, typer.Option("--words", help="What was said.")] = "",
    order: Annotated[str, typer.Option("--order", help="Only goods of this order.")] = "",
    line: Annotated[int | None, typer.Option("--line", help="Only this line of the order.")] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Keep a promised day, with who said it. Earlier days stay beside it; the last word holds."""
    from ..actions.promises import Said
    from ..actions.promises import promise as keep
    from ..documents.promises import promise_text

    days = {
        "parts here": parts_here,
        "machine ready": ready,
        "core back": core,
        "goods back": goods,
        "answer": answer,
    }
    kind, day = _one_day(days)
    last = to.date() if to else None
    said = Said(kind=kind, earliest=day, latest=last, said_by=said_by, words=words, order=order, line=line)
    kept = keep(desk(database, at, who), job, said)
    show(kept, promise_text(kept), json)


def promises(
    job: Annotated[str | None, typer.Option("--job", help="Only what is open for this job.")] = None,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show what is promised and waited for: parts, machines, cores, returns, deposits, quotes, sheets; oldest first."""
    from ..actions.promises import open_promises
    from ..documents.promises import promises_text, promises_xlsx

    found = open_promises(desk(database, at, ""), job)
    if xlsx:
        write(xlsx, promises_xlsx(found))
    show(found, promises_text(found), json)


def _one_day(days: dict[str, datetime | None]) -> tuple[PromiseKind, date]:
    """The one thing that was promised. Anything but exactly one is a slip of usage."""
    given = [(kind, day) for kind, day in days.items() if day is not None]
    if len(given) != 1:
        names = ", ".join(f"--{name}" for name in ("parts-here", "machine-ready", "core-back", "goods-back", "answer"))
        raise typer.BadParameter(f"say one day, with one of {names}")
    kind, day = given[0]
    return kind, day.date()  # type: ignore[return-value]
