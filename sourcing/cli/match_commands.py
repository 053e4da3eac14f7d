"""The command that matches the rows of one file against the parts of another."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from .options import Json, pairs
from .output import progress, show_bytes, write


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("match")(match)


def match(
    sheet: Annotated[Path, typer.Argument(help="File with the rows: number, maker, description, price.")],
    against: Annotated[Path, typer.Option("--against", help="File with the parts: the same columns.")],
    top: Annotated[int, typer.Option("--top", min=1, help="At most so many candidates for a row.")] = 1,
    column: Annotated[
        list[str] | None,
        typer.Option("--column", help='What a column holds, in either file: "Artikel=number", "Text=not used".'),
    ] = None,
    judged: Annotated[
        Path | None,
        typer.Option("--judged", help="Your answers: columns row, part_row, answer (yes or no), to learn from."),
    ] = None,
    xlsx: Annotated[
        Path | None, typer.Option("--xlsx", help="Also write it as a workbook with a column to answer in.")
    ] = None,
    json: Json = False,
) -> None:
    """Match the rows of a file against the parts of another: automatic, candidate or none, with score and reasons."""
    from ..actions.match_files import match_files
    from ..basics.value import to_json
    from ..documents.match_lines import match_csv, match_xlsx

    with progress() as tell:
        tell("matching")
        said = pairs(column or [], '"Artikel=number"')
        lines = match_files(sheet, against, said, top, judged, lambda words: typer.echo(words, err=True))
    if xlsx:
        write(xlsx, match_xlsx(lines))
    show_bytes([to_json(lines) + b"\n" if json else match_csv(lines).encode()])
