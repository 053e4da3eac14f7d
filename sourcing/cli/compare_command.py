"""The command that compares the offers of one part."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .basket_files import BasketFile, comparison_of
from .options import DEFAULT_DATABASE, At, Database, Day, Json, Xlsx, amount, desk
from .output import show, write

if TYPE_CHECKING:
    from ..basics.choice import Comparison

InTime = Annotated[
    bool, typer.Option("--only-in-time", help="Set aside what is not surely here by --need-by. Left out: only told.")
]
Trusted = Annotated[
    bool, typer.Option("--trusted", help="Only matches on the shop's own fitting or the maker's documents.")
]
InStock = Annotated[bool, typer.Option("--in-stock", help="Only what the sheet says is there in the quantity.")]
NoSurplus = Annotated[bool, typer.Option("--no-surplus", help="Only what can be bought without pieces to spare.")]
PerDay = Annotated[
    str, typer.Option("--value-per-day", help="What a day of waiting is worth, such as 5.00; it then counts as cost.")
]
Scatter = Annotated[
    Path | None, typer.Option("--scatter", help="Also draw cost at the door against the last day to this file (SVG).")
]


def register(app: typer.Typer) -> None:
    """Add this command."""
    app.command("compare")(compare)


def compare(
    number: Annotated[str, typer.Argument(help="Any number the part is sold under, or our own code.")] = "",
    quantity: Annotated[
        int | None, typer.Option("--quantity", help="Pieces needed. Left out: 1, or what the job's line needs.")
    ] = None,
    need_by: Day = None,
    only_in_time: InTime = False,
    trusted: Trusted = False,
    in_stock: InStock = False,
    no_surplus: NoSurplus = False,
    value_per_day: PerDay = "",
    job: Annotated[str, typer.Option("--job", help="Number of a job whose line it is for; with --line.")] = "",
    line: Annotated[str, typer.Option("--line", help="Label of that line: 1, 2 or A, B.")] = "",
    file: BasketFile = None,
    need: Annotated[str, typer.Option("--need", help="Label of the need to compare; with --file.")] = "",
    xlsx: Xlsx = None,
    scatter: Scatter = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Compare every offer of one part: at the door, by day, with the reason for each place."""
    from ..actions.compare import ForLine
    from ..actions.compare import compare as compare_part
    from ..basics.choice import RankWishes

    if bool(job) != bool(line):
        raise typer.BadParameter("--job and --line go together")
    if need and not file:
        raise typer.BadParameter("--need goes with --file")
    if file and number:
        raise typer.BadParameter(f"the number {number} and a need of --file are two comparisons: name one of them")
    if not (file or number):
        raise typer.BadParameter("name a number, or a basket with --file and --need")
    wishes = RankWishes(
        need_by=need_by.date() if need_by else None,
        only_in_time=only_in_time,
        trusted_only=trusted,
        in_stock_only=in_stock,
        without_surplus=no_surplus,
        value_per_day=amount(value_per_day) if value_per_day else None,
    )
    if file:
        show_comparison(comparison_of(file, need, quantity, at, wishes), xlsx, scatter, json)
        return
    wanted = ForLine(job=job, label=line) if job else None
    show_comparison(compare_part(desk(database, at, ""), number, quantity, wishes, wanted), xlsx, scatter, json)


def show_comparison(found: Comparison, xlsx: Path | None, scatter: Path | None, json: bool) -> None:
    """Write the files asked for, and print the comparison."""
    from ..documents.comparison import comparison_text, comparison_xlsx
    from ..documents.scatter import scatter_svg

    if xlsx:
        write(xlsx, comparison_xlsx(found))
    if scatter:
        write(scatter, scatter_svg(found))
    show(found, comparison_text(found), json)
