"""Forms whose change is shown before it is kept: sent once to look, and once more when what was shown is agreed to."""

import hashlib
from collections.abc import Callable
from typing import TypeVar

from flask import request
from werkzeug.wrappers import Response

from ...basics.problem import Refused, refused
from ...basics.value import Value, to_json
from ..forms import deed, problems, refuse

Looked = TypeVar("Looked", bound=Value)

SEEN = "seen"
"""The hidden field that says what was shown: whatever was typed since is shown again first."""

NOT_SEEN = "not-seen-yet"


def kept(look: Callable[[], Value], keep: Callable[[], str]) -> Response | None:
    """Keep what was shown, once however often the form is sent. None where it was only sent to look, or was refused."""
    if request.method != "POST" or "keep" not in request.form:
        return None

    def seen_and_kept() -> str:
        if request.form.get(SEEN) != mark_of(look()):
            raise refused(NOT_SEEN)
        return keep()

    return deed(seen_and_kept)


def ahead(look: Callable[[], Looked]) -> Looked | None:
    """What the form sent would change; None where no form was sent, or it was refused (why stands above the page)."""
    if request.method != "POST" or any(one.code != NOT_SEEN for one in problems()):
        return None
    try:
        return look()
    except Refused as refusal:
        refuse(refusal)
        return None


def mark_of(looked: Value | None) -> str:
    """What the hidden field holds of a change that is shown."""
    return hashlib.sha256(to_json(looked)).hexdigest()[:16] if looked else ""
