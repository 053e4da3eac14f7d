"""A part of ours in words: how its size reads, what a change of it touches; for pages and the command line."""

from collections.abc import Iterator

from ..basics.equivalence import OurPart
from ..basics.our_part import KeptPart, SizeRead, Touched
from .plain_text import count, document, wrapped

MOST = 20
"""Offers and jobs named one by one."""


def part_words(part: OurPart) -> str:
    """Code and name: 'PIN, shear pin'."""
    return f"{part.code}, {part.name}" if part.name else part.code


def size_words(size: SizeRead) -> str:
    """How the size reads: 'The size reads as classical V-belt ...'; blank where it does not read."""
    return f"The size reads as {' and '.join(size.reads_as)}" if size.reads_as else ""


def touched_words(touched: Touched) -> Iterator[str]:
    """What another size does, a sentence each, what may send a wrong part first."""
    for finding in touched.findings[:MOST]:
        yield f"{finding.kind.capitalize()}: {finding.words}"
    for offer in touched.offers[:MOST]:
        what = "Held back for its size from then on" if offer.held else "No longer held back for its size"
        yield f"{what}: {offer.supplier_name} {offer.number}, {offer.words}"
    if len(touched.offers) > MOST:
        yield f"{count(len(touched.offers) - MOST, 'more offer')} are held back otherwise than before"
    if touched.jobs:
        more = f" and {len(touched.jobs) - MOST} more" if len(touched.jobs) > MOST else ""
        yield f"Open jobs need it, look at them again: {', '.join(touched.jobs[:MOST])}{more}"
    if touched.too_much:
        yield "Too much hangs together with it to look at its offers at once; look at 'sourcing table check'"


def kept_text(kept: KeptPart) -> str:
    """The part as it is kept, what was changed and what that does."""
    told = (*kept.changes, size_words(kept.size), kept.size.doubt, *touched_words(kept.touched))
    return document(
        [*wrapped(f"Our part {part_words(kept.part)}"), *(line for one in told for line in wrapped(one, 2))]
    )
