"""Commands of purchase orders: look at what would be ordered, place orders, list them, print their papers."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from .options import DEFAULT_DATABASE, At, Database, Json, Who, desk
from .output import show, write

if TYPE_CHECKING:
    from ..basics.order import PurchaseOrder

OrderNumber = Annotated[str, typer.Argument(help="Number of the purchase order, such as PO-2026-0001.")]
Pdf = Annotated[Path | None, typer.Option("--pdf", help="Write it as PDF to this file.")]


def register(app: typer.Typer) -> None:
    """Add these commands."""
    app.command("order")(order)
    app.command("orders")(orders)
    app.command("order-paper")(order_paper)


def order(
    numbers: Annotated[list[str], typer.Argument(help="Jobs whose approved lines are ordered together.")],
    line: Annotated[list[str] | None, typer.Option("--line", help="Only this line of the job.")] = None,
    look: Annotated[bool, typer.Option("--look", help="Only show what would be ordered; keep nothing.")] = False,
    note: Annotated[str, typer.Option("--note", help="A word to the supplier, printed on the order.")] = "",
    folder: Annotated[Path, typer.Option("--folder", help="Where the papers go.")] = Path("."),
    database: Database = DEFAULT_DATABASE,
    at: At = None,
    who: Who = "",
    json: Json = False,
) -> None:
    """Place purchase orders, one for each supplier, for approved lines only."""
    from ..actions.orders import look_at_orders, place_orders
    from ..documents.order_text import looked_text, placed_text

    here = desk(database, at, who)
    if look:
        seen = look_at_orders(here, numbers, line or [])
        show(seen, looked_text(seen.orders, seen.held, seen.warnings, seen.otherwise), json)
        return
    placed = place_orders(here, numbers, line or [], note)
    papers = [(one, str(write_order(one, folder))) for one in placed.orders]
    show(placed, placed_text(papers, placed.held, placed.warnings), json)


def orders(
    which: Annotated[str | None, typer.Argument(help="Only this order, or orders for this job.")] = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """List the purchase orders with what is still to come; one order with every line and what was said of it."""
    from ..actions.orders import list_orders, listed_order
    from ..documents.order_text import order_now_text, orders_text

    here = desk(database, None, "")
    if which is not None and which.upper().startswith("PO-"):
        one = listed_order(here, which.upper())
        show(one, order_now_text(one.now, one.left), json)
        return
    found = list_orders(here, which)
    show(found, orders_text([(one.now, one.left) for one in found]), json)


def order_paper(
    number: OrderNumber,
    change: Annotated[int | None, typer.Option("--change", help="The paper of this change, counted from 1.")] = None,
    html: Annotated[Path | None, typer.Option("--html", help="Write it as a page to this file.")] = None,
    pdf: Pdf = None,
    csv: Annotated[Path | None, typer.Option("--csv", help="Write its lines as CSV to this file.")] = None,
    xlsx: Annotated[Path | None, typer.Option("--xlsx", help="Write its lines as a workbook to this file.")] = None,
    ubl: Annotated[Path | None, typer.Option("--ubl", help="Write it as an XML Order (OASIS UBL 2.1).")] = None,
    database: Database = DEFAULT_DATABASE,
    json: Json = False,
) -> None:
    """Print an order again as it was placed, or the paper of a change; with no file named, as text for a message."""
    from ..actions.orders import one_order_now
    from ..documents.order_paper import order_csv
    from ..documents.order_text import order_message, since_words
    from ..documents.order_xlsx import order_xlsx
    from ..documents.ubl_order import order_ubl

    here = desk(database, None, "")
    now = one_order_now(here, number)
    found = now.order
    page, title = _page(database, number, change)
    made: dict[Path, str | bytes] = {}
    if html:
        made[html] = page
    if pdf:
        made[pdf] = pdf_of(found, page, title)
    for path, content in ((csv, order_csv), (xlsx, order_xlsx), (ubl, order_ubl)):
        if path:
            made[path] = content(_as_placed(found, change))
    for path, kept in made.items():
        write(path, kept)
    written = "".join(f"Written: {path}\n" for path in made)
    text = written or (order_message(found) if change is None else f"{title}: take --html or --pdf.")
    show(found, f"{text}{since_words(now) if change is None else ''}", json)


def write_order(one: PurchaseOrder, folder: Path) -> Path:
    """Write an order as page and CSV; the page's path."""
    from ..documents.order_paper import order_csv, order_html

    path = folder / f"{one.number}.html"
    write(path, order_html(one))
    write(path.with_suffix(".csv"), order_csv(one))
    return path


def pdf_of(one: PurchaseOrder, page: str, title: str) -> bytes:
    """A page of the order as PDF."""
    from ..documents.order_paper import order_paper_size
    from ..documents.pdf import pdf_bytes

    return pdf_bytes(page, order_paper_size(one), title)


def _page(database: str, number: str, change: int | None) -> tuple[str, str]:
    """The page of the order or of a change of it, and its title."""
    from ..actions.order_changes import order_at_change
    from ..actions.orders import one_order
    from ..documents.order_paper import change_html, change_title, order_html

    here = desk(database, None, "")
    if change is None:
        found = one_order(here, number)
        return order_html(found), f"Purchase order {found.number}"
    altered = order_at_change(here, number, change)
    title = f"{change_title(altered.now, altered.event, change)} {number}"
    return change_html(altered.now, altered.event, change), title


def _as_placed(one: PurchaseOrder, change: int | None) -> PurchaseOrder:
    from ..basics.problem import refused

    if change is not None:
        raise refused("change-only-as-page", order=one.number)
    return one
