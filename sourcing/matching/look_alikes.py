"""Numbers that look like one of the family's: candidates for a person, never a match.

A near number is likelier a sister part than a slip of the pen: the shorter and the more numeric, the more so. How much
one means is `numbers.surprise`'s formula, of how many numbers of the newest sheets stand as near to ours and how many
would by chance. Where that says little, the words or the size must agree too, or the offer is not shown at all.
"""

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence

import numpy as np
from rapidfuzz import process
from rapidfuzz.distance import OSA

from ..basics.offer import Offer
from ..basics.part_number import PartNumber
from ..basics.value import Value
from .articles import named
from .dimensions.size_check import check_size
from .dimensions.verdict import SizeCheck
from .equivalences.family import Family
from .likeness.said import said
from .numbers.surprise import NumberCrowd, sort_of, surprise

SHORTEST = 5
"""Keys shorter than this are not compared: among short numbers everything is near everything."""
LONG = 9
"""From this length on two slips are near."""

ALONE = 0.1
"""A number that is ours with this chance is shown by itself; a less telling one needs words or size that agree."""
WORDS_AGREE = 0.5
"""Of the shorter description's words so many are the other's too."""
OTHER_MAKER = 0.2
"""Taken off the score where the row names another maker than the near number's."""


class Near(Value, frozen=True, kw_only=True):
    """How near a key is to one of ours: slips, the chance that it is ours with a slip, how many keys are as near."""

    slips: int
    weight: float
    crowd: int


NearKeys = Mapping[str, Mapping[str, Near]]
"""By key of the sheets, by key of the family."""


class LookAlike(Value, frozen=True, kw_only=True):
    """An offer whose number is near: to which number, why, how near, and whether its size speaks against it.

    The score orders the list and decides nothing.
    """

    near: PartNumber
    reasons: tuple[str, ...]
    score: float
    vetoed: bool


def near_lengths(family: Family) -> frozenset[int]:
    """How long a key must be to be near one of the family's at all."""
    return frozenset(
        length for key in _keys(family) for length in range(len(key) - most_slips(key), len(key) + most_slips(key) + 1)
    )


def near_keys(family: Family, keys: Sequence[str]) -> NearKeys:
    """The keys among `keys` that are one slip away from a key of the family (two where ours has nine characters).

    `keys`: those of the newest sheets, of the lengths `near_lengths` says and maybe others; repeated ones count once.
    """
    found: defaultdict[str, dict[str, Near]] = defaultdict(dict)
    text, ours = "\n".join(keys), family.number_keys()
    for own in _keys(family):
        most = most_slips(own)
        slips = process.cdist([own], keys, scorer=OSA.distance, score_cutoff=most, dtype=np.uint8)[0]
        places = np.flatnonzero(slips <= most).tolist()
        near = {keys[at]: int(slips[at]) for at in places if keys[at] not in ours}
        crowd = NumberCrowd(keys=len(keys), near={sort_of(own): by_chance(own, text)})
        weight = surprise(own, len(near), crowd)
        for key, apart in near.items():
            found[key][own] = Near(slips=apart, weight=weight, crowd=len(near))
    return found


def look_alike(offer: Offer, family: Family, near: NearKeys) -> LookAlike | None:
    """How the offer's nearest number relates to the family; None where none is near, or near enough to say anything."""
    size = check_size(family.part.size, offer.supplier_number, offer.maker_number, offer.description)
    agrees = size.verdict == "same size" or words_agree(offer.description, family.part.name)
    found = [
        _judged(number, own, one, (family, size, agrees))
        for number in offer.numbers()
        for own in family.printed.values()
        if (one := near.get(number.key, {}).get(own.key)) and (one.weight >= ALONE or agrees)
    ]
    return max(found, key=lambda one: one.score, default=None)


def most_slips(key: str) -> int:
    """Up to so many slips away a number is near this one."""
    return 2 if len(key) >= LONG else 1


def by_chance(own: str, keys: str) -> float:
    """How many of `keys`, one a line, would stand one slip from ours if their figures were drawn by lot.

    Of the keys with our letters in our places each has one chance in ten for every figure, and nine other figures in
    each place are one slip away. Numbers given out in order crowd more; that is seen by how many really are near.
    """
    figures = sum(map(str.isdigit, own))
    shape = "".join(r"\d" if character.isdigit() else re.escape(character) for character in own)
    alike = len(set(re.findall(rf"(?m)^{shape}$", keys)))
    return alike * 9 * figures * 0.1**figures


def words_agree(description: str, ours: str) -> bool:
    """Whether the two descriptions share half of the shorter one's words, or name the same articles."""
    left, right = said((), (), description).words, said((), (), ours).words
    shared = {word for word in left & right if len(word) > 2}
    if shared and len(shared) >= WORDS_AGREE * min(len(left), len(right)):
        return True
    its, our = named(description)[0], named(ours)[0]
    return bool(its) and its == our


def _keys(family: Family) -> list[str]:
    """Our numbers that are long enough; not those that must not serve, for nobody wants what is like them."""
    return sorted({key for node in family.printed if node not in family.forbidden and len(key := node[1]) >= SHORTEST})


def _judged(number: PartNumber, own: PartNumber, near: Near, about: tuple[Family, SizeCheck, bool]) -> LookAlike:
    family, size, agrees = about
    score = near.weight + (1 - near.weight) / 2 if agrees else near.weight
    if family.makers.key(number.maker) != family.makers.key(own.maker):
        score = max(0.0, score - OTHER_MAKER)
    reasons = [f"looks like {own}: {near.slips} character{'s' if near.slips > 1 else ''} different{_crowd(near)}"]
    if size.vetoes:
        reasons.append(f"held back by its size: {size.words}")
    return LookAlike(near=own, reasons=tuple(reasons), score=round(score, 3), vetoed=size.vetoes)


def _crowd(near: Near) -> str:
    others = near.crowd - 1
    return f", as {others} other number{'s are' if others > 1 else ' is'}" if others else ""
