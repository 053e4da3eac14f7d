"""The words of a description so that spellings meet: 'Carburettors' and 'carburetor', 'two' and '2'."""

import re

from .likeness.said import said
from .words.sold_as import NUMBERS, PAIRS, PIECES, SETS
from .words.text import unaccented

SAYS_NOTHING = frozenset(map(unaccented, ("of", "the", "and", "a", "an", "complete", *PIECES, *SETS, *PAIRS)))
"""Words every description may have. Whether it is a set and of how many is compared elsewhere."""
LEAST = 4
"""A shorter word that ends with s is no plural."""

_TWICE = re.compile(r"([a-z])\1")


def plain_words(description: str) -> frozenset[str]:
    """Its words without plural, accents and doubled letters; measures and words that say nothing are left out."""
    return frozenset(as_written(description))


def as_written(description: str) -> dict[str, str]:
    """The same words, each with the spelling it has in the description."""
    words = sorted(said((), (), description).words)
    return {_plain(unaccented(word)): word for word in words if unaccented(word) not in SAYS_NOTHING}


def _plain(word: str) -> str:
    if word in NUMBERS:
        return str(NUMBERS[word])
    single = word.removesuffix("s") if len(word) >= LEAST and not word.endswith("ss") else word
    return _TWICE.sub(r"\1", single)
