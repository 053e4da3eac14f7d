"""Seeded chance for the corpus: the demo world's dice with shares, orders and random signs."""

from collections.abc import Sequence
from typing import TypeVar

from tests.demo_world.dice import Dice

T = TypeVar("T")

LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ"
"""Without I, O and Q, which makers of numbers mostly leave out."""


class Chance(Dice):
    """Built on `Random.random` alone, so the same seed gives the same corpus on every Python."""

    def odds(self, share: float) -> bool:
        """True in that share of throws."""
        return self._random.random() < share

    def between(self, low: float, high: float) -> float:
        """Any number from low to high."""
        return low + self._random.random() * (high - low)

    def shuffled(self, items: Sequence[T]) -> list[T]:
        """The items in another order."""
        order = sorted((self._random.random(), at) for at in range(len(items)))
        return [items[at] for _, at in order]

    def digits(self, count: int) -> str:
        """So many digits, the first not 0."""
        return "".join(str(self.number(0 if at else 1, 9)) for at in range(count))

    def letters(self, count: int) -> str:
        """So many capital letters."""
        return "".join(self.pick(LETTERS) for _ in range(count))

    def weighted(self, choices: Sequence[tuple[T, float]]) -> T:
        """One of the choices by weight."""
        left = self._random.random() * sum(weight for _, weight in choices)
        for choice, weight in choices:
            left -= weight
            if left < 0:
                return choice
        return choices[-1][0]
