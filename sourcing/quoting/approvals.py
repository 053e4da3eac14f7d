"""A customer's answers: who may give them, what they cover, and where a quote stands after them.

A yes covers one line of one revision at its price; `carry_over` says when it holds for a later revision. The last word
about a line counts, and an earlier one never comes back. Silence is never a yes.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Literal, get_args

from ..basics.approval import Answers, AnswerWord, Approval, How, how_words
from ..basics.job import Customer
from ..basics.money import zero
from ..basics.part_number import maker_key
from ..basics.problem import refused
from ..basics.quote import DocumentTotal, Quote, QuoteLine
from ..basics.value import Value
from .carry_over import line_now, why_not_covered

AGREED = "agreed"
"""Answers to this word cover every agreed line at once."""

SAME_WAY = {"phone": "telephone", "email": "e-mail", "in-person": "in person"}

Kept = Sequence[tuple[int, Approval]]
"""Answers of a job with the numbers they are stored under, in the order recorded."""


class Given(Value, frozen=True, kw_only=True):
    """How an answer was given: by whom, how, when, who took it down, number called or address, the words said."""

    who: str
    how: How
    at: datetime
    taken_by: str
    contact: str = ""
    words: str = ""


def one_way(words: str) -> str:
    """A way of giving an answer or a paper as it was typed, in the one word used for it: 'Phone' is 'telephone'."""
    typed = words.strip().casefold()
    return SAME_WAY.get(typed, typed)


def how_given(words: str) -> How:
    """The way an answer came, as one of the known words. Refuses others."""
    found = one_way(words)
    for known in get_args(How):
        if found == known:
            return known  # type: ignore[no-any-return]
    raise refused("unknown-word", found=words, column="how", known=", ".join(get_args(How)))


def may_answer(customer: Customer) -> tuple[str, ...]:
    """Who may answer: the customer as the job names her now and those named beforehand, each once. Who is named on a
    quote and was taken off the job since may not.
    """
    names: dict[str, str] = {}
    for name in (customer.name, *customer.may_also_approve):
        names.setdefault(maker_key(name), name)
    return tuple(names.values())


def check_may_answer(given: Given, entitled: Sequence[str], job: str) -> None:
    """Refuse who is not named; case and spaces of the name are set aside."""
    if maker_key(given.who) not in {maker_key(name) for name in entitled}:
        raise refused("not-entitled", who=given.who, entitled=", ".join(entitled), job=job)


def record_answers(quote: Quote, yes: Sequence[str], no: Sequence[str], given: Given) -> tuple[Approval, ...]:
    """The approvals to keep, at the prices of this revision. Refuses an unknown line, a line answered both ways, no
    line at all, and an answer that lies before the quote.
    """
    if given.at < quote.made_at:
        raise refused("answer-before-quote", at=given.at, made=quote.made_at, job=quote.job)
    approved, declined = lines_named(quote, yes), lines_named(quote, no)
    for label in approved:
        if label in declined:
            raise refused("answered-both-ways", label=label)
    if not approved and not declined:
        raise refused("no-answer", job=quote.job)
    answers: list[tuple[QuoteLine, Literal["approved", "declined"]]]
    answers = [(line, "approved") for line in approved.values()] + [(line, "declined") for line in declined.values()]
    return tuple(_approval(quote, line, answer, given) for line, answer in answers)


def lines_named(quote: Quote, labels: Sequence[str]) -> dict[str, QuoteLine]:
    """The lines of those labels in any case, 'agreed' being all agreed ones; '1,2' and 'A B' are two labels each.
    Refuses a label that is not there."""
    wanted: list[str] = []
    for text in labels:
        for label in text.replace(",", " ").split() or [text]:
            wanted.extend(quote.labels("agreed") if label.casefold() == AGREED else [label.upper()])
    lines: dict[str, QuoteLine] = {}
    for label in wanted:
        line = quote.line(label)
        if line is None:
            known = ", ".join((AGREED, *(line.label for line in quote.lines)))
            raise refused("no-such-line", label=label, job=quote.job, revision=quote.revision, known=known)
        lines[label] = line
    return lines


def answered_now(newest: Quote, answered: Quote, new: Sequence[Approval]) -> dict[str, Approval]:
    """For each answer the label its line has in the newest revision. Refuses an answer to an older revision whose line
    is gone or no longer the same, with both figures: the customer has to be asked anew.
    """
    found: dict[str, Approval] = {}
    for one in new:
        line = answered.line(one.label)
        now = line_now(newest, answered, line) if line else None
        why = f"revision {newest.revision} no longer has it"
        if line and now:
            why = why_not_covered(one, line, now, newest.tolerance)
        if now is None or why:
            raise refused(
                "older-revision", label=one.label, job=one.job, revision=one.revision, newest=newest.revision, found=why
            )
        found[now.label] = one
    return found


def check_not_contrary(new: Mapping[str, Approval], holding: Mapping[str, Approval]) -> None:
    """Refuse an answer contrary to one that stands: two people at two desks must not overwrite each other unseen."""
    for label, one in new.items():
        stands = holding.get(label)
        if stands and stands.answer != one.answer:
            said = f"{stands.answer} by {stands.who} on {stands.at:%Y-%m-%d %H:%M} {how_words(stands.how)}"
            raise refused("answered-otherwise", label=label, job=one.job, found=said)


def check_not_ordered(new: Mapping[str, Approval], ordered: Collection[str]) -> None:
    """Refuse a no to a line that stands on an order."""
    for label, one in new.items():
        if one.answer == "declined" and label in ordered:
            raise refused("ordered-already", label=label, job=one.job, found=label)


def standing_answers(quote: Quote, approvals: Iterable[Approval], earlier: Mapping[int, Quote]) -> dict[str, Approval]:
    """For each line of the quote the answer that holds for it; `earlier` are the revisions answered to."""
    last = last_words(quote, approvals, earlier)
    return {label: one for label, (one, why) in last.items() if not why}


def last_words(
    quote: Quote, approvals: Iterable[Approval], earlier: Mapping[int, Quote]
) -> dict[str, tuple[Approval, str]]:
    """For each line the last answer about that work, and why it does not hold for the line (blank where it does)."""
    last: dict[str, tuple[Approval, str]] = {}
    for one, line, now in _placed(quote, approvals, earlier):
        if one.holds == "yes":
            last[now.label] = one, why_not_covered(one, line, now, quote.tolerance)
        elif one.holds == "withdrawn":
            last[now.label] = one, "the yes was taken back"
        else:
            last[now.label] = one, "a later answer took its place"
    return last


def about(quote: Quote, labels: Collection[str], kept: Kept, earlier: Mapping[int, Quote]) -> list[int]:
    """Numbers of all answers, of whatever revision, that still hold and are about the work of those lines."""
    by_object = {id(one): number for number, one in kept}
    placed = _placed(quote, [one for _, one in kept], earlier)
    return [by_object[id(one)] for one, _, now in placed if now.label in labels and one.holds == "yes"]


def labels_of(quote: Quote, numbers: Collection[int], kept: Kept, earlier: Mapping[int, Quote]) -> set[str]:
    """The labels that the work of those answers has on this quote now; a line renamed since is known by its label."""
    labels = set()
    for number, one in kept:
        line = earlier[one.revision].line(one.label) if number in numbers and one.revision in earlier else None
        if line:
            now = line_now(quote, earlier[one.revision], line) or quote.line(line.label)
            labels |= {now.label} if now and now.part == line.part else set()
    return labels


def answers(
    quote: Quote, holding: Mapping[str, Approval], approved: DocumentTotal, notes: Sequence[str] = ()
) -> Answers:
    """Where the quote stands; `approved` is the document total of the approved lines."""
    words: dict[str, AnswerWord] = {
        line.label: holding[line.label].answer if line.label in holding else "waiting" for line in quote.lines
    }
    agreed_in = all(words[label] == "approved" for label in quote.labels("agreed"))
    return Answers(
        job=quote.job,
        revision=quote.revision,
        by_label=tuple(words.items()),
        approved_total=approved.total,
        extra=approved.total - quote.agreed_total.total if agreed_in else zero(quote.currency),
        notes=tuple(notes),
    )


def _placed(
    quote: Quote, approvals: Iterable[Approval], earlier: Mapping[int, Quote]
) -> Iterator[tuple[Approval, QuoteLine, QuoteLine]]:
    """Each answer with the line it was to and the line that is the same work now."""
    for one in approvals:
        old = earlier.get(one.revision)
        line = old.line(one.label) if old else None
        now = line_now(quote, old, line) if old and line else None
        if line and now:
            yield one, line, now


def _approval(quote: Quote, line: QuoteLine, answer: Literal["approved", "declined"], given: Given) -> Approval:
    return Approval(
        job=quote.job,
        revision=quote.revision,
        label=line.label,
        answer=answer,
        amount=line.price,
        who=given.who,
        how=given.how,
        at=given.at,
        taken_by=given.taken_by,
        contact=given.contact,
        words=given.words,
    )
