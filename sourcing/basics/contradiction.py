"""What can't hold in an entry a person edited: which field, and why; and what is wrong with any number in it."""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from typing import TypeGuard

import msgspec

from .value import Value

LARGEST = Decimal(10) ** 9
"""A figure from here on is a slip of the keyboard, whatever it is of."""

MOST_DAYS = 3660
"""Ten years: more days from any day are a slip of the keyboard, and may lead past the end of all calendars."""

FIRST_YEAR, LAST_YEAR = 1970, 2199
"""Days outside these years are a slip of the keyboard."""

MOST_DUTY = Decimal(1000)
"""Duties above 100 per cent do exist (common practice, no source); above this it is a slip."""

ABOVE_NOTHING = frozenset(
    ("divisor", "to_weight", "weight_step", "parcel_limit", "per_weight", "longer_than_cm", "multiplier")
)
"""Fields that mean nothing at 0."""


class Contradiction(Value, frozen=True, kw_only=True):
    """`field` is dotted, entries of a list counted from 1 ('freight.bands.2.charge'); `found` goes on from it."""

    field: str
    found: str


def number_faults(value: Value, path: str = "") -> Iterator[Contradiction]:
    """Every number of the value and of the values in it: none negative, per cents at most 100, pairs least first.

    `path` is the dotted place of the value itself, blank for the whole entry. Duties may be above 100 per cent.
    """
    for field in msgspec.structs.fields(value):
        where = f"{path}.{field.name}" if path else field.name
        yield from _of(getattr(value, field.name), where)


def day_faults(day: date | None, field: str) -> Iterator[Contradiction]:
    """What is wrong with a day; nothing where it is not stated."""
    if day is not None and not FIRST_YEAR <= day.year <= LAST_YEAR:
        yield Contradiction(field=field, found=f"is {day}, and no day between {FIRST_YEAR} and {LAST_YEAR}")


def is_finer(amount: Decimal, smallest: Decimal) -> bool:
    """Whether an amount is finer than the smallest coin. What is no number, or far too large, is told as that."""
    return amount.is_finite() and abs(amount) < LARGEST and bool(amount % smallest)


def doubled(texts: list[str], field: str, what: str) -> Iterator[Contradiction]:
    """A contradiction for every text that stands there more than once; `what` says what it is."""
    for text in sorted({text for text in texts if texts.count(text) > 1}):
        yield Contradiction(field=field, found=f"{what} '{text}' stands there more than once")


def _of(found: object, path: str) -> Iterator[Contradiction]:
    if isinstance(found, Value):
        yield from number_faults(found, path)
    elif isinstance(found, tuple):
        for at, one in enumerate(found, 1):
            yield from _of(one, f"{path}.{at}")
        if (
            len(found) == 2
            and not path.endswith("endings")
            and all(_sound(one) and one >= 0 for one in found)
            and found[0] > found[1]
        ):
            yield Contradiction(field=path, found=f"has the larger number first ({found[0]}, {found[1]})")
    elif _is_number(found):
        words = _wrong(found, path)
        if words:
            yield Contradiction(field=path, found=words)


def _is_number(found: object) -> bool:
    return isinstance(found, (Decimal, int)) and not isinstance(found, bool)


def _sound(number: object) -> TypeGuard[Decimal | int]:
    return _is_number(number) and (not isinstance(number, Decimal) or number.is_finite())


def _wrong(number: object, path: str) -> str:
    """What is wrong with one number; blank where nothing is."""
    name, most = path.rpartition(".")[2], MOST_DUTY if path.startswith("duty") else Decimal(100)
    if not _sound(number):
        return f"is {number}, and that is no number"
    if number < 0:
        return f"is {number}, and that is below nothing"
    if number == 0 and name in ABOVE_NOTHING:
        return "is 0, which means nothing here"
    if "percent" in name and number > most:
        return f"is {number} per cent, and more than {most} can't be"
    if path.rstrip(".0123456789").endswith("days") and number > MOST_DAYS:
        return f"is {number} days, and more than {MOST_DAYS} can't be"
    return f"is {number}, far too large" if number >= LARGEST else ""
