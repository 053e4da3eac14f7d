"""Record a customer's answers, take a yes back, and tell where a quote stands."""

from collections.abc import Mapping, Sequence

from sqlalchemy import Connection

from ..basics.approval import ON_CONDITION, Answers, AnswerWord, Approval, Withdrawal, how_words
from ..basics.money import Money
from ..basics.problem import refused
from ..basics.quote import DocumentTotal, Quote
from ..basics.value import Value, changed
from ..quoting.answer_notes import answer_notes
from ..quoting.approvals import (
    Given,
    about,
    answered_now,
    answers,
    check_may_answer,
    check_not_contrary,
    check_not_ordered,
    how_given,
    labels_of,
    last_words,
    lines_named,
    may_answer,
    record_answers,
    standing_answers,
)
from ..quoting.freight_answers import check_freight_line
from ..quoting.totals import total_of
from ..storage.after_quote import add_withdrawal, bill_of, sendings
from ..storage.held_answers import mark_replaced, ordered_on
from ..storage.jobs import job as stored_job
from ..storage.quotes import add_approvals, approvals, newest_quote, quote
from .desk import Desk, Pen


class Spoken(Value, frozen=True, kw_only=True):
    """What the customer said: labels approved and declined, who said it and how, number or address, the words.

    `revision` is the one that was answered (None: the newest). `instead`: she changed her mind, the answer takes the
    place of a contrary one. `conditions` are kept with the words of the lines said yes to.
    """

    yes: tuple[str, ...] = ()
    no: tuple[str, ...] = ()
    who: str
    how: str
    contact: str = ""
    words: str = ""
    revision: int | None = None
    instead: bool = False
    conditions: str = ""


class TakenBack(Value, frozen=True, kw_only=True):
    """Lines of the newest revision whose yes the customer takes back; who said it and how, number or address, words."""

    labels: tuple[str, ...]
    who: str
    how: str
    contact: str = ""
    words: str = ""


class Standing(Value, frozen=True, kw_only=True):
    """A job's newest quote with its answers. `approval_of` gives the stored number of each line's holding answer,
    `holding` that answer."""

    quote: Quote
    answers: Answers
    approved: DocumentTotal
    approval_of: Mapping[str, int]
    holding: Mapping[str, Approval]

    def words(self) -> dict[str, AnswerWord]:
        """Answers by label."""
        return dict(self.answers.by_label)


class _Ground(Value, frozen=True, kw_only=True):
    """What answers are judged against: the newest quote, every answer kept, the revisions these were given to."""

    newest: Quote
    kept: Sequence[tuple[int, Approval]]
    earlier: Mapping[int, Quote]

    def holding(self) -> dict[str, Approval]:
        """The answer that holds for each line."""
        return standing_answers(self.newest, [one for _, one in self.kept], self.earlier)


def record(desk: Desk, number: str, spoken: Spoken) -> Standing:
    """Keep the answers, all or none, and say where the quote stands. A line not named stays as it was.

    Refuses who may not answer, what is contrary to an answer that stands (unless `instead`), what an older revision no
    longer has in common with the newest, a no to what is ordered, and any answer once the job is billed.
    """
    with desk.writing("answer") as pen:
        return keep_answers(pen, number, spoken)


def keep_answers(pen: Pen, number: str, spoken: Spoken) -> Standing:
    """What `record` does, in a transaction that is open already: the customer's page keeps a signature in it too."""
    ground = _ground(pen.connection, number)
    given = _given(pen.desk, spoken)
    _check_open(pen.connection, ground, given)
    answered = _answered(pen.connection, ground, spoken.revision)
    new = _on_condition(record_answers(answered, spoken.yes, spoken.no, given), spoken.conditions)
    _check_in_time(ground.newest, given)
    by_label = answered_now(ground.newest, answered, new)
    check_not_ordered(by_label, _ordered(pen.connection, ground))
    if not spoken.instead:
        check_not_contrary(by_label, ground.holding())
    _keep(pen.connection, ground, answered, by_label)
    standing = standing_of(pen.connection, number)
    check_freight_line(standing.quote, dict(standing.answers.by_label), list(by_label))
    said = ", ".join(f"{label} {one.answer}" for label, one in by_label.items())
    to = f" to revision {answered.revision}" if answered.revision != ground.newest.revision else ""
    pen.note(number, f"{spoken.who} {how_words(given.how)}{to}: {said}")
    return standing


def withdraw(desk: Desk, number: str, taken: TakenBack) -> Standing:
    """Take a standing yes back until it is ordered: the line waits again. All named lines or none.

    Refuses a line that is not approved or is ordered, freight that approved parts still need, who may not answer, a
    moment before the yes was given, and anything once the job is billed.
    """
    with desk.writing("take back") as pen:
        ground = _ground(pen.connection, number)
        given = _given(desk, taken)
        _check_open(pen.connection, ground, given)
        labels = list(lines_named(ground.newest, taken.labels))
        if not labels:
            raise refused("no-answer", job=number)
        _check_can_go(ground, labels, given, _ordered(pen.connection, ground))
        kept = dict(ground.kept)
        for at in about(ground.newest, labels, ground.kept, ground.earlier):
            if kept[at].answer == "approved":
                add_withdrawal(pen.connection, _withdrawal(at, kept[at], given))
        standing = standing_of(pen.connection, number)
        check_freight_line(standing.quote, dict(standing.answers.by_label), labels)
        pen.note(number, f"{taken.who} {how_words(given.how)} took the yes back: {', '.join(labels)}")
        return standing


