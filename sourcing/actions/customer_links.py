"""Links by which a customer reads one revision of her quote and answers it once: made, listed, revoked, opened.

The secret in a link has 256 random bits and is never kept: only its SHA-256 is, so a copy of the database opens no
quote. It is drawn when the page with the form is made and comes back with the form, so the same form sent twice makes
one link and shows the same address.
"""

import re
import secrets
from collections.abc import Mapping
from datetime import date, datetime, time

from sqlalchemy import Connection

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.person import CustomerLink, Photo, Signature
from ..basics.problem import refused
from ..basics.quote import FrozenQuote, Quote
from ..basics.value import Value
from ..quoting.choices import asked_about, choice_totals
from ..quoting.deposit import deposit_of
from ..storage.after_quote import bill_of, sendings
from ..storage.jobs import job as stored_job
from ..storage.links import add_link, change_link, link_of_secret, links, photo_bytes, photos, signatures
from ..storage.quotes import newest_quote, quote
from .answers import standing_of
from .desk import Desk, Pen
from .link_answers import PAGE, contact_of, given_through, held_before
from .people import sha256

SECRET_BYTES = 32
SECRET = re.compile(r"[A-Za-z0-9_-]{43}")
"""32 bytes in URL-safe Base64 without padding (RFC 4648, 5)."""

LAST_MINUTE = time(23, 59)


class LinkRow(Value, frozen=True, kw_only=True):
    """A link in the list of a job, where it stands in a word, and how the answer through it was signed. `given_at`:
    when it was first opened or somebody said it was given; None: nobody knows that the customer has it."""

    link: CustomerLink
    standing: str
    signature: Signature | None
    given_at: datetime | None = None

    @property
    def is_open(self) -> bool:
        """Whether it still takes an answer."""
        return self.standing == "open"


class JobLinks(Value, frozen=True, kw_only=True):
    """The links of a job, newest first, and what a new one would open; `newest` None where the job has no quote.

    `is_billed`, `is_over`, `is_answered` (every line of it): why no link can be made now.
    """

    newest: Quote | None
    rows: tuple[LinkRow, ...]
    is_billed: bool
    is_over: bool
    is_answered: bool


class OpenedLink(Value, frozen=True, kw_only=True):
    """What a link opens: the revision it is for, and how it stands. `asked` are the labels to be answered.

    `totals` are as `choice_totals` gives them. `holding` is what holds for each line now. Once the link is answered
    nothing is asked, `given` are the answers that came through it, `before` those that held for other lines then, and
    `deposit` what is asked ahead for all that was approved by then; None where nothing was, or the quote asks none.
    """

    link: CustomerLink
    frozen: FrozenQuote
    holding: Mapping[str, Approval]
    asked: tuple[str, ...]
    totals: tuple[Money, ...]
    photos: tuple[Photo, ...]
    given: tuple[Approval, ...] = ()
    before: Mapping[str, Approval] = {}
    deposit: Money | None = None
    signature: Signature | None = None


def new_secret() -> str:
    """The secret of a link that is about to be made."""
    return secrets.token_urlsafe(SECRET_BYTES)


def make_link(desk: Desk, job: str, secret: str, until: date | None = None) -> CustomerLink:
    """A link to the job's newest revision, open to the end of a day (None: the quote's last valid day). An older one
    that waits for its answer opens nothing any more. Whether it reached her is noted apart (`link_given`).

    Refuses a job without a quote or billed, a quote past its validity or with every line answered, a day before today
    or past the quote's last, and a secret that is none of ours.
    """
    if not SECRET.fullmatch(secret):
        raise refused("link-secret-wrong")
    with desk.writing("make link") as pen:
        made = link_of_secret(pen.connection, sha256(secret))
        if made is not None and made.job == job:
            return made
        paper = _answerable(pen.connection, desk, job)
        new = CustomerLink(
            link=0,
            job=job,
            revision=paper.revision,
            made_at=desk.at,
            made_by=desk.who,
            until=_end_of(until or paper.valid_to, paper, desk.at),
        )
        _revoke_open(pen, job)
        kept = add_link(pen.connection, new, sha256(secret))
        last = f"{kept.until:%Y-%m-%d %H:%M}"
        pen.note(job, f"made link {kept.link} to revision {kept.revision} for the customer, open until {last}")
        return kept


def revoke_link(desk: Desk, job: str, number: int) -> CustomerLink:
    """A link opens nothing from now on, not even what was answered. Refuses one that is not the job's or is revoked."""
    with desk.writing("revoke link") as pen:
        for one in links(pen.connection, job):
            if one.link == number and one.revoked_at is None:
                change_link(pen.connection, number, revoked_at=desk.at, revoked_by=desk.who)
                pen.note(job, f"revoked link {number} to revision {one.revision}")
                return one
        raise refused("link-not-open", found=number, job=job)


def job_links(desk: Desk, job: str) -> JobLinks:
    """Every link of a job, and whether a new one can be made."""
    with desk.store.reading() as connection:
        stored_job(connection, job)
        last = newest_quote(connection, job)
        signed = {one.link: one for one in signatures(connection, job)}
        given = {one.sent_to: one.at for one in reversed(sendings(connection, job)) if one.how == PAGE}
        newest = last.quote if last else None
        return JobLinks(
            newest=newest,
            rows=tuple(
                LinkRow(
                    link=one,
                    standing=_standing(one, newest, desk.at),
                    signature=signed.get(one.link),
                    given_at=given.get(contact_of(one)),
                )
                for one in reversed(links(connection, job))
            ),
            is_billed=bill_of(connection, job) is not None,
            is_over=newest is not None and newest.valid_to < desk.at.date(),
            is_answered=newest is not None and not asked_about(newest, standing_of(connection, job).holding),
        )


