"""Near numbers: for many keys at once, which keys of a table are a slip away, a look-alike, or part of the other.

Every key is filed under the hashes of itself with each character left out (with every two left out where letters and
figures mix and a second slip still means something). Two keys one slip apart share such a hash: a symmetric deletion
look-up, exact for distance 1. What the hashes find is checked by rapidfuzz's optimal string alignment distance.
"""

from collections.abc import Iterator, Sequence

import numpy as np
import pandas as pd
from numpy.typing import NDArray
from rapidfuzz import process
from rapidfuzz.distance import OSA

from .hash_index import Borne, HashIndex
from .key_forms import NO_KIND, SAME_FORM, KeyForms, ranks, taken
from .key_hashes import LONGEST, Places, by_length
from .slip_kinds import KINDS, LONG, SHORTEST, SHORTEST_PART, Kind, is_mixed, kind_by_slips, slip_kind

CROWDED = 20
"""A beginning, end or remainder after two slips that more keys share than this says nothing, and is passed over."""
GLUED_ON = 24
"""Up to so many characters are taken off a query to find a key inside it: prefixes, suffixes, '(remanufactured)'."""
GLUED_ON_OURS = 6
"""Up to so many are taken off a key of the table: each costs sixteen bytes a key."""
QUERIES_AT_ONCE = 4_000

COLUMNS = ("query", "key", "slips", "kind", "crowd")


class NearNumbers:
    """The near numbers of a table of keys. Keys are as `number_key` makes them; a key may stand in it many times."""

    def __init__(self, keys: Sequence[str]) -> None:
        """Reads all keys once. Those shorter than 4 and longer than 64 characters are near nothing."""
        places: dict[str, list[int]] = {}
        for place, key in enumerate(keys):
            if SHORTEST <= len(key) <= LONGEST:
                places.setdefault(key, []).append(place)
        self._keys = list(places)
        self._counts = np.fromiter(map(len, places.values()), dtype=np.int64, count=len(places))
        self._starts = np.cumsum(self._counts) - self._counts
        self._places = np.array([place for every in places.values() for place in every], dtype=np.int64)
        self._forms = KeyForms(self._keys)
        self._one = HashIndex(_with_one_slip(self._keys))
        self._two = HashIndex(_with_two_slips(self._keys))
        self._same = HashIndex(self._forms.borne())
        self._whole = HashIndex((group.whole, group.at) for group in by_length(self._keys, SHORTEST_PART))
        self._parts = HashIndex(_beginnings_and_ends(self._keys, GLUED_ON_OURS))

    def near(self, keys: Sequence[str], most: int = 8) -> pd.DataFrame:
        """For each of `keys` (a query) up to `most` different keys near it, the likeliest first.

        Columns: `query`, `key` (places in `keys` and in the table), `slips` (optimal string alignment distance),
        `kind` (a category of `KINDS`), `crowd` (how many different keys of the table stand as near in this way: among
        many, one means little). A key equal to the query is not listed. A key that the table has twice is listed twice.
        """
        pieces = []
        for start in range(0, len(keys), QUERIES_AT_ONCE):
            piece = self._near(keys[start : start + QUERIES_AT_ONCE], most)
            pieces.append(piece.assign(query=piece["query"] + start))
        return pd.concat(pieces, ignore_index=True) if pieces else self._near([], most)

    def neighbours(self, keys: Sequence[str]) -> NDArray[np.int64]:
        """How many different keys of the table are exactly one slip from each of `keys`."""
        found = np.zeros(len(keys), dtype=np.int64)
        for start in range(0, len(keys), QUERIES_AT_ONCE):
            asked = keys[start : start + QUERIES_AT_ONCE]
            queries, own = _different(self._one.hits(_with_one_slip(asked)), len(self._keys))
            one = self._slips(asked, queries, own) == 1
            found[start : start + len(asked)] = np.bincount(queries[one], minlength=len(asked))
        return found

    def _near(self, asked: Sequence[str], most: int) -> pd.DataFrame:
        forms = KeyForms(asked)
        hits = list(self._hits(asked, forms))
        queries, own = _different(
            (np.concatenate([one for one, _ in hits]), np.concatenate([other for _, other in hits])), len(self._keys)
        )
        slips = self._slips(asked, queries, own)
        glued = self._glued(asked, queries, own, slips)
        rank = ranks(taken(forms, queries), taken(self._forms, own), slips, glued)
        known = (rank < NO_KIND) & (slips > 0)
        found = pd.DataFrame({"query": queries, "own": own, "slips": slips, "rank": rank})[known]
        found["crowd"] = _crowds(found)
        found = found.sort_values(["query", "rank", "slips", "own"], kind="stable")
        found = found[found.groupby("query").cumcount() < most]
        pairs = zip(*(found[name].tolist() for name in ("query", "own", "slips", "rank")), strict=True)
        kinds = [_kind(asked[query], self._keys[key], slips, rank) for query, key, slips, rank in pairs]
        found["kind"] = pd.Categorical(kinds, categories=KINDS)
        return self._with_places(found)

    def _hits(self, asked: Sequence[str], forms: KeyForms) -> Iterator[tuple[Places, Places]]:
        yield self._one.hits(_with_one_slip(asked))
        yield self._two.hits(_with_two_slips(asked), CROWDED)
        yield self._same.hits(forms.borne(), CROWDED)
        yield self._whole.hits(_beginnings_and_ends(asked, GLUED_ON))
        yield self._parts.hits(((group.whole, group.at) for group in by_length(asked, SHORTEST_PART)), CROWDED)

    def _slips(self, asked: Sequence[str], queries: Places, own: Places) -> NDArray[np.int64]:
        left, right = map(asked.__getitem__, queries.tolist()), map(self._keys.__getitem__, own.tolist())
        distances = process.cpdist(list(left), list(right), scorer=OSA.distance, dtype=np.int32)
        return distances.astype(np.int64)

    def _glued(self, asked: Sequence[str], queries: Places, own: Places, slips: NDArray[np.int64]) -> NDArray[np.bool_]:
        """Whether one key of the pair begins or ends with the other; asked only where the slips allow it."""
        lengths = np.fromiter(map(len, asked), dtype=np.int64, count=len(asked))[queries], self._forms.lengths[own]
        may_be = (slips == np.abs(lengths[0] - lengths[1])) & (np.minimum(*lengths) >= SHORTEST_PART)
        glued = np.zeros(len(queries), dtype=np.bool_)
        for at in np.flatnonzero(may_be):
            short, long = sorted((asked[queries[at]], self._keys[own[at]]), key=len)
            glued[at] = long.startswith(short) or long.endswith(short)
        return glued

    def _with_places(self, found: pd.DataFrame) -> pd.DataFrame:
        """One row for each place at which the table has the key."""
        own = found["own"].to_numpy()
        counts = self._counts[own]
        rows = np.repeat(np.arange(len(found)), counts)
        within = np.arange(len(rows)) - np.repeat(np.cumsum(counts) - counts, counts)
        repeated = found.iloc[rows].reset_index(drop=True)
        repeated["key"] = self._places[np.repeat(self._starts[own], counts) + within]
        return repeated[list(COLUMNS)]


