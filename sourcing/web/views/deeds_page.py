"""The owner's page of all deeds: who did what when."""

from datetime import date

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.deeds_shown import DeedsAsked, deeds_shown
from ...actions.history import history
from ...actions.settings_edit import DEED as SETTINGS
from ...actions.settings_labels import as_filled_in
from ...actions.terms import TOLD as TERMS
from ...actions.terms_compare import subject
from ...actions.terms_labels import in_the_form
from ...basics.deed import Deed
from ...basics.problem import refused
from ...documents.deeds import deeds_csv
from ..desks import desk
from ..files import attachment
from ..guard import OWNER, open_to
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/history", view_func=deeds_page)
    blueprint.add_url_rule("/history.csv", view_func=deeds_file)


@open_to(*OWNER)
def deeds_page() -> ResponseReturnValue:
    """The deeds asked for, the newest first."""
    asked = DeedsAsked(who=_word("who"), about=_word("about"), since=_day("since"), until=_day("until"))
    found = deeds_shown(desk(), asked, request.args.get("page", 1, type=int))
    return show("shop/deeds.html", found=found, asked=request.args, detail_of=_detail)


@open_to(*OWNER)
def deeds_file() -> ResponseReturnValue:
    """All of them, the oldest first."""
    return attachment(deeds_csv(history(desk(), None)), "history", "csv")


def _detail(one: Deed) -> str:
    """What was done, changes of settings and terms as their forms have them; the file of deeds has them as files do."""
    if one.deed == SETTINGS:
        return as_filled_in(one.detail)
    is_of_terms = one.deed in TERMS and one.subject.startswith(subject(""))
    return in_the_form(one.detail) if is_of_terms else one.detail


def _word(name: str) -> str:
    return request.args.get(name, "").strip()


def _day(name: str) -> date | None:
    try:
        return date.fromisoformat(_word(name)) if _word(name) else None
    except ValueError:
        raise refused("not-a-day", found=_word(name)[:30]) from None
