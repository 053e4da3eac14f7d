"""Which of our parts a need is, judged by its evidence in order of trust, with every conflict named.

Makers' lists decide, then sellers' lists; drive geometry gives a size and never a number; the removed part gives clues.
Two lists that are believed alike and disagree settle nothing. A guess is never taken for a fact, so anything that must
first be found out leaves the part not settled and says what to look for.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence

from ...basics.asked import Asked
from ...basics.equivalence import GOOD_STANDING, OurPart, only_words
from ...basics.evidence import CLUES, EVIDENCE_KINDS, MAKERS_LISTS, Evidence
from ...basics.identity import Certainty, Identity, Seen, Tie, Use
from ...basics.job import JobLine, Machine
from ...basics.part_number import PartNumber
from ...basics.value import Value, changed
from ..dimensions.reading import read_names
from .asked_merge import asked_of_lists, merged
from .conflicts import (
    Known,
    alike_in_size,
    clue_note,
    clue_words,
    list_conflicts,
    overruled_sizes,
    silent_lists,
    size_conflicts,
)
from .coverage import coverage
from .next_steps import next_steps

LookUp = Callable[[PartNumber], Sequence[Tie]]
"""The parts of ours that a number stands for, each with its path; none where no part bears it."""


class Question(Value, frozen=True, kw_only=True):
    """What is judged: a job's line with its evidence, and the machine on the bench. `line.part` may be blank."""

    line: JobLine
    machine: Machine


def identify(question: Question, look_up: LookUp, parts: Mapping[str, OurPart]) -> Identity:
    """The judgement. `parts` are our parts by code; sizes are compared by published standards."""
    seen = [_seen(at, one, question.machine, look_up) for at, one in enumerate(question.line.evidence, 1)]
    deciding = _deciding(seen)
    codes = sorted({tie.part for one in deciding for tie in one.ties})
    leaning = codes[0] if len(codes) == 1 else _first_named(seen)
    alike = alike_in_size(silent_lists(seen, deciding), deciding, parts.get(leaning))
    known = Known(part=parts.get(leaning), lists=tuple(deciding), alike=tuple(alike))
    conflicts = [*list_conflicts(seen, deciding, codes), *size_conflicts(seen, known)]
    settled = len(codes) == 1 and not conflicts
    seen = [_used(one, deciding, known, leaning if len(codes) == 1 else "") for one in seen]
    asked, differ = _asked(question.line, parts.get(question.line.part or leaning), seen)
    clues = [words for one in seen if _is_clue(one) for words in clue_words(one, known)]
    overruled = [*_overruled(seen), *overruled_sizes(seen, known)]
    told = [*conflicts, *overruled, *clues, *differ, *_other_part(question.line, leaning, settled)]
    certainty = _certainty(deciding, bool(conflicts) or len(codes) > 1)
    return Identity(
        part=leaning if settled else "",
        leaning=leaning,
        certainty=certainty,
        words=_words(certainty, known, leaning, parts),
        seen=tuple(seen),
        conflicts=tuple(dict.fromkeys(told)),
        next_steps=next_steps(seen, question.machine, certainty),
        asked=asked,
    )


def _seen(at: int, one: Evidence, machine: Machine, look_up: LookUp) -> Seen:
    """A line of evidence before it is weighed against the others."""
    ties = tuple(look_up(one.part_number)) if one.number else ()
    use, words = _use(one, machine, ties)
    if one.size and not read_names(one.size, certain=True):
        words = f"{words}; its size '{one.size}' can't be read, so it is compared with none"
    return Seen(at=at, evidence=one, use=use, ties=ties, words=words)


def _use(one: Evidence, machine: Machine, ties: Sequence[Tie]) -> tuple[Use, str]:
    if one.taken_back:
        return "set aside", f"taken back by {one.taken_back}"
    if one.kind in CLUES:
        return "clue", "a clue only: it never settles which part it is"
    if one.kind == "drive geometry":
        return "size only", "gives a size and no number"
    covers = coverage(one, machine)
    if covers.verdict != "covers":
        return ("set aside" if covers.verdict == "other" else "open"), covers.words
    return _list_use(one, ties)


def _list_use(one: Evidence, ties: Sequence[Tie]) -> tuple[Use, str]:
    if not one.number:
        return "size only", "names no number"
    if not ties:
        return "open", f"{one.part_number} is in no statement of the equivalence table"
    if all(tie.banned for tie in ties):
        return "open", "; ".join(f"{one.part_number} can't be {tie.part}: {tie.banned}" for tie in ties)
    if len({tie.part for tie in ties}) > 1:
        return "open", f"{one.part_number} is tied to {' and '.join(sorted({tie.part for tie in ties}))}"
    (tie,) = ties[:1]
    if tie.banned:
        return "open", f"{one.part_number} can't be {tie.part}: {tie.banned}"
    if tie.path.standing not in GOOD_STANDING:
        weakest = next(link for link in tie.path.links if link.counts_as == tie.path.standing)
        return "open", f"{one.part_number} is tied to {tie.part} only by a statement that nobody confirmed: {weakest}"
    return "decides", _path_words(one, tie)


