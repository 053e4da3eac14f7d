"""Hashes of keys, of keys with one or two characters left out, and of their beginnings and ends, in columns.

A key of the characters c0, c1, ... has the hash T(c0) + T(c1)·B + T(c2)·B² + ... modulo 2⁶⁴, T a mixing of the
character's code. The hash of a key without some characters is made of three pieces of that sum, so nothing is spelt
out. Two texts may share a hash by chance: what is found by hashes is always checked on the texts.
"""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.uint64]
Places = NDArray[np.int64]

_BASE = 0x9E3779B97F4A7C15
_BASE_BACK = pow(_BASE, -1, 1 << 64)
_MIX = np.uint64(0xD6E8FEB86659FD93)
LONGEST = 64
"""Keys of more characters have no hashes of this kind: no near numbers are looked for."""
_AT_ONCE = 50_000
"""Keys in one group, to bound the memory their sums take."""


class SameLength:
    """The hashes of keys of one length. `at` says where the keys stood; `sums[i]` is the hash of the first i signs."""

    def __init__(self, at: Places, keys: Sequence[str]) -> None:
        self.at = at
        self.length = len(keys[0])
        signs = np.array(keys, dtype=f"U{self.length}").view(np.uint32).reshape(len(keys), self.length)
        mixed = (signs.astype(np.uint64) + np.uint64(1)) * _MIX
        mixed ^= mixed >> np.uint64(29)
        self.signs_sum: Numbers = (mixed * _MIX).sum(axis=1, dtype=np.uint64)
        terms = mixed * _powers(_BASE, self.length)
        self.sums: Numbers = np.zeros((len(keys), self.length + 1), dtype=np.uint64)
        np.cumsum(terms, axis=1, out=self.sums[:, 1:])

    @property
    def whole(self) -> Numbers:
        """The hash of each key."""
        return self.sums[:, self.length]

    def without_one(self) -> Iterator[Numbers]:
        """The hashes with the first character left out, then the second, and so on."""
        back = np.uint64(_BASE_BACK)
        for gone in range(self.length):
            yield self.sums[:, gone] + (self.whole - self.sums[:, gone + 1]) * back

    def without_two(self) -> Iterator[Numbers]:
        """The hashes with every two characters left out."""
        once, twice = np.uint64(_BASE_BACK), np.uint64(_BASE_BACK * _BASE_BACK % (1 << 64))
        for first in range(self.length):
            for second in range(first + 1, self.length):
                between = (self.sums[:, second] - self.sums[:, first + 1]) * once
                yield self.sums[:, first] + between + (self.whole - self.sums[:, second + 1]) * twice

    def beginnings(self, shortest: int, most_gone: int) -> Iterator[Numbers]:
        """The hashes of the keys' beginnings, at least `shortest` signs, with 1 to `most_gone` signs off the end."""
        for kept in range(max(shortest, self.length - most_gone), self.length):
            yield self.sums[:, kept]

    def ends(self, shortest: int, most_gone: int) -> Iterator[Numbers]:
        """The hashes of the keys' ends, at least `shortest` signs, with 1 to `most_gone` signs off the beginning."""
        for gone in range(1, min(most_gone, self.length - shortest) + 1):
            yield (self.whole - self.sums[:, gone]) * np.uint64(pow(_BASE_BACK, gone, 1 << 64))


def by_length(keys: Sequence[str], shortest: int) -> Iterator[SameLength]:
    """The keys in groups of one length, shortest first, without those below `shortest` and above `LONGEST` signs."""
    lengths = np.fromiter(map(len, keys), dtype=np.int64, count=len(keys))
    for length in np.unique(lengths):
        if shortest <= length <= LONGEST:
            every = np.flatnonzero(lengths == length)
            for start in range(0, len(every), _AT_ONCE):
                at = every[start : start + _AT_ONCE]
                yield SameLength(at, [keys[place] for place in at])


def hashes_of(texts: Sequence[str]) -> Numbers:
    """The hash of every text, 0 for those without one (blank or too long)."""
    found = np.zeros(len(texts), dtype=np.uint64)
    for group in by_length(texts, 1):
        found[group.at] = group.whole
    return found


def _powers(base: int, count: int) -> Numbers:
    return np.array([pow(base, power, 1 << 64) for power in range(count)], dtype=np.uint64)
