"""The command that looks one number up: the whole family it belongs to, in words and as a drawing."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import DEFAULT_DATABASE, Database, Json, desk
from .output import show, write


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("numbers")(numbers)


def numbers(
    number: Annotated[str, typer.Argument(help="Any number the part is known under, or our own code.")],
    maker: Annotated[str, typer.Option("--maker", help="Only this maker's number. Left out: anybody's.")] = "",
    machine: Annotated[str, typer.Option("--machine", help="Model of the machine on the bench.")] = "",
    serial: Annotated[str, typer.Option("--serial", help="Its serial number.")] = "",
    svg: Annotated[Path | None, typer.Option("--svg", help="Also draw it to this file.")] = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """Show every number of a part, with the statements that lead to it, link by link."""
    from ..actions.equivalences import family_of
    from ..basics.equivalence import Bench
    from ..documents.family_drawing import family_svg
    from ..documents.family_text import family_text

    if serial and not machine:
        raise typer.BadParameter("say --machine too: a serial number means something only within one model")
    bench = Bench(machine=machine, serial=serial) if machine else None
    found = family_of(desk(database, None, ""), number, maker, bench)
    if svg:
        write(svg, family_svg(found))
    show(found, family_text(found), json)
