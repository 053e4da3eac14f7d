"""Two tables made ready for scoring: each row taken apart, the pairs worth comparing found, and each pair compared."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..numbers.near_numbers import NearNumbers
from .compared import Compared, compare
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
    pairs = _unique(
        [
            pairs_by_code(rows, parts),
            _near_numbers(rows, parts),
            _near_words(words, row_texts),
            _near_rows(row_texts, part_texts),
        ]
    )
    cosine = words.cosines(row_texts, *pairs)
    compared = compare(rows, parts, pairs, cosine)
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


def _near_numbers(rows: Sequence[Said], parts: Sequence[Said]) -> tuple[Positions, Positions]:
    """Pairs of which a number is near the other's, by any of the kinds of damage."""
    row_keys = [(at, key) for at, one in enumerate(rows) for key in sorted(one.keys)]
    part_keys = [(at, key) for at, one in enumerate(parts) for key in sorted(one.keys)]
    found = NearNumbers([key for _, key in part_keys]).near([key for _, key in row_keys])
    row_at, part_at = (np.array([at for at, _ in keys], dtype=np.int64) for keys in (row_keys, part_keys))
    return row_at[found["query"].to_numpy()], part_at[found["key"].to_numpy()]
