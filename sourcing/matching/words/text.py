"""Text made plain before its words are looked at, and word lists made patterns.

The quick reader of whole sheets keeps accents, the careful reader of one offer drops them; word lists are written with
accents and serve both.
"""

import html
import re
import unicodedata
from collections.abc import Iterable
from typing import Final

LONGEST_TEXT: Final = 3000
"""A longer text is cut: nobody describes a part in more, and hostile cells are that long."""

_VULGAR: Final = re.compile(r"(?<=\d)(?=[¼-¾⅐-⅞])")
"""Between a whole number and the fraction behind it, as in '91½'."""


def plain(text: str) -> str:
    """Lower case, HTML entities and compatibility forms resolved, blanks single; accents stay."""
    if "&" in text:
        text = html.unescape(text)
    if not text.isascii():
        text = unicodedata.normalize("NFKC", _VULGAR.sub("-", text)).replace("\N{FRACTION SLASH}", "/")
    return " ".join(text.lower().split())


def unaccented(text: str) -> str:
    """The same without accents: 'Umhüllt' and 'UMHULLT' read alike, 'weiß' is 'weiss'."""
    text = plain(text)
    if not text.isascii():
        text = unicodedata.normalize("NFKD", text.replace("\N{RIGHT SINGLE QUOTATION MARK}", "'"))
        text = "".join(character for character in text if not unicodedata.combining(character))
    return " ".join(text.casefold().split())


def any_of(*words: Iterable[str]) -> str:
    """Any of these words as a pattern, the longest first, with its accents or without; a blank may be a hyphen."""
    both = {spelling for some in words for word in some for spelling in (word, unaccented(word))}
    escaped = (re.escape(word).replace(r"\ ", "[ -]") for word in sorted(both, key=lambda word: (-len(word), word)))
    return "(?:" + "|".join(escaped) + ")"
