"""Find a part under any number, and compare what is offered for it; for the bench without anything the shop pays."""

from collections.abc import Callable
from datetime import date

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.compare import ForLine, ToCompare
from ...actions.find import comparison_again, find_for_bench, find_part
from ...actions.near_numbers import near_numbers
from ...basics.choice import Comparison, RankWishes
from ...basics.problem import Refused, refused
from ...basics.typed import amount, count, one_word
from ...documents.comparison import comparison_csv, comparison_text, comparison_xlsx
from ...documents.comparison_page import offer_words, page_words
from ...documents.scatter import scatter_svg
from ...documents.scatter_words import told
from ..desks import desk, sees_costs
from ..files import attachment, drawing
from ..forms import refuse
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from . import find_more

blueprint = Blueprint("find", __name__)
find_more.add_to(blueprint)

ASKED = (
    "number",
    "quantity",
    "need_by",
    "a_day",
    "in_time",
    "trusted",
    "in_stock",
    "no_surplus",
    "job",
    "line",
    "alike",
)
FILES: dict[str, Callable[[Comparison], bytes | str]] = {
    "xlsx": comparison_xlsx,
    "csv": comparison_csv,
    "txt": comparison_text,
}
UNKNOWN = ("number-not-known", "number-of-several", "number-must-not")


@blueprint.get("/find")
@open_to(*EVERYBODY)
def find_page() -> ResponseReturnValue:
    """The part that bears the number, with its offers; or what is near a number nobody knows."""
    if not _text("number"):
        return show("find/ask.html", asked=_asked())
    try:
        return _found() if sees_costs() else _for_bench()
    except Refused as refusal:
        return _not_found(refusal)


@blueprint.get("/find/drawing.svg")
@open_to(*WITH_COSTS)
def drawing_itself() -> ResponseReturnValue:
    """Cost at the door against the last day."""
    return drawing(scatter_svg(comparison_again(desk(), _wanted())))


@blueprint.get("/find/offers.<kind>")
@open_to(*WITH_COSTS)
def offers_file(kind: str) -> ResponseReturnValue:
    """The comparison as a file."""
    one_word(kind, "file", tuple(FILES))
    return attachment(FILES[kind](comparison_again(desk(), _wanted())), "offers", kind)


def _found() -> ResponseReturnValue:
    found = find_part(desk(), _wanted())
    compared = found.comparison
    return show(
        "find/found.html",
        asked=_asked(),
        found=found,
        words=page_words(compared),
        offers=offer_words(compared, found.sizes),
        drawn=told(compared) if compared.ranked else "",
        kinds=tuple(FILES),
    )


def _for_bench() -> ResponseReturnValue:
    found = find_for_bench(desk(), _text("number"), _quantity(), _day(), _line())
    return show("find/bench.html", asked=_asked(), found=found)


def _not_found(refusal: Refused) -> ResponseReturnValue:
    refuse(refusal)
    unknown = any(one.code in UNKNOWN for one in refusal.problems)
    near = near_numbers(desk(), _text("number")) if unknown else None
    return show("find/unknown.html", asked=_asked(), near=near)


def _wanted() -> ToCompare:
    a_day = _text("a_day")
    return ToCompare(
        number=_text("number"),
        quantity=_quantity(),
        wishes=RankWishes(
            need_by=_day(),
            only_in_time=bool(_text("in_time")),
            trusted_only=bool(_text("trusted")),
            in_stock_only=bool(_text("in_stock")),
            without_surplus=bool(_text("no_surplus")),
            value_per_day=amount(a_day) if a_day else None,
        ),
        line=_line(),
        look_alikes=bool(_text("alike")),
    )


def _asked() -> dict[str, str]:
    """What the address asks, without blanks: for the form, and for what stands beside the page."""
    return {name: _text(name) for name in ASKED if _text(name)}


def _quantity() -> int | None:
    typed = _text("quantity")
    return count(typed) if typed else None


def _day() -> date | None:
    typed = _text("need_by")
    try:
        return date.fromisoformat(typed) if typed else None
    except ValueError:
        raise refused("not-a-day", found=typed[:30]) from None


def _line() -> ForLine | None:
    job, line = _text("job"), _text("line")
    return ForLine(job=job, label=line) if job and line else None


def _text(name: str) -> str:
    return request.args.get(name, "").strip()
