"""Links by which a customer reads her quote and answers it once."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("links", __name__)


@blueprint.get("/jobs/<job>/links")
@open_to(*EVERYBODY)
def links_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
