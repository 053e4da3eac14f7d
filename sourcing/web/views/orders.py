"""Purchase orders: placed, confirmed, changed, cancelled; what goes back."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("orders", __name__)


@blueprint.get("/orders")
@open_to(*EVERYBODY)
def list_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/to-order")
@open_to(*WITH_COSTS)
def place_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/orders/<order>")
@open_to(*WITH_COSTS)
def order_page(order: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
