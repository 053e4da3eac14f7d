"""A job's quote as the customer sees it: its revisions, its files, when it was given, how its figures came."""

from collections.abc import Callable
from typing import get_args

from flask import Blueprint, abort, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.job_edit import opened
from ...actions.part_doubts import part_doubts
from ...actions.quote_owner import owners_quote
from ...actions.quotes import check_quote, reprint
from ...actions.revisions import revisions
from ...actions.sendings import given
from ...actions.sheets_gone import sheets_gone_from_quote
from ...basics.approval import GivenBy
from ...basics.problem import Refused
from ...basics.quote import FrozenQuote
from ...basics.typed import count
from ...documents.quote_explained import owners_text, owners_xlsx
from ...documents.quote_message import quote_message
from ...documents.quote_paper import quote_pdf, quote_text
from ...documents.quote_xlsx import quote_xlsx
from ..desks import desk, may
from ..files import attachment, paper
from ..forms import asked_day, deed, mind, read, refuse, tell, text
from ..guard import EVERYBODY, OWNER, open_to
from ..show import show
from ..words import _
from . import quote_alarms, quote_answers, quote_bill

blueprint = Blueprint("quotes", __name__)
quote_answers.add_to(blueprint)
quote_alarms.add_to(blueprint)
quote_bill.add_to(blueprint)

FILES: dict[str, Callable[[FrozenQuote], bytes | str]] = {
    "html": lambda frozen: frozen.paper,
    "pdf": quote_pdf,
    "txt": lambda frozen: quote_text(frozen.quote),
    "xlsx": lambda frozen: quote_xlsx(frozen.quote),
}


@blueprint.route("/jobs/<job>/quote", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def quote_page(job: str) -> ResponseReturnValue:
    """A revision, the newest where none is named, to be read and given to the customer; and all there are."""
    if request.method == "POST" and (gone := deed(lambda: _given(job))):
        return gone
    found = revisions(desk(), job, _asked("from"), _asked("to"))
    frozen = reprint(desk(), job, _asked("revision"))
    shown = frozen.quote.revision
    return show(
        "quotes/quote.html",
        job=job,
        customer=opened(desk(), job)[0].customer,
        found=found,
        row=next(row for row in found.rows if row.revision == shown),
        newest=found.rows[-1].revision,
        message=quote_message(frozen.quote),
        files=tuple(FILES),
        ways=get_args(GivenBy),
        warnings=frozen.quote.warnings if may("owner") else (),
        doubts=part_doubts(desk(), (job,), shown),
        sheets_gone=sheets_gone_from_quote(desk(), job) if shown == found.rows[-1].revision else (),
    )


@blueprint.get("/jobs/<job>/quote/<int:revision>.html")
@open_to(*EVERYBODY)
def quote_itself(job: str, revision: int) -> ResponseReturnValue:
    """The paper as it was kept, for the frame."""
    return paper(reprint(desk(), job, revision).paper)


@blueprint.get("/jobs/<job>/quote/<int:revision>/save.<kind>")
@open_to(*EVERYBODY)
def quote_file(job: str, revision: int, kind: str) -> ResponseReturnValue:
    """The customer's paper as a file."""
    if kind not in FILES:
        abort(404)
    frozen = reprint(desk(), job, revision)
    return attachment(FILES[kind](frozen), f"quote-{frozen.quote.job}-{revision}", kind)


@blueprint.get("/jobs/<job>/quote/figures")
@open_to(*OWNER)
def figures_page(job: str) -> ResponseReturnValue:
    """What each part earns as quoted, and how every figure came."""
    found = owners_quote(desk(), job, _asked("revision"))
    return show("quotes/figures.html", job=job, found=found, quote=found.frozen.quote)


@blueprint.get("/jobs/<job>/quote/<int:revision>/figures.<kind>")
@open_to(*OWNER)
def figures_file(job: str, revision: int, kind: str) -> ResponseReturnValue:
    """The same as a file."""
    found = owners_quote(desk(), job, revision)
    name = f"figures-{found.frozen.quote.job}-{revision}"
    if kind == "xlsx":
        return attachment(owners_xlsx(found), name, kind)
    return attachment(owners_text(found), name, "txt") if kind == "txt" else abort(404)


@blueprint.get("/jobs/<job>/quote/anew")
@open_to(*OWNER)
def anew_page(job: str) -> ResponseReturnValue:
    """What a new revision would say otherwise; nothing is written by looking."""
    need_by = request.args.get("need_by") or opened(desk(), job)[0].need_by or ""
    try:
        found = check_quote(desk(), job, asked_day("need_by"))
    except Refused as refusal:
        refuse(refusal)
        found = None
    return show("quotes/anew.html", job=job, found=found, need_by=str(need_by))


def _given(job: str) -> str:
    revision = read("revision", count)
    out = given(desk(), job, revision, text("how"), text("sent_to"))
    tell(_("It is noted that revision %(revision)s was given to the customer.") % {"revision": out.revision})
    for words in out.notes:
        mind(words)
    return url_for("quotes.quote_page", job=job, revision=out.revision)


def _asked(name: str) -> int | None:
    typed = request.args.get(name, "").strip()
    return count(typed) if typed else None
