"""Commands of what happens to an order afterwards: confirmed, changed, cancelled."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, amount, count, desk, pairs
from .order_commands import OrderNumber, Pdf, pdf_of
from .output import check_pdf, show, write, write_pdf

if TYPE_CHECKING:
    from ..actions.order_changes import Altered
    from ..basics.order import LineEvent

Folder = Annotated[Path, typer.Option("--folder", help="Where the paper goes.")]
Words = Annotated[str, typer.Option("--words", help="Why; it stands on the paper for the supplier.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("confirm")(confirm)
    app.command("change-order")(change_order)
    app.command("cancel-order")(cancel_order)


def confirm(
    number: OrderNumber,
    price: Annotated[list[str] | None, typer.Option("--price", help="Price of a line, such as 1=139.59.")] = None,
    part_number: Annotated[
        list[str] | None, typer.Option("--number", help="Number he will send for a line, such as 1=CV-B880K.")
    ] = None,
    here: Annotated[
        list[str] | None,
        typer.Option("--here", help="Days at the shop, such as 1=2026-03-18 or 1=2026-03-16:2026-03-18."),
    ] = None,
    said_by: Annotated[str, typer.Option("--said-by", help="Who at the supplier's said it.")] = "",
    words: Annotated[str, typer.Option("--words", help="What was said.")] = "",
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Keep what the supplier confirmed. A line not named is confirmed as it stands; what differs is told."""
    from ..actions.order_changes import Confirmation
    from ..actions.order_changes import confirm as keep
    from ..documents.order_text import confirmed_text

    lines = _said(price or [], part_number or [], here or [])
    done = keep(desk(database, at, who), number, Confirmation(lines=lines, said_by=said_by, words=words))
    show(done, confirmed_text(done.now, done.differs, done.alarms), json)


def change_order(
    number: OrderNumber,
    line: Annotated[list[str], typer.Option("--line", help="Pieces wanted of a line from now on, such as 1=2.")],
    words: Words = "",
    folder: Folder = Path("."),
    pdf: Pdf = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Change the pieces of lines: never above what the customer approved, nor below what has come."""
    from ..actions.order_changes import change_order as change

    check_pdf(pdf)
    pieces = {count(at_line): count(some) for at_line, some in pairs(line).items()}
    _show(change(desk(database, at, who), number, pieces, words), folder, pdf, json)


def cancel_order(
    number: OrderNumber,
    line: Annotated[list[str] | None, typer.Option("--line", help="Only this line. Left out: the whole order.")] = None,
    words: Words = "",
    folder: Folder = Path("."),
    pdf: Pdf = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Cancel what has not come of an order, or of lines of it. The customer's yes is free again for what never came."""
    from ..actions.order_changes import cancel

    check_pdf(pdf)
    lines = [count(one) for one in line or []]
    _show(cancel(desk(database, at, who), number, lines, words), folder, pdf, json)


def _show(done: Altered, folder: Path, pdf: Path | None, json: bool) -> None:
    from ..documents.order_paper import change_html, change_title
    from ..documents.order_text import altered_text

    title, number = change_title(done.now, done.event, done.change), done.now.order.number
    page = change_html(done.now, done.event, done.change)
    path = folder / f"{number}-change-{done.change}.html"
    write(path, page)
    if pdf:
        write_pdf(pdf, lambda: pdf_of(done.now.order, page, f"{title} {number}"), f"{title} {number} is kept", path)
    show(done, altered_text(title, done.now, done.notes, str(path)), json)


def _said(prices: list[str], numbers: list[str], days: list[str]) -> tuple[LineEvent, ...]:
    """What was said, gathered line by line."""
    from ..basics.order import LineEvent
    from ..basics.value import changed

    lines: dict[int, LineEvent] = {}

    def said(at_line: str, **fields: object) -> None:
        line = count(at_line)
        lines[line] = changed(lines.get(line, LineEvent(line=line)), **fields)

    for at_line, each in pairs(prices).items():
        said(at_line, unit_price=amount(each))
    for at_line, words in pairs(numbers).items():
        said(at_line, number=words)
    for at_line, words in pairs(days).items():
        first, sign, last = words.partition(":")
        said(at_line, earliest=_day(first), latest=_day(last if sign else first))
    return tuple(lines[line] for line in sorted(lines))


def _day(text: str) -> date:
    from ..basics.problem import refused

    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise refused("day-not-read", found=text) from None
