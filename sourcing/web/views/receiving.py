"""Goods that come: counted against their order, by hand or by scanner."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("receiving", __name__)


@blueprint.get("/receive")
@open_to(*EVERYBODY)
def receive_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/going-back")
@open_to(*WITH_COSTS)
def going_back_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
