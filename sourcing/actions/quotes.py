"""Write a quote: plan, prices, paper; frozen as a revision. The same content again makes no new revision."""

import hashlib
from collections.abc import Callable, Sequence
from datetime import date

from ..basics.money import Money, total
from ..basics.plan import PlanNeed
from ..basics.problem import refused
from ..basics.quote import FrozenQuote, Quote
from ..basics.value import Value, changed
from ..quoting.build import build_quote
from ..storage.jobs import job as stored_job
from ..storage.quotes import add_quote, newest_quote, quote
from .desk import Desk
from .evaluate import Catalogue, catalogue
from .plan import JOB_WISHES, job_needs, plan_needs

Paper = Callable[[Quote], str]
"""Makes the paper of a quote; handed in, because papers are made at the edge."""


class Written(Value, frozen=True, kw_only=True):
    """The revision, and whether it is new or the last one stands unchanged."""

    frozen: FrozenQuote
    is_new: bool


def write_quote(desk: Desk, number: str, paper: Paper, need_by: date | None = None) -> Written:
    """The job's quote at this moment as a frozen revision; `need_by` None takes the job's own day."""
    with desk.writing("quote") as pen:
        found = catalogue(pen.connection, desk.at)
        job = stored_job(pen.connection, number)
        last = newest_quote(pen.connection, number)
        day = need_by or job.need_by
        plan = plan_needs(found, job_needs(job, found), changed(JOB_WISHES, need_by=day))
        freight = _agreed_freight(found, job_needs(job, found, only_agreed=True), day)
        revision = last.quote.revision + 1 if last else 1
        new = build_quote(job, plan, freight, found.shop.settings, desk.at, revision)
        new = changed(new, warnings=(*new.warnings, *plan.warnings))
        if last and _same(new, last.quote) and desk.at.date() <= last.quote.valid_to:
            return Written(frozen=last, is_new=False)
        frozen = freeze(new, paper)
        add_quote(pen.connection, frozen, desk.who)
        pen.note(number, f"wrote revision {revision}: agreed {new.agreed_total.total}")
        return Written(frozen=frozen, is_new=True)


def freeze(new: Quote, paper: Paper) -> FrozenQuote:
    """The quote with its paper and the hash of the paper's UTF-8 bytes."""
    text = paper(new)
    return FrozenQuote(quote=new, paper=text, sha256=hashlib.sha256(text.encode()).hexdigest())


def reprint(desk: Desk, number: str, revision: int | None) -> FrozenQuote:
    """A revision to the letter as it was made; the newest where none is named."""
    with desk.store.reading() as connection:
        if revision is not None:
            return quote(connection, number, revision)
        stored_job(connection, number)
        last = newest_quote(connection, number)
        if last is None:
            raise refused("no-quote", job=number)
        return last


def _agreed_freight(found: Catalogue, needs: Sequence[PlanNeed], need_by: date | None) -> Money:
    currency = found.shop.settings.currency
    if not needs:
        return total((), currency)
    plan = plan_needs(found, needs, changed(JOB_WISHES, need_by=need_by))
    return total((order.landed.freight for order in plan.orders), currency)


def _same(new: Quote, last: Quote) -> bool:
    """Whether a new revision would say the same: everything but its number and dates."""
    return changed(new, revision=last.revision, made_at=last.made_at, valid_to=last.valid_to) == last
