"""A number looked up, as text for a terminal 100 columns wide: the whole family with the path to each, link by link."""

from collections.abc import Iterator, Sequence

from ..basics.equivalence import OurPart, Statement
from ..basics.family_view import FamilyView, KitItem, PartFamily
from ..basics.part_number import OURS
from .equivalences import statement_words
from .family_words import member_notes, more_words
from .plain_text import document, wrapped


def family_text(view: FamilyView) -> str:
    """Each part's family: every number with what is known of it and the statements that lead to it."""
    lines: list[str] = []
    for family in view.families:
        lines += ["", *_family(family)] if lines else _family(family)
    more = [line for words in more_words(view) for line in wrapped(words)]
    if lines and more:
        lines.append("")
    return document([*lines, *more])


def _family(family: PartFamily) -> list[str]:
    lines = wrapped(_title(family.part) if family.part else str(family.members[0].number))
    for at, member in enumerate(family.members):
        if member.path.links or family.part is None:
            lines += ["", *_member(at, family)]
    for banned in family.banned:
        lines += ["", *wrapped(f"{banned.number}: MUST NOT SERVE", 2), *_links([banned.statement])]
    for title, items in (("In the kit", family.contents), ("A kit that holds it", family.in_kits)):
        lines += [line for item in items for line in ("", *_kit(title, item))]
    return lines


def _title(part: OurPart) -> str:
    size = f", size {part.size}" if part.size else ""
    return f"{part.code}: {part.name}{size}"


def _member(at: int, family: PartFamily) -> Iterator[str]:
    member = family.members[at]
    notes = "; ".join(member_notes(at, family))
    whose = "our part " if member.number.maker == OURS else ""
    trust = f"counts as {member.standing}" if member.path.links else "looked up by itself"
    if member.forbidden:
        trust = f"MUST NOT SERVE ({member.forbidden.source})"
    yield from wrapped(f"{whose}{member.number}: {trust}{'; ' if notes else ''}{notes}", 2)
    yield from _links([*member.path.links, *([member.forbidden] if member.forbidden else [])])


def _kit(title: str, item: KitItem) -> Iterator[str]:
    count = "the statements disagree on how many" if item.count is None else f"{item.count} in one kit"
    yield from wrapped(f"{title}: {item.number}, {count}", 2)
    yield from _links(item.links)


def _links(statements: Sequence[Statement]) -> list[str]:
    return [line for one in statements for line in wrapped(statement_words(one), 6)]
