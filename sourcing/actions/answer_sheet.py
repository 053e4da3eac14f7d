"""What is needed to take a customer's answers down: the lines with what stands, who may answer, what it comes to."""

from collections.abc import Collection, Mapping

from ..basics.approval import AnswerWord, Approval
from ..basics.job import Customer
from ..basics.money import Money
from ..basics.quote import Quote, QuoteLine
from ..basics.value import Value, changed
from ..quoting.answers_told import to_answer, total_told, totals_told
from ..quoting.approvals import may_answer
from ..quoting.choices import with_freight_along
from ..storage.after_quote import bill_of, sendings
from ..storage.jobs import job as stored_job
from ..storage.quotes import quote
from .answers import Spoken, Standing, record, standing_of
from .desk import Desk
from .job_facts import line_facts


class LineToAnswer(Value, frozen=True, kw_only=True):
    """A line as the customer knows it. `adds`: what a yes to an add-on adds with tax, else None. `stands` is the
    answer that holds now and `said` who gave it; on an older revision both are left out. `is_asked`: it has an answer
    of its own; else it is freight that goes with its parts."""

    line: QuoteLine
    adds: Money | None
    is_asked: bool
    stands: AnswerWord | None = None
    said: Approval | None = None
    is_ordered: bool = False

    @property
    def can_be_taken_back(self) -> bool:
        """Whether there is a yes that nothing was ordered on."""
        return self.stands == "approved" and not self.is_ordered


class AnswerSheet(Value, frozen=True, kw_only=True):
    """The revision that is answered, with nothing of the owner's side. `newest` is the last one there is; `given` those
    that were given to the customer. `approved`: all that is approved now, with tax; `totals` as `totals_told` gives
    them, none for an older revision. `notes`: answers that no longer hold, and why. `is_billed`, `is_over`: why nothing
    can be written down any more."""

    job: str
    customer: Customer
    revision: int
    newest: int
    given: tuple[int, ...]
    locale: str
    lines: tuple[LineToAnswer, ...]
    may_answer: tuple[str, ...]
    approved: Money
    totals: tuple[Money, ...]
    notes: tuple[str, ...]
    is_billed: bool
    is_over: bool

    @property
    def asked(self) -> tuple[str, ...]:
        """Labels with an answer of their own."""
        return tuple(one.line.label for one in self.lines if one.is_asked)

    @property
    def not_given(self) -> bool:
        """Whether only older revisions than the newest were given: then it must be said which was answered."""
        return bool(self.given) and self.newest not in self.given


def answer_sheet(desk: Desk, number: str, revision: int | None = None) -> AnswerSheet:
    """The sheet for a revision of the job (None: the newest). Refuses a job without a quote, a revision not there."""
    with desk.store.reading() as connection:
        customer = stored_job(connection, number).customer
        standing = standing_of(connection, number)
        newest = standing.quote
        answered = newest if revision is None else quote(connection, number, revision).quote
        is_newest = answered.revision == newest.revision
        ordered = {one.label for one in line_facts(connection, standing) if one.order}
        return AnswerSheet(
            job=number,
            customer=customer,
            revision=answered.revision,
            newest=newest.revision,
            given=tuple(sorted({one.revision for one in sendings(connection, number)})),
            locale=newest.locale,
            lines=_lines(answered, standing if is_newest else None, ordered),
            may_answer=may_answer(customer),
            approved=standing.approved.total,
            totals=totals_told(newest, standing.holding) if is_newest else (),
            notes=standing.answers.notes,
            is_billed=bill_of(connection, number) is not None,
            is_over=newest.valid_to < desk.at.date(),
        )


def total_of_answers(desk: Desk, number: str, yes: Collection[str], no: Collection[str]) -> Money:
    """With tax, what all approved lines of the newest revision come to with these answers. Nothing is written down."""
    with desk.store.reading() as connection:
        standing = standing_of(connection, number)
        return total_told(standing.quote, yes, no, standing.holding)


def take_down(desk: Desk, number: str, spoken: Spoken) -> Standing:
    """Record answers to lines that have one of their own, and with them to the freight that goes along; refuses what
    `answers.record` refuses."""
    with desk.store.reading() as connection:
        standing = standing_of(connection, number)
        answered = standing.quote if spoken.revision is None else quote(connection, number, spoken.revision).quote
    holding: Mapping[str, Approval] = standing.holding if answered.revision == standing.quote.revision else {}
    yes, no = with_freight_along(answered, spoken.yes, spoken.no, holding)
    return record(desk, number, changed(spoken, yes=yes, no=no))


def _lines(answered: Quote, standing: Standing | None, ordered: set[str]) -> tuple[LineToAnswer, ...]:
    adds = {one.label: one.price for one in answered.add_on_prices}
    asked = to_answer(answered)
    words = standing.words() if standing else {}
    return tuple(
        LineToAnswer(
            line=changed(line, behind=None),
            adds=adds.get(line.label),
            is_asked=line.label in asked,
            stands=words.get(line.label),
            said=standing.holding.get(line.label) if standing else None,
            is_ordered=standing is not None and line.label in ordered,
        )
        for line in answered.lines
    )
