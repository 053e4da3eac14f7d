"""What jobs earned, where it leaked, and what other prices would have brought."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import OWNER, open_to
from ..show import show

blueprint = Blueprint("margins", __name__)


@blueprint.get("/margins")
@open_to(*OWNER)
def margins_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
