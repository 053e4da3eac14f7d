"""When a quote counts as given to the customer by a link: when it is first opened, or when somebody says it was given.

A link that was only made is in nobody's hands yet, and a record that said so would be untrue.
"""

from sqlalchemy import Connection

from ..basics.person import CustomerLink
from ..basics.problem import refused
from ..storage.after_quote import Sending, add_sending, sendings
from ..storage.links import links
from .customer_links import SECRET, link_by_secret
from .desk import Desk, Pen
from .link_answers import PAGE, contact_of

GIVE = "give quote"


def note_opened(desk: Desk, secret: str) -> None:
    """Note that the customer has the quote, the first time her page is opened. Nothing where that is noted already."""
    with desk.store.reading() as connection:
        link = link_by_secret(connection, secret) if SECRET.fullmatch(secret) else None
        if link is None or is_noted(connection, link):
            return
    with desk.writing(GIVE) as pen:
        if not is_noted(pen.connection, link):
            note_given(pen, link, link.made_by, "opened for the first time")


def say_given(desk: Desk, job: str, number: int) -> CustomerLink:
    """Note that somebody of the shop gave the link to the customer. Refuses a link that opens nothing any more; where
    it is noted already, nothing is done."""
    with desk.writing(GIVE) as pen:
        link = next((one for one in links(pen.connection, job) if one.link == number), None)
        if link is None or link.revoked_at is not None:
            raise refused("link-not-open", found=number, job=job)
        if not is_noted(pen.connection, link):
            note_given(pen, link, desk.who, "given")
        return link


def note_given(pen: Pen, link: CustomerLink, who: str, how: str) -> None:
    """Keep the sending, with the deed beside it."""
    sending = Sending(job=link.job, revision=link.revision, at=pen.desk.at, who=who, how=PAGE, sent_to=contact_of(link))
    add_sending(pen.connection, sending)
    pen.note(link.job, f"revision {link.revision} is with the customer: {contact_of(link)}, {how}")


def is_noted(connection: Connection, link: CustomerLink) -> bool:
    """Whether the quote counts as given by this link."""
    return any(one.how == PAGE and one.sent_to == contact_of(link) for one in sendings(connection, link.job))
