"""The state of a job from what happened to it.

The words follow what is furthest along, in this order: a bill; goods that came; goods on order; answers; the paper
given to the customer; the paper; the job itself. What lags behind that is said beside it, so that nothing hides.
"""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from typing import get_args

from ..basics.job_state import HeldFor, JobFacts, JobState, LineFacts, StateWord, WaitsFor


def job_state(facts: JobFacts, today: date) -> JobState:
    """Where the job is. `today` tells whether the quote has expired and whether goods are late."""
    words = _words(facts)
    waits_for, next_step = _next(facts, words, today)
    return JobState(
        words=words,
        since=_since(facts, words),
        waits_for=waits_for,
        next_step=next_step,
        beside=_beside(facts, words, today),
    )


def _words(facts: JobFacts) -> StateWord:
    if facts.billed_at is not None:
        return "closed"
    if facts.quoted_at is None:
        return "taken in"
    return _goods_words(facts) or _answer_words(facts)


def _goods_words(facts: JobFacts) -> StateWord | None:
    """None while nothing stands on an order."""
    wanted, ordered = _wanted(facts), [line for line in _wanted(facts) if line.order]
    if not ordered:
        return None
    if all(line.complete_at for line in wanted):
        return "all received"
    if any(one.pieces > 0 for line in wanted for one in line.came):
        return "received in part"
    return "ordered" if len(ordered) == len(wanted) else "ordered in part"


def _answer_words(facts: JobFacts) -> StateWord:
    answers = [line.answer for line in facts.lines]
    if "approved" in answers:
        return "approved" if set(answers) == {"approved"} else "approved in part"
    if "waiting" not in answers:
        return "declined"
    # An answer to a line shows as well that the customer has the paper.
    return "waiting for answer" if facts.given_at is not None or "declined" in answers else "quoted"


def _wanted(facts: JobFacts) -> list[LineFacts]:
    """Lines whose part the job is to have: on an order, or approved."""
    return [line for line in facts.lines if line.order or (line.needed and line.answer == "approved")]


def _since(facts: JobFacts, words: StateWord) -> datetime:
    last_answer = _last(line.answered_at for line in facts.lines)
    first_came = min((one.at for line in facts.lines for one in line.came if one.pieces > 0), default=None)
    last_complete = _last(line.complete_at for line in _wanted(facts))
    last_order = _last(line.ordered_at for line in facts.lines)
    moments: dict[StateWord, datetime | None] = {
        "taken in": facts.taken_in_at,
        "quoted": facts.quoted_at,
        "waiting for answer": facts.given_at or last_answer,
        **dict.fromkeys(("declined", "approved in part", "approved"), last_answer),
        **dict.fromkeys(("ordered in part", "ordered"), last_order),
        "received in part": first_came,
        "all received": last_complete,
        "closed": facts.billed_at,
    }
    return moments[words] or facts.quoted_at or facts.taken_in_at


def _last(moments: Iterable[datetime | None]) -> datetime | None:
    return max((one for one in moments if one is not None), default=None)


def _next(facts: JobFacts, words: StateWord, today: date) -> tuple[WaitsFor, str]:
    """Who waits for whom, and one thing to do. What only we can do comes before waiting for others."""
    job, customer = facts.job, facts.customer
    back = f"give back {facts.held} of the deposit: sourcing deposit {job} --back" if facts.held else ""
    if words == "closed":
        if facts.waiting_back:
            goods = "see what must still go back to suppliers or be credited: sourcing going-back"
            back = f"{back}; {goods}" if back else goods
        return ("us", back) if back else ("nobody", "nothing is left to do")
    if words == "taken in":
        return "us", f"write the quote: sourcing quote {job}"
    if words == "declined":
        return "us", back or f"give the machine back; close the job: sourcing bill {job}"
    held = [line for line in facts.lines if line.held]
    to_order = [line.label for line in _wanted(facts) if not line.order and not line.held]
    ours = [*_decisions(held, job), *([f"order {_lines(to_order)}: sourcing order {job}"] if to_order else [])]
    if ours:
        return "us", "; ".join(ours)
    waiting = _waiting(facts)
    if waiting:
        return _ask(facts, waiting, today)
    missing = [line for line in _wanted(facts) if line.complete_at is None]
    if missing:
        return "the supplier", _goods_awaited(missing, today)
    return "us", f"do the work, give {customer} the machine, and write the bill: sourcing bill {job}"


