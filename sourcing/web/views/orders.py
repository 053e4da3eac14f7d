"""Purchase orders: what would be ordered, the orders placed, and one of them with all that happened to it."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.claims import differences_of
from ...actions.order_full import of_papers, order_full
from ...actions.order_list import WHICH, orders_shown
from ...actions.orders import look_at_orders, place_orders
from ...actions.orders_to_place import job_to_order, jobs_to_order
from ...actions.part_doubts import part_doubts
from ...actions.sheets_gone import sheets_gone_from_order
from ...basics.typed import one_word
from ...documents.order_paper import change_title, price_words
from ...documents.order_text import event_words
from ..desks import desk
from ..forms import deed, marked, mind, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from ..words import _
from . import order_changes, order_papers

blueprint = Blueprint("orders", __name__)
order_changes.add_to(blueprint)
order_papers.add_to(blueprint)


@blueprint.get("/orders")
@open_to(*EVERYBODY)
def list_page() -> ResponseReturnValue:
    """The orders, those something is still to come of first; without any cost."""
    asked = request.args
    which = one_word(asked.get("which") or "open", "which", WHICH)
    page = asked.get("page", 1, type=int)
    found = orders_shown(desk(), which, asked.get("supplier", ""), asked.get("job", "").strip(), page)
    return show("orders/list.html", found=found, which=which, asked=asked)


@blueprint.route("/jobs/<job>/to-order", methods=["GET", "POST"])
@open_to(*WITH_COSTS)
def place_page(job: str) -> ResponseReturnValue:
    """What would be ordered for this job, and others ticked beside it; and the deed itself.

    Only what was looked at is ordered: what is ticked and was not looked at yet is looked at first.
    """
    if request.method == "POST" and (gone := deed(lambda: _place(job))):
        return gone
    also, lines, note = _looked_at("also"), _looked_at("line"), request.args.get("note", "")
    mine = job_to_order(desk(), job)
    others = [one for one in jobs_to_order(desk()) if one.job != job]
    looked = look_at_orders(desk(), (job, *also), () if also else lines) if mine.lines else None
    doubts = part_doubts(desk(), (job, *also)) if looked else ()
    return show(
        "orders/place.html",
        **{"mine": mine, "others": others, "looked": looked, "also": also, "lines": lines, "note": note},
        price=price_words,
        doubts={(one.job, one.label): one for one in doubts},
    )


@blueprint.get("/orders/<order>")
@open_to(*WITH_COSTS)
def order_page(order: str) -> ResponseReturnValue:
    """One order as it stands now."""
    found = order_full(desk(), order)
    said = [event_words(found.now, event) for event in found.now.events]
    changes = [event for event in found.now.events if event.what != "confirmed"]
    differs = differences_of(desk(), order)
    papers = [(at, change_title(found.now, event, at)) for at, event in enumerate(changes, 1)]
    return show(
        "orders/order.html",
        found=found,
        said=said,
        papers=papers,
        price=price_words,
        differs=differs,
        not_as_ordered=of_papers(differs.differences),
        sheets_gone=sheets_gone_from_order(desk(), found.now),
    )


def _looked_at(name: str) -> tuple[str, ...]:
    """What was ticked for the look that is shown: it stands in the address, also where the form was refused."""
    return tuple(one for one in request.args.getlist(name) if one)


def _place(job: str) -> str:
    also, lines, note = marked("also"), marked("line"), text("note")
    is_other = {*also} != {*_looked_at("also")} or {*lines} != {*_looked_at("line")}
    if is_other or text("do") != "order":
        if text("do") == "order":
            mind(
                _("Nothing is ordered yet. This is what would be ordered with what you ticked: look at it, then order.")
            )
        return url_for("orders.place_page", job=job, also=also, line=lines, note=note or None)
    placed = place_orders(desk(), (job, *also), () if also else lines, note, text("seen"))
    numbers = [one.number for one in placed.orders]
    told = ", ".join(f"{one.number} ({one.supplier_name})" for one in placed.orders)
    tell(_("Ordered: %(orders)s. Now send the paper to the supplier.") % {"orders": told})
    if len(numbers) == 1:
        return url_for("orders.order_page", order=numbers[0])
    return url_for("orders.list_page", job=job)
