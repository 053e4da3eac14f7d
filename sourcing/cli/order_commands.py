"""Commands of purchase orders: place them, list them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show, write

if TYPE_CHECKING:
    from ..basics.order import PurchaseOrder


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("order")(order)
    app.command("orders")(orders)


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


def write_order(one: PurchaseOrder, folder: Path) -> Path:
    """Write an order as page and CSV; the page's path."""
    from ..documents.order_paper import order_csv, order_html

    path = folder / f"{one.number}.html"
    write(path, order_html(one))
    write(path.with_suffix(".csv"), order_csv(one))
    return path


def _order_words(one: PurchaseOrder, path: Path) -> str:
    items = ", ".join(f"{line.ordered} x {line.supplier_number}" for line in one.lines)
    days = " to ".join(dict.fromkeys(map(str, one.expected or ())))
    here = f", here {days}" if days else ""
    return f"{one.number} to {one.supplier_name}: {items}; goods {one.goods_total}{here}. The paper is in {path}."
