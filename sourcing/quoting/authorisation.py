"""The record of all a customer authorised: each occasion with date, time, who, how, who took it down, lines, totals.

Laid out after the fullest list of fields read in a published rule, California Code of Regulations, title 16, section
2722 (repair of appliances): date, time, who authorised, number called, who took the consent, its conditions, parts and
labour, total additional cost. Section 3353 is the like for motor vehicles. Rules for other equipment differ by place.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from ..basics.alarm import Decision
from ..basics.approval import ON_CONDITION, AgreedOnAlarm, AnsweredLine, Approval, Occasion, Withdrawal
from ..basics.money import Money
from ..basics.quote import FrozenQuote, QuoteLine
from ..basics.value import changed
from .approvals import Kept


def occasions(
    kept: Kept, taken_back: Sequence[Withdrawal], revisions: Mapping[int, FrozenQuote]
) -> tuple[Occasion, ...]:
    """Every time the customer answered or took a yes back, in order of time; of one minute answers come first.

    `revisions` are the ones answered to, with their papers' hashes.
    """
    told: Money | None = None
    found = []
    for _, group in groupby((one for _, one in kept), key=_occasion):
        found.append(_answered(tuple(group), told, revisions))
        told = found[-1].total_after or told
    by_number = dict(kept)
    for _, backs in groupby(taken_back, key=lambda one: (one.at, one.who, one.how, one.contact, one.words)):
        found.append(_back(tuple(backs), by_number, revisions))
    return tuple(sorted(found, key=lambda one: one.at))


def agreed_on_alarms(decisions: Iterable[Decision], revisions: Mapping[int, FrozenQuote]) -> tuple[AgreedOnAlarm, ...]:
    """Every yes that was given with a decision, in the order decided; decisions without one are the shop's own."""
    return tuple(
        AgreedOnAlarm(
            at=one.at,
            who=one.agreed_by,
            how=one.agreed_how,
            contact=one.agreed_contact,
            taken_by=one.who,
            revision=one.revision,
            line=_title(one, revisions),
            what=_agreed_to(one),
            words=one.words,
        )
        for one in decisions
        if one.agreed_by and one.agreed_how
    )


def _title(one: Decision, revisions: Mapping[int, FrozenQuote]) -> str:
    line = revisions[one.revision].quote.line(one.label) if one.revision in revisions else None
    return f"{one.label} {line.title}" if line else one.label


def _agreed_to(one: Decision) -> str:
    """The number and the last day that her yes covers; the price is the one approved."""
    day = f", here by {one.latest}" if one.latest else ""
    number = f"{one.number}{day}" if one.number else f"the part as approved{day}"
    return f"{number}, at the price approved"


def _occasion(one: Approval) -> tuple[object, ...]:
    # A condition stands with the lines said yes to alone; what was said at one time is one occasion all the same.
    said = (one.at, one.who, one.how, one.taken_by, one.contact, one.words.partition(ON_CONDITION)[0].strip())
    totals = [money.amount if money else None for money in (one.extra, one.total_after)]
    return (*said, one.revision, *totals)


def _answered(group: Sequence[Approval], told: Money | None, revisions: Mapping[int, FrozenQuote]) -> Occasion:
    first = group[0]
    return Occasion(
        at=first.at,
        who=first.who,
        how=first.how,
        contact=first.contact,
        taken_by=first.taken_by,
        words=max((one.words for one in group), key=len),
        revision=first.revision,
        sha256=revisions[first.revision].sha256,
        lines=tuple(line for one in group for line in _line(one, revisions)),
        extra=first.extra,
        total_before=told,
        total_after=first.total_after,
    )


def _back(
    group: Sequence[Withdrawal], by_number: Mapping[int, Approval], revisions: Mapping[int, FrozenQuote]
) -> Occasion:
    first, given = group[0], by_number[group[0].approval]
    lines = (line for one in group for line in _line(by_number[one.approval], revisions))
    return Occasion(
        at=first.at,
        who=first.who,
        how=first.how,
        contact=first.contact,
        taken_by=first.taken_by,
        words=first.words,
        revision=given.revision,
        sha256=revisions[given.revision].sha256,
        lines=tuple(_taken_back(line) for line in lines),
        extra=None,
        total_before=None,
        total_after=None,
    )


def _line(one: Approval, revisions: Mapping[int, FrozenQuote]) -> list[AnsweredLine]:
    line = revisions[one.revision].quote.line(one.label)
    return [_as_answered(one, line)] if line else []


def _as_answered(one: Approval, line: QuoteLine) -> AnsweredLine:
    return AnsweredLine(
        label=one.label,
        title=line.title,
        answer=one.answer,
        number=line.number,
        quantity=line.quantity if line.part else 0,
        parts=line.parts_price,
        hours=line.hours,
        labour=line.labour_price,
        charges=line.price - line.parts_price - line.labour_price,
        amount=one.amount,
        holds=one.holds,
    )


def _taken_back(line: AnsweredLine) -> AnsweredLine:
    return changed(line, answer="taken back")
