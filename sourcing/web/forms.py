"""Forms: one deed each, however often they are sent; what is refused comes back with what was typed."""

import hmac
import secrets
from collections.abc import Callable
from datetime import date
from typing import Concatenate, ParamSpec, TypeVar

from flask import current_app, flash, g, redirect, request
from markupsafe import Markup
from werkzeug.wrappers import Response

from ..actions.forms_sent import once
from ..basics.problem import Problem, Refused, refused
from .desks import desk, person
from .fields import note_field

P = ParamSpec("P")
R = TypeVar("R")

ONCE = "once"
LONGEST_NAME = 64

MIND = "mind"
"""The kind of sentence that tells what to mind; the pages know it by this word."""


def form_name() -> Markup:
    """The hidden field that makes a form one deed: every form that does something holds it. It says, signed, to whom
    the form was shown, so that what she typed is given back to nobody else (`typed_again`)."""
    me, name = person(), secrets.token_urlsafe(12)
    signed = f"{name}.{me.person}.{_signature(name, me.person)}" if me else name
    return Markup('<input type="hidden" name="{}" value="{}">').format(ONCE, signed)


def whose_form(name: str) -> int | None:
    """The number of the person to whom the form of that name was shown; None where it is not one of ours."""
    random, _dot, rest = name.partition(".")
    number, _dot, signature = rest.partition(".")
    if not (number.isascii() and number.isdecimal()) or len(name) > LONGEST_NAME:
        return None
    is_ours = hmac.compare_digest(signature.encode(), _signature(random, int(number)).encode())
    return int(number) if is_ours else None


def _signature(name: str, number: int) -> str:
    key = str(current_app.config["SECRET_KEY"]).encode()
    return hmac.new(key, f"form {name} of {number}".encode(), "sha256").hexdigest()[:24]


def deed(action: Callable[[], str], who: str = "") -> Response | None:
    """Do what the form sent asks for and go to the page the action names. None where it was refused: show the form
    again with `request.form`; why stands above it. The same form sent twice is done once and leads to the same page.
    """
    name = request.form.get(ONCE, "")
    try:
        if not 0 < len(name) <= LONGEST_NAME:
            raise refused("form-without-name")
        return redirect(once(desk(who), name, action), code=303)
    except Refused as refusal:
        refuse(refusal)
        return None


def refuse(refusal: Refused) -> None:
    """Show these problems above the page; the answer says that nothing was done (HTTP 409)."""
    g.problems = (*g.get("problems", ()), *refusal.problems)


def problems() -> tuple[Problem, ...]:
    """What was refused in this request."""
    return tuple(g.get("problems", ()))


def tell(sentence: str, undo: str = "") -> None:
    """Say on the next page what was done. `undo` is the page on which it can be taken back."""
    flash(sentence, category=undo or "told")


def mind(sentence: str) -> None:
    """Say on the next page what to mind about what was done."""
    flash(sentence, category=MIND)


def text(field: str) -> str:
    """What was typed in a field, without blanks around it; '' where nothing was."""
    return request.form.get(field, "").strip()


def read(field: str, parse: Callable[Concatenate[str, P], R], *more: P.args, **named: P.kwargs) -> R:
    """What was typed in a field as `parse` reads it. What it refuses is told as about that field."""
    return read_typed(field, text(field), parse, *more, **named)


def read_typed(field: str, typed: str, parse: Callable[Concatenate[str, P], R], *more: P.args, **named: P.kwargs) -> R:
    """The same of what is at hand already."""
    try:
        return parse(typed, *more, **named)
    except Refused as refusal:
        note_field(refusal.problems, field)
        raise


def is_sure() -> bool:
    """Whether it is ticked that what lies far off is right as typed (`sure_tick` of the pages)."""
    return bool(text("sure"))


def marked(field: str) -> tuple[str, ...]:
    """The values of the boxes marked under one name, or of a name sent several times."""
    return tuple(value for value in request.form.getlist(field) if value)


def day(field: str) -> date | None:
    """A day typed or picked, None where nothing was. Refuses what is no day."""
    return read(field, _day)


def asked_day(name: str) -> date | None:
    """The same of an address."""
    return read_typed(name, request.args.get(name, "").strip(), _day)


def day_in(address: str) -> date:
    """The day that stands in an address. Refuses what is no day."""
    found = _day(address)
    if found is None:
        raise refused("not-a-day", found="")
    return found


def _day(typed: str) -> date | None:
    try:
        return date.fromisoformat(typed) if typed else None
    except ValueError:
        raise refused("not-a-day", found=typed[:30]) from None
