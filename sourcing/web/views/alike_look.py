"""Look through the sheets again for rows that may be parts of ours: in the background, for long sheets take a while."""

from flask import Blueprint, url_for
from flask.typing import ResponseReturnValue

from ..desks import counter, desk
from ..errands import LookThrough
from ..forms import deed, tell
from ..guard import WITH_COSTS, open_to
from ..sheet_desk import sheet_desk
from ..show import show
from ..words import _
from ..work import Tell


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of look-alikes."""
    blueprint.add_url_rule("/look-alikes/look", "look_now", look_now, methods=["POST"])
    blueprint.add_url_rule("/look-alikes/look/<work>", "looking_page", looking_page)


@open_to(*WITH_COSTS)
def look_now() -> ResponseReturnValue:
    """Begin."""
    return deed(_begin) or show("told.html", heading="", sentence="")


@open_to(*WITH_COSTS)
def looking_page(work: str) -> ResponseReturnValue:
    """How far it is."""
    return show("alike/looking.html", work=sheet_desk().works.get(work))


def _begin() -> str:
    at, run, database = desk(), sheet_desk().run, counter().database
    errand = LookThrough(database=database, at=at.at, who=at.who, file=_("the sheets that count"))

    def task(go_on: Tell) -> None:
        run(errand, go_on)

    work = sheet_desk().works.add(_("The sheets that count"), at.who, at.at, task)
    if work.ended.wait(1) and work.how == "done":
        tell(_("The sheets are looked through; what was found waits here."))
        return url_for("alike.list_page")
    return url_for("alike.looking_page", work=work.name)
