"""What past jobs would have earned by other markup bands. Nothing is kept: the address holds all that was typed."""

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.form_words import refused_in_words
from ...actions.margin_months import months_typed
from ...actions.settings_edit import settings_now
from ...actions.settings_labels import band_typed
from ...actions.what_if import bands_of_lines, what_if
from ...basics.margin import WhatIf
from ...basics.problem import Refused
from ...documents.what_if import bands_lines, what_if_csv, what_if_told, what_if_xlsx
from ..desks import desk, now
from ..files import attachment
from ..forms import refuse
from ..guard import OWNER, open_to
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of margins."""
    blueprint.add_url_rule("/what-if", view_func=what_if_page)
    blueprint.add_url_rule("/what-if.xlsx", view_func=what_if_workbook)
    blueprint.add_url_rule("/what-if.csv", view_func=what_if_table)


@open_to(*OWNER)
def what_if_page() -> ResponseReturnValue:
    """Bands to try, and what came of them."""
    kept = settings_now(desk())
    bands = request.args.get("bands", bands_lines(kept.settings.markup_bands) if kept else "")
    found = _tried()
    told = what_if_told(found) if found else ()
    return show("margins/what_if.html", bands=bands, found=found, told=told, asked=request.args)


@open_to(*OWNER)
def what_if_workbook() -> ResponseReturnValue:
    """The same as a workbook."""
    return attachment(what_if_xlsx(_found()), "other-bands", "xlsx")


@open_to(*OWNER)
def what_if_table() -> ResponseReturnValue:
    """The same as CSV."""
    return attachment(what_if_csv(_found()), "other-bands", "csv")


def _tried() -> WhatIf | None:
    """None where no bands were given yet, or they were refused; why stands above the page."""
    if "bands" not in request.args:
        return None
    try:
        return _found()
    except Refused as refusal:
        refuse(refusal)
        return None


def _found() -> WhatIf:
    within = months_typed(request.args.get("since", ""), request.args.get("until", ""), now().date())
    try:
        return what_if(desk(), bands_of_lines(request.args.get("bands", "")), within)
    except Refused as refusal:
        raise refused_in_words(refusal, band_typed) from None