def standing(desk: Desk, number: str) -> Standing:
    """Where the job's newest quote stands."""
    with desk.store.reading() as connection:
        return standing_of(connection, number)


def standing_of(connection: Connection, number: str) -> Standing:
    """Where the job's newest quote stands, on an open connection."""
    ground = _ground(connection, number)
    newest = ground.newest
    last = last_words(newest, [one for _, one in ground.kept], ground.earlier)
    holding = {label: one for label, (one, why) in last.items() if not why}
    approved = total_of(newest, [label for label, one in holding.items() if one.answer == "approved"])
    return Standing(
        quote=newest,
        answers=answers(newest, holding, approved, answer_notes(newest, last, ground.earlier)),
        approved=approved,
        approval_of={label: _stored(one, ground.kept) for label, one in holding.items()},
        holding=holding,
    )


def _given(desk: Desk, said: Spoken | TakenBack) -> Given:
    return Given(
        who=said.who, how=how_given(said.how), at=desk.at, taken_by=desk.who, contact=said.contact, words=said.words
    )


def _on_condition(new: Sequence[Approval], condition: str) -> tuple[Approval, ...]:
    """The condition stands with the lines said yes to, never with those declined."""
    if not condition.strip():
        return tuple(new)
    if not any(one.answer == "approved" for one in new):
        raise refused("condition-without-yes", job=new[0].job, found=condition)

    def with_it(one: Approval) -> Approval:
        return changed(one, words=f"{one.words} {ON_CONDITION}{condition.strip()}".strip())

    return tuple(with_it(one) if one.answer == "approved" else one for one in new)


def _ground(connection: Connection, number: str) -> _Ground:
    stored_job(connection, number)
    last = newest_quote(connection, number)
    if last is None:
        raise refused("no-quote", job=number)
    kept = approvals(connection, number)
    revisions = sorted({one.revision for _, one in kept} - {last.quote.revision})
    earlier = {revision: quote(connection, number, revision).quote for revision in revisions}
    return _Ground(newest=last.quote, kept=kept, earlier={**earlier, last.quote.revision: last.quote})


def _check_open(connection: Connection, ground: _Ground, given: Given) -> None:
    job = ground.newest.job
    if bill_of(connection, job) is not None:
        raise refused("billed-no-answer", job=job)
    check_may_answer(given, may_answer(stored_job(connection, job).customer), job)


def _answered(connection: Connection, ground: _Ground, revision: int | None) -> Quote:
    """The revision that was answered. Unsaid, it is the newest, unless only an older one was given to the customer."""
    newest = ground.newest
    if revision is not None:
        return quote(connection, newest.job, revision).quote
    given = [one.revision for one in sendings(connection, newest.job)]
    if given and newest.revision not in given:
        raise refused("which-revision", job=newest.job, newest=newest.revision, given=max(given))
    return newest


def _check_in_time(newest: Quote, given: Given) -> None:
    if given.at.date() > newest.valid_to:
        raise refused("quote-expired", job=newest.job, revision=newest.revision, valid_to=newest.valid_to)


def _ordered(connection: Connection, ground: _Ground) -> set[str]:
    return labels_of(ground.newest, ordered_on(connection, ground.newest.job), ground.kept, ground.earlier)


def _keep(connection: Connection, ground: _Ground, answered: Quote, by_label: Mapping[str, Approval]) -> None:
    """The answers with what the occasion came to; earlier ones about the same work hold no more, but for those that
    goods stand on.
    """
    new = [_with_totals(one, *_totals(ground, answered, by_label)) for one in by_label.values()]
    before = about(ground.newest, by_label, ground.kept, ground.earlier)
    bought = ordered_on(connection, ground.newest.job)
    mark_replaced(connection, [number for number in before if number not in bought])
    add_approvals(connection, new)


def _totals(ground: _Ground, answered: Quote, by_label: Mapping[str, Approval]) -> tuple[Money | None, Money]:
    """What is beyond the agreed work (None where not all of it is approved) and all that is approved, with tax."""
    newest = ground.newest
    every = [*(one for _, one in ground.kept), *by_label.values()]
    holding = standing_answers(newest, every, {**ground.earlier, answered.revision: answered})
    approved = [label for label, one in holding.items() if one.answer == "approved"]
    total = total_of(newest, approved).total
    all_agreed = set(newest.labels("agreed")) <= set(approved)
    return (total - newest.agreed_total.total if all_agreed else None), total


def _with_totals(one: Approval, extra: Money | None, total_after: Money) -> Approval:
    return changed(one, extra=extra, total_after=total_after)


def _check_can_go(ground: _Ground, labels: Sequence[str], given: Given, ordered: set[str]) -> None:
    job, holding = ground.newest.job, ground.holding()
    for label in labels:
        stands = holding.get(label)
        if stands is None or stands.answer != "approved":
            raise refused("nothing-to-take-back", label=label, job=job, answer=stands.answer if stands else "waiting")
        if label in ordered:
            raise refused("ordered-already", label=label, job=job, found=label)
        if given.at < stands.at:
            raise refused("taken-back-too-early", label=label, job=job, given=stands.at, at=given.at)


def _withdrawal(at: int, one: Approval, given: Given) -> Withdrawal:
    return Withdrawal(
        approval=at,
        job=one.job,
        label=one.label,
        who=given.who,
        how=given.how,
        at=given.at,
        taken_by=given.taken_by,
        contact=given.contact,
        words=given.words,
    )


def _stored(approval: Approval, kept: Sequence[tuple[int, Approval]]) -> int:
    return next(at for at, one in kept if one is approval)