def _path_words(one: Evidence, tie: Tie) -> str:
    links = "; ".join(str(link) for link in tie.path.links) or "our part's own number"
    when = f"; holds {' and '.join(map(only_words, tie.path.conditions))}" if tie.path.conditions else ""
    return f"{one.part_number} is {tie.part}: {links}{when}"


def _deciding(seen: Sequence[Seen]) -> list[Seen]:
    """The lists that name a part, of the best kind there is: makers' lists together, sellers' lists where none is."""
    named = [one for one in seen if one.use == "decides"]
    makers = [one for one in named if one.evidence.kind in MAKERS_LISTS]
    return makers or named


def _first_named(seen: Sequence[Seen]) -> str:
    """The part the most trusted line names, where the lines do not agree on one; blank where none names one part."""
    ranked = sorted(seen, key=lambda one: (EVIDENCE_KINDS.index(one.evidence.kind), one.at))
    named = [one for one in ranked if one.use == "decides"]
    return named[0].ties[0].part if named else ""


def _used(one: Seen, deciding: Iterable[Seen], known: Known, part: str) -> Seen:
    """A sellers' list beside makers' lists agrees or is overruled; a clue is told what it comes to."""
    if _is_clue(one):
        return changed(one, words=clue_note(one, known))
    if one in known.alike:
        return changed(one, words=f"{one.words}; agrees in size")
    if one.use != "decides" or any(one.at == other.at for other in deciding):
        return one
    names = one.ties[0].part
    return changed(one, use="agrees" if names == part else "overruled")


def _is_clue(one: Seen) -> bool:
    return one.use == "clue" or (one.use == "size only" and one.evidence.kind == "drive geometry")


def _overruled(seen: Sequence[Seen]) -> list[str]:
    return [
        f"a seller's list says {one.evidence.says}, which is {one.ties[0].part}: makers' lists are trusted before it"
        for one in seen
        if one.use == "overruled"
    ]


def _other_part(line: JobLine, leaning: str, settled: bool) -> list[str]:
    if not line.part or not leaning or line.part == leaning:
        return []
    sure = "the evidence says" if settled else "the evidence leans to"
    return [f"the job's line asks for {line.part}, {sure} {leaning}: one of the two is wrong"]


def _asked(line: JobLine, part: OurPart | None, seen: Sequence[Seen]) -> tuple[Asked, tuple[str, ...]]:
    """What the need asks: the line, our part, then the lists that are about this machine."""
    lists = [
        (f"the {one.evidence.kind}", one.evidence.words)
        for one in seen
        if part and one.use in ("decides", "agrees") and one.ties[0].part == part.code
    ]
    own = [(f"our part {part.code}", part.asked)] if part else []
    return merged(("the job's line", line.asked), *own, *asked_of_lists(lists))


def _certainty(deciding: Sequence[Seen], contradicted: bool) -> Certainty:
    if not deciding:
        return "contradicted" if contradicted else "not settled"
    if contradicted:
        return "contradicted"
    if deciding[0].evidence.kind not in MAKERS_LISTS:
        return "sellers' lists only"
    return "lists agree" if len(deciding) > 1 else "one list"


def _words(certainty: Certainty, known: Known, leaning: str, parts: Mapping[str, OurPart]) -> str:
    deciding = known.lists
    name = f"{leaning} ({parts[leaning].name})" if leaning in parts and parts[leaning].name else leaning
    said = " and ".join(f"the {one.evidence.kind} ({one.evidence.says})" for one in deciding)
    if certainty == "lists agree":
        return f"{'both lists say' if len(deciding) == 2 else 'all lists say'} {name}: {said}"
    if certainty == "one list":
        beside = " and ".join(f"the {one.evidence.kind} ({one.evidence.size})" for one in known.alike)
        second = f"{beside} agrees in size and names no number" if beside else "no second list confirms it"
        return f"one list says {name}: {said}; {second}"
    if certainty == "sellers' lists only":
        return f"only {said} says {name}: no list of a maker confirms it"
    if certainty == "contradicted":
        return f"not settled: the evidence contradicts itself{f'; the most trusted names {name}' if name else ''}"
    return "not settled: no list that is about this machine names a part of ours"
