"""What the words of an offer say against our part whose number it bears; and a person's yes to a row that reads so."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ..basics.equivalence import OurPart, Path
from ..basics.judgement import RowYes, reads_as
from ..basics.offer import Offer
from ..basics.part_number import number_key
from .articles import another_article, not_named
from .dimensions.reading import read_size
from .dimensions.size_check import check_size
from .equivalences.family import Family
from .held_back import in_place_of_another
from .likeness.said import Said, said
from .measures_against import bare_against, both_sides, measures_against
from .opposites import excluded

RATED = ("voltage", "teeth", "links", "ribs")
"""Measures that are counted or rated, so that two amounts are two things; lengths are rounded and left to a person."""


@dataclass(frozen=True)
class WordsSay:
    """`against`: what both descriptions can't be at once, so that the offer is held back. `doubts`: what the offer does
    not say, a question."""

    against: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()


NOTHING_SAID = WordsSay()


def words_say(offer: Offer, part: OurPart, path: Path) -> WordsSay:
    """What the words of the offer, and nothing but its words, say against the part its number is tied to by `path`."""
    against = [*_words_against(offer, part)]
    if not any(link.relation == "substitute" for link in path.links):  # whoever stated one knew that it differs
        against.append(excluded(offer.description, part.name))
    doubts = (not_named(offer.description, part.name),)
    return WordsSay(tuple(filter(None, against)), tuple(filter(None, doubts)))


def yes_to(some: Iterable[RowYes], offer: Offer, family: Family, words: WordsSay) -> RowYes | None:
    """The newest yes to this very row as this part that covers what its words say; None where they say nothing.

    `some`: yeses to rows of the supplier under the number as his sheet prints it.
    It covers the words she read and no others: a row that reads otherwise on a later sheet is a new question. What
    speaks against it needs a reason of hers. A size, a must-not or a number of doubtful standing no yes covers.
    """
    if words == NOTHING_SAID:
        return None
    mine = (one for one in reversed(tuple(some)) if one.part == family.part.code and (one.words or not words.against))
    return next((one for one in mine if _is_the_row(one, offer, family)), None)


def _is_the_row(one: RowYes, offer: Offer, family: Family) -> bool:
    """The same maker and maker's number, and the same words; spaces and case set aside."""
    key = family.makers.key
    numbers = number_key(one.maker_number), number_key(offer.maker_number)
    return (
        key(one.maker) == key(offer.maker)
        and (numbers[0] == numbers[1] or not all(numbers))
        and reads_as(one.description) == reads_as(offer.description)
    )


def said_of_part(part: OurPart) -> Said:
    """What our part's own entry says of it."""
    return said((), (), f"{part.name} {part.category} {part.size}")


def size_of(part: OurPart) -> str:
    """The part's designation; where none is entered, what its name shows for certain."""
    return part.size or (part.name if read_size(part.name) else "")


def _words_against(offer: Offer, part: OurPart) -> Iterator[str]:
    """What the two descriptions say that cannot both be so: article, side, used or new, what is counted or rated."""
    ours, its = said_of_part(part), said((), (), offer.description)
    yield another_article(offer.description, part.name)
    yield in_place_of_another(offer.description, part.name)
    yield both_sides(its, ours)
    if check_size(size_of(part), offer.description).verdict != "same size":
        yield from measures_against(its, ours)
        yield bare_against(its, ours)
    if "kit" in its.things - ours.things and not any(kind == "count" for kind, _ in its.measures):
        yield "a kit or set, where ours is none"
    if ours.sides and its.sides and ours.sides.isdisjoint(its.sides):
        yield f"{', '.join(sorted(its.sides))}, where ours is {', '.join(sorted(ours.sides))}"
    if "used" in its.things and "used" not in ours.things:
        yield "used or remanufactured"
    for kind in RATED:
        asked, offered = ({amount for each, amount in one.measures if each == kind} for one in (ours, its))
        if asked and offered and asked.isdisjoint(offered):
            yield f"{kind} {', '.join(sorted(offered))}, where ours is {', '.join(sorted(asked))}"
