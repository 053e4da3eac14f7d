"""What is said of a number's family in words: beside each number, and what a drawing has no place for."""

from collections.abc import Iterator

from ..basics.equivalence import only_words
from ..basics.family_view import FamilyView, PartFamily
from ..basics.part_number import OURS


def member_notes(at: int, family: PartFamily) -> Iterator[str]:
    """Everything to know of the number at that place of the family, each a few words."""
    member, part = family.members[at], family.part
    if not member.path.links and part is not None and member.number.maker == OURS:
        yield from (words for words in (part.name, part.size and f"size {part.size}") if words)
    if member.asked:
        yield "asked for"
    yield from _superseded(at, family)
    if _ends_chain(at, family):
        yield "the newest number that is sold"
    elif member.sold is not None and member.number.maker != OURS:
        yield "sold, by the newest sheets" if member.sold else "not sold, by the newest sheets"
    yield from (only_words(words) for words in member.conditions)


def _superseded(at: int, family: PartFamily) -> Iterator[str]:
    for edge in family.edges:
        if edge.statement.relation == "superseded by" and edge.left == at:
            yield f"superseded by {family.members[edge.right].number}"


def _ends_chain(at: int, family: PartFamily) -> bool:
    """Whether others were superseded by it and it is the newest that is sold. Of a number alone that says nothing."""
    member = family.members[at]
    follows = any(edge.statement.relation == "superseded by" and edge.right == at for edge in family.edges)
    return follows and member.newest and not member.forbidden


def more_words(view: FamilyView) -> Iterator[str]:
    """What stands beside the families: dead ends, statements not followed, what is left out."""
    if not view.families:
        yield f"No statement of the table names '{view.asked}'."
    if view.bench is not None:
        serial = f", serial {view.bench.serial}" if view.bench.serial else ""
        yield f"For the machine {view.bench.machine}{serial}."
    for one in view.must_not:
        whose = f"It must not serve for our part {one.part.code}" if one.part else "It must not serve"
        number = "" if one.statement.number is None else f"statement {one.statement.number}: "
        yield f"{whose}: {number}{one.statement}."
    for family in view.families:
        yield from _more_of(family)


def _more_of(family: PartFamily) -> Iterator[str]:
    if family.part is None:
        ours = [one.number.printed for one in family.members if one.number.maker == OURS and one.forbidden is None]
        asked = family.members[0].number
        yield f"{asked} leads to {', '.join(ours)}, one way only." if ours else f"{asked} is tied to no part of ours."
    for end in family.dead_ends:
        chain = "; ".join(str(link) for link in end.path.links)
        yield f"Dead end: {end.number} is the newest number and nobody sells it, by the newest sheets ({chain})."
    for one in family.not_followed:
        yield f"Left aside: {one.statement}: {one.why}."
    if family.left_out:
        yield f"{family.left_out:,} more numbers are not shown."
