"""What two descriptions say that no part is at once: 'vented' and 'non-vented', 'left' and 'right' of a thing's kind.

Words that tell sister parts apart are common practice, no source; English, German and French. A word that is not in
the list contradicts nothing, but that it is denied on one side only is seen of any word.
"""

import re
from functools import lru_cache

from rapidfuzz.distance import OSA

from .plain_words import as_written
from .words.text import LONGEST_TEXT, unaccented

OPPOSITES = (
    *(("intake", "exhaust"), ("inlet", "outlet"), ("input", "output"), ("inner", "outer"), ("inside", "outside")),
    *(("male", "female"), ("threaded", "plain"), ("cogged", "wrapped"), ("cogged", "plain"), ("aramid", "polyester")),
    *(("auger", "traction"), ("auger", "drive"), ("drive", "driven"), ("driver", "driven"), ("mulching", "lift")),
    *(("small", "large"), ("short", "long"), ("wide", "narrow"), ("low", "high"), ("single", "double")),
    *(("standard", "low"), ("standard", "high"), ("single", "dual"), ("straight", "bent"), ("straight", "angled")),
    *(("open", "closed"), ("open", "sealed"), ("open", "shielded"), ("sealed", "shielded"), ("solid", "pneumatic")),
    *(("paper", "foam"), ("steel", "poly"), ("steel", "plastic"), ("steel", "aluminum"), ("metal", "plastic")),
    *(("stainless", "nickel"), ("copper", "iridium"), ("nbr", "fkm"), ("bonded", "riveted"), ("led", "halogen")),
    *(("manual", "electric"), ("electric", "recoil"), ("gas", "electric"), ("ball", "needle"), ("flat", "grooved")),
    *(("flat", "v"), ("round", "oval"), ("round", "square"), ("hex", "square"), ("tapered", "gasket")),
    *(("gasket", "diaphragm"), ("extension", "compression"), ("torsion", "extension"), ("full", "semi")),
    *(("no", "nc"), ("momentary", "maintained"), ("cw", "ccw"), ("clockwise", "counterclockwise")),
    *(("clockwise", "anticlockwise"), ("gravity", "pump"), ("choke", "throttle"), ("brake", "clutch")),
    *(("kurz", "lang"), ("kurze", "lange"), ("kupplung", "bremse"), ("gas", "bremse"), ("offner", "schliesser")),
    *(("kugellager", "gleitlager"), ("papier", "schaumstoff"), ("rund", "vierkant"), ("standard", "ubermass")),
    *(("innen", "aussen"), ("einlass", "auslass"), ("glatt", "gezahnt"), ("zugfeder", "druckfeder"), ("grob", "fein")),
    *(("mulch", "fangen"), ("oben", "unten"), ("stahl", "kunststoff"), ("offen", "geschlossen"), ("gas", "kupplung")),
    *(("court", "long"), ("courte", "longue"), ("ouvert", "ferme"), ("ouvert", "etanche"), ("haut", "bas")),
    *(("admission", "echappement"), ("superieure", "inferieure"), ("superieur", "inferieur"), ("gaz", "frein")),
    *(("interieur", "exterieur"), ("interieure", "exterieure"), ("plate", "gorge"), ("entree", "sortie")),
    *(("lisse", "crantee"), ("mulching", "soufflante"), ("embrayage", "frein"), ("petit", "grand")),
)

ELSEWHERE = frozenset(
    ("matched", "paired", "original", "genuine", "compatible", "replacement", "equivalent", "oem", "aftermarket")
)
"""What is made of these words, denied or not, is looked at where sets and parts in place of others are."""

_WORD = re.compile(r"[^\W_]+")
_DENIED = re.compile(
    r"(?<![^\W_])(?:without|w/o|not|non|no|less|ohne|nicht|kein\w{0,2}|sans|pas|sin|zonder|geen|niet)[ -]{1,2}"
    r"(?:(?:an?|the|any|de|d'|une?|einen?|eine)[ -])?([^\W\d_]{3,})"
)
"""A word that is denied, with what denies it before it."""
_UN = ("un", "non")
"""Before a word, joined on: 'unvented', 'nonvented'."""


def excluded(one: str, other: str) -> str:
    """The two words, one in each description, that no part is at once; blank where there are none."""
    left, right = _words(one), _words(other)
    for first, second in (*OPPOSITES, *((b, a) for a, b in OPPOSITES)):
        if first in left and second in right and first not in right and second not in left:
            return f"{first} against {second}"
    for said, denied in ((left, _denied(other)), (right, _denied(one))):
        beyond = _denied(one) if said is left else _denied(other)
        for word in sorted(denied - beyond):
            if word in said:
                return f"{word} against none"
    return ""


def replaced(one: str, other: str) -> str:
    """The one word that stands in the place of another while all else is the same: 'winter' against 'summer'.

    Blank where more or less differs, or where the two may be spellings or a short form of one word.
    """
    left, right = _written(one), _written(other)
    mine, theirs = left.keys() - right.keys(), right.keys() - left.keys()
    if len(mine) != 1 or len(theirs) != 1 or len(left) < 2:
        return ""
    (first,), (second,) = mine, theirs
    if _may_be_one(first, second) or ELSEWHERE & {first, second}:
        return ""
    return f"{left[first]} against {right[second]}"


@lru_cache(maxsize=20_000)
def _written(text: str) -> dict[str, str]:
    return {plain: word for plain, word in as_written(text).items() if plain.isalpha()}


def _may_be_one(first: str, second: str) -> bool:
    """'refrigerator' and 'fridge', 'carb' and 'carburetor', 'grey' and 'gray'."""
    short, long = sorted((first, second), key=len)
    letters = iter(long)
    return all(letter in letters for letter in short) or OSA.distance(first, second) <= len(long) // 4


@lru_cache(maxsize=20_000)
def _words(text: str) -> frozenset[str]:
    return frozenset(_WORD.findall(unaccented(text[:LONGEST_TEXT])))


@lru_cache(maxsize=20_000)
def _denied(text: str) -> frozenset[str]:
    plain = unaccented(text[:LONGEST_TEXT])
    joined = {word.removeprefix(un) for word in _words(text) for un in _UN if word.startswith(un) and len(word) > 6}
    return (frozenset(_DENIED.findall(plain)) | joined) - ELSEWHERE
