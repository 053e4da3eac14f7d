"""The forms under which a damaged key still meets the whole one: folded, without zeros, written out."""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from .characters import folded, folded_further, without_zeros
from .exponents import written_out
from .key_hashes import LONGEST, Numbers, Places, by_length, hashes_of
from .slip_kinds import LONG, SHORTEST, is_mixed


class KeyForms:
    """What is compared of each key, in columns of hashes; 0 where a key has no such form."""

    def __init__(self, keys: Sequence[str]) -> None:
        further = [folded_further(key) for key in keys]
        written = [written_out(key) for key in keys]
        self.lengths = np.fromiter(map(len, keys), dtype=np.int64, count=len(keys))
        self.mixed = np.fromiter(map(is_mixed, keys), dtype=np.bool_, count=len(keys))
        self.whole = hashes_of(keys)
        self.folded = hashes_of([folded(key) for key in keys])
        self.further = hashes_of(further)
        self.zeroless = hashes_of([without_zeros(key) for key in keys])
        self.loose = hashes_of([without_zeros(key) or key for key in further])
        self.written = hashes_of(written)
        self.written_loose = hashes_of([without_zeros(folded_further(key)) for key in written])
        self.signs = _signs(keys)
        self._compared = (self.lengths >= SHORTEST) & (self.lengths <= LONGEST)

    def borne(self) -> Iterator[tuple[Numbers, Places]]:
        """The loosest form and the one written out: two keys with a form in common share one of these."""
        for form in (self.loose, self.written_loose):
            at = np.flatnonzero((form != 0) & self._compared)
            yield form[at], at


SAME_FORM = 3
"""The last of the ranks of pairs that have a form in common."""
NO_KIND = 9
"""The rank of pairs that nothing known links."""


def ranks(left: KeyForms, right: KeyForms, slips: NDArray[np.int64], glued: NDArray[np.bool_]) -> NDArray[np.int64]:
    """How likely each pair (row by row of both) is to be one number damaged, 0 the likeliest.

    Look-alikes, zeros, weak look-alikes, mixes of them and powers of ten; then one slip: neighbours swapped before
    left out and added before changed, since of the many keys a changed figure can lead to few are slips; then keys with
    something glued on, and two slips in long mixed keys.
    """
    one, longer = slips == 1, left.lengths != right.lengths
    long = left.mixed & right.mixed & (np.maximum(left.lengths, right.lengths) >= LONG)
    return np.select(
        [
            _both(left.folded, right.folded),
            _both(left.zeroless, right.zeroless),
            _both(left.further, right.further),
            _both(left.loose, right.loose) | _powers(left, right),
            one & ~longer & (left.signs == right.signs),
            one & longer,
            one,
            glued,
            (slips == 2) & long,
        ],
        list(range(NO_KIND)),
        default=NO_KIND,
    )


def taken(forms: KeyForms, places: Places) -> KeyForms:
    """The forms of the keys at these places, in this order."""
    found = object.__new__(KeyForms)
    for name, column in vars(forms).items():
        setattr(found, name, column[places])
    return found


def _both(left: Numbers, right: Numbers) -> NDArray[np.bool_]:
    same: NDArray[np.bool_] = (left != 0) & (left == right)
    return same


def _powers(left: KeyForms, right: KeyForms) -> NDArray[np.bool_]:
    return _both(left.written, right.whole) | _both(left.whole, right.written) | _both(left.written, right.written)


def _signs(keys: Sequence[str]) -> Numbers:
    """A sum over the characters that their order does not change."""
    found = np.zeros(len(keys), dtype=np.uint64)
    for group in by_length(keys, 1):
        found[group.at] = group.signs_sum
    return found
