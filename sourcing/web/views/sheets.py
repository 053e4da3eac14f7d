"""Suppliers' sheets: who has sent which, dropped in, and what is in hand of them."""

from typing import cast

from flask import Blueprint, Flask, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.import_sheets import Said
from ...actions.sheet_list import sheets_of, supplier_sheets
from ..desks import desk
from ..forms import day, deed, tell, text
from ..guard import WITH_COSTS, open_to
from ..sheet_desk import prepare, sheet_desk
from ..show import show
from ..words import several
from . import sheet_changes, sheet_page, sheet_work

blueprint = Blueprint("sheets", __name__)
blueprint.record_once(lambda state: prepare(cast(Flask, state.app)))
for part in (sheet_work, sheet_page, sheet_changes):
    part.add_to(blueprint)


@blueprint.route("/sheets", methods=["GET", "POST"])
@open_to(*WITH_COSTS)
def list_page() -> ResponseReturnValue:
    """Every supplier with the sheet that counts; new ones are dropped here."""
    if request.method == "POST" and (gone := deed(_drop)):
        return gone
    chosen, look = request.args.get("supplier", ""), request.args.get("look", "")
    in_hand = sheet_desk().in_hand()
    going = [one for one in in_hand if not one.work.is_over]
    suppliers = supplier_sheets(desk())
    return show("sheets/list.html", suppliers=suppliers, in_hand=in_hand, going=going, chosen=chosen, look=look)


@blueprint.get("/sheets/of/<supplier>")
@open_to(*WITH_COSTS)
def supplier_page(supplier: str) -> ResponseReturnValue:
    """All sheets of a supplier, and what is remembered of his columns."""
    found, remembered = sheets_of(desk(), supplier)
    return show("sheets/supplier.html", found=found, remembered=remembered)


def _drop() -> str:
    said = Said(supplier=text("supplier"), dated=day("dated"))
    sent = sheet_desk().take(request.files.getlist("sheets"), said, bool(text("look")))
    if len(sent) == 1:
        return url_for("sheets.sent_page", sent=sent[0].name)
    told = several("%(count)s file is read.", "%(count)s files are read, one after the other.", len(sent))
    tell(told % {"count": len(sent)})
    return url_for("sheets.list_page")
