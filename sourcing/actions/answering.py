"""Keep one answer to a candidate: what stands in its way, the statement a yes makes, and what follows from it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from ..basics.equivalence import Statement
from ..basics.judgement import Answer, AnswerKept, How, Judgement, KeptCandidate, Trust, judged_number
from ..basics.offer import Offer
from ..basics.part_number import OURS, PartNumber
from ..basics.problem import refused
from ..basics.statement_history import Signed, StatementEvent
from ..basics.value import Value, changed
from ..matching.numbers.affixes import strip
from ..matching.settled_rows import SettledRows
from ..storage.judgements import add_judgement, judgements
from ..storage.statements import add_events, kept_statements, set_withdrawn, state
from .desk import Pen
from .our_side import NO_RULES, OurSide, our_side
from .our_side_now import our_side_now
from .settled import is_own, keys_of_judgement, keys_of_offer, settled_rows
from .table_compare import content

REPLACED = ("same part", "superseded by")
"""Relations that make two numbers the same part of ours; a substitute may serve for several."""


WAY_ON = (
    "a must-not is withdrawn at its statement, a size mended at our part; for one job, what is not a must-not is taken"
    " on a person's word at the job's line ('sourcing accept-anyway')"
)
"""Where to go on from a yes that changes nothing by itself."""


class Said(Value, frozen=True, kw_only=True):
    """What a person says to a candidate. `standing` is of the statement a yes makes; with a no it means nothing."""

    answer: Answer
    standing: Trust = "unchecked"
    words: str = ""
    how: How = "alone"


@dataclass
class Answering:
    """An open transaction in which answers are given one after the other; each knows of those before it."""

    pen: Pen
    side: OurSide
    before: list[Judgement]
    settled: SettledRows
    tied: dict[tuple[str, str], str] = field(default_factory=dict)
    """Numbers tied to parts of ours since `side` was loaded: node to code."""

    @property
    def signed(self) -> Signed:
        """Who answers and when."""
        return Signed(at=self.pen.desk.at, who=self.pen.desk.who)


def answering(pen: Pen) -> Answering:
    """Load our parts and every answer there ever was, before anything is written."""
    side, before = our_side_now(pen.connection, pen.desk), judgements(pen.connection)
    in_force = (one for one in before if one.in_force)
    return Answering(pen, side, before, settled_rows(in_force, side.makers, side.families))


def refuse_unfit(at: Answering, kept: KeptCandidate, said: Said) -> None:
    """Refuses an answer to what is answered already, and a yes against which something speaks without words.

    Also a yes for a number that is another part's of ours: that would tie one number to two.
    """
    if at.settled.settled(keys_of_offer(kept.offer, at.side.makers), kept.part):
        raise _answered(at, kept)
    if said.answer == "no":
        return
    if kept.against and not said.words.strip():
        raise refused("against-without-words", found=kept.candidate, reasons="; ".join(kept.reasons))
    _refuse_other_part(at, kept)


def give(at: Answering, kept: KeptCandidate, said: Said) -> Judgement:
    """Keep the answer, with the statement a yes makes. Refuses what `refuse_unfit` refuses."""
    refuse_unfit(at, kept, said)
    offer = kept.offer
    statement = _stated(at, kept, said) if said.answer == "yes" else None
    new = Judgement(
        candidate=kept.candidate,
        supplier=offer.supplier,
        supplier_number=offer.supplier_number,
        maker=offer.maker,
        maker_number=offer.maker_number,
        description=offer.description,
        sheet=offer.source.sheet,
        sheet_date=offer.source.sheet_date,
        part=kept.part,
        answer=said.answer,
        how=said.how,
        at=at.pen.desk.at,
        who=at.pen.desk.who,
        score=kept.score,
        against=kept.against,
        reasons=kept.reasons,
        facts=kept.facts,
        standing=said.standing if said.answer == "yes" else "",
        statement=statement,
        words=said.words.strip(),
    )
    new = changed(new, judgement=add_judgement(at.pen.connection, new))
    at.settled.add(keys_of_judgement(new, at.side.makers), new.part, new.answer)
    at.before.append(new)
    at.pen.note(f"candidate {new.candidate}", _noted(new))
    return new


def outcomes(at: Answering, given: Mapping[int, tuple[Judgement, Offer]]) -> dict[int, AnswerKept]:
    """What follows from each answer, by the place it was given at; the table is read anew, as it stands by now."""
    changed_table = any(one.answer == "yes" for one, _ in given.values())
    side = our_side(at.pen.connection, at.pen.desk.at.date()) if changed_table else at.side
    return {place: AnswerKept(judgement=one, told=_told(side, one, offer)) for place, (one, offer) in given.items()}


def number_tied(side: OurSide, offer: Offer) -> PartNumber:
    """The number a yes ties to our part; a maker's number without what the supplier puts around every number."""
    number = judged_number(offer)
    if number.maker == offer.supplier:
        return number
    return changed(number, printed=strip(side.known.rules.get(offer.supplier, NO_RULES), number.printed))


