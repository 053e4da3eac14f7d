"""The equivalence table: which numbers stand for the same part, and on whose word. All may read it."""

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.equivalences import family_of, table_to_write
from ...actions.near_numbers import near_numbers
from ...actions.number_ways import ways_between
from ...actions.same_parts import check_whole, is_named, number_whole, our_parts_page, withdrawn_of
from ...basics.equivalence import Bench
from ...basics.part_number import OURS
from ...basics.problem import Refused, refused
from ...documents.equivalences import table_xlsx, table_zip
from ...documents.family_drawing import family_svg
from ...documents.family_page import family_lines, number_words
from ...documents.family_words import more_words
from ..desks import desk
from ..files import attachment, drawing
from ..forms import refuse
from ..guard import EVERYBODY, open_to
from ..show import show
from . import same_import, same_our_parts, same_statements

blueprint = Blueprint("same", __name__)
same_statements.add_to(blueprint)
same_import.add_to(blueprint)
same_our_parts.add_to(blueprint)


@blueprint.get("/same-parts")
@open_to(*EVERYBODY)
def table_page() -> ResponseReturnValue:
    """Our parts; a number that the table names leads straight to it."""
    asked = _text("for")
    if is_named(desk(), asked):
        return redirect(url_for("same.number_page", number=asked), code=303)
    found = our_parts_page(desk(), asked, request.args.get("page", 1, type=int))
    return show("same/table.html", found=found)


@blueprint.get("/same-parts/number")
@open_to(*EVERYBODY)
def number_page() -> ResponseReturnValue:
    """Everything a number is tied to, drawn and in words."""
    asked = {name: _text(name) for name in ("number", "maker", "machine", "serial", "to") if _text(name)}
    if not _text("number"):
        return redirect(url_for("same.table_page"), code=303)
    try:
        found = number_whole(desk(), _text("number"), _text("maker"), _bench())
        ways = ways_between(desk(), _text("number"), _text("to")) if _text("to") else None
    except Refused as refusal:
        refuse(refusal)
        near, withdrawn = near_numbers(desk(), _text("number")).near, withdrawn_of(desk(), _text("number"))
        return show("same/unknown.html", asked=asked, near=near, withdrawn=withdrawn)
    return show(
        "same/number.html",
        asked=asked,
        found=found,
        families=family_lines(found.view),
        more=list(more_words(found.view)),
        ways=ways,
        named=number_words,
        ours=OURS,
    )


@blueprint.get("/same-parts/drawing.svg")
@open_to(*EVERYBODY)
def drawing_itself() -> ResponseReturnValue:
    """The whole family, drawn."""
    return drawing(family_svg(family_of(desk(), _text("number"), _text("maker"), _bench())))


@blueprint.get("/same-parts/check")
@open_to(*EVERYBODY)
def check_page() -> ResponseReturnValue:
    """What contradicts itself in the table, and what is worth knowing."""
    return show("same/check.html", found=check_whole(desk()))


@blueprint.get("/same-parts/table.<kind>")
@open_to(*EVERYBODY)
def table_file(kind: str) -> ResponseReturnValue:
    """The table, to be edited and taken in again."""
    sheets = table_to_write(desk())
    if kind == "xlsx":
        return attachment(table_xlsx(sheets), "same-parts", "xlsx")
    if kind == "zip":
        return attachment(table_zip(sheets), "same-parts", "zip")
    raise refused("table-file-kind", found=kind[:20])


def _bench() -> Bench | None:
    machine, serial = _text("machine"), _text("serial")
    if serial and not machine:
        raise refused("serial-without-machine", found=serial)
    return Bench(machine=machine, serial=serial) if machine else None


def _text(name: str) -> str:
    return request.args.get(name, "").strip()
