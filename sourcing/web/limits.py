"""How often things may be tried: counted in memory, for the counter is one process."""

from flask import Response, request
from flask_limiter import Limiter
from flask_limiter.util import get_remote_address

limiter = Limiter(get_remote_address, headers_enabled=False)

LOG_INS = "10 per 10 minutes"
"""Wrong tries to log in from one address or for one name; ten people behind one address who know theirs count none."""

LINKS = "30 per minute"
"""Customers' pages asked for from one address."""


def name_tried() -> str:
    """Whose log-in is tried, so that one name can't be tried from many addresses."""
    return f"name:{' '.join(request.form.get('name', '').split()).casefold()}"


def was_refused(answer: Response) -> bool:
    """Whether a try was wrong, so that it counts."""
    return answer.status_code == 409
