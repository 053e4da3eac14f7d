"""The box in every page's head: straight to the one thing that bears a number, or a list of what bears a name."""

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.search import Hit, search
from ..desks import desk, sees_costs
from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("search", __name__)

KINDS = ("job", "order", "bill", "machine", "customer", "supplier", "our part", "number")


@blueprint.get("/search")
@open_to(*EVERYBODY)
def search_page() -> ResponseReturnValue:
    """Where there is one answer, that page; else what there is, by kind."""
    found = search(desk(), request.args.get("for", ""), suppliers_too=sees_costs())
    if found.straight_to:
        return redirect(_address(found.straight_to), code=303)
    hits = [(kind, [(one, _address(one)) for one in found.hits if one.kind == kind]) for kind in KINDS]
    near = [(one, _address(one)) for one in found.near]
    return show("search/found.html", found=found, hits=[(kind, some) for kind, some in hits if some], near=near)


def _address(hit: Hit) -> str:
    """The page it leads to, one this person may open."""
    if hit.kind in ("job", "machine", "customer"):
        return url_for("jobs.job_page", job=hit.key)
    if hit.kind == "bill":
        return url_for("quotes.bill_page", job=hit.key)
    if hit.kind == "order":
        return url_for("orders.order_page" if sees_costs() else "receiving.count_page", order=hit.key)
    if hit.kind == "supplier":
        return url_for("shop.supplier_page", supplier=hit.key)
    return url_for("find.find_page", number=hit.key)
