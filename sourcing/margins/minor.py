"""Whole minor units (cents) for bulk work: exact, half up once, shared to the last cent.

The same rules as `Money`, `percent_of` and `share_out` in basics; tests hold them together. Over a hundred thousand
lines a whole number is added many times faster than an amount with its currency.
"""

from collections.abc import Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from ..basics.margin_facts import Amount
from ..basics.money import Money, from_minor

ONE = Decimal(1)


def half_up(amount: Decimal) -> int:
    """The nearest whole number, ties away from zero."""
    return int(amount.quantize(ONE, ROUND_HALF_UP))


def minor(amount: Decimal, places: int) -> int:
    """An amount in whole minor units, rounded half up where it has more decimals than the currency."""
    return half_up(amount.scaleb(places))


def digits(kept: Amount, places: int) -> int:
    """The same of an amount as kept."""
    return reader(places)[kept.amount]


@cache
def reader(places: int) -> Mapping[str, int]:
    """Amounts as kept, in whole minor units, by their text. Any amount may be asked for."""
    return _Read(places)


MOST = 100_000
"""So many amounts are remembered: about ten megabytes."""


class _Read(dict[str, int]):
    """A shop's papers state the same few amounts over and over: each is worked out once and then looked up."""

    def __init__(self, places: int) -> None:
        self._places = places

    def __missing__(self, text: str) -> int:
        """Nearly always the digits are those of the minor unit: taken as they are."""
        if len(self) >= MOST:
            self.clear()
        places = self._places
        as_it_is = text[-1 - places : -places] == "."
        found = self[text] = int(text.replace(".", "")) if as_it_is else minor(Decimal(text), places)
        return found


def part_of(amount: int, part: int, whole: int) -> int:
    """The amount times part over whole, half up, ties away from zero; nothing where the whole is nothing."""
    if part == whole or not whole:
        return amount if whole else 0
    sign = -1 if (amount < 0) != (part * whole < 0) else 1
    return sign * ((2 * abs(amount * part) + abs(whole)) // (2 * abs(whole)))


def shared(amount: int, weights: Sequence[int]) -> list[int]:
    """The amount in proportion to weights not below zero, by largest remainder, ties to the earlier one; all zero means
    equal shares."""
    if not amount or len(weights) < 2:
        return [amount] * len(weights)
    cents, whole = abs(amount), sum(weights)
    exact = [cents * weight for weight in weights] if whole else [cents] * len(weights)
    whole = whole or len(weights)
    parts = [one // whole for one in exact]
    left = cents - sum(parts)
    if left:
        _to_largest(parts, [one % whole for one in exact], left)
    return parts if amount > 0 else [-part for part in parts]


def _to_largest(parts: list[int], rest: list[int], left: int) -> None:
    """One more to each of as many of the largest remainders; of equal ones to the earlier."""
    if left < 4:  # a few are found faster than all are sorted
        for _ in range(left):
            at = rest.index(max(rest))
            parts[at] += 1
            rest[at] = -1
        return
    for at in sorted(range(len(rest)), key=rest.__getitem__, reverse=True)[:left]:  # keeps the order of equals
        parts[at] += 1


def money(amount: int, currency: str) -> Money:
    """Money from whole minor units, with all decimals of the currency."""
    return from_minor(amount, currency)
