"""Links by which a customer reads her quote and answers it once: made, shown once, handed over, revoked."""

from urllib.parse import urlsplit

from flask import Blueprint, Response, abort, g, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.customer_links import job_links, make_link, new_secret, revoke_link, signature_of
from ...actions.link_given import say_given
from ...actions.sheets_gone import sheets_gone_from_quote
from ...basics.person import CustomerLink
from ...basics.problem import Refused
from ...documents.link_code import qr_code
from ..app import LOCAL_NAMES
from ..desks import counter, desk
from ..forms import day, deed, refuse, tell, text
from ..guard import EVERYBODY, open_to
from ..headers import FILE
from ..show import show
from ..words import _, later
from .people import log_out_now

blueprint = Blueprint("links", __name__)

STANDINGS = (later("open"), later("answered"), later("revoked"), later("past its time"), later("to an older revision"))
"""Where a link may stand; the page translates them."""


@blueprint.get("/jobs/<job>/links")
@open_to(*EVERYBODY)
def links_page(job: str) -> ResponseReturnValue:
    """The links of a job, and the form for a new one."""
    gone = sheets_gone_from_quote(desk(), job)
    return show("links/links.html", job=job, links=job_links(desk(), job), secret=new_secret(), sheets_gone=gone)


@blueprint.post("/jobs/<job>/links")
@open_to(*EVERYBODY)
def make_link_now(job: str) -> ResponseReturnValue:
    """Make a link and show it, once. The form holds the secret, so sent twice it makes one link and shows it again;
    no page to go to is kept for it, because the address would be kept with it."""
    secret = text("secret")
    try:
        link = make_link(desk(), job, secret, day("until"))
    except Refused as refusal:
        refuse(refusal)
        return links_page(job)
    return _shown_once(link, secret)


@blueprint.post("/jobs/<job>/links/hand-over")
@open_to(*EVERYBODY)
def hand_over(job: str) -> ResponseReturnValue:
    """The tablet goes to the customer: this browser is logged out, so that it opens nothing but her page."""
    page = url_for("customer.customer_page", secret=text("secret"))
    log_out_now()
    return redirect(page, code=303)


@blueprint.route("/jobs/<job>/links/<int:link>/revoke", methods=["GET", "POST"])
@open_to(*EVERYBODY)
def revoke_page(job: str, link: int) -> ResponseReturnValue:
    """Ask once more, then revoke: it can't be undone, for nobody knows the link's secret."""
    if request.method == "POST" and (gone := deed(lambda: _revoke(job, link))):
        return gone
    rows = [row for row in job_links(desk(), job).rows if row.link.link == link]
    if not rows:
        abort(404)
    return show("links/revoke.html", job=job, row=rows[0])


@blueprint.get("/jobs/<job>/links/<int:link>/signature.png")
@open_to(*EVERYBODY)
def signature(job: str, link: int) -> ResponseReturnValue:
    """The signature drawn with an answer."""
    return png(signature_of(desk(), job, link))


def png(drawing: bytes) -> Response:
    """A drawing we made anew, as nothing but an image."""
    if not drawing:
        abort(404)
    g.policy = FILE
    return Response(drawing, content_type="image/png")


@blueprint.post("/jobs/<job>/links/<int:link>/given")
@open_to(*EVERYBODY)
def given_now(job: str, link: int) -> ResponseReturnValue:
    """Somebody gave the link to the customer."""
    return deed(lambda: _given(job, link)) or links_page(job)


def _given(job: str, link: int) -> str:
    say_given(desk(), job, link)
    tell(_("It is noted that the customer has link %(link)s.") % {"link": link})
    return url_for("links.links_page", job=job)


def _revoke(job: str, link: int) -> str:
    revoke_link(desk(), job, link)
    tell(_("The link opens nothing any more."))
    return url_for("links.links_page", job=job)


def _shown_once(link: CustomerLink, secret: str) -> ResponseReturnValue:
    address = counter().outward.rstrip("/") + url_for("customer.customer_page", secret=secret)
    only_here = urlsplit(address).hostname in {name.strip("[]") for name in LOCAL_NAMES}
    return show(
        "links/link.html", link=link, secret=secret, address=address, code=qr_code(address), only_here=only_here
    )
