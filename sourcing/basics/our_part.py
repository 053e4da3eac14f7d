"""A part of ours opened, added or changed by a person: how its size reads, and what a change of it touches."""

from .equivalence import OurPart
from .table_finding import Finding
from .value import Value

WORDS = {
    **{"name": "name", "size": "size", "category": "category", "note": "note"},
    **{"cord": "cord", "cover": "cover", "cogs": "cogs", "side": "side", "sold_as": "comes as", "pieces": "pieces"},
}
"""What a field is called to a person."""


class PartTold(Value, frozen=True, kw_only=True):
    """A part as it was typed. The six last say what an offer must be beside its size; blank: not asked."""

    code: str
    name: str = ""
    size: str = ""
    category: str = ""
    note: str = ""
    cord: str = ""
    cover: str = ""
    cogs: str = ""
    side: str = ""
    sold_as: str = ""
    pieces: str = ""


class SizeRead(Value, frozen=True, kw_only=True):
    """How a size reads, in words, blank where it does not; `doubt`: why it may not do what is wanted of it."""

    reads_as: tuple[str, ...] = ()
    doubt: str = ""


class OfferTouched(Value, frozen=True, kw_only=True):
    """An offer under one of the part's numbers that another size holds back, or no longer does. `words`: in numbers."""

    supplier_name: str
    number: str
    held: bool
    words: str


class Touched(Value, frozen=True, kw_only=True):
    """What a changed size touches: offers, what contradicts it in the table, open jobs that need the part.

    `too_much`: so much hangs together with it that offers and table were not looked at.
    """

    offers: tuple[OfferTouched, ...] = ()
    findings: tuple[Finding, ...] = ()
    jobs: tuple[str, ...] = ()
    too_much: bool = False


class KeptPart(Value, frozen=True, kw_only=True):
    """A part as it is kept. `before`: as it was, None where it is new. `changes` says in words what was changed."""

    part: OurPart
    size: SizeRead
    before: OurPart | None = None
    changes: tuple[str, ...] = ()
    touched: Touched = Touched()


class OpenedPart(Value, frozen=True, kw_only=True):
    """A part opened to be changed. `named_by`: what names it, so that it must stay."""

    part: OurPart
    size: SizeRead
    named_by: tuple[str, ...]


def told_of(part: OurPart) -> PartTold:
    """The part as somebody would type it; what is not asked is blank."""
    asked = part.asked
    return PartTold(
        **{name: getattr(part, name) for name in ("code", "name", "size", "category", "note")},
        **{name: getattr(asked, name) for name in ("cord", "cover", "cogs", "side", "sold_as")},
        pieces=str(asked.pieces or ""),
    )


def part_changes(before: OurPart, now: OurPart) -> tuple[str, ...]:
    """What differs, in words: "size: 'B36' becomes 'B38'"."""
    one, other = told_of(before), told_of(now)
    return tuple(
        f"{word}: '{getattr(one, field)}' becomes '{getattr(other, field)}'"
        for field, word in WORDS.items()
        if getattr(one, field) != getattr(other, field)
    )
