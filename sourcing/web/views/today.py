"""The first page: which jobs wait for whom, and what comes next."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ...actions.desk_work import desk_work
from ...actions.job_list import waiting
from ..desks import desk
from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("today", __name__)


@blueprint.get("/")
@open_to(*EVERYBODY)
def today_page() -> ResponseReturnValue:
    """Jobs by who waits for whom, the longest wait first; and what else waits at the desk."""
    return show("today.html", waits=waiting(desk()), work=desk_work(desk()))
