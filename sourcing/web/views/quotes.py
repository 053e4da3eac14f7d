"""A job's quote, the answers to it, what is no longer as approved, deposit and bill."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("quotes", __name__)


@blueprint.get("/jobs/<job>/quote")
@open_to(*EVERYBODY)
def quote_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/answers")
@open_to(*EVERYBODY)
def answer_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/not-as-approved")
@open_to(*EVERYBODY)
def alarms_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/bill")
@open_to(*EVERYBODY)
def bill_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
