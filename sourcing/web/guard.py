"""Who may open which page: nobody, unless the page says so. One rule for every request, before any page runs."""

from collections.abc import Callable
from typing import TypeVar
from urllib.parse import urlsplit

from flask import Response, abort, current_app, redirect, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.wrappers import Response as AnyResponse

from ..basics.person import Role
from .desks import person
from .typed_again import hold_typed

View = TypeVar("View", bound=Callable[..., ResponseReturnValue])

EVERYBODY: tuple[Role, ...] = ("technician", "clerk", "owner")
WITH_COSTS: tuple[Role, ...] = ("clerk", "owner")
OWNER: tuple[Role, ...] = ("owner",)

OPEN_TO = "open_to"
ANYBODY = "anybody"


def open_to(*roles: Role) -> Callable[[View], View]:
    """Mark a page as open to these roles. A page without a mark opens to nobody."""

    def mark(view: View) -> View:
        setattr(view, OPEN_TO, roles)
        return view

    return mark


def open_to_anybody(view: View) -> View:
    """Mark a page that opens without a log-in: log-in itself, and what a customer's link leads to."""
    setattr(view, OPEN_TO, ANYBODY)
    return view


def check_may_open() -> ResponseReturnValue | None:
    """Before every request: another site's form is refused, nobody is sent to log in, a wrong role is refused."""
    _check_origin()
    if request.endpoint is None:
        return None  # no such page: told as such by Flask
    if request.endpoint == "static":
        return None
    roles = getattr(current_app.view_functions[request.endpoint], OPEN_TO, ())
    if roles == ANYBODY:
        return None
    me = person()
    if me is None:
        return _to_log_in()
    if me.role not in roles:
        abort(403)
    return None


def _check_origin() -> None:
    """A form must come from a page of the counter. Browsers always say where a form was sent from (Fetch standard)."""
    origin = request.headers.get("Origin")
    if request.method in ("GET", "HEAD", "OPTIONS") or origin is None:
        return
    if origin == "null" or urlsplit(origin).netloc != request.host:
        abort(403)


def _to_log_in() -> AnyResponse | Response:
    """To the log-in, and from there back to a page that can be read. A form is held with what was typed in it: a
    form's address alone would be no page."""
    if request.method == "GET":
        return redirect(url_for("people.log_in_page", back=request.full_path.rstrip("?") or None))
    hold_typed()
    return redirect(url_for("people.log_in_page", ended="yes"))


def own_page(address: str) -> str:
    """The address where it is one of the counter's own pages, else the first page: nobody is sent elsewhere."""
    parts = urlsplit(address)
    is_own = address.startswith("/") and not address.startswith(("//", "/\\")) and not parts.netloc and not parts.scheme
    return address if is_own and "\\" not in address and address.isprintable() else "/"
