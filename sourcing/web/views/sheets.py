"""Suppliers' sheets: dropped in, read, kept, taken out again."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("sheets", __name__)


@blueprint.get("/sheets")
@open_to(*WITH_COSTS)
def list_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
