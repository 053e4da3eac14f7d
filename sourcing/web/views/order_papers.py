"""Papers of an order: as it was placed, of each change, as files; and what is claimed of the supplier."""

from collections.abc import Callable

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.claims import claim, differences_of
from ...actions.order_changes import order_at_change
from ...actions.orders import one_order, one_order_now
from ...basics.claim import Claim
from ...basics.order import PurchaseOrder
from ...basics.typed import count, one_word
from ...documents.claims import claim_csv, claim_html, claim_text, claim_xlsx
from ...documents.order_paper import change_html, change_title, order_csv, order_html, order_paper_size
from ...documents.order_text import order_message, since_words
from ...documents.order_xlsx import order_xlsx
from ...documents.pdf import pdf_bytes
from ...documents.ubl_order import order_ubl
from ..desks import desk
from ..files import attachment, paper
from ..guard import WITH_COSTS, open_to
from ..show import show

ORDER_FILES: dict[str, Callable[[PurchaseOrder], bytes | str]] = {
    "csv": order_csv,
    "xlsx": order_xlsx,
    "xml": order_ubl,
    "txt": order_message,
}
PAGE_FILES = ("html", "pdf")
CLAIM_FILES: dict[str, Callable[[Claim], bytes | str]] = {
    "html": claim_html,
    "txt": claim_text,
    "csv": claim_csv,
    "xlsx": claim_xlsx,
}


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the orders."""
    add = blueprint.add_url_rule
    add("/orders/<order>/paper", view_func=paper_page)
    add("/orders/<order>/paper-itself", view_func=paper_itself)
    add("/orders/<order>/paper.<kind>", view_func=paper_file)
    add("/orders/<order>/claim", view_func=claim_page, methods=["GET", "POST"])


@open_to(*WITH_COSTS)
def paper_page(order: str) -> ResponseReturnValue:
    """The paper in a frame, and the files it can be had as."""
    now = one_order_now(desk(), order)
    change = _change()
    title = _title(order, change)
    earlier = since_words(now) if change is None else ""
    files = (*PAGE_FILES, *ORDER_FILES) if change is None else PAGE_FILES
    return show(
        "orders/paper.html",
        order=now.order,
        change=change,
        title=title,
        earlier=earlier,
        files=files,
        message=order_message(now.order).splitlines() if change is None else [],
    )


@open_to(*WITH_COSTS)
def paper_itself(order: str) -> ResponseReturnValue:
    """The paper, for the frame."""
    return paper(_page(order, _change()))


@open_to(*WITH_COSTS)
def paper_file(order: str, kind: str) -> ResponseReturnValue:
    """The paper as a file."""
    change = _change()
    found = one_order(desk(), order)
    one_word(kind, "file", PAGE_FILES if change else (*PAGE_FILES, *ORDER_FILES))
    name = found.number if change is None else f"{found.number}-change-{change}"
    if kind in ORDER_FILES:
        return attachment(ORDER_FILES[kind](found), name, kind)
    page = _page(order, change)
    if kind == "pdf":
        return attachment(pdf_bytes(page, order_paper_size(found), _title(order, change)), name, kind)
    return attachment(page, name, kind)


@open_to(*WITH_COSTS)
def claim_page(order: str) -> ResponseReturnValue:
    """What did not come as ordered; the paper that claims it, which is written anew each time it is asked for."""
    if request.method == "POST":
        kind = one_word(request.form.get("kind", ""), "file", tuple(CLAIM_FILES))
        return attachment(CLAIM_FILES[kind](claim(desk(), order)), f"{order}-claim", kind)
    return show("orders/claim.html", found=differences_of(desk(), order), kinds=tuple(CLAIM_FILES))


def _change() -> int | None:
    typed = request.args.get("change", "")
    return count(typed) if typed else None


def _page(order: str, change: int | None) -> str:
    if change is None:
        return order_html(one_order(desk(), order))
    altered = order_at_change(desk(), order, change)
    return change_html(altered.now, altered.event, change)


def _title(order: str, change: int | None) -> str:
    if change is None:
        return f"Purchase order {order}"
    altered = order_at_change(desk(), order, change)
    return f"{change_title(altered.now, altered.event, change)} {order}"
