"""A number's family for a page: the same as the drawing, number after number in words, each with its statements."""

from collections.abc import Iterator

from ..basics.equivalence import Statement
from ..basics.family_view import FamilyView, KitItem, PartFamily
from ..basics.part_number import OURS, PartNumber
from ..basics.value import Value
from .family_words import member_notes


class NumberLine(Value, frozen=True, kw_only=True):
    """A number and what is known of it. `trust`: how far it counts, in words; `links`: the statements, in order."""

    number: PartNumber
    trust: str
    notes: tuple[str, ...] = ()
    links: tuple[Statement, ...] = ()
    may_serve: bool = True
    asked: bool = False


class FamilyLines(Value, frozen=True, kw_only=True):
    """The family of one of our parts or of a number by itself; `title` without its name, which is `name`."""

    code: str
    title: str
    numbers: tuple[NumberLine, ...]
    beside: tuple[NumberLine, ...] = ()


def family_lines(view: FamilyView) -> tuple[FamilyLines, ...]:
    """Family after family, in the order of the drawing."""
    return tuple(_family(family) for family in view.families)


def number_words(number: PartNumber) -> str:
    """The number with its maker; our own code is named as that."""
    if number.maker == OURS:
        return f"{number.printed} (our part)"
    return f"{number.printed} ({number.maker or 'maker not known'})"


def _family(family: PartFamily) -> FamilyLines:
    part = family.part
    title = ", ".join(text for text in (part.name, part.size and f"size {part.size}") if text) if part else ""
    return FamilyLines(
        code=part.code if part else "",
        title=title or number_words(family.members[0].number),
        numbers=tuple(_member(at, family) for at in range(len(family.members))),
        beside=tuple(_beside(family)),
    )


def _member(at: int, family: PartFamily) -> NumberLine:
    member = family.members[at]
    trust = f"counts as {member.standing}" if member.path.links else "our part's own" if family.part else "looked up"
    links = member.path.links
    if member.forbidden:
        trust = "must not serve"
        links = (*links, *(() if member.forbidden in links else (member.forbidden,)))
    notes = tuple(words for words in member_notes(at, family) if words != "asked for")
    return NumberLine(
        number=member.number,
        trust=trust,
        notes=notes,
        links=links,
        may_serve=member.forbidden is None,
        asked=member.asked,
    )


def _beside(family: PartFamily) -> Iterator[NumberLine]:
    """What must not serve and no path leads to, what the part holds as a kit, and kits that hold it."""
    for one in family.banned:
        yield NumberLine(number=one.number, trust="must not serve", links=(one.statement,), may_serve=False)
    for item in family.contents:
        yield NumberLine(number=item.number, trust=f"in the kit, {_count(item)}", links=item.links)
    for item in family.in_kits:
        yield NumberLine(number=item.number, trust=f"a kit that holds it, {_count(item)}", links=item.links)


def _count(item: KitItem) -> str:
    return "the statements disagree on how many" if item.count is None else f"{item.count} in one kit"
