"""Forms whose change is shown before it is kept: sent once to look, and once more when what was shown is agreed to."""

import hashlib
from collections.abc import Callable
from typing import TypeVar

from flask import request

from ...basics.problem import Refused
from ...basics.value import Value, to_json
from ..forms import refuse

Looked = TypeVar("Looked", bound=Value)

SEEN = "seen"
"""The hidden field that says what was shown: whatever was typed since is shown again first."""


def ahead(look: Callable[[], Looked]) -> Looked | None:
    """What the form sent would change; None where no form was sent, or it was refused (why stands above the page)."""
    if request.method != "POST":
        return None
    try:
        return look()
    except Refused as refusal:
        refuse(refusal)
        return None


def seen(looked: Value) -> bool:
    """Whether this very change was shown and is to be kept."""
    return "keep" in request.form and request.form.get(SEEN) == mark_of(looked)


def mark_of(looked: Value) -> str:
    """What the hidden field holds of a change that is shown."""
    return hashlib.sha256(to_json(looked)).hexdigest()[:16]
