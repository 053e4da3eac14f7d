"""Commands of what jobs earned."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Xlsx, amount, desk, one_word, pairs
from .output import show, write

if TYPE_CHECKING:
    from ..actions.desk import Desk
    from ..actions.what_if import OtherBands

Html = Annotated[Path | None, typer.Option("--html", help="Also write it as a page to this file.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("margins")(margins)
    app.command("what-if")(what_if)


def margins(
    number: Annotated[str | None, typer.Argument(help="One job in every figure. Left out: all jobs added up.")] = None,
    by: Annotated[str, typer.Option("--by", help="Add up by job, supplier, category, month or line.")] = "",
    each: Annotated[bool, typer.Option("--each", help="Every job in every figure, lowest margin first.")] = False,
    xlsx: Xlsx = None,
    html: Html = None,
    bridge: Annotated[
        Path | None, typer.Option("--bridge", help="Also draw one job's way from the quoted margin to this file (SVG).")
    ] = None,
    chart: Annotated[
        Path | None, typer.Option("--chart", help="Also draw months and leaks to this file (SVG).")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Show what jobs earned: quoted, ordered, received; and where it leaked."""
    from ..basics.problem import refused

    opened = desk(database, at, "")
    for option, wanted in (("--chart", chart), ("--by", by)):
        if wanted and (number or each):
            raise refused("many-jobs-only", found=option, job=number or "each for itself")
    if bridge and not number:
        raise refused("one-job-only", found="--bridge")
    if number or each:
        _each(opened, number, (xlsx, html, bridge), json)
    else:
        _together(opened, by, (xlsx, html, chart), json)


def _each(opened: Desk, number: str | None, papers: tuple[Path | None, Path | None, Path | None], json: bool) -> None:
    from ..actions.margins import margins as work_out
    from ..documents.bridge import bridge_svg
    from ..documents.margins import margins_html, margins_text, margins_xlsx

    found = work_out(opened, number)
    xlsx, html, bridge = papers
    if bridge:
        write(bridge, bridge_svg(found[0]))
    if xlsx:
        write(xlsx, margins_xlsx(found))
    if html:
        write(html, margins_html(found))
    show(found, margins_text(found), json)


def _together(opened: Desk, by: str, papers: tuple[Path | None, Path | None, Path | None], json: bool) -> None:
    from typing import get_args

    from ..actions.margins import margins_by
    from ..basics.margin import By
    from ..documents.margin_charts import charts_svg
    from ..documents.margin_groups import groups_html, groups_text, groups_xlsx

    found = margins_by(opened, one_word(by or "job", "--by", get_args(By)))
    xlsx, html, chart = papers
    if chart:
        write(chart, charts_svg(found))
    if xlsx:
        write(xlsx, groups_xlsx(found))
    if html:
        write(html, groups_html(found))
    show(found, groups_text(found), json)


def what_if(
    file: Annotated[Path | None, typer.Argument(help="A file with markup_bands, written as shop.toml is.")] = None,
    band: Annotated[
        list[str] | None, typer.Option("--band", help="A band: from this cost the multiplier holds, as in 50=1.60.")
    ] = None,
    xlsx: Xlsx = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    json: Json = False,
) -> None:
    """Price approved lines of past jobs by other markup bands, and show what would have changed. Nothing is kept."""
    from ..actions.what_if import what_if as work_out
    from ..documents.what_if import what_if_text, what_if_xlsx

    found = work_out(desk(database, at, ""), _bands(file, band or []))
    if xlsx:
        write(xlsx, what_if_xlsx(found))
    show(found, what_if_text(found), json)


def _bands(file: Path | None, band: list[str]) -> OtherBands:
    from ..actions.what_if import OtherBands, bands_from
    from ..basics.settings import MarkupBand

    if file is not None:
        return bands_from(file)
    steps = {amount(start): amount(times) for start, times in pairs(band, "50=1.60").items()}
    made = sorted(steps.items(), key=_start)
    return OtherBands(markup_bands=tuple(MarkupBand(from_cost=start, multiplier=times) for start, times in made))


def _start(step: tuple[Decimal, Decimal]) -> Decimal:
    return step[0]
