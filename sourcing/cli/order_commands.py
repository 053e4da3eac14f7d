"""Commands from the approved line to the last cent: order, receive, margins."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, Xlsx, amount, count, desk, pairs
from .output import show, write

if TYPE_CHECKING:
    from ..actions.receive import Received
    from ..basics.order import PurchaseOrder


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("order")(order)
    app.command("orders")(orders)
    app.command("receive")(receive)
    app.command("margins")(margins)


def order(
    numbers: Annotated[list[str], typer.Argument(help="Jobs whose approved lines are ordered together.")],
    line: Annotated[list[str] | None, typer.Option("--line", help="Only this line of the job.")] = None,
    folder: Annotated[Path, typer.Option("--folder", help="Where the papers go.")] = Path("."),
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Place purchase orders, one for each supplier, for approved lines only."""
    from ..actions.orders import place_orders

    placed = place_orders(desk(database, at, who), numbers, line or [])
    lines = [_order_words(one, write_order(one, folder)) for one in placed.orders]
    lines += [f"Doubtful: {words}." for words in placed.warnings]
    lines += [f"Held back: {words}" for words in placed.held]
    show(placed, "\n".join(lines), json)


def orders(
    job: Annotated[str | None, typer.Argument(help="Only orders for this job.")] = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """List the purchase orders."""
    from ..actions.orders import all_orders

    found = all_orders(desk(database, None, ""), job)
    lines = [
        f"{one.number}  {one.placed_at:%Y-%m-%d}  {one.supplier_name}, {len(one.lines)} lines, goods {one.goods_total}"
        for one in found
    ]
    show(found, "\n".join(lines) or "No order has been placed.", json)


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


def write_order(one: PurchaseOrder, folder: Path) -> Path:
    """Write an order as page and CSV; the page's path."""
    from ..documents.order_paper import order_csv, order_html

    path = folder / f"{one.number}.html"
    write(path, order_html(one))
    write(path.with_suffix(".csv"), order_csv(one))
    return path


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


def _order_words(one: PurchaseOrder, path: Path) -> str:
    items = ", ".join(f"{line.ordered} x {line.supplier_number}" for line in one.lines)
    days = " to ".join(dict.fromkeys(map(str, one.expected or ())))
    here = f", here {days}" if days else ""
    return f"{one.number} to {one.supplier_name}: {items}; goods {one.goods_total}{here}. The paper is in {path}."
