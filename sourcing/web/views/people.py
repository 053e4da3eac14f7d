"""Logging in and out, the owner's first log-in, one's own password."""

import hmac

from flask import Blueprint, redirect, request, session, url_for
from flask.typing import ResponseReturnValue
from flask_login import current_user, login_user, logout_user

from ...actions.people import LoggedIn, change_password, first_owner, has_owner, log_in, log_out
from ...basics.problem import Refused, refused
from ..desks import Visitor, counter, desk
from ..forms import deed, refuse, tell, text
from ..guard import EVERYBODY, open_to, open_to_anybody, own_page
from ..limits import LOG_INS, limiter, name_tried, was_refused
from ..show import show
from ..typed_again import held_name, held_typed, let_typed_go
from ..words import _

blueprint = Blueprint("people", __name__)


@blueprint.get("/log-in")
@open_to_anybody
def log_in_page() -> ResponseReturnValue:
    """Ask for name and password; before the first log-in, make the owner's."""
    if not has_owner(desk()):
        return redirect(url_for("people.first_visit_page"))
    ended = bool(request.args.get("ended"))
    return show("people/log_in.html", back=own_page(request.args.get("back", "/")), ended=ended, held=bool(held_name()))


@blueprint.post("/log-in")
@open_to_anybody
@limiter.limit(LOG_INS, deduct_when=was_refused)
@limiter.limit(LOG_INS, key_func=name_tried, deduct_when=was_refused)
def log_in_now() -> ResponseReturnValue:
    """Log in, and go back to the page asked for."""
    back, held = own_page(request.form.get("back", "/")), held_name()
    try:
        _enter(log_in(desk(), text("name"), request.form.get("password", "")))
    except Refused as refusal:
        refuse(refusal)
        return show("people/log_in.html", back=back, ended=bool(held), held=bool(held))
    return redirect(url_for("people.typed_again_page", held=held) if held else back, code=303)


@blueprint.route("/typed-again", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def typed_again_page() -> ResponseReturnValue:
    """What somebody had typed when her log-in had ended: sent now, or let go. Nobody else's is shown."""
    name = request.args.get("held", "")
    typed = held_typed(name, current_user.person.person)
    if request.method == "POST" or typed is None:
        let_typed_go(name)
        return redirect(url_for("today.today_page"), code=303)
    return show("people/typed_again.html", held=typed, name=name)


@blueprint.get("/first-visit")
@open_to_anybody
def first_visit_page() -> ResponseReturnValue:
    """Ask for the owner's name and password."""
    if has_owner(desk()):
        return redirect(url_for("people.log_in_page"))
    return show("people/first_visit.html", asks_code=bool(counter().first_code))


@blueprint.post("/first-visit")
@open_to_anybody
@limiter.limit(LOG_INS, deduct_when=was_refused)
def first_visit_now() -> ResponseReturnValue:
    """Make the owner's log-in."""
    try:
        if not hmac.compare_digest(text("code").encode(), counter().first_code.encode()):
            raise refused("first-code-wrong")
        _enter(first_owner(desk(text("name")), text("name"), request.form.get("password", "")))
    except Refused as refusal:
        refuse(refusal)
        return show("people/first_visit.html", asks_code=bool(counter().first_code))
    return redirect(url_for("today.today_page"), code=303)


@blueprint.post("/log-out")
@open_to_anybody
def log_out_now() -> ResponseReturnValue:
    """Log out: this log-in's secret opens nothing any more."""
    if current_user.is_authenticated:
        log_out(desk(), current_user.get_id())
    logout_user()
    session.clear()
    return redirect(url_for("people.log_in_page"), code=303)


@blueprint.route("/my-password", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def my_password() -> ResponseReturnValue:
    """Change one's own password."""
    if request.method == "POST" and (gone := deed(_change_mine)):
        return gone
    return show("people/my_password.html")


def _change_mine() -> str:
    me = LoggedIn(person=current_user.person, secret=current_user.get_id())
    change_password(desk(), me, request.form.get("old", ""), request.form.get("new", ""))
    tell(_("Your password is changed. Everywhere else you are logged out."))
    return url_for("today.today_page")


def _enter(new: LoggedIn) -> None:
    """From here on the browser has this log-in and nothing of what it had before (no fixed session)."""
    session.clear()
    login_user(Visitor(new.person, new.secret))
    session.permanent = True
