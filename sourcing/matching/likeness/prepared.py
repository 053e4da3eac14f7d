"""Two tables made ready for scoring: each row taken apart, the pairs worth comparing found, and each pair compared."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..by_key import pairs_by_key
from ..numbers.near_numbers import NearNumbers
from .compared import Compared, compare
from .crowding import Crowding, crowding
from .own_numbers import own_numbers, without_own
from .pairs import pairs_by_code
from .rivals import twins
from .said import Said
from .scores import Twins
from .words_near import Descriptions, Positions

NEAREST_PARTS = 10
NEAREST_ROWS = 5
"""So many parts of each row, and rows of each part, are compared for their words."""

LEAST_COSINE = 0.15
ROWS_OF_A_PART = 60
"""Of a long sheet only so many rows are compared with one part for their words: the nearest."""


@dataclass(frozen=True)
class Prepared:
    """Rows and parts as they were taken apart, and their pairs compared."""

    rows: Sequence[Said]
    parts: Sequence[Said]
    compared: Compared
    twins: Twins


def prepare(rows: Sequence[Said], parts: Sequence[Said], texts: tuple[Sequence[str], Sequence[str]]) -> Prepared:
    """`texts`: description and maker of each row and of each part, for the likeness of their words."""
    row_texts, part_texts = texts
    words = Descriptions(part_texts)
    near, crowd = _near_numbers(rows, parts)
    pairs = _unique(
        [
            _same_numbers(rows, parts),
            pairs_by_code(rows, parts),
            near,
            _near_words(words, row_texts),
            _near_rows(row_texts, part_texts),
        ]
    )
    cosine = words.cosines(row_texts, *pairs)
    compared = compare(without_own(rows, _own(rows, parts, near, crowd)), parts, pairs, cosine, crowd)
    return Prepared(rows, parts, compared, Twins(twins(rows), twins(parts)))


def _unique(several: Sequence[tuple[Positions, Positions]]) -> tuple[Positions, Positions]:
    row = np.concatenate([one for one, _ in several])
    part = np.concatenate([other for _, other in several])
    both = np.unique(np.stack([row, part], axis=1), axis=0)
    return both[:, 0], both[:, 1]


def _near_words(words: Descriptions, row_texts: Sequence[str]) -> tuple[Positions, Positions]:
    """Each row's nearest parts; where many rows crowd round a part, its nearest rows only."""
    near = words.nearest(row_texts, NEAREST_PARTS, LEAST_COSINE)
    order = np.lexsort((-near.cosine, near.part))
    part = near.part[order]
    starts = np.searchsorted(part, part, side="left")
    kept = order[np.arange(len(part)) - starts < ROWS_OF_A_PART]
    return near.row[kept], near.part[kept]


def _near_rows(row_texts: Sequence[str], part_texts: Sequence[str]) -> tuple[Positions, Positions]:
    near = Descriptions(row_texts).nearest(part_texts, NEAREST_ROWS, LEAST_COSINE)
    return near.part, near.row


def _same_numbers(rows: Sequence[Said], parts: Sequence[Said]) -> tuple[Positions, Positions]:
    (row_at, row_keys), (part_at, part_keys) = map(_numbers, (rows, parts))
    row, part = pairs_by_key(row_keys, part_keys)
    return row_at[row], part_at[part]


def _near_numbers(rows: Sequence[Said], parts: Sequence[Said]) -> tuple[tuple[Positions, Positions], Crowding]:
    """Pairs of which a number is near the other's, by any of the kinds of damage; and how crowded the numbers are."""
    (row_at, row_keys), (part_at, part_keys) = map(_numbers, (rows, parts))
    index = NearNumbers(part_keys)
    found = index.near(row_keys)
    near = row_at[found["query"].to_numpy()], part_at[found["key"].to_numpy()]
    return near, crowding(row_keys, part_keys, index)


def _numbers(table: Sequence[Said]) -> tuple[Positions, list[str]]:
    """Every number of the table, and by position whose it is."""
    borne = [(at, key) for at, one in enumerate(table) for key in sorted(one.keys)]
    return np.array([at for at, _ in borne], dtype=np.int64), [key for _, key in borne]


def _own(
    rows: Sequence[Said], parts: Sequence[Said], near: tuple[Positions, Positions], crowd: Crowding
) -> frozenset[int]:
    """Rows whose number is the supplier's own: no part bears it, nor one that is tellingly near."""
    known = frozenset[str]().union(*(one.keys | one.codes | one.joined for one in parts))
    met = {at for at, one in enumerate(rows) if not one.keys.isdisjoint(known)}
    met |= {at for at in set(near[0].tolist()) - met if any(map(crowd.telling, rows[at].keys))}
    return own_numbers(rows, parts, met)
