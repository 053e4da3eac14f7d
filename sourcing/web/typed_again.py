"""A form that was sent after its log-in had ended: what was typed is held for a while, for that person alone.

It is held in memory, under a name only this browser's cookie knows, and given back after the next log-in only to whom
the form was shown: her number stands signed in the form (`forms.form_name`). Passwords and secrets are never held.
"""

import secrets
import time
from threading import Lock
from typing import NamedTuple

from flask import request, session

from .forms import ONCE, whose_form

HELD = "typed"
"""Under this name the session knows what is held."""

NEVER = frozenset(("password", "secret", "csrf_token", ONCE))
NOT_OF = ("//", "/log-in", "/first-visit", "/my-password", "/people", "/log-out", "/q/")
"""Forms that are about passwords, or a customer's; and an address that would lead to another site."""

NOT_TYPED = frozenset(("seen", "version", "keep", "look", "what", "do"))
"""Fields of our own making: they go back with the form, and are not shown."""

MOST, MOST_CHARACTERS, MOST_BYTES, SECONDS = 50, 60_000, 256_000, 1800


class Typed(NamedTuple):
    """A form as it was sent: its name, whose it was, where it goes, its fields in order, and when.

    With the same name it is sent again, so that it is one deed however often that is done.
    """

    name: str
    person: int
    address: str
    fields: tuple[tuple[str, str], ...]
    at: float

    @property
    def shown(self) -> tuple[str, ...]:
        """What a person typed of it, to recognise it by."""
        words = (value.strip() for name, value in self.fields if name not in NOT_TYPED)
        return tuple(dict.fromkeys(one for one in words if one))


class _HeldForms:
    """At most so many, so long; what is taken is gone."""

    def __init__(self) -> None:
        self._held: dict[str, Typed] = {}
        self._lock = Lock()

    def hold(self, typed: Typed) -> str:
        """Keep it; the name to take it by."""
        name = secrets.token_urlsafe(18)
        with self._lock:
            young = {key: one for key, one in self._held.items() if one.at > typed.at - SECONDS}
            self._held = dict([*young.items(), (name, typed)][-MOST:])
        return name

    def look(self, name: str, person: int) -> Typed | None:
        """What is held under that name, where it is this person's and not too old; anybody else's goes at once."""
        with self._lock:
            found = self._held.get(name)
            if found and (found.person != person or found.at <= time.monotonic() - SECONDS):
                del self._held[name]
                return None
            return found

    def let_go(self, name: str) -> None:
        """It is held no more."""
        with self._lock:
            self._held.pop(name, None)


_FORMS = _HeldForms()


def hold_typed() -> None:
    """Hold the form of this request, which came without a log-in, for whom it was shown to."""
    typed = _typed()
    if typed:
        session[HELD] = _FORMS.hold(typed)


def hold_for(person: int) -> str:
    """Hold the form of this request where it was shown to this person; the name to take it by, blank where not."""
    typed = _typed()
    return _FORMS.hold(typed) if typed and typed.person == person else ""


def _typed() -> Typed | None:
    """The form of this request; None where it is none of ours or can't be held."""
    if (request.content_length or MOST_BYTES) >= MOST_BYTES:
        return None  # with files, or far too long: nobody without a log-in makes the counter read that
    name = request.form.get(ONCE, "")
    person = whose_form(name)
    if person is None or request.path.startswith(NOT_OF):
        return None
    fields = tuple((key, value) for key, value in request.form.items(multi=True) if key not in NEVER)
    if sum(len(key) + len(value) for key, value in fields) > MOST_CHARACTERS:
        return None
    return Typed(name, person, request.full_path.rstrip("?"), fields, time.monotonic())


def held_name() -> str:
    """The name under which something is held for this browser, blank where nothing is."""
    return str(session.get(HELD, ""))


def held_typed(name: str, person: int) -> Typed | None:
    """What this person had typed when her log-in had ended; None where nothing is held for her."""
    return _FORMS.look(name, person)


def let_typed_go(name: str) -> None:
    """Hold it no more."""
    _FORMS.let_go(name)
