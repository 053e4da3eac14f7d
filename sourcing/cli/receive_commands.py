"""Commands of what comes in: receive goods."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, amount, count, desk, pairs
from .output import show

if TYPE_CHECKING:
    from ..actions.receive import Received


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("receive")(receive)


def receive(
    number: Annotated[str, typer.Argument(help="Number of the purchase order.")],
    paper: Annotated[str, typer.Option("--paper", help="Number of the supplier's delivery note or invoice.")],
    freight: Annotated[str, typer.Option("--freight", help="Freight charged, in the supplier's currency; 0 if none.")],
    line: Annotated[
        list[str] | None, typer.Option("--line", help="Pieces that came for a line, such as 1=2. Left out: all open.")
    ] = None,
    price: Annotated[
        list[str] | None, typer.Option("--price", help="Price charged where it differs, such as 3=12.10.")
    ] = None,
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Take goods in: what came, what was charged. Differences against the order are listed."""
    from ..actions.receive import Delivery
    from ..actions.receive import receive as take_in

    delivery = Delivery(
        paper=paper,
        freight=amount(freight),
        quantities={count(at): count(pieces) for at, pieces in pairs(line or []).items()},
        prices={count(at): amount(each) for at, each in pairs(price or []).items()},
    )
    done = take_in(desk(database, at, who), number, delivery)
    show(done, received_words(done), json)


def received_words(done: Received) -> str:
    """What came, what is open, what differs, in lines."""
    pieces = sum(line.quantity for line in done.receipt.lines)
    lines = [f"{done.order.number}: {pieces} pieces taken in on paper {done.receipt.paper}."]
    for one in done.differences:
        lines.append(f"Differs: {one.what}" + (f", {one.amount}" if one.amount else "") + ".")
    lines.append("The order is complete." if not done.open_lines else f"Lines still open: {_open(done)}.")
    return "\n".join(lines)


def _open(done: Received) -> str:
    return ", ".join(f"{at} ({pieces} pieces)" for at, pieces in done.open_lines.items())
