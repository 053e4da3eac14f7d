"""Old parts and goods that go back to the supplier: what waits, and each step taken down."""

from decimal import Decimal
from typing import Literal

from flask import Blueprint, abort, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.after_bill import unused_pieces
from ...actions.back_list import back_list
from ...actions.goods_back import BackStep, LastStep, send_back, steps_of, take_step_back
from ...actions.order_full import order_full
from ...basics.order import ReturnStep
from ...basics.typed import amount, count, one_word
from ...documents.goods_back import going_back_xlsx
from ..desks import desk
from ..files import attachment
from ..forms import deed, mind, read, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _

Kind = Literal["core", "goods"]
STEPS: tuple[ReturnStep, ...] = ("sent", "credited", "refused", "lost")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of receiving."""
    add = blueprint.add_url_rule
    add("/going-back", view_func=going_back_page)
    add("/going-back.xlsx", view_func=going_back_file)
    add("/going-back/<order>/<int:line>/<kind>", view_func=step_page, methods=["GET", "POST"])
    add("/going-back/<order>/<int:line>/<kind>/take-back", view_func=step_taken_back, methods=["POST"])


@open_to(*WITH_COSTS)
def going_back_page() -> ResponseReturnValue:
    """What waits to be sent back, or for credit, the earliest last day first."""
    found = back_list(desk())
    today = desk().at.date()
    return show("receiving/going_back.html", found=found, today=today)


@open_to(*WITH_COSTS)
def going_back_file() -> ResponseReturnValue:
    """The list as a workbook."""
    return attachment(going_back_xlsx(back_list(desk())), "going-back", "xlsx")


@open_to(*WITH_COSTS)
def step_page(order: str, line: int, kind: str) -> ResponseReturnValue:
    """One line's old part or goods: sent, credited, not taken, or given up; and what was taken down of it so far."""
    which = _kind(kind)
    if request.method == "POST" and (gone := deed(lambda: _step(order, line, which))):
        return gone
    return _page(order, line, which)


@open_to(*WITH_COSTS)
def step_taken_back(order: str, line: int, kind: str) -> ResponseReturnValue:
    """The last step taken back, as taken down wrongly."""
    which = _kind(kind)
    return deed(lambda: _take_back(order, line, which)) or _page(order, line, which)


def _kind(typed: str) -> Kind:
    if typed not in ("core", "goods"):
        abort(404)
    return "core" if typed == "core" else "goods"


def _page(order: str, line: int, kind: Kind) -> ResponseReturnValue:
    found = order_full(desk(), order)
    standing = found.now.line(line)
    if standing is None:
        abort(404)
    waits = [one for one in found.waits_back if (one.line, one.kind) == (line, kind)]
    taken = steps_of(desk(), order, line, kind)
    unused = unused_pieces(desk(), order, line) if kind == "goods" else 0
    return show(
        "receiving/step.html",
        **{"found": found, "one": standing, "kind": kind, "waits": waits, "unused": unused},
        steps=STEPS,
        taken=taken,
    )


def _take_back(order: str, line: int, kind: Kind) -> str:
    known = read("known", count)
    take_step_back(desk(), LastStep(order=order, line=line, kind=kind, words=text("why"), known=known))
    tell(_("Taken back. What waited before it waits again."))
    return url_for("receiving.step_page", order=order, line=line, kind=kind)


def _step(order: str, line: int, kind: Kind) -> str:
    step = one_word(text("step") or "-", "step", STEPS)
    said = BackStep(
        line=line,
        kind=kind,
        step=step,
        pieces=read("pieces", count),
        paper=text("paper"),
        credit=_amount("credit"),
        fee=_amount("fee"),
        freight=_amount("freight"),
        words=text("words"),
    )
    done = send_back(desk(), order, said)
    tell(_("Kept."), undo=url_for("receiving.step_page", order=order, line=line, kind=kind, _anchor="taken-down"))
    for note in done.notes:
        mind(note)
    return url_for("orders.order_page", order=order)


def _amount(field: str) -> Decimal | None:
    return read(field, amount) if text(field) else None
