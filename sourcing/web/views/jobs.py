"""Jobs: taken in, changed after tear-down, planned."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show

blueprint = Blueprint("jobs", __name__)


@blueprint.get("/jobs")
@open_to(*EVERYBODY)
def list_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/new")
@open_to(*EVERYBODY)
def new_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>")
@open_to(*EVERYBODY)
def job_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/plan")
@open_to(*WITH_COSTS)
def plan_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/jobs/<job>/history")
@open_to(*EVERYBODY)
def history_page(job: str) -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")


@blueprint.get("/promised")
@open_to(*EVERYBODY)
def promises_page() -> ResponseReturnValue:
    """Not built yet."""
    return show("told.html", heading="", sentence="")