def open_link(desk: Desk, secret: str) -> OpenedLink:
    """What the link opens. Refuses, in words for the customer, a link that is unknown or revoked (the same words: there
    is nothing to be learnt by trying), past its time, or to a quote that is changed, past its validity, or billed.
    """
    with desk.store.reading() as connection:
        return opened(connection, secret, desk.at)


def opened(connection: Connection, secret: str, at: datetime) -> OpenedLink:
    """What `open_link` gives, on an open connection."""
    link = _open_now(connection, secret, at)
    frozen = quote(connection, link.job, link.revision)
    standing = standing_of(connection, link.job)
    waits = link.answered_at is None
    given, before = given_through(connection, link), held_before(connection, link, frozen.quote)
    return OpenedLink(
        link=link,
        frozen=frozen,
        holding=standing.holding if waits else {},
        asked=asked_about(frozen.quote, standing.holding) if waits else (),
        totals=choice_totals(frozen.quote, standing.holding) if waits else (),
        photos=_cited(frozen.quote, photos(connection, link.job)),
        given=given,
        before=before,
        deposit=_deposit(frozen.quote, {**before, **{one.label: one for one in given}}),
        signature=next((one for one in signatures(connection, link.job) if one.link == link.link), None),
    )


def _deposit(paper: Quote, by_label: Mapping[str, Approval]) -> Money | None:
    """By the rule that the shop's own page asks by."""
    approved = [label for label, one in by_label.items() if one.answer == "approved"]
    return deposit_of(paper, approved) if paper.deposit_rule and approved else None


def photo_of_link(desk: Desk, secret: str, number: int) -> bytes | None:
    """The JPEG of a photo that stands on the quote of the link; None for every other."""
    with desk.store.reading() as connection:
        link = _open_now(connection, secret, desk.at)
        cited = _cited(quote(connection, link.job, link.revision).quote, photos(connection, link.job))
        found = photo_bytes(connection, number) if number in {one.photo for one in cited} else None
        return found[1] if found else None


def signature_of(desk: Desk, job: str, number: int) -> bytes:
    """The drawing with which an answer was signed, for the shop; b'' where there is none."""
    with desk.store.reading() as connection:
        return next((one.drawing for one in signatures(connection, job) if one.link == number), b"")


def link_by_secret(connection: Connection, secret: str) -> CustomerLink | None:
    """The link with that secret, whether it opens anything or not."""
    return link_of_secret(connection, sha256(secret))


def _open_now(connection: Connection, secret: str, at: datetime) -> CustomerLink:
    """The link, answered or waiting for its answer. Refuses what opens nothing."""
    link = link_by_secret(connection, secret) if SECRET.fullmatch(secret) else None
    if link is None or link.revoked_at is not None:
        raise refused("link-unknown")
    if link.until < at:
        raise refused("link-over", until=f"{link.until:%Y-%m-%d %H:%M}")
    if link.answered_at is None:
        _check_answerable(connection, link, at)
    return link


def _check_answerable(connection: Connection, link: CustomerLink, at: datetime) -> None:
    newest = newest_quote(connection, link.job)
    assert newest is not None, "a link is to a revision, which the database keeps"
    if newest.quote.revision != link.revision:
        raise refused("link-replaced")
    if newest.quote.valid_to < at.date():
        raise refused("link-quote-over", valid_to=newest.quote.valid_to)
    if bill_of(connection, link.job) is not None:
        raise refused("link-job-billed")


def _answerable(connection: Connection, desk: Desk, job: str) -> Quote:
    """The newest revision, if a customer can answer it. Refuses in words for the shop."""
    stored_job(connection, job)
    last = newest_quote(connection, job)
    if last is None:
        raise refused("no-quote", job=job)
    paper = last.quote
    if bill_of(connection, job) is not None:
        raise refused("billed-no-answer", job=job)
    if desk.at < paper.made_at:
        raise refused("given-before-made", job=job, revision=paper.revision, made=paper.made_at, at=desk.at)
    if paper.valid_to < desk.at.date():
        raise refused("quote-expired", job=job, revision=paper.revision, valid_to=paper.valid_to)
    if not asked_about(paper, standing_of(connection, job).holding):
        raise refused("link-nothing-asked", job=job, revision=paper.revision)
    return paper


def _end_of(day: date, paper: Quote, at: datetime) -> datetime:
    if not at.date() <= day <= paper.valid_to:
        raise refused("link-day-wrong", found=day, revision=paper.revision, valid_to=paper.valid_to, job=paper.job)
    return datetime.combine(day, LAST_MINUTE)


def _revoke_open(pen: Pen, job: str) -> None:
    """One open link at a time: what an older one says may be out of date, and two answers would meet."""
    for one in links(pen.connection, job):
        if one.answered_at is None and one.revoked_at is None:
            change_link(pen.connection, one.link, revoked_at=pen.desk.at, revoked_by=pen.desk.who)


def _standing(link: CustomerLink, newest: Quote | None, at: datetime) -> str:
    if link.revoked_at is not None:
        return "revoked"
    if link.answered_at is not None:
        return "answered"
    if link.until < at:
        return "past its time"
    return "open" if newest and newest.revision == link.revision else "to an older revision"


def _cited(paper: Quote, kept: list[Photo]) -> tuple[Photo, ...]:
    """The photos that stand on the quote, but those taken out since."""
    names = {name for line in paper.lines for name in line.photos}
    names |= {name for finding in paper.findings for name in finding.photos}
    return tuple(one for one in kept if one.name in names and one.taken_out_at is None)
