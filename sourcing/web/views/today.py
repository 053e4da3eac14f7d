"""The first page: which jobs wait for whom, and what comes next."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from ...actions.job_states import job_list
from ..desks import desk
from ..guard import EVERYBODY, open_to
from ..show import show

blueprint = Blueprint("today", __name__)

WAITS = ("us", "the customer", "the supplier", "nobody")


@blueprint.get("/")
@open_to(*EVERYBODY)
def today_page() -> ResponseReturnValue:
    """Jobs by who waits for whom, oldest wait first."""
    rows = sorted(job_list(desk()).jobs, key=lambda row: (row.state.since, row.job))
    waits = [(who, [row for row in rows if row.state.waits_for == who]) for who in WAITS]
    return show("today.html", waits=[(who, found) for who, found in waits if found])
