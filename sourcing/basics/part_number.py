"""A part number as printed, whose it is, and the key under which it is compared.

Rule: the key sets aside case, spaces and punctuation and nothing else. A different character is a different
part: leading zeros, O against 0, I against 1 all stay different (common practice, no source).
"""

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


def number_key(text: str) -> str:
    """Letters and digits of the number, upper case. 'nw-40388 ' and 'NW 40388' share a key; 0123 and 123 do not."""
    return "".join(character for character in text.upper() if character.isalnum())


def maker_key(text: str) -> str:
    """The maker's name without case, spaces and punctuation. Blank stays blank: not known."""
    return text if text == OURS else "".join(c for c in text.casefold() if c.isalnum())
