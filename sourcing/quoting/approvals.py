"""A customer's answers: who may give them, what they cover, and where a quote stands after them.

A yes covers one line of one revision at its price. It carries over to a later revision only where the line is the same
in title, part, number, quantity, hours and price. Silence is never a yes.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from decimal import Decimal
from typing import Literal, get_args

from ..basics.approval import Answers, AnswerWord, Approval, How
from ..basics.money import Money, zero
from ..basics.part_number import maker_key
from ..basics.problem import refused
from ..basics.quote import DocumentTotal, Quote, QuoteLine
from ..basics.value import Value

AGREED = "agreed"
"""Answers to this word cover every agreed line at once."""


class Given(Value, frozen=True, kw_only=True):
    """How an answer was given: by whom, how, when, who took it down, number called or address, the words said."""

    who: str
    how: How
    at: datetime
    taken_by: str
    contact: str = ""
    words: str = ""


def how_given(words: str) -> How:
    """The way an answer came, as one of the known words. Refuses others."""
    found = words.strip().casefold()
    for known in get_args(How):
        if found == known:
            return known  # type: ignore[no-any-return]
    raise refused("unknown-word", found=words, column="how", known=", ".join(get_args(How)))


def record_answers(
    quote: Quote, yes: Sequence[str], no: Sequence[str], given: Given, already_ordered: Iterable[str]
) -> tuple[Approval, ...]:
    """The approvals to keep. Refuses an unknown line, a line answered both ways, someone not entitled, a quote past
    its validity, a no to what is ordered already, an answer that lies before the quote.
    """
    _may_answer(quote, given)
    approved, declined = _lines(quote, yes), _lines(quote, no)
    for label in approved:
        if label in declined:
            raise refused("answered-both-ways", label=label)
    for label in set(already_ordered) & set(declined):
        raise refused("ordered-already", label=label, job=quote.job)
    if not approved and not declined:
        raise refused("no-answer", job=quote.job)
    answers: list[tuple[QuoteLine, Literal["approved", "declined"]]]
    answers = [(line, "approved") for line in approved.values()] + [(line, "declined") for line in declined.values()]
    return tuple(_approval(quote, line, answer, given) for line, answer in answers)


def standing_answers(quote: Quote, approvals: Sequence[Approval], earlier: Mapping[int, Quote]) -> dict[str, Approval]:
    """For each line of the quote the last answer that holds for it; `earlier` are the revisions answered to."""
    holding: dict[str, Approval] = {}
    for approval in approvals:
        line = earlier[approval.revision].line(approval.label) if approval.revision in earlier else None
        for mine in quote.lines:
            if line is not None and same_line(mine, line):
                holding[mine.label] = approval
    return holding


def same_line(one: QuoteLine, other: QuoteLine) -> bool:
    """Whether a yes to one is a yes to the other."""
    return _promise(one) == _promise(other)


def answers(quote: Quote, holding: Mapping[str, Approval], approved: DocumentTotal) -> Answers:
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
    )


def check_freight_line(quote: Quote, words: Mapping[str, AnswerWord]) -> None:
    """Refuse a yes to an extra part without a yes to the freight it needs, where freight has a line of its own."""
    freight = next((line for line in quote.lines if line.kind == "add-on" and line.freight_price.amount), None)
    if freight is None or words.get(freight.label) == "approved":
        return
    for line in quote.lines:
        if line.kind == "add-on" and line.part and words.get(line.label) == "approved":
            raise refused("freight-not-answered", label=line.label, freight=freight.label)


def _promise(line: QuoteLine) -> tuple[str, str, str, int, Decimal, Money]:
    return line.title, line.part, line.number, line.quantity, line.hours, line.price


def _may_answer(quote: Quote, given: Given) -> None:
    entitled = (quote.customer.name, *quote.customer.may_also_approve)
    if maker_key(given.who) not in {maker_key(name) for name in entitled}:
        raise refused("not-entitled", who=given.who, entitled=", ".join(entitled), job=quote.job)
    if given.at.date() > quote.valid_to:
        raise refused("quote-expired", job=quote.job, revision=quote.revision, valid_to=quote.valid_to)
    if given.at < quote.made_at:
        raise refused("answer-before-quote", at=given.at, made=quote.made_at, job=quote.job)


def _lines(quote: Quote, labels: Sequence[str]) -> dict[str, QuoteLine]:
    wanted: list[str] = []
    for label in labels:
        wanted.extend(quote.labels("agreed") if label == AGREED else [label])
    lines: dict[str, QuoteLine] = {}
    for label in wanted:
        line = quote.line(label)
        if line is None:
            known = ", ".join((AGREED, *(line.label for line in quote.lines)))
            raise refused("no-such-line", label=label, job=quote.job, revision=quote.revision, known=known)
        lines[label] = line
    return lines


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
