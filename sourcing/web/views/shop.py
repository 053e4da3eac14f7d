"""The shop's settings, suppliers' terms, rates, and the people who may log in."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("shop", __name__)


@blueprint.get("/shop")
@open_to(*WITH_COSTS)
def settings_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/terms")
@open_to(*WITH_COSTS)
def terms_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
