"""Goods that come, by scanner or by hand: which order waits for them; and what goes back."""

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.arrivals import Arrivals, arrivals, waiting_orders
from ..desks import desk
from ..guard import EVERYBODY, open_to
from ..show import show
from . import receiving_back, receiving_count

blueprint = Blueprint("receiving", __name__)
receiving_back.add_to(blueprint)
receiving_count.add_to(blueprint)


@blueprint.get("/receive")
@open_to(*EVERYBODY)
def receive_page() -> ResponseReturnValue:
    """One field for whatever is scanned first; the orders something is still to come of below it."""
    typed = request.args.get("for", "").strip()
    found = arrivals(desk(), typed) if typed else Arrivals()
    if found.order:
        return redirect(url_for("receiving.count_page", order=found.order))
    if len(found.waiting) == 1 and not found.taken_in:
        return redirect(url_for("receiving.count_page", order=found.waiting[0].now.order.number, scanned=typed))
    return show("receiving/receive.html", typed_number=typed, found=found, waiting=waiting_orders(desk()))
