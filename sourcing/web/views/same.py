"""The equivalence table: which numbers stand for the same part, and on whose word."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("same", __name__)


@blueprint.get("/same-parts")
@open_to(*EVERYBODY)
def table_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
