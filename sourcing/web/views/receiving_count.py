"""Goods counted against an order, scan by scan or by hand, then taken in; and a delivery as it was taken in."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from ...actions.counting import CountSheet, Scanned, count_sheet, only_counted_paper, scan
from ...actions.order_full import goods_only
from ...actions.receipt_told import receipt_told
from ...actions.receive import receive, receive_again, receive_anew
from ...basics.problem import Refused
from ..deliveries import add_one, add_other, all_of_it, as_counted, counts, delivery
from ..desks import desk, sees_costs
from ..forms import deed, refuse, tell, text
from ..guard import EVERYBODY, open_to
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of receiving."""
    add = blueprint.add_url_rule
    add("/receive/<order>", view_func=count_page, methods=["GET", "POST"])
    add("/receive/<order>/paper", view_func=receipt_page, methods=["GET", "POST"])


@open_to(*EVERYBODY)
def count_page(order: str) -> ResponseReturnValue:
    """The order's lines with what is counted so far. Only 'Take it in' keeps anything; all else comes back counted."""
    counted = request.values.get("counted", "")
    form: MultiDict[str, str] = MultiDict(request.form)
    found: Scanned | None = None
    do = form.get("do", "scan")
    if request.method == "POST" and do == "keep":
        if gone := deed(lambda: _keep(order, counted)):
            return gone
    else:
        form, found = _counting(order, form, do, counted)
    sheet = count_sheet(desk(), order, counted)
    return show(
        "receiving/count.html",
        sheet=sheet,
        typed=form,
        found=found,
        counted=counted,
        taken=only_counted_paper(desk(), order, counted) if counted else None,
    )


@open_to(*EVERYBODY)
def receipt_page(order: str) -> ResponseReturnValue:
    """A delivery as it was taken in, with what to do about it; and setting it aside where it was taken in wrongly."""
    paper = request.values.get("paper", "")
    if request.method == "POST" and (gone := deed(lambda: _set_aside(order, paper))):
        return gone
    told = receipt_told(desk(), order, paper)
    differs = told.differs if sees_costs() else goods_only(told.differs)
    return show("receiving/receipt.html", told=told, differs=differs, amounts=told.amounts if sees_costs() else ())


def _counting(
    order: str, form: MultiDict[str, str], do: str, counted: str
) -> tuple[MultiDict[str, str], Scanned | None]:
    """The form with what one scan, or one button, counted; and what is to be said of the scan."""
    try:
        sheet = count_sheet(desk(), order, counted)
        if request.method == "GET":
            form = as_counted(only_counted_paper(desk(), order, counted)) if counted else form
            typed = request.args.get("scanned", "")
            return _scanned(sheet, form, typed, counted) if typed else (form, None)
        if do == "all":
            return all_of_it(form, sheet), None
        if do.startswith("other:"):
            return add_other(form, do.removeprefix("other:")), None
        return _scanned(sheet, form, text("scan"), counted) if text("scan") else (form, None)
    except Refused as refusal:
        refuse(refusal)
        return form, None


def _scanned(
    sheet: CountSheet, form: MultiDict[str, str], typed: str, counted: str
) -> tuple[MultiDict[str, str], Scanned]:
    found = scan(desk(), sheet.order, typed, counts(form, sheet), counted)
    return add_one(form, found), found


def _keep(order: str, counted: str) -> str:
    said = delivery(request.form, count_sheet(desk(), order), with_costs=sees_costs())
    if counted and sees_costs():
        receive_anew(desk(), order, said, _("counted before, now with what the paper charges"))
    else:
        receive(desk(), order, said)
    address = url_for("receiving.receipt_page", order=order, paper=said.paper)
    tell(_("Paper %(paper)s is taken in.") % {"paper": said.paper}, undo=f"{address}#set-aside")
    return address


def _set_aside(order: str, paper: str) -> str:
    gone = receive_again(desk(), order, paper, text("words"))
    tell(_("Paper %(paper)s is set aside and no longer counts.") % {"paper": gone.paper})
    return url_for("receiving.count_page", order=order)
