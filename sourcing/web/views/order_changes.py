"""What happens to an order after it was placed: the supplier confirms it, we change or cancel lines of it."""

from collections.abc import Callable

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.order_ahead import look_at_cancel, look_at_change
from ...actions.order_changes import Altered, Confirmation, cancel, change_order, confirm
from ...actions.orders import listed_order
from ...basics.order import LineEvent
from ...basics.order_now import LineNow
from ...basics.problem import Refused
from ...basics.typed import amount, count
from ...documents.order_paper import price_words
from ..desks import desk
from ..forms import day, deed, marked, mind, read, refuse, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the orders."""
    both = ["GET", "POST"]
    blueprint.add_url_rule("/orders/<order>/confirm", view_func=confirm_page, methods=both)
    blueprint.add_url_rule("/orders/<order>/change", view_func=change_page, methods=both)
    blueprint.add_url_rule("/orders/<order>/cancel", view_func=cancel_page, methods=both)


@open_to(*WITH_COSTS)
def confirm_page(order: str) -> ResponseReturnValue:
    """Take down what the supplier said; what is left blank is confirmed as it stands."""
    if request.method == "POST" and (gone := deed(lambda: _confirm(order))):
        return gone
    return show("orders/confirm.html", found=listed_order(desk(), order), price=price_words)


@open_to(*WITH_COSTS)
def change_page(order: str) -> ResponseReturnValue:
    """Other pieces of a line. What the change brings with it stands there before it is done."""
    if request.method == "POST" and (gone := deed(lambda: _change(order))):
        return gone
    found = listed_order(desk(), order)
    ahead = _ahead(lambda: _look_at_change(order, found.now.lines))
    return show("orders/change.html", found=found, asked=_typed_pieces(found.now.lines), ahead=ahead)


@open_to(*WITH_COSTS)
def cancel_page(order: str) -> ResponseReturnValue:
    """Cancel lines, or all that has not come. What it costs stands there before it is done."""
    if request.method == "POST" and (gone := deed(lambda: _cancel(order))):
        return gone
    found = listed_order(desk(), order)
    lines, every = _values("line"), bool(_values("all"))
    ahead = _ahead(lambda: _look_at_cancel(order, lines, every))
    return show("orders/cancel.html", found=found, lines=lines, every=every, ahead=ahead)


def _ahead(look: Callable[[], Altered | None]) -> Altered | None:
    """What would happen; None where nothing is asked yet, or it would be refused and why stands above the page."""
    try:
        return look()
    except Refused as refusal:
        if request.method == "GET":  # a form that was sent was refused for the same already
            refuse(refusal)
        return None


def _look_at_change(order: str, lines: tuple[LineNow, ...]) -> Altered | None:
    pieces = _new_pieces(lines)
    return look_at_change(desk(), order, pieces) if pieces else None


def _look_at_cancel(order: str, lines: tuple[str, ...], every: bool) -> Altered | None:
    if not lines and not every:
        return None
    return look_at_cancel(desk(), order, [] if every else [count(one) for one in lines])


def _values(name: str) -> tuple[str, ...]:
    return marked(name) if request.method == "POST" else tuple(one for one in request.args.getlist(name) if one)


def _typed_pieces(lines: tuple[LineNow, ...]) -> dict[int, str]:
    """What was typed as the pieces of each line; as it stands where nothing was."""
    typed = {one.line.line: "".join(_values(f"pieces_{one.line.line}")[:1]).strip() for one in lines}
    return {one.line.line: typed[one.line.line] or str(one.pieces) for one in lines}


def _new_pieces(lines: tuple[LineNow, ...]) -> dict[int, int]:
    """Lines for which other pieces are asked than stand."""
    asked = {at: count(some) for at, some in _typed_pieces(lines).items()}
    return {one.line.line: asked[one.line.line] for one in lines if asked[one.line.line] != one.pieces}


def _confirm(order: str) -> str:
    found = listed_order(desk(), order)
    lines = tuple(said for one in found.now.lines if (said := _line_said(one.line.line)) is not None)
    done = confirm(desk(), order, Confirmation(lines=lines, said_by=text("said_by"), words=text("words")))
    if done.differs:
        tell(_("Kept. What is otherwise than ordered stands below."))
    else:
        tell(_("Kept: all of it is as ordered.") if done.as_ordered else _("Kept: he says nothing new."))
    if done.alarms:
        jobs = ", ".join(f"'sourcing alarms {job}'" for job in sorted({one.line.job for one in done.now.lines}))
        mind(_("The customer's yes does not cover it. What can be done: %(pages)s") % {"pages": jobs})
    return url_for("orders.order_page", order=order)


def _line_said(line: int) -> LineEvent | None:
    """What was typed of one line; None where nothing was."""
    number = text(f"number_{line}")
    price = read(f"price_{line}", amount) if text(f"price_{line}") else None
    first, last = day(f"first_{line}"), day(f"last_{line}")
    if not (price is not None or number or first or last):
        return None
    return LineEvent(
        line=line,
        unit_price=price,
        number=number,
        earliest=first or last,
        latest=last or first,
    )


def _change(order: str) -> str:
    pieces = _new_pieces(listed_order(desk(), order).now.lines)
    return _done(order, change_order(desk(), order, pieces, text("words")))


def _cancel(order: str) -> str:
    lines = [] if marked("all") else [count(one) for one in marked("line")]
    return _done(order, cancel(desk(), order, lines, text("words")))


def _done(order: str, altered: Altered) -> str:
    tell(_("Kept. Now send this paper to %(supplier)s.") % {"supplier": altered.now.order.supplier_name})
    return url_for("orders.paper_page", order=order, change=altered.change)
