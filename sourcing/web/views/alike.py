"""Rows of sheets that may be parts of ours, for a person to judge."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("alike", __name__)


@blueprint.get("/look-alikes")
@open_to(*WITH_COSTS)
def list_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