def _decisions(held: list[LineFacts], job: str) -> Iterator[str]:
    """What held lines wait for, a clause for each kind."""
    for kind in get_args(HeldFor):
        labels = [line.label for line in held if line.held == kind]
        if labels:
            yield _decision(kind, labels, job)


def _decision(kind: HeldFor, labels: list[str], job: str) -> str:
    lines, are, them = (_lines(labels), *(("is", "it") if len(labels) == 1 else ("are", "them")))
    if kind == "which part":
        return f"settle which part {lines} is to have: 'sourcing identity {job} {labels[0]}'"
    if kind == "its freight":
        return f"get an answer to the freight without which {lines} can't be ordered: sourcing answer {job}"
    if kind == "a new quote":
        return f"{lines} {are} to be bought elsewhere; write that quote: sourcing quote {job}"
    if kind == "its old part":
        return f"tell the customer in a new quote that the old part of {lines} goes back: sourcing quote {job}"
    return f"{lines} {are} not as approved; decide what is to be done about {them}: sourcing alarms {job}"


def _ask(facts: JobFacts, waiting: list[str], today: date) -> tuple[WaitsFor, str]:
    job, customer = facts.job, facts.customer
    if facts.valid_to is not None and facts.valid_to < today:
        return "us", f"the quote has expired; write it anew: sourcing quote {job}"
    if _given(facts):
        return "the customer", f"ask {customer} about {_lines(waiting)}; record the answer: sourcing answer {job}"
    return "us", f"give {customer} the quote, {_lines(waiting)} to be answered: sourcing given {job}"


def _given(facts: JobFacts) -> bool:
    """Whether the customer has the newest paper."""
    answered = [line.answered_at for line in facts.lines if line.answered_at is not None]
    made = facts.quoted_at
    return facts.given_at is not None or any(made is not None and one >= made for one in answered)


def _goods_awaited(missing: list[LineFacts], today: date) -> str:
    """A clause for each order, those whose day is past first."""
    orders = dict.fromkeys(line.order for line in missing)
    clauses = [_of_order([line for line in missing if line.order == order], today) for order in orders]
    return "; ".join(words for _, words in sorted(clauses, key=lambda one: not one[0]))


def _of_order(missing: list[LineFacts], today: date) -> tuple[bool, str]:
    """Whether its day is past, and what the supplier still has of it."""
    late = [line for line in missing if line.expected is not None and line.expected < today]
    first = (late or missing)[0]
    day = f"promised for {first.expected}" if first.expected else "no day is promised"
    words = f"{first.supplier or 'the supplier'} has {_lines(line.label for line in missing)} on {first.order}, {day}"
    return bool(late), f"{words}; that day is past: ask" if late else words


def _waiting(facts: JobFacts) -> list[str]:
    """Lines the newest quote asks about, those on order included: it asks anew what changed since."""
    return [line.label for line in facts.lines if line.answer == "waiting"]


def _lines(labels: Iterable[str]) -> str:
    named = list(labels)
    return f"line{'s' if len(named) > 1 else ''} {', '.join(named)}"


def _beside(facts: JobFacts, words: StateWord, today: date) -> tuple[str, ...]:
    if words in ("closed", "taken in"):
        return ()
    found = []
    waiting = _waiting(facts)
    if waiting and words not in ("quoted", "waiting for answer"):
        verb = "waits" if len(waiting) == 1 else "wait"
        found.append(f"{_lines(waiting)} {verb} for an answer")
    if waiting and facts.valid_to is not None and facts.valid_to < today:
        found.append(f"the quote expired on {facts.valid_to}")
    found += [f"line {line.label} is approved on condition: {line.condition}" for line in facts.lines if line.condition]
    found += [
        f"line {line.label} was promised for {line.expected} and is late"
        for line in _wanted(facts)
        if line.order and line.complete_at is None and line.expected is not None and line.expected < today
    ]
    return tuple(found)
