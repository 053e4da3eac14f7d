"""The shop's settings as they hold; changed part by part from a day on, and begun with where there are none yet."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.settings_edit import (
    SettingsChange,
    keep_settings,
    look_at_settings,
    look_at_withdrawal,
    settings_now,
    start_shop,
    withdraw_settings,
)
from ...actions.settings_labels import as_filled_in, label_of
from ...basics.problem import refused
from ...documents.settings import settings_words
from ..desks import desk, may
from ..forms import day, day_in, deed, is_sure, tell, text
from ..guard import OWNER, WITH_COSTS, open_to
from ..show import show
from ..words import _
from . import deeds_page, people_page, rates_page, setup_files, terms_change, terms_pages
from .look_first import ahead, kept, mark_of
from .settings_form import PARTS, first_typed, part_typed

blueprint = Blueprint("shop", __name__)
for area in (people_page, deeds_page, rates_page, setup_files, terms_pages, terms_change):
    area.add_to(blueprint)


@blueprint.get("/shop")
@open_to(*WITH_COSTS)
def settings_page() -> ResponseReturnValue:
    """What holds, in words; where the shop was never set up, how to begin."""
    found = settings_now(desk())
    words = settings_words(found.settings, may("owner")) if found else {}
    return show("shop/settings.html", found=found, words=words)


@blueprint.route("/shop/begin", methods=["GET", "POST"])
@open_to(*OWNER)
def begin_page() -> ResponseReturnValue:
    """The first settings: the few without which nothing can be priced."""
    if request.method == "POST" and (gone := deed(_begin)):
        return gone
    return show("shop/begin.html")


@blueprint.route("/shop/change/<part>", methods=["GET", "POST"])
@open_to(*OWNER)
def change_page(part: str) -> ResponseReturnValue:
    """Change one part: what would change is shown first, and kept when it was seen."""
    if part not in PARTS:
        raise refused("unknown-word", found=part[:30], column="part", known=", ".join(PARTS))
    if gone := kept(lambda: _look(part), lambda: _keep(part)):
        return gone
    looked = ahead(lambda: _look(part))
    found = settings_now(desk())
    if found is None:
        raise refused("no-settings", day=desk().at.date())
    version = found.version  # also after a refusal: what changed meanwhile was told then
    words = {"named": label_of, "as_filled_in": as_filled_in}
    facts = {"now_is": found.settings, "looked": looked, "mark": mark_of(looked), "version": version}
    return show(f"shop/change_{part}.html", **facts, **words)


@blueprint.route("/shop/withdraw/<starts_on>", methods=["GET", "POST"])
@open_to(*OWNER)
def withdraw_page(starts_on: str) -> ResponseReturnValue:
    """Take back what begins on a day, all of it: what that changes is shown first."""
    if request.method == "POST" and (gone := deed(_withdraw)):
        return gone
    found, starts = settings_now(desk()), day_in(starts_on)
    changes = look_at_withdrawal(desk(), starts)
    words = {"named": label_of, "as_filled_in": as_filled_in}
    facts = {"starts_on": starts, "changes": changes, "version": found.version if found else ""}
    return show("shop/withdraw.html", **facts, **words)


def _begin() -> str:
    start_shop(desk(), first_typed(), is_sure())
    tell(_("The shop is set up. Look through what holds, and change what is to be otherwise."))
    return url_for("shop.settings_page")


def _look(part: str) -> SettingsChange:
    return look_at_settings(desk(), part_typed(part), day("starts_on"), text("past"), text("version"), is_sure())


def _keep(part: str) -> str:
    done = keep_settings(desk(), part_typed(part), day("starts_on"), text("past"), text("version"), is_sure())
    undo = url_for("shop.withdraw_page", starts_on=done.starts_on.isoformat()) if done.is_new else ""
    tell(_("The settings are changed."), undo=undo)
    return url_for("shop.settings_page")


def _withdraw() -> str:
    starts_on = day("starts_on")
    if starts_on is None:
        raise refused("not-a-day", found="")
    withdraw_settings(desk(), starts_on, text("version"))
    tell(_("What held before holds on."))
    return url_for("shop.settings_page")
