"""A part number as printed, whose it is, and the key under which it is compared.

Rule: the key sets aside case, spaces and punctuation, and takes the full-width letters and digits of East Asian
keyboards for the plain ones they are (Unicode block FF01-FF5E); nothing else. A different character is a different
part: leading zeros, O against 0, I against 1 all stay different (common practice, no source).
"""

import re
from collections.abc import Sequence

from .value import Value

OURS = "(ours)"
"""The maker of the shop's own part codes in the equivalence table."""


class PartNumber(Value, frozen=True, kw_only=True):
    """A number as printed and its maker; a blank maker means not known."""

    printed: str
    maker: str = ""

    @property
    def key(self) -> str:
        """The number's key, see `number_key`."""
        return number_key(self.printed)

    @property
    def node(self) -> tuple[str, str]:
        """Maker key and number key: two numbers are the same number when these are equal."""
        return maker_key(self.maker), number_key(self.printed)

    def __str__(self) -> str:
        if self.maker == OURS:
            return self.printed
        return f"{self.maker} {self.printed}" if self.maker else self.printed


_FULL_WIDTH = re.compile("[\uff01-\uff5e]+")
_PLAIN_KEY: dict[int, int | None] = {
    code: ord(chr(code).upper()) if chr(code).isalnum() else None for code in range(128)
}
"""What becomes of each ASCII character: its capital, itself, or nothing."""
_PLAIN_KEYS = {**_PLAIN_KEY, ord("\n"): ord("\n")}
_SET_ASIDE = re.compile(r"[^\w\n]+|_+")
"""Everything `str.isalnum` refuses, line ends apart: `\\w` is what it takes, and the low line."""
_AT_ONCE = 20_000
"""Texts joined at one time, so that a few odd ones don't slow a whole column."""


def number_key(text: str) -> str:
    """Letters and digits of the number, upper case. 'nw-40388 ' and 'NW 40388' share a key; 0123 and 123 do not."""
    if text.isascii():
        return text.translate(_PLAIN_KEY)
    return "".join(character for character in _plain_width(text).upper() if character.isalnum())


def number_keys(texts: Sequence[str]) -> list[str]:
    """`number_key` of every text, in order, for long columns: a million take well under a second."""
    keys: list[str] = []
    for start in range(0, len(texts), _AT_ONCE):
        keys += _keys_at_once(texts[start : start + _AT_ONCE])
    return keys


def _keys_at_once(texts: Sequence[str]) -> list[str]:
    joined = "\n".join(texts)
    if joined.count("\n") != len(texts) - 1:
        return [number_key(text) for text in texts]  # a text has line ends of its own
    if joined.isascii():
        return joined.translate(_PLAIN_KEYS).split("\n")
    return _SET_ASIDE.sub("", _plain_width(joined).upper()).split("\n")


def _plain_width(text: str) -> str:
    """Full-width signs as the ASCII signs they stand for: each lies 0xFEE0 above its own."""
    return _FULL_WIDTH.sub(lambda found: "".join(chr(ord(sign) - 0xFEE0) for sign in found[0]), text)


def maker_key(text: str) -> str:
    """The maker's name without case, spaces and punctuation. Blank stays blank: not known."""
    return text if text == OURS else "".join(c for c in text.casefold() if c.isalnum())
