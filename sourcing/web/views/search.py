"""One box that finds jobs, orders, numbers, customers and suppliers."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("search", __name__)


@blueprint.get("/search")
@open_to(*EVERYBODY)
def search_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
