"""The header word a misspelt header is close to: 'Lsit Price', 'Manufcturer'. A hint for a person, rarely more.

Closeness is rapidfuzz's ratio of the two keys (2 x common letters in order, by both lengths, in per cent); the
limits below were chosen so that no common header of another meaning comes close to a word (tests hold that).
"""

import re
from functools import lru_cache
from typing import NamedTuple

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA

from sourcing.basics.sheet import Field

from .header_keys import header_key, plain_text, spellings, without_currency
from .header_words import LANGUAGES, UNCLEAR, WORDS, meaning_of

NEAR, SHORTEST = 85.0, 6
TAKEN, LONG = 87.0, 8
"""From which closeness and length on a harmless field is taken where the values agree too."""
SURE = 90.0
"""From which closeness on the only number column is taken where the values look like part numbers."""
HARMLESS: tuple[Field, ...] = ("description", "note", "stock", "lead time", "maker")
"""Fields that cost neither money nor identity where they are wrong."""


class Close(NamedTuple):
    """The word a header is close to, the field it means (None: a price of two meanings), and how close, to 100."""

    word: str
    field: Field | None
    ratio: float


@lru_cache(maxsize=1)
def _words() -> dict[str, str]:
    """Every word list's spelling by its letters and figures; slips are looked for in the words as written."""
    lists = [words for field in WORDS.values() for words in field]
    lists += [words for one in LANGUAGES for words in (one.UNCLEAR, one.NO_FIELD, one.OLDER, one.SURCHARGE)]
    texts = [text for words in lists for text in spellings(words)]
    found = {key: text for text in reversed(texts) for key in (header_key(text), _letters(text))}
    return {key: text for key, text in found.items() if len(key) >= SHORTEST - 1}


def _letters(text: str) -> str:
    return "".join(re.findall(r"[^\W_]+", plain_text(without_currency(text))))


@lru_cache(maxsize=4096)
def closest(header: str) -> Close | None:
    """The header word this one is close to. None: none, or the closest is a word that means no field.

    At most two letters may be wrong, one in a short word. Figures must be the same: 'Price 2' is not 'Price 1'.
    """
    return _closest(_letters(header)) or _closest(header_key(header))


def _closest(key: str) -> Close | None:
    if not SHORTEST <= len(key) <= 40:
        return None
    most, digits = 1 if len(key) < LONG else 2, re.sub(r"\D", "", key)
    near = process.extract(key, _words().keys(), scorer=fuzz.ratio, score_cutoff=NEAR, limit=8)
    fit = [(word, ratio) for word, ratio, _ in near if re.sub(r"\D", "", word) == digits]
    fit = [(word, ratio) for word, ratio in fit if OSA.distance(key, word) <= most]
    # 'Lsit price' is as close to 'last price' as to 'list price': of equals, the one that means something is asked.
    best = (_close(_words()[word], ratio) for word, ratio in fit if ratio == fit[0][1])
    return next(filter(None, best), None)


def _close(word: str, ratio: float) -> Close | None:
    meaning = meaning_of(word)
    return Close(word, meaning.field, ratio) if meaning.field or meaning.why == UNCLEAR else None
