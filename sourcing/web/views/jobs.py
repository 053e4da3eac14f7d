"""Jobs: the list of them, everything of one, its history, and what is promised."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.desk_work import desk_work
from ...actions.history import for_the_bench, history
from ...actions.identity import identities
from ...actions.job_edit import opened
from ...actions.job_list import JobsAsked, jobs_asked
from ...actions.job_states import whole_job
from ...actions.photos import photos_of
from ...actions.promises import Said, open_promises, promise, promises_paged
from ...actions.sheets_gone import sheets_gone_from_quote
from ...basics.job_state import WholeJob
from ...basics.problem import refused
from ...basics.promise import PromiseKind
from ...basics.typed import count, one_word
from ...basics.value import changed
from ...documents.job_list import jobs_csv
from ...documents.promises import promises_once, promises_xlsx
from ..desks import desk, sees_costs
from ..files import attachment
from ..forms import day, deed, read, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..said import in_a_file
from ..show import show
from ..words import _
from . import job_forms, job_lines, job_plan

blueprint = Blueprint("jobs", __name__)
job_forms.add_to(blueprint)
job_lines.add_to(blueprint)
job_plan.add_to(blueprint)

PROMISED: tuple[PromiseKind, ...] = ("parts here", "machine ready", "core back", "goods back", "answer")


def asked() -> JobsAsked:
    """Which jobs, as the address says."""
    return JobsAsked(
        words=request.args.get("for", "").strip(),
        waits_for=request.args.get("waits", ""),
        closed_too=bool(request.args.get("closed")),
        page=request.args.get("page", 1, type=int),
    )


@blueprint.get("/jobs")
@open_to(*EVERYBODY)
def list_page() -> ResponseReturnValue:
    """The jobs, where each is, and who waits for whom."""
    return show("jobs/list.html", found=jobs_asked(desk(), asked()), asked=asked())


@blueprint.get("/jobs.csv")
@open_to(*EVERYBODY)
def list_file() -> ResponseReturnValue:
    """The same jobs, all pages of them, as a table."""
    rows = jobs_asked(desk(), asked(), whole=True).rows
    told = [changed(one, state=changed(one.state, next_step=in_a_file(one.state.next_step))) for one in rows]
    return attachment(jobs_csv(told), "jobs", "csv")


@blueprint.get("/jobs/<job>")
@open_to(*EVERYBODY)
def job_page(job: str) -> ResponseReturnValue:
    """Everything of one job."""
    whole, seen = whole_job(desk(), job), opened(desk(), job)[1]
    return show(
        "jobs/job.html",
        whole=whole,
        seen=seen,
        answers=dict(whole.words),
        needs=identities(desk(), job),
        promised=promises_once(whole.promises),
        photos=photos_of(desk(), job),
        deeds=_deeds(whole)[-5:],
        alarms=whole.alarms if sees_costs() else (),
        is_other=bool(whole.alarms),
        sheets_gone=sheets_gone_from_quote(desk(), job),
        old_parts=[one.label for one in whole.quote.lines if one.core_words] if whole.quote else [],
        work=desk_work(desk(), whole.job.number),
    )


@blueprint.get("/jobs/<job>/history")
@open_to(*EVERYBODY)
def history_page(job: str) -> ResponseReturnValue:
    """Who did what on the job, when."""
    some = history(desk(), opened(desk(), job)[0].number)
    return show("jobs/history.html", job=job, deeds=some if sees_costs() else for_the_bench(some))


@blueprint.get("/promised")
@open_to(*EVERYBODY)
def promises_page() -> ResponseReturnValue:
    """What is promised and waited for, oldest first."""
    found = promises_paged(desk(), request.args.get("page", 1, type=int))
    return show("jobs/promised.html", found=found, asks_amounts=sees_costs())


@blueprint.get("/promised.xlsx")
@open_to(*WITH_COSTS)
def promises_file() -> ResponseReturnValue:
    """The same as a workbook."""
    return attachment(promises_xlsx(open_promises(desk())), "promised", "xlsx")


@blueprint.route("/jobs/<job>/promise", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def promise_page(job: str) -> ResponseReturnValue:
    """Write down a day somebody promised; earlier words stay beside it."""
    if request.method == "POST" and (gone := deed(lambda: _promised(job))):
        return gone
    whole = whole_job(desk(), job)
    orders = [(one.number, f"{one.number}, {one.supplier_name}") for one in whole.orders]
    return show("jobs/promise.html", job=job, kinds=PROMISED, orders=orders)


def _promised(job: str) -> str:
    earliest = day("earliest")
    if earliest is None:
        raise refused("not-a-day", found="")
    said = Said(
        kind=read("kind", one_word, _("What is promised"), PROMISED),
        earliest=earliest,
        latest=day("latest"),
        said_by=text("said_by"),
        words=text("words"),
        order=text("order"),
        line=read("line", count) if text("line") else None,
    )
    promise(desk(), job, said)
    tell(_("The promised day is written down."))
    return url_for("jobs.job_page", job=job)


def _deeds(whole: WholeJob) -> tuple[object, ...]:
    return whole.deeds if sees_costs() else for_the_bench(whole.deeds)
