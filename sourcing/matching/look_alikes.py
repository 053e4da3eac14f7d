"""Numbers that look like one of the family's: candidates for a person, never a match.

A near number is likelier a sister part than a slip of the pen: the shorter and the more numeric, the more so. The
score is the share of characters that agree, less where the maker differs; it orders the list and decides nothing.
"""

from collections.abc import Iterable

from rapidfuzz import process
from rapidfuzz.distance import OSA

from ..basics.offer import Offer
from ..basics.part_number import PartNumber, number_key
from ..basics.value import Value
from .dimensions.size_check import check_size
from .equivalences.family import Family

SHORTEST = 5
"""Keys shorter than this are not compared: among short numbers everything is near everything."""

OTHER_MAKER = 0.2
"""Taken off the score where the row names another maker than the near number's."""


class LookAlike(Value, frozen=True, kw_only=True):
    """An offer whose number is near: to which number, why, how near, and whether its size speaks against it."""

    near: PartNumber
    reasons: tuple[str, ...]
    score: float
    vetoed: bool


def near_keys(family: Family, keys: Iterable[str]) -> frozenset[str]:
    """The keys among `keys` that are one slip away from a key of the family (two where keys have nine characters)."""
    own = family.number_keys()
    pool = sorted(set(keys) - own)
    found: set[str] = set()
    for key in own:
        if len(key) >= SHORTEST:
            hits = process.extract(key, pool, scorer=OSA.distance, score_cutoff=_slips(key), limit=None)
            found.update(hit[0] for hit in hits)
    return frozenset(found)


def look_alike(offer: Offer, family: Family) -> LookAlike | None:
    """How the offer's nearest number relates to the family; None where none is near."""
    best: LookAlike | None = None
    for number in offer.numbers():
        for own in family.printed.values():
            judged = _judge(number, own, offer, family)
            if judged and (best is None or judged.score > best.score):
                best = judged
    return best


def _slips(key: str) -> int:
    return 2 if len(key) >= 9 else 1


def _judge(number: PartNumber, own: PartNumber, offer: Offer, family: Family) -> LookAlike | None:
    if len(own.key) < SHORTEST or number.key == own.key:
        return None
    slips = OSA.distance(number.key, own.key, score_cutoff=_slips(own.key))
    if slips > _slips(own.key):
        return None
    size = check_size(family.part.size, offer.supplier_number, offer.maker_number, offer.description)
    score = 1 - slips / max(len(own.key), len(number_key(number.printed)))
    if family.makers.key(number.maker) != family.makers.key(own.maker):
        score = max(0.0, score - OTHER_MAKER)
    reasons = [f"looks like {own}: {slips} character{'s' if slips > 1 else ''} different"]
    if size.vetoes:
        reasons.append(f"held back by its size: {size.words}")
    return LookAlike(near=own, reasons=tuple(reasons), score=round(score, 3), vetoed=size.vetoes)
