"""What a person types, on the command line or in a form, as exact values; what can't be read is refused."""

from collections.abc import Sequence
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from typing import TypeVar

from .money import is_amount
from .problem import Refused, refused

W = TypeVar("W", bound=str)

MOST_COUNT = 9
"""Digits of a count: more is a slip of the hand."""


def amount(text: str) -> Decimal:
    """An amount of money as typed: digits with a point."""
    try:
        number = Decimal(text)
    except InvalidOperation:
        raise refused("not-an-amount", found=_short(text)) from None
    if not is_amount(number) or "e" in text.lower():
        raise refused("not-an-amount", found=_short(text))
    return number


def hours(text: str) -> Decimal:
    """Hours of work as typed: digits with a point."""
    try:
        return amount(text)
    except Refused:
        raise refused("not-hours", found=_short(text)) from None


def measure(text: str) -> Decimal:
    """A length as typed: digits with a point, or a fraction as rules show it ('9-1/2', '3/8')."""
    whole, _, part = text.strip().rpartition("-") if "/" in text else ("", "", text.strip())
    try:
        if "/" not in part:
            return Decimal(part)
        exact = Fraction(part) + int(whole or 0)
        return Decimal(exact.numerator) / Decimal(exact.denominator)
    except (ArithmeticError, ValueError):
        raise refused("not-a-measure", found=text) from None


def one_word(text: str, option: str, known: Sequence[W]) -> W:
    """The known word that was typed, whatever its case. Refuses others, naming those known."""
    for word in known:
        if word == text.strip().casefold():
            return word
    raise refused("unknown-word", found=text, column=option, known=", ".join(known))


def count(text: str) -> int:
    """A whole number as typed."""
    if not text.isascii() or not text.isdecimal() or len(text) > MOST_COUNT:
        raise refused("count-below-one", found=_short(text))
    return int(text)


def _short(text: str) -> str:
    """What was typed, cut where it is too long for a sentence."""
    return text if len(text) <= 30 else f"{text[:27]}..."
