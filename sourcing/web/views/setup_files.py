"""The shop's files: set up from shop.toml, suppliers.toml, rates.csv and equivalence.xlsx; shop.toml taken along."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.settings_edit import settings_now
from ...actions.setup_sent import set_up_sent
from ...basics.problem import at_counter, refused
from ...documents.settings import settings_toml
from ...documents.setup_words import set_up_words
from ..desks import desk
from ..files import attachment
from ..forms import deed, is_sure, tell
from ..guard import OWNER, open_to
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/shop/files", view_func=files_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/shop.toml", view_func=settings_file)


@open_to(*OWNER)
def files_page() -> ResponseReturnValue:
    """Files to take in, and files to take along."""
    if request.method == "POST" and (gone := deed(_take_in)):
        return gone
    return show("shop/files.html", is_set_up=settings_now(desk()) is not None)


@open_to(*OWNER)
def settings_file() -> ResponseReturnValue:
    """The settings as the file a person edits: it has the markup bands, so it is the owner's."""
    found = settings_now(desk())
    if found is None:
        raise refused("no-settings", day=desk().at.date())
    return attachment(settings_toml(found.settings, found.on), "shop", "toml")


def _take_in() -> str:
    sent = {one.filename: one.read() for one in request.files.getlist("files") if one.filename}
    found = set_up_sent(desk(), sent, "keep_good" in request.form, is_sure())
    tell(set_up_words(found.files, tuple(map(at_counter, found.warnings))))
    return url_for("shop.settings_page")
