"""Make the counter: one Flask application over one open store."""

import tempfile
import traceback
from datetime import timedelta
from importlib import import_module
from urllib.parse import urlsplit

from flask import Flask, current_app, g, redirect, request, url_for
from flask.typing import ResponseReturnValue
from flask_login import LoginManager
from flask_wtf.csrf import CSRFError, CSRFProtect
from werkzeug.exceptions import HTTPException

from ..actions.desk import Desk, open_desk
from ..actions.people import key_of_counter, today_at, who_is
from ..basics.problem import Refused
from .counter import CounterSetup
from .desks import COUNTER, NOBODY, STORE, Visitor, now, person
from .forms import refuse
from .guard import check_may_open
from .headers import tell_browser
from .limits import limiter
from .show import prepare, show
from .typed_again import hold_for

AREAS = (
    *("people", "today", "find", "sheets", "same", "alike", "jobs", "photos", "quotes", "links", "customer"),
    *("orders", "receiving", "margins", "shop", "search"),
)
"""Modules of `views/`, each with a `blueprint`."""

MOST_BYTES = 64 * 1024 * 1024
"""Largest upload: supplier's sheets of 300,000 rows are some 30 MB."""

MOST_FORM_BYTES, MOST_FORM_PARTS = 4 * 1024 * 1024, 5_000
LOG_IN_DAYS = 30
LOCAL_NAMES = ("localhost", "127.0.0.1", "[::1]")

csrf = CSRFProtect()


def make_app(setup: CounterSetup) -> Flask:
    """The counter, its database opened and migrated. Refuses what opening the database refuses."""
    app = Flask(__name__, template_folder="pages", static_folder="static")
    opened = open_desk(setup.database, today_at(setup.clock()), NOBODY)
    app.config.update(
        {
            COUNTER: setup,
            STORE: opened.store,
            "SECRET_KEY": key_of_counter(opened),
            "MAX_CONTENT_LENGTH": MOST_BYTES,
            "MAX_FORM_MEMORY_SIZE": MOST_FORM_BYTES,
            "MAX_FORM_PARTS": MOST_FORM_PARTS,
            "SESSION_COOKIE_NAME": "__Host-counter" if setup.is_https else "counter",
            "SESSION_COOKIE_HTTPONLY": True,
            "SESSION_COOKIE_SAMESITE": "Lax",
            "SESSION_COOKIE_SECURE": setup.is_https,
            "PERMANENT_SESSION_LIFETIME": timedelta(days=LOG_IN_DAYS),
            "SESSION_REFRESH_EACH_REQUEST": False,
            "TRUSTED_HOSTS": _hosts(setup),
            "WTF_CSRF_TIME_LIMIT": None,  # as long as the log-in: a page left open overnight still works
            "RATELIMIT_STORAGE_URI": "memory://",
        }
    )
    _companions(app)
    for area in AREAS:
        app.register_blueprint(import_module(f"{__package__}.views.{area}").blueprint)
    prepare(app)
    return app


def _hosts(setup: CounterSetup) -> list[str]:
    """Names the counter answers to: another name pointed at this computer (DNS rebinding) gets nothing."""
    return [*LOCAL_NAMES, urlsplit(setup.outward).hostname or "", *setup.hosts]


def _companions(app: Flask) -> None:
    app.before_request(check_may_open)
    csrf.init_app(app)
    limiter.init_app(app)
    manager = LoginManager(app)
    manager.session_protection = None  # the address of a phone changes; the secret is what counts
    manager.user_loader(_visitor)
    app.after_request(tell_browser)
    app.register_error_handler(Refused, _refused)
    app.register_error_handler(CSRFError, _stale)
    app.register_error_handler(HTTPException, _http)
    app.register_error_handler(Exception, _fault)


def _visitor(secret: str) -> Visitor | None:
    counting = Desk(store=current_app.config[STORE], at=now(), who=NOBODY)  # `desk()` would ask who is logged in
    me = who_is(counting, secret)
    return Visitor(me, secret) if me else None


def _refused(refusal: Refused) -> tuple[str, int]:
    """What an action refuses while a page is read."""
    refuse(refusal)
    return show("told.html", heading="", sentence="")


def _stale(_: CSRFError) -> ResponseReturnValue:
    """A form of an earlier log-in: what she typed herself she may send from here, anything else is refused."""
    me = person()
    if me is not None and (held := hold_for(me.person)):
        return redirect(url_for("people.typed_again_page", held=held), code=303)
    return show("told.html", heading="page-old", sentence="")[0], 400


def _http(error: HTTPException) -> tuple[str, int]:
    g.pop("problems", None)
    return show("told.html", heading=str(error.code), sentence="")[0], error.code or 500


def _fault(error: Exception) -> tuple[str, int]:
    """A fault of the program: told as ours, its trace kept in a file on the shop's computer and shown to nobody."""
    with tempfile.NamedTemporaryFile(
        "w", prefix="sourcing-fault-", suffix=".txt", delete=False, encoding="utf-8"
    ) as kept:
        kept.write("".join(traceback.format_exception(error)))
    where = request.url_rule.rule if request.url_rule else "no page"  # an address may hold a customer's secret
    print(f"sourcing serve: {request.method} {where}: {type(error).__name__}; details are in {kept.name}")
    try:
        return show("told.html", heading="500", sentence="")[0], 500
    except Exception:  # what broke the page breaks this one too: plain words then
        return "A fault of this program, not of what you did. Details are in a file on the shop's computer.", 500
