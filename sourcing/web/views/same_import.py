"""Take an edited table in: what it would change is shown before anything is done."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.sheet_sent import file_name
from ...actions.table_import import Wanted, import_sent
from ...basics.problem import at_counter, refused
from ...basics.value import Value, changed
from ...documents.equivalences import changes_headline, changes_sections
from ..desks import desk
from ..forms import deed, tell
from ..guard import WITH_COSTS, open_to
from ..held_tables import held_tables
from ..show import show
from .look_first import mark_of

MOST_SHOWN = 60
"""Entries shown under each heading."""


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the table."""
    both = ["GET", "POST"]
    blueprint.add_url_rule("/same-parts/take-in", "import_page", import_page, methods=both)
    blueprint.add_url_rule("/same-parts/take-in/<held>", "look_page", look_page, methods=both)


@open_to(*WITH_COSTS)
def import_page() -> ResponseReturnValue:
    """Send the edited file."""
    if request.method == "POST" and (gone := deed(_hold)):
        return gone
    return show("same/import.html")


@open_to(*WITH_COSTS)
def look_page(held: str) -> ResponseReturnValue:
    """What the file would change; kept when it was seen."""
    if request.method == "POST" and (gone := deed(lambda: _keep(held))):
        return gone
    looked = import_sent(desk(), held_tables().held(held), _wanted(look=True))
    shown = changed(looked, problems=tuple(map(at_counter, looked.problems)))
    sections = [(title, words) for title, words in changes_sections(shown) if words]
    return show(
        "same/look.html",
        looked=looked,
        headline=changes_headline(looked),
        sections=sections,
        mark=mark_of(looked),
        most=MOST_SHOWN,
        wanted=_wanted(look=True),
    )


def _hold() -> str:
    sent = {file_name(one.filename): one.read() for one in request.files.getlist("files") if one.filename}
    if not sent:
        raise refused("no-file-chosen")
    import_sent(desk(), sent, Wanted(look=True))  # what is no table at all is refused here
    return url_for("same.look_page", held=held_tables().hold(sent))


def _keep(held: str) -> str:
    files = held_tables().held(held)
    if request.form.get("seen") != mark_of(_looked(held)):
        raise refused("table-changed-meanwhile")
    done = import_sent(desk(), files, _wanted(look=False))
    held_tables().release(held)
    tell(changes_headline(done))
    return url_for("same.table_page")


def _looked(held: str) -> Value:
    return import_sent(desk(), held_tables().held(held), _wanted(look=True))


def _wanted(look: bool) -> Wanted:
    args = request.args
    wanted = Wanted(look=look, keep_good=bool(args.get("keep_good")), file_wins=bool(args.get("file_wins")))
    return changed(wanted, withdraw_missing=args.get("withdraw", "").strip())
