"""Money the customer paid ahead, and the bill that closes the job: looked at before it is written, printed after."""

from decimal import Decimal
from typing import Any

from flask import Blueprint, abort, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from ...actions.after_bill import left_with_suppliers
from ...actions.answer_sheet import answer_sheet
from ...actions.bill import bill_if_any, look_at_bill, write_bill
from ...actions.deposits import deposits_of, give_back, take_deposit
from ...actions.desk_work import desk_work
from ...actions.given_away import gave_away, given_away_on
from ...actions.job_edit import opened
from ...basics.bill import Bill, FrozenBill, LeftOut, Off
from ...basics.problem import Problem, Refused
from ...basics.typed import amount
from ...documents.bill_paper import bill_html, bill_pdf, bill_text
from ..desks import desk, may, sees_costs
from ..files import attachment, paper
from ..forms import deed, mind, read, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from ..words import _

OFF = "off-"


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the quote."""
    add = blueprint.add_url_rule
    add("/jobs/<job>/bill", view_func=bill_page)
    add("/jobs/<job>/bill/write", view_func=write_bill_page, methods=["GET", "POST"])
    add("/jobs/<job>/bill/look.html", view_func=look_itself)
    add("/jobs/<job>/bill/paper.html", view_func=bill_itself)
    add("/jobs/<job>/bill/save.<kind>", view_func=bill_file)
    add("/jobs/<job>/deposit/take", view_func=deposit_taken, methods=["POST"])
    add("/jobs/<job>/deposit/give-back", view_func=deposit_back, methods=["POST"])
    add("/jobs/<job>/given-away", view_func=given_away_page, methods=["GET", "POST"])


@open_to(*EVERYBODY)
def bill_page(job: str) -> ResponseReturnValue:
    """The bill where there is one, what is paid ahead, and what is left to do."""
    frozen = bill_if_any(desk(), job)
    return show(
        "quotes/bill.html",
        job=job,
        customer=opened(desk(), job)[0].customer.name,
        bill=frozen.bill if frozen else None,
        deposits=deposits_of(desk(), job),
        left=left_with_suppliers(desk(), job) if sees_costs() else (),
        is_over=frozen is None,
    )


@open_to(*WITH_COSTS)
def write_bill_page(job: str) -> ResponseReturnValue:
    """Look at the bill as it would be, with lines left out or something taken off; then write it, once.

    What is filled in and was not looked at is never left by the way: it is looked at first.
    """
    if request.method == "POST" and (gone := deed(lambda: _written(job))):
        return gone
    looked, why_not = _looked(job)
    asked = request.form if request.method == "POST" else request.args
    sheet = answer_sheet(desk(), job).lines
    return show(
        "quotes/write_bill.html",
        job=job,
        looked=looked,
        why_not=why_not,
        lines=[one.line for one in sheet if one.stands == "approved"],
        unanswered=[one.line for one in sheet if one.stands == "waiting"],
        asked=asked,
        not_done=asked.getlist("not_done"),
        papers=desk_work(desk(), job).papers,
        query=request.args.to_dict(flat=False),
    )


@open_to(*WITH_COSTS)
def look_itself(job: str) -> ResponseReturnValue:
    """The paper as it would be; nothing is kept."""
    return paper(bill_html(look_at_bill(desk(), job, *_wishes(request.args))))


@open_to(*EVERYBODY)
def bill_itself(job: str) -> ResponseReturnValue:
    """The bill as it was kept, for the frame."""
    return paper(_bill(job).paper)


@open_to(*EVERYBODY)
def bill_file(job: str, kind: str) -> ResponseReturnValue:
    """The bill as a file."""
    frozen = _bill(job)
    name = f"bill-{frozen.bill.job}"
    if kind == "pdf":
        return attachment(bill_pdf(frozen.bill, frozen.paper), name, kind)
    if kind == "txt":
        return attachment(bill_text(frozen.bill), name, kind)
    return attachment(frozen.paper, name, kind) if kind == "html" else abort(404)


@open_to(*WITH_COSTS)
def deposit_taken(job: str) -> ResponseReturnValue:
    """Write down money the customer paid ahead."""
    return deed(lambda: _taken(job)) or bill_page(job)


@open_to(*WITH_COSTS)
def deposit_back(job: str) -> ResponseReturnValue:
    """Write down money given back to the customer."""
    return deed(lambda: _given_back(job)) or bill_page(job)


@open_to(*WITH_COSTS)
def given_away_page(job: str) -> ResponseReturnValue:
    """An extra fitted without a yes: never billed, and on record. What it cost is for the owner to read."""
    if request.method == "POST" and (gone := deed(lambda: _gave_away(job))):
        return gone
    return show("quotes/given_away.html", job=job, found=given_away_on(desk(), job), is_owner=may("owner"))


def _bill(job: str) -> FrozenBill:
    return bill_if_any(desk(), job) or abort(404)


def _looked(job: str) -> tuple[Bill | None, tuple[Problem, ...]]:
    """The bill as it would be, or why it can't be written yet."""
    try:
        return look_at_bill(desk(), job, *_wishes(request.args)), ()
    except Refused as refusal:
        return None, refusal.problems


def _wishes(asked: MultiDict[str, str]) -> tuple[LeftOut, Off]:
    """What is asked of the bill, by the address or by the form: lines not done and why, amounts off and why."""
    labels = tuple(one for one in asked.getlist("not_done") if one)
    off = tuple(
        (name.removeprefix(OFF), amount(typed.strip()))
        for name, typed in asked.items()
        if name.startswith(OFF) and typed.strip()
    )
    return (
        LeftOut(labels=labels, words=asked.get("words", "").strip()),
        Off(amounts=off, words=asked.get("off_words", "").strip()),
    )


def _written(job: str) -> str:
    wishes = _wishes(request.form)
    if text("do") != "write" or wishes != _wishes(request.args):
        if text("do") == "write":
            mind(_("Nothing is written yet. Look at the bill with what you filled in, then write it."))
        return url_for("quotes.write_bill_page", job=job, **_filled_in())
    frozen = write_bill(desk(), job, bill_html, *wishes)
    tell(_("Bill %(number)s is written and job %(job)s is closed.") % {"number": frozen.bill.number, "job": job})
    return url_for("quotes.bill_page", job=job)


def _filled_in() -> dict[str, Any]:
    """What the form says of the bill, for the address of a look at it."""
    names = [name for name in request.form if name in ("not_done", "words", "off_words") or name.startswith(OFF)]
    return {name: some for name in names if (some := [one for one in request.form.getlist(name) if one.strip()])}


def _taken(job: str) -> str:
    found = take_deposit(desk(), job, _amount("taken"), text("how"), text("words"))
    tell(_("The deposit is written down."), undo=url_for("quotes.bill_page", job=job, _anchor="give-back"))
    if found.same_today > 1:
        tell(_("Look at this: the same amount was written down before today. If it is one deposit, give one back."))
    return url_for("quotes.bill_page", job=job)


def _given_back(job: str) -> str:
    give_back(desk(), job, _amount("back"), text("how_back"), text("words_back"))
    tell(_("What was given back is written down."))
    return url_for("quotes.bill_page", job=job)


def _gave_away(job: str) -> str:
    price: Decimal | None = read("price", amount) if text("price") else None
    gave_away(desk(), job, (text("what"), text("words")), read("cost", amount), price)
    tell(_("It is on record. It is never billed."))
    return url_for("quotes.bill_page", job=job)


def _amount(name: str) -> Decimal:
    return read(name, amount)