def _answered(at: Answering, kept: KeptCandidate) -> Exception:
    """The refusal that names the answer which settles this candidate."""
    keys = keys_of_offer(kept.offer, at.side.makers)
    in_force = [one for one in at.before if one.in_force]
    settled = (
        one for one in in_force if settled_rows([one], at.side.makers, at.side.families).settled(keys, kept.part)
    )
    one = next(settled)
    said = f"{one.answer} to {one.part} for {one.supplier}'s {one.supplier_number}"
    return refused("candidate-judged", who=one.who, answer=said, found=one.candidate, day=one.at.date())


def _refuse_other_part(at: Answering, kept: KeptCandidate) -> None:
    number = number_tied(at.side, kept.offer)
    node = at.side.makers.node(number)
    now = at.tied.get(node, kept.part)
    if now != kept.part:
        raise refused("number-of-another-part", found=number, other=now, statement="an answer given just now")
    for other in sorted(at.side.known.bearers.get(number.key, frozenset()) - {kept.part}):
        path = at.side.families[other].paths.get(node)
        if path is not None and all(link.relation in REPLACED for link in path.links):
            links = "; ".join(f"statement {link.number}: {link}" for link in path.links) or "its own code"
            raise refused("number-of-another-part", found=number, other=other, statement=links)


def _stated(at: Answering, kept: KeptCandidate, said: Said) -> int:
    """The number of the statement a yes makes. One that was withdrawn with an answer taken back comes back itself."""
    desk, offer = at.pen.desk, kept.offer
    number = number_tied(at.side, offer)
    at.tied[at.side.makers.node(number)] = kept.part
    new = Statement(
        left=PartNumber(printed=kept.part, maker=OURS),
        relation="same part",
        right=number,
        standing=said.standing,
        source=f"judged on {offer.supplier}'s sheet of {offer.source.sheet_date}",
        stated_on=desk.at.date(),
        stated_by=desk.who,
    )
    reason = f"yes to candidate {kept.candidate}" + (f": {said.words.strip()}" if said.words.strip() else "")
    old = _withdrawn_before(at, new)
    if old is None:
        return state(at.pen.connection, [new], at.signed, [reason])[0]
    set_withdrawn(at.pen.connection, [old], False)
    event = StatementEvent(statement=old, at=desk.at, who=desk.who, what="restored", reason=reason)
    add_events(at.pen.connection, [event])
    return old


def _withdrawn_before(at: Answering, new: Statement) -> int | None:
    """The statement of an answer taken back that says the very same, None where there is none."""
    back = (one for one in at.before if not one.in_force and one.part == new.left.printed and one.statement)
    numbers: Iterable[int] = [one.statement for one in back if one.statement]
    for kept in kept_statements(at.pen.connection, list(numbers)):
        if kept.withdrawn and content(kept.statement) == content(new):
            return kept.statement.number
    return None


def _noted(one: Judgement) -> str:
    how = f" ({one.standing}, statement {one.statement})" if one.answer == "yes" else ""
    words = f": {one.words}" if one.words else ""
    return f"{one.answer} to {one.part} for {one.supplier}'s {one.supplier_number}{how}{words}"


def _told(side: OurSide, one: Judgement, offer: Offer) -> str:
    if one.answer == "no":
        gone = f"{offer.shown_number} of {one.supplier} is not {one.part}; it does not come back"
        return f"{gone}{_elsewhere(side, one, offer)}"
    number = number_tied(side, offer)
    kept = f"{number} is kept as {one.standing} for {one.part}, statement {one.statement}"
    match = dict(side.matches(offer)).get(one.part)
    if match and match.tier == "automatic" and match.on_word_of:
        row = f"{one.supplier}'s row {offer.shown_number} counts as {one.part} from now on, on the word of {one.who}"
        return f"{row}, as long as it reads as it does ({number} is kept as {one.standing}, statement {one.statement})"
    if match and match.tier == "automatic":
        return f"{kept}: offers of it match by themselves from now on"
    if one.standing == "unchecked" and not (match and match.vetoed):
        until = f"until somebody has fitted it or a maker's list says so ('sourcing table standing {one.statement}')"
        return f"{kept}: it will be shown, not ordered by itself, {until}"
    why = "; ".join(match.reasons) if match else "no path leads to it"
    return f"{kept}, and still not ordered by itself: {why}; {WAY_ON}"


def _elsewhere(side: OurSide, one: Judgement, offer: Offer) -> str:
    """What a no means for other suppliers who sell the maker's number."""
    number = judged_number(offer)
    if number.maker == offer.supplier:
        return ""
    if is_own(side.families, side.makers.node(number), one.part):
        own = f"{number} is a number of {one.part}"
        return f". Only this supplier's row is refused: {own}, and at other suppliers it counts as before"
    return f", nor does {number.maker}'s number at another supplier"
