"""The shop of answered_shop with links to revision 2; what opens, what is refused, drawings as a browser sends them."""

import base64
from collections.abc import Callable
from datetime import date, datetime, timedelta
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from sourcing.actions.customer_answer import Answer, answer
from sourcing.actions.customer_links import (
    LinkRow,
    job_links,
    make_link,
    new_secret,
    open_link,
)
from sourcing.actions.desk import Desk
from sourcing.actions.drawn_signature import START
from sourcing.basics.person import CustomerLink
from sourcing.basics.problem import Refused
from tests.actions.answered_shop import CALLED, at, quoted, torn_down

HER = "Maud Tilbrook"
PAGE = "customer's page"
Deed = Callable[[Path, str], None]
LATER = CALLED + timedelta(minutes=25)


def asked(folder: Path) -> str:
    """Revision 2: 1 belt, 2 its freight; A keepers, B idler, C bar, D the extras' freight."""
    number = quoted(folder)
    torn_down(folder, number)
    return number


def linked(folder: Path, until: date | None = None) -> tuple[str, str, CustomerLink]:
    """The job, the secret of a link to its revision 2, and that link."""
    number, secret = asked(folder), new_secret()
    return number, secret, make_link(at(folder), number, secret, until)


def her(folder: Path, moment: datetime = LATER) -> Desk:
    """The desk of the customer's page."""
    return at(folder, moment, PAGE)


def opens(folder: Path, secret: str, moment: datetime = LATER) -> str:
    """The code of the refusal with which the link opens nothing; blank where it opens."""
    try:
        open_link(her(folder, moment), secret)
    except Refused as refusal:
        return refusal.problems[0].code
    return ""


def refusal_of(folder: Path, secret: str, words: Answer, moment: datetime = LATER) -> Refused:
    """Why an answer is refused; nothing of it is kept."""
    before = job_links(at(folder), "2026-0001").rows
    with pytest.raises(Refused) as caught:
        answer(her(folder, moment), secret, words)
    assert job_links(at(folder), "2026-0001").rows == before
    return caught.value


def row(folder: Path, number: str, moment: datetime = LATER) -> LinkRow:
    """The newest link in the list."""
    return job_links(at(folder, moment), number).rows[0]


def drawing(size: tuple[int, int] = (900, 300), kind: str = "PNG") -> str:
    """A line across a canvas, as a browser sends it."""
    picture = Image.new("RGBA", size, (0, 0, 0, 0))
    ImageDraw.Draw(picture).line([(30, 40), (size[0] // 2, size[1] - 20)], fill="black", width=6)
    made = BytesIO()
    picture.convert("RGB" if kind == "JPEG" else "RGBA").save(made, format=kind)
    return START + base64.b64encode(made.getvalue()).decode()
