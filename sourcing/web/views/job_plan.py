"""A job's plan: which orders fill it at the least cost, what else could be bought, and the quote from it."""

from typing import Any

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.job_edit import opened
from ...actions.plan import ANY_DAY, JOB_WISHES, plan_job
from ...actions.quotes import write_quote
from ...basics.plan import Plan
from ...basics.problem import Refused
from ...basics.typed import amount, count
from ...basics.value import changed
from ...documents.plan_paper import plan_text, plan_xlsx
from ...documents.plan_words import back_words, head_words
from ...documents.quote_paper import quote_html
from ..desks import desk, may, sees_costs
from ..files import attachment
from ..forms import asked_day, day, deed, mind, refuse, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages."""
    blueprint.add_url_rule("/jobs/<job>/plan", view_func=plan_page)
    blueprint.add_url_rule("/jobs/<job>/plan.<kind>", view_func=plan_file)
    blueprint.add_url_rule("/jobs/<job>/write-quote", view_func=write_page, methods=["GET", "POST"])


@open_to(*WITH_COSTS)
def plan_page(job: str) -> ResponseReturnValue:
    """The least orders for the job's parts, with what other ways of buying would cost."""
    one = opened(desk(), job)[0]
    try:
        found = _plan(job)
    except Refused as refusal:
        refuse(refusal)
        return show("jobs/plan.html", one=one, plan=None, heads=(), back=(), asked=request.args)
    return show(
        "jobs/plan.html", one=one, plan=found, heads=head_words(found), back=back_words(found), asked=request.args
    )


@open_to(*WITH_COSTS)
def plan_file(job: str, kind: str) -> ResponseReturnValue:
    """The plan as a workbook or as text."""
    found, name = _plan(job), f"plan-{opened(desk(), job)[0].number}"
    return attachment(plan_xlsx(found), name, "xlsx") if kind == "xlsx" else attachment(plan_text(found), name, "txt")


@open_to(*EVERYBODY)
def write_page(job: str) -> ResponseReturnValue:
    """Write the quote as a new revision."""
    if request.method == "POST" and (gone := deed(lambda: _write(job))):
        return gone
    return show("jobs/write_quote.html", one=opened(desk(), job)[0])


def _plan(job: str) -> Plan:
    """The plan with the wishes in the address."""
    wishes: dict[str, Any] = {"front": True}
    if request.args.get("soonest"):
        wishes["objective"] = "date"
    elif request.args.get("a_day"):
        wishes |= {"objective": "cost and days", "value_per_day": amount(request.args["a_day"].strip())}
    if request.args.get("most_suppliers"):
        wishes["most_suppliers"] = count(request.args["most_suppliers"].strip())
    for name in ("in_stock_only", "trusted_only", "cores_lost"):
        if request.args.get(name):
            wishes[name] = True
    day_wanted = ANY_DAY if request.args.get("any_day") else asked_day("need_by")
    agreed, left = (bool(request.args.get(name)) for name in ("agreed", "left"))
    return plan_job(desk(), job, day_wanted, agreed, changed(JOB_WISHES, **wishes), left)


def _write(job: str) -> str:
    """What is told of costs is for those who may see them."""
    plan_for: Any = text("plan") if text("plan") in ("shop", "customer") else ""
    wanted = ANY_DAY if text("any_day") else day("need_by")
    written = write_quote(desk(), job, quote_html, wanted, plan_for if sees_costs() else "", keep_day=True)
    revision = written.frozen.quote.revision
    if written.is_new:
        tell(_("Revision %(revision)s of the quote is written.") % {"revision": revision})
    else:
        tell(_("Nothing has changed: revision %(revision)s stands.") % {"revision": revision})
    shown = written.frozen.quote.warnings  # stand on the page this leads to
    for words in (*written.warnings, *written.notes) if may("owner") else ():
        if words not in shown:
            mind(words)
    return url_for("quotes.quote_page", job=job)
