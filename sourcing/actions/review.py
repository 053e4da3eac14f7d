"""What a person does with candidates: say yes or no, take that back, accept many of one supplier by their score."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from decimal import Decimal

from sqlalchemy import Connection

from ..basics.judgement import Answer, AnswerKept, ByScore, Judgement, KeptCandidate, Trust, Waiting
from ..basics.offer import Offer
from ..basics.problem import Refused, refused
from ..basics.statement_history import Signed, StatementEvent
from ..basics.value import changed
from ..matching.equivalences.makers import Node
from ..storage.candidates import kept_candidates
from ..storage.judgements import judgements, judgements_in_force, take_judgement_back
from ..storage.sheets import kept_sheets
from ..storage.statements import add_events, kept_statement, set_withdrawn
from .answering import Answering, Said, answering, give, number_tied, outcomes, refuse_unfit
from .desk import Desk, Pen
from .our_side import our_side
from .review_queue import LIKELY, review, show, shown_score, waiting_rows
from .settled import keys_of_judgement, settled_rows

BY_SCORE = Said(answer="yes", how="by score")


def judge(desk: Desk, candidate: int, answer: Answer, standing: Trust = "unchecked", words: str = "") -> AnswerKept:
    """Say whether a candidate is the part. A yes makes a statement of that standing, a no keeps it away for good.

    Refuses an unknown candidate, one that is answered already, a yes without words where something speaks against it,
    and a number that is tied to another part of ours.
    """
    with desk.writing("judge candidate") as pen:
        kept = kept_candidates(pen.connection, [candidate]).get(candidate)
        at = answering(pen)
        if kept is None or kept.part not in at.side.families:
            raise refused("no-such-candidate", found=candidate)
        said = Said(answer=answer, standing=standing, words=words)
        return outcomes(at, {0: (give(at, kept, said), kept.offer)})[0]


def take_back(desk: Desk, candidate: int, why: str) -> AnswerKept:
    """Take the answer to a candidate back, for a reason: it waits again, and the statement of a yes is withdrawn."""
    if not why.strip():
        raise refused("take-back-without-words")
    with desk.writing("take answer back") as pen:
        there = [one for one in judgements(pen.connection, candidate) if one.in_force]
        if not there:
            raise refused("candidate-not-judged", found=candidate)
        told = [_take_back(pen, one, why.strip()) for one in there]
        return told[-1]


def all_judgements(desk: Desk, supplier: str = "") -> tuple[Judgement, ...]:
    """Every answer, those taken back among them, to one supplier's rows or to all, oldest first."""
    with desk.store.reading() as connection:
        return tuple(one for one in judgements(connection) if supplier in ("", one.supplier))


def accept_by_score(desk: Desk, supplier: str, least: Decimal, accept: int | None = None) -> ByScore:
    """Accept all candidates of a supplier from a score on, as unchecked, against which nothing speaks.

    `accept` None only shows them. Else it is how many were shown, and nothing is kept if there are more or fewer by
    now. Left out and told: numbers that reach the score with two parts, and numbers that are tied to another part.
    """
    if not least.is_finite() or not LIKELY <= least <= 1:
        raise refused("score-not-between", found=least)
    if accept is None:
        with desk.store.reading() as connection:
            _refuse_unknown(connection, supplier, desk.at.date())
            at = answering(Pen(connection=connection, desk=desk, deed="look"))
            fit, left_out = _fit(at, supplier, least)
        return ByScore(supplier=supplier, least=least, shown=tuple(fit), left_out=tuple(left_out))
    with desk.writing("accept by score") as pen:
        at = answering(pen)
        fit, left_out = _fit(at, supplier, least)
        if not fit:
            raise refused("no-candidates-by-score", supplier=supplier, least=least)
        if accept != len(fit):
            raise refused("other-count-by-score", found=accept, count=len(fit))
        done = outcomes(at, dict(enumerate(_accepted(at, fit, left_out))))
    every = tuple(done.values())
    return ByScore(supplier=supplier, least=least, shown=tuple(fit), left_out=tuple(left_out), done=every)


