"""The owner's page of people: who may log in and as what, a password set anew, letting go and letting in again."""

from typing import get_args

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.people import add_somebody, change_role, let_go, let_in_again, one_person, people_now, set_password
from ...basics.person import Role
from ...basics.typed import one_word
from ..desks import desk
from ..forms import deed, read, tell, text
from ..guard import OWNER, open_to
from ..show import show
from ..words import _, later

ROLES: tuple[Role, ...] = get_args(Role)
NAMES = (later("technician"), later("clerk"), later("owner"))
"""Pages translate a role when they show it."""


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/people", view_func=people_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/people/<int:number>", view_func=person_page)
    for what, does in (("role", role_now), ("password", password_now), ("let-go", let_go_now), ("let-in", let_in_now)):
        blueprint.add_url_rule(f"/people/<int:number>/{what}", view_func=does, methods=["POST"])


@open_to(*OWNER)
def people_page() -> ResponseReturnValue:
    """Who may log in; and somebody new."""
    if request.method == "POST" and (gone := deed(_add)):
        return gone
    return show("shop/people.html", found=people_now(desk()))


@open_to(*OWNER)
def person_page(number: int) -> ResponseReturnValue:
    """One person, and what can be changed of her."""
    return show("shop/person.html", one=one_person(desk(), number))


@open_to(*OWNER)
def role_now(number: int) -> ResponseReturnValue:
    """Another role."""
    return deed(lambda: _role(number)) or person_page(number)


@open_to(*OWNER)
def password_now(number: int) -> ResponseReturnValue:
    """A password set anew."""
    return deed(lambda: _password(number)) or person_page(number)


@open_to(*OWNER)
def let_go_now(number: int) -> ResponseReturnValue:
    """Somebody may log in no more."""
    return deed(lambda: _let_go(number)) or person_page(number)


@open_to(*OWNER)
def let_in_now(number: int) -> ResponseReturnValue:
    """And may again."""
    return deed(lambda: _let_in(number)) or person_page(number)


def _add() -> str:
    name, role = text("name"), read("role", one_word, "role", ROLES)
    add_somebody(desk(), name, role, request.form.get("password", ""))
    tell(
        _("%(name)s may log in. Tell %(name)s the password by word of mouth; it is changed under My password.")
        % {"name": name}
    )
    return url_for("shop.people_page")


def _role(number: int) -> str:
    change_role(desk(), number, read("role", one_word, "role", ROLES))
    tell(_("The role is changed, from the next page on."), undo=url_for("shop.person_page", number=number))
    return url_for("shop.people_page")


def _password(number: int) -> str:
    set_password(desk(), number, request.form.get("password", ""))
    tell(_("The password is set anew. Whoever was logged in with the old one is logged out."))
    return url_for("shop.people_page")


def _let_go(number: int) -> str:
    let_go(desk(), number)
    tell(_("No more log-in for this name, from now on."), undo=url_for("shop.person_page", number=number))
    return url_for("shop.people_page")


def _let_in(number: int) -> str:
    let_in_again(desk(), number)
    tell(_("May log in again, with the same password as before."), undo=url_for("shop.person_page", number=number))
    return url_for("shop.people_page")
