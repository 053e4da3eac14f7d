"""Write a quote: plan, prices, paper; frozen as a revision. The same content again makes no new revision."""

import hashlib
from collections.abc import Callable
from datetime import date, datetime
from typing import Literal

from sqlalchemy import Connection

from ..basics.job import Job
from ..basics.owners_quote import CheckedQuote
from ..basics.problem import refused
from ..basics.quote import Answered, FrozenQuote, Quote, QuoteLine
from ..basics.value import Value, changed
from ..quoting.approvals import standing_answers
from ..quoting.build import build_quote
from ..quoting.hold import covered_by
from ..quoting.revisions import compare_quotes
from ..storage.after_quote import bill_of
from ..storage.jobs import change_job
from ..storage.jobs import job as stored_job
from ..storage.quotes import add_quote, approvals, newest_quote, quote
from .covered_day import shop_works
from .desk import Desk
from .evaluate import Catalogue, catalogue, catalogue_to_read
from .jobs import check_job
from .plan import ANY_DAY, AnyDay
from .quote_plan import Market, market
from .quote_warnings import quote_warnings
from .whose_plan import PlanFor, chosen_plan

Paper = Callable[[Quote], str]
"""Makes the paper of a quote; handed in, because papers are made at the edge."""


class Written(Value, frozen=True, kw_only=True):
    """The revision, and whether it is new or the last one stands unchanged.

    `warnings` are for the owner before the quote goes out, as of now; `notes` tell under which other plan the customer
    would pay less, or which was chosen.
    """

    frozen: FrozenQuote
    is_new: bool
    warnings: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


def write_quote(
    desk: Desk,
    number: str,
    paper: Paper,
    need_by: date | AnyDay | None = None,
    plan_for: PlanFor | Literal[""] = "",
    keep_day: bool = False,
) -> Written:
    """The job's quote at this moment as a frozen revision; `need_by` None takes the job's own day, 'any day' quotes
    what is cheapest whatever day it comes, also where no day is known.

    `plan_for` 'customer' buys by the plan under which the customer pays least, 'shop' by the shop's cheapest, also what
    was approved otherwise; blank: as the last revision does, and what is approved keeps its number where it can.
    With `keep_day` the day named is the job's from now on, so that the next revision is for it too. Refuses a billed
    job, and such a day where it contradicts the job.
    """
    with desk.writing("quote") as pen:
        _refuse_billed(pen.connection, number)
        found, job = catalogue(pen.connection, desk.at), stored_job(pen.connection, number)
        before, job = job, _for_day(job, need_by)
        if keep_day and job != before:
            check_job(job, found, None)
            change_job(pen.connection, job)
            pen.note(number, f"parts wanted in the shop by {job.need_by or 'no fixed day'}")
        now = _now(market(found, job, job.need_by), plan_for)
        last = newest_quote(pen.connection, number)
        if last and now.same:
            return Written(frozen=last, is_new=False, warnings=now.warnings, notes=now.notes)
        frozen = freeze(_with_answers(found, now.now), paper)
        add_quote(pen.connection, frozen, desk.who)
        whose = ", by the plan under which the customer pays least" if now.now.plan_for == "customer" else ""
        pen.note(number, f"wrote revision {now.now.revision}: agreed {now.now.agreed_total.total}{whose}")
        return Written(frozen=frozen, is_new=True, warnings=now.warnings, notes=now.notes)


def check_quote(
    desk: Desk, number: str, need_by: date | AnyDay | None = None, plan_for: PlanFor | Literal[""] = ""
) -> CheckedQuote:
    """What a new revision would say now. Nothing is kept. Refuses a billed job."""
    with desk.store.reading() as connection:
        _refuse_billed(connection, number)
        job = _for_day(stored_job(connection, number), need_by)
        return _now(market(catalogue_to_read(desk, connection), job, job.need_by), plan_for)


def _for_day(job: Job, need_by: date | AnyDay | None) -> Job:
    """The job with another day on which its parts are wanted; as it is where none is said."""
    if need_by is None:
        return job
    return changed(job, need_by=None if need_by == ANY_DAY else need_by)


def _with_answers(found: Catalogue, new: Quote) -> Quote:
    """The quote with the answers that hold already on its lines, so that the paper asks only about the others.

    A yes given to an earlier day is a question again where the parts or the machine come later now.
    """
    connection = found.connection
    kept = [one for _, one in approvals(connection, new.job)]
    earlier = {revision: quote(connection, new.job, revision).quote for revision in {one.revision for one in kept}}
    holding = standing_answers(new, kept, earlier)
    wanted = stored_job(connection, new.job).need_by

    def said(line: QuoteLine) -> Answered | None:
        one = holding.get(line.label)
        later = one is not None and _comes_later(found, new, (earlier[one.revision], one.at), wanted)
        if one is None or (one.answer == "approved" and later):
            return None
        return Answered(answer=one.answer, who=one.who, how=one.how, on=one.at.date())

    return changed(new, lines=tuple(changed(line, answered=said(line)) for line in new.lines))


def _comes_later(found: Catalogue, new: Quote, then: tuple[Quote, datetime], wanted: date | None) -> bool:
    def works(day: date) -> bool:
        return shop_works(found, day)

    before, now = covered_by(*then, wanted, works), covered_by(new, None, wanted, works)
    return before is not None and (now is None or before.day < now.day)


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


def _refuse_billed(connection: Connection, number: str) -> None:
    if bill_of(connection, number) is not None:
        raise refused("billed-stays", job=number, found="it is not quoted anew")


def _now(here: Market, plan_for: PlanFor | Literal[""]) -> CheckedQuote:
    last, at = here.last, here.found.at
    revision = last.revision + 1 if last else 1
    wanted: PlanFor = plan_for or (last.plan_for if last else "shop")
    chosen = chosen_plan(here.anew() if plan_for else here, wanted, revision)
    new = build_quote(here.job, chosen.bought, here.found.shop.settings, at, revision)
    warnings = quote_warnings(new, here, chosen.bought)
    new = changed(new, warnings=warnings, plan_for=wanted)
    same = last is not None and at.date() <= last.valid_to and _told(new) == _told(last)
    return CheckedQuote(
        now=new,
        last=last,
        same=same,
        changes=compare_quotes(_without_words(last), _without_words(new), owner=True) if last and not same else (),
        warnings=warnings,
        notes=chosen.notes,
    )


def _told(one: Quote) -> Quote:
    """All that makes two revisions differ: neither number and dates of the paper, nor words for the owner."""
    day = one.made_at.replace(year=2000, month=1, day=1, hour=0, minute=0, second=0, microsecond=0)
    return changed(_without_words(one), revision=0, made_at=day, valid_to=day.date())


def _without_words(one: Quote) -> Quote:
    """What is bought, at what cost and price; neither warnings nor how it came, nor what was answered. Another sheet
    that says the same is no change."""
    words = {"price_rule": "", "landed_rule": "", "warnings": ()}
    bare = {"sheet": 0, "freight": None, "cost_alone": None, **words}
    lines = (changed(line, answered=None, behind=line.behind and changed(line.behind, **bare)) for line in one.lines)
    return changed(one, warnings=(), lines=tuple(lines))
