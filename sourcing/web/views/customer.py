"""The customer's page: one quote, read and answered once by a link nobody can guess.

No log-in, no cookie. The forms bear no CSRF token, so that a phone that lost its cookies can still send them: what
such a token keeps from an attacker is the secret in the address itself, and the Origin of every form is checked.

Referrer-Policy stays 'same-origin', which tells the address to no other site. 'no-referrer' would tell the counter no
more than that, and makes browsers send 'Origin: null' with forms (Fetch standard, "append a request Origin header").
"""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, abort, g, redirect, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from ...actions.customer_answer import Answer, answer, total_with
from ...actions.customer_links import OpenedLink, open_link, photo_of_link
from ...actions.link_answers import PAGE
from ...actions.link_given import note_opened
from ...actions.shop_facts import shop_facts
from ...basics.problem import Refused
from ...documents.customer_page import answered_values, page_values
from ..app import csrf
from ..desks import desk, person
from ..files import paper
from ..forms import deed, text
from ..guard import open_to_anybody
from ..headers import FILE
from ..limits import LINKS, limiter
from ..show import show
from .links import png

blueprint = Blueprint("customer", __name__)
csrf.exempt(blueprint)

LINE = "line-"
MARKS = ("approve", "decline")
WRITTEN = ("name", "conditions", "words")
ANSWERED = "the customer's page"
"""What is kept as the page that an answer led to: the true address has the secret in it, which is kept nowhere."""


def opened_nothing(response: Response) -> bool:
    """Whether a link opened nothing: only such tries count, so that many customers may share one address."""
    return response.status_code in (404, 410)


@blueprint.route("/q/<secret>", methods=["GET", "POST"])
@open_to_anybody
@limiter.limit(LINKS, deduct_when=opened_nothing)
def customer_page(secret: str) -> ResponseReturnValue:
    """The quote to be answered; once it is, what was answered."""
    if request.method == "POST" and text("do") == "send" and deed(lambda: _answer(secret), PAGE):
        return redirect(url_for("customer.customer_page", secret=secret), code=303)
    if text("do") == "total" and _marks(request.form) and not any(map(text, WRITTEN)):
        return redirect(_with_marks(secret), code=303)
    try:
        link = open_link(desk(PAGE), secret)
    except Refused as refusal:
        return _opens_nothing(refusal)
    if person() is None:  # somebody of the shop who looks at it is not the customer
        note_opened(desk(PAGE), secret)
    g.locale = link.frozen.quote.locale
    return _asked(link) if link.link.answered_at is None else _answered(link)


@blueprint.get("/q/<secret>/paper")
@open_to_anybody
@limiter.limit(LINKS, deduct_when=opened_nothing)
def customer_paper(secret: str) -> ResponseReturnValue:
    """The paper as it was kept, to be read or printed."""
    try:
        return paper(open_link(desk(PAGE), secret).frozen.paper)
    except Refused as refusal:
        return _opens_nothing(refusal)


@blueprint.get("/q/<secret>/photo/<int:number>.jpg")
@open_to_anybody
@limiter.limit(LINKS, deduct_when=opened_nothing)
def customer_photo(secret: str, number: int) -> ResponseReturnValue:
    """A photo that stands on this quote; no other photo, of this job or another."""
    try:
        jpeg = photo_of_link(desk(PAGE), secret, number)
    except Refused:
        jpeg = None
    if jpeg is None:
        abort(404)
    g.policy = FILE
    return Response(jpeg, content_type="image/jpeg")


@blueprint.get("/q/<secret>/signature.png")
@open_to_anybody
@limiter.limit(LINKS, deduct_when=opened_nothing)
def customer_signature(secret: str) -> ResponseReturnValue:
    """The signature drawn with the answer."""
    try:
        signed = open_link(desk(PAGE), secret).signature
    except Refused:
        signed = None
    return png(signed.drawing if signed else b"")


def _asked(link: OpenedLink) -> ResponseReturnValue:
    """The quote with its questions; what the marked lines come to, once some are marked or it was asked for."""
    filled = request.form if request.method == "POST" else MultiDict(_marks(request.args))
    values = page_values(link.frozen.quote, link.holding, link.asked, link.totals, link.photos)
    is_told = bool(_marks(filled)) or text("do") == "total"
    total = total_with(link, _marked(filled, "approve")) if is_told else None
    return show("customer/quote.html", typed=filled, total=total, **values)


def _with_marks(secret: str) -> str:
    """Her page with the lines marked so far in its address, so that Back leads to a page a browser can ask for anew.
    What she wrote herself never goes there: where there is some, the answer to the form shows the total."""
    return url_for("customer.customer_page", secret=secret, **_marks(request.form), _anchor="comes-to")


def _answered(link: OpenedLink) -> ResponseReturnValue:
    signed = link.signature
    return show(
        "customer/answered.html",
        signed_by=signed.name if signed else "",
        has_drawing=bool(signed and signed.drawing),
        at=link.link.answered_at,
        **answered_values(link.frozen, link.given, link.before, link.deposit),
    )


def _opens_nothing(refusal: Refused) -> ResponseReturnValue:
    """No figure of any quote; an unknown link and a revoked one look the same."""
    is_unknown = any(one.code == "link-unknown" for one in refusal.problems)
    g.problems = ()
    page, _status = show(
        "customer/nothing.html",
        sentences=[one.sentence() for one in refusal.problems],
        telephone="" if is_unknown else shop_facts(desk(PAGE)).telephone,
        wrote=() if is_unknown else [words for words in map(text, WRITTEN[1:]) if words],
    )
    return page, 404 if is_unknown else 410


def _answer(secret: str) -> str:
    said = Answer(
        yes=_marked(request.form, "approve"),
        no=_marked(request.form, "decline"),
        name=text("name"),
        conditions=text("conditions"),
        words=text("words"),
        drawing=text("drawing"),
    )
    answer(desk(PAGE), secret, said)
    return ANSWERED


def _marks(sent: Mapping[str, str]) -> dict[str, Any]:
    """Of all that was sent, the lines with a yes or a no."""
    return {key: value for key, value in sent.items() if key.startswith(LINE) and value in MARKS}


def _marked(sent: Mapping[str, str], word: str) -> tuple[str, ...]:
    """Labels of the lines marked so."""
    return tuple(key.removeprefix(LINE) for key, value in _marks(sent).items() if value == word)
