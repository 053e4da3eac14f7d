"""The answers that came through a customer's link, and those that held for other lines of its paper by then."""

from sqlalchemy import Connection

from ..basics.approval import Approval, How
from ..basics.person import CustomerLink
from ..basics.quote import Quote
from ..basics.value import changed
from ..quoting.approvals import standing_answers
from ..storage.after_quote import withdrawals
from ..storage.quotes import approvals, quote

PAGE: How = "customer's page"
"""How an answer comes through a link, and who takes it down."""


def contact_of(link: CustomerLink) -> str:
    """What stands as the number called or address with an answer given through a link."""
    return f"link {link.link}"


def given_through(connection: Connection, link: CustomerLink) -> tuple[Approval, ...]:
    """The answers that came through the link, as they were given."""
    return tuple(one for _, one in _numbered_through(connection, link))


def _numbered_through(connection: Connection, link: CustomerLink) -> list[tuple[int, Approval]]:
    if link.answered_at is None:
        return []
    every = approvals(connection, link.job)
    mine = [
        (at, one) for at, one in every if one.how == PAGE and one.taken_by == PAGE and one.contact == contact_of(link)
    ]
    return [(at, one) for at, one in mine if one.revision == link.revision and one.at == link.answered_at]


def held_before(connection: Connection, link: CustomerLink, paper: Quote) -> dict[str, Approval]:
    """By label the answers that held when it was answered, whatever came of them later."""
    first = min((at for at, _ in _numbered_through(connection, link)), default=0)
    gone = {
        one.approval for one in withdrawals(connection, link.job) if link.answered_at and one.at <= link.answered_at
    }
    kept = [one for at, one in approvals(connection, link.job) if at < first and at not in gone]
    earlier = {one.revision: quote(connection, link.job, one.revision).quote for one in kept}
    return standing_answers(paper, [changed(one, holds="yes") for one in kept], {**earlier, paper.revision: paper})
