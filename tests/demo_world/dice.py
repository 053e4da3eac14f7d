"""Chance with a seed, and the numbers that random part numbers have to keep away from."""

import random
from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")


class Dice:
    """Seeded chance built on `Random.random` alone, whose sequence Python promises not to change."""

    def __init__(self, seed: str) -> None:
        self._random = random.Random(seed)

    def number(self, low: int, high: int) -> int:
        """A whole number from low to high, both included."""
        return low + int(self._random.random() * (high - low + 1))

    def pick(self, choices: Sequence[T]) -> T:
        """One of the choices."""
        return choices[self.number(0, len(choices) - 1)]

    def chance(self, percent: int) -> bool:
        """True in so many of a hundred throws."""
        return self.number(1, 100) <= percent

    def some(self, items: Sequence[T], count: int) -> list[T]:
        """So many of the items (all, where there are fewer), in the order given."""
        order = sorted(range(len(items)), key=lambda _: self._random.random())
        return [items[at] for at in sorted(order[:count])]


def key(number: str) -> str:
    """Letters and digits, upper case: two numbers with the same key are the same number."""
    return "".join(character for character in number.upper() if character.isalnum())


def one_slip_apart(one: str, other: str) -> bool:
    """Whether two keys are equal or differ by one wrong, missing, extra or swapped character."""
    if abs(len(one) - len(other)) > 1:
        return False
    start = next((at for at, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
    a, b = one[start:], other[start:]
    swapped = len(a) > 1 and len(b) > 1 and a[:2] == b[1::-1] and a[2:] == b[2:]
    return swapped or a[1:] == b[1:] or a[1:] == b or a == b[1:]
