"""Find a part under any number, and compare what is offered for it."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("find", __name__)


@blueprint.get("/find")
@open_to(*EVERYBODY)
def find_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
