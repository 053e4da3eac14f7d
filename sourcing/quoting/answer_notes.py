"""What the shop should know of answers beside the answers: why one no longer holds, what is not as it was approved."""

from collections.abc import Iterator, Mapping
from datetime import date

from ..basics.approval import Approval
from ..basics.quote import Quote


def answer_notes(
    quote: Quote, last: Mapping[str, tuple[Approval, str]], earlier: Mapping[int, Quote]
) -> tuple[str, ...]:
    """Sentences about each line's last answer, and about days later than those on the revision that was approved.

    `last` is what `approvals.last_words` gives: the answer, and why it does not hold for the line as it is now.
    """
    notes = [note for label, (one, why) in last.items() for note in _notes(quote, label, one, why, earlier)]
    covering = {one.revision for one, why in last.values() if not why and one.answer == "approved"}
    for revision in sorted(covering - {quote.revision}):
        notes += _later_days(earlier[revision], quote)
    return tuple(notes)


def _notes(quote: Quote, label: str, one: Approval, why: str, earlier: Mapping[int, Quote]) -> Iterator[str]:
    said = f"{one.who} {one.answer} it on {one.at:%Y-%m-%d} at {one.amount} before tax"
    line = quote.line(label)
    if why:
        yield f"line {label} waits: {said}, but {why}"
    elif line and line.price != one.amount:
        yield f"line {label} is now {line.price} before tax; {said}, and that answer still holds"
    if one.condition and not why:
        yield f"line {label} is approved on condition: {one.condition}"


def _later_days(old: Quote, new: Quote) -> Iterator[str]:
    pairs = (
        ("the parts were promised by", _last(old.arrives), _last(new.arrives)),
        ("the machine was promised for", old.ready_by, new.ready_by),
    )
    for words, then, now in pairs:
        if then and (now is None or now > then):
            day = f"now it is {now}" if now else "now no day is known"
            yield f"{words} {then} on revision {old.revision}, {day}: a later day is a new question to the customer"


def _last(days: tuple[date, date] | None) -> date | None:
    return days[1] if days else None
