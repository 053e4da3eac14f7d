"""What one supplier puts before or after every part number, once a person has confirmed it."""

from typing import Literal

from .value import Value


class NumberRule(Value, frozen=True, kw_only=True):
    """`supplier` puts `text`, as printed and with its dash, before (prefix) or after (suffix) the maker's number."""

    supplier: str
    kind: Literal["prefix", "suffix"]
    text: str

    def __str__(self) -> str:
        return f"{self.supplier} puts '{self.text}' {'before' if self.kind == 'prefix' else 'after'} the number"
