"""Which keys bear a hash: many hashes a key, kept sorted in eight bytes each."""

from collections.abc import Iterable

import numpy as np

from .key_hashes import Numbers, Places

Borne = Iterable[tuple[Numbers, Places]]
"""Hashes and the places of the keys (or queries) that bear them, in pieces of equal length."""

_PLACE_BITS = np.uint64(24)
_PLACE = np.uint64((1 << 24) - 1)
MOST_KEYS = 1 << 24


class HashIndex:
    """An entry is the upper 40 bits of a hash and, below them, the place of its key.

    Forty bits may be alike by chance, so hits are to be checked; none is ever missed.
    """

    def __init__(self, borne: Borne) -> None:
        """Places are below `MOST_KEYS`."""
        self._entries = _packed(borne)

    def __len__(self) -> int:
        """How many entries are kept."""
        return len(self._entries)

    def hits(self, asked: Borne, crowded: int = 0) -> tuple[Places, Places]:
        """Places of queries and of keys that share a hash; a pair comes once for each hash it shares.

        A hash that more than `crowded` keys bear gives no hits (0: no such limit).
        """
        asking = _packed(asked)  # sorted, so that the look-ups walk through the entries once
        first = np.searchsorted(self._entries, asking & ~_PLACE, "left")
        found = np.searchsorted(self._entries, asking | _PLACE, "right") - first
        if crowded:
            found[found > crowded] = 0
        at = np.repeat(first - np.cumsum(found) + found, found) + np.arange(found.sum())
        return np.repeat(_places(asking), found), _places(self._entries[at])


def _packed(borne: Borne) -> Numbers:
    pieces = [(hashes & ~_PLACE) | places.astype(np.uint64) for hashes, places in borne]
    entries = np.concatenate(pieces) if pieces else np.zeros(0, dtype=np.uint64)
    entries.sort()
    return entries


def _places(entries: Numbers) -> Places:
    return (entries & _PLACE).astype(np.int64)