def _with_one_slip(keys: Sequence[str]) -> Borne:
    for group in by_length(keys, SHORTEST):
        yield group.whole, group.at
        for hashes in group.without_one():
            yield hashes, group.at


def _with_two_slips(keys: Sequence[str]) -> Borne:
    mixed = [at for at, key in enumerate(keys) if len(key) >= LONG - 2 and is_mixed(key)]
    places = np.array(mixed, dtype=np.int64)
    for group in by_length([keys[at] for at in mixed], LONG - 2):
        at = places[group.at]
        yield group.whole, at
        for hashes in group.without_one():
            yield hashes, at
        for hashes in group.without_two():
            yield hashes, at


def _beginnings_and_ends(keys: Sequence[str], most_gone: int) -> Borne:
    for group in by_length(keys, SHORTEST_PART):
        for hashes in group.beginnings(SHORTEST_PART, most_gone):
            yield hashes, group.at
        for hashes in group.ends(SHORTEST_PART, most_gone):
            yield hashes, group.at


def _different(hits: tuple[Places, Places], keys: int) -> tuple[Places, Places]:
    """Each pair once."""
    pairs = hits[0] * keys + hits[1]
    pairs.sort()
    pairs = pairs[np.append(True, pairs[1:] != pairs[:-1])[: len(pairs)]]
    return pairs // max(1, keys), pairs % max(1, keys)


def _kind(left: str, right: str, slips: int, rank: int) -> Kind | None:
    return slip_kind(left, right) if rank <= SAME_FORM else kind_by_slips(left, right, slips)


def _crowds(found: pd.DataFrame) -> NDArray[np.int64]:
    """How many keys are as near to the row's query in the row's way: same form; as many slips or fewer; glued on."""
    rank, slips = found["rank"], found["slips"]
    ways = [rank <= SAME_FORM, slips == 1, rank == 7, (rank == 8) | (slips == 1)]
    counts = [way.groupby(found["query"]).transform("sum") for way in ways]
    return np.select([rank <= SAME_FORM, rank <= 6, rank == 7], counts[:3], default=counts[3]).astype(np.int64)