def _refuse_unknown(connection: Connection, supplier: str, day: date) -> None:
    """A slip in the name would say that nothing waits."""
    if not any(one.supplier == supplier for one in kept_sheets(connection, day)):
        raise refused("no-newest-sheet", supplier=supplier)


def _accepted(at: Answering, fit: Iterable[Waiting], left_out: list[str]) -> Iterator[tuple[Judgement, Offer]]:
    """Each accepted in turn; what an answer before it has settled is left out."""
    for one in fit:
        try:
            yield give(at, one.kept, BY_SCORE), one.kept.offer
        except Refused as refusal:
            left_out.append(f"candidate {one.kept.candidate}: {refusal.problems[0].what}")


def _take_back(pen: Pen, one: Judgement, why: str) -> AnswerKept:
    desk, signed = pen.desk, Signed(at=pen.desk.at, who=pen.desk.who)
    take_judgement_back(pen.connection, one.judgement or 0, signed, why)
    told = f"the {one.answer} to {one.part} for {one.supplier}'s {one.supplier_number} is taken back"
    if one.statement is not None and not kept_statement(pen.connection, one.statement).withdrawn:
        reason = f"the yes to candidate {one.candidate} was taken back: {why}"
        set_withdrawn(pen.connection, [one.statement], True)
        event = StatementEvent(statement=one.statement, at=desk.at, who=desk.who, what="withdrawn", reason=reason)
        add_events(pen.connection, [event])
        told += f", and statement {one.statement} is withdrawn"
    pen.note(f"candidate {one.candidate}", f"took back the {one.answer} to {one.part}: {why}")
    back = changed(one, taken_back_at=desk.at, taken_back_by=desk.who, taken_back_why=why)
    return AnswerKept(judgement=back, told=f"{told}; {_after_taking_back(pen, one)}")


def _after_taking_back(pen: Pen, one: Judgement) -> str:
    side = our_side(pen.connection, pen.desk.at.date())
    others = settled_rows(judgements_in_force(pen.connection), side.makers, side.families)
    if others.settled(keys_of_judgement(one, side.makers), one.part):
        return "it does not wait again, for another answer settles it"
    return "it waits again where the number stands on a sheet that counts"


def _fit(at: Answering, supplier: str, least: Decimal) -> tuple[list[Waiting], list[str]]:
    """What may be accepted by score, likeliest first, and in words what may not though it has the score."""
    found = review(at.pen.connection, at.pen.desk, at.side)
    rows = [row for row in waiting_rows(found, supplier) if shown_score(row.score) >= least]
    rows.sort(key=lambda one: (-one.score, one.candidate))
    every = show(found, [row.candidate for row in rows])
    numbers, fit, left_out = _parts_of_numbers(at, every), dict[Node, Waiting](), list[str]()
    for one in every:
        why = _why_not(at, one.kept, numbers)
        if why:
            named = f"{one.kept.candidate}: {one.kept.offer.shown_number} for {one.kept.part}"
            left_out.append(f"{named}: {why}")
        else:  # the same number in two rows makes one statement and settles both
            fit.setdefault(_node(at, one.kept), one)
    return list(fit.values()), left_out


def _why_not(at: Answering, kept: KeptCandidate, numbers: Mapping[Node, set[str]]) -> str:
    """Blank where it may be accepted by its score."""
    if kept.against:
        return f"something speaks against it: {'; '.join(kept.reasons)}"
    parts = numbers[_node(at, kept)]
    if len(parts) > 1:
        return f"its number reaches the score with several of our parts, {', '.join(sorted(parts))}"
    try:
        refuse_unfit(at, kept, BY_SCORE)
    except Refused as refusal:
        return refusal.problems[0].what
    return ""


def _parts_of_numbers(at: Answering, every: Iterable[Waiting]) -> dict[Node, set[str]]:
    found: defaultdict[Node, set[str]] = defaultdict(set)
    for one in every:
        found[_node(at, one.kept)].add(one.kept.part)
    return found


def _node(at: Answering, kept: KeptCandidate) -> Node:
    """The number a yes would tie to our part."""
    return at.side.makers.node(number_tied(at.side, kept.offer))
