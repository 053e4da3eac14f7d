"""The desk a page works at: the counter's one open store, the moment, and the person whose page it is."""

from datetime import datetime
from typing import cast

from flask import current_app, g
from flask_login import current_user

from ..actions.desk import Desk
from ..actions.people import today_at
from ..basics.person import Person
from .counter import CounterSetup

COUNTER = "sourcing.counter"
STORE = "sourcing.store"
NOBODY = "the counter"


class Visitor:
    """Who is logged in, as Flask-Login wants it; `get_id` is the secret of this log-in, not the person's number."""

    is_active = True
    is_anonymous = False
    is_authenticated = True

    def __init__(self, person: Person, secret: str) -> None:
        self.person = person
        self.secret = secret

    def get_id(self) -> str:
        """What the signed cookie carries."""
        return self.secret


def counter() -> CounterSetup:
    """What the counter was started with."""
    return cast(CounterSetup, current_app.config[COUNTER])


def now() -> datetime:
    """The moment of this request: the same for all that it does."""
    if "now" not in g:
        g.now = today_at(counter().clock())
    return cast(datetime, g.now)


def person() -> Person | None:
    """Who is logged in; None where nobody is, as on the customer's page."""
    return current_user.person if current_user.is_authenticated else None


def desk(who: str = "") -> Desk:
    """The desk of this request. Deeds are signed by the person logged in, or by `who` on the customer's page."""
    me = person()
    return Desk(store=current_app.config[STORE], at=now(), who=who or (me.name if me else NOBODY))


def may(*roles: str) -> bool:
    """Whether the person logged in has one of the roles."""
    me = person()
    return me is not None and me.role in roles


def sees_costs() -> bool:
    """Whether what the shop pays may be on this page."""
    return may("clerk", "owner")
