"""For each row the parts whose descriptions are nearest: tf-idf of character trigrams, the best few by sparse product.

Weights are learnt from the two tables themselves: a trigram everybody has says nothing. Trigrams carry over most slips of
the pen, since over 80 % of misspelt words have one wrong letter (Damerau 1964, as quoted in Computational Linguistics
41(1), 2015).
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.sparse import csr_matrix

Positions = npt.NDArray[np.int64]

ROWS_AT_ONCE = 20_000


class NearWords(NamedTuple):
    """Pairs by position in the two tables, with the cosine of their descriptions between 0 and 1."""

    row: Positions
    part: Positions
    cosine: npt.NDArray[np.float64]


class Descriptions:
    """The parts' descriptions, ready to be asked for the nearest to any row's."""

    def __init__(self, parts: Sequence[str], rows: Sequence[str] = ()) -> None:
        """Weights are learnt from the parts and from a share of the rows; at least one text must hold a letter."""
        from sklearn.feature_extraction.text import TfidfVectorizer

        self._vectors = TfidfVectorizer(analyzer="char_wb", ngram_range=(3, 3), sublinear_tf=True, dtype=np.float32)
        learnt = [*parts, *rows[:ROWS_AT_ONCE]]
        self.blank = not any(text.strip() for text in learnt)
        if not self.blank:
            self._vectors.fit(learnt)
            self._parts = self._vectors.transform(parts)
            self._across: Any = csr_matrix(self._parts.T)

    def nearest(self, rows: Sequence[str], most: int, least: float) -> NearWords:
        """The `most` nearest parts of each row, none below the cosine `least`. Blank descriptions find nothing."""
        empty = np.empty(0, dtype=np.int64)
        if self.blank or not rows:
            return NearWords(empty, empty, np.empty(0))
        from sparse_dot_topn import sp_matmul_topn

        found: list[NearWords] = []
        for start in range(0, len(rows), ROWS_AT_ONCE):
            some = self._vectors.transform(rows[start : start + ROWS_AT_ONCE])
            best = sp_matmul_topn(some, self._across, top_n=most, threshold=least, n_threads=2).tocoo()
            found.append(
                NearWords(best.row.astype(np.int64) + start, best.col.astype(np.int64), best.data.astype(float))
            )
        return NearWords(*(np.concatenate(columns) for columns in zip(*found, strict=True)))

    def cosines(self, rows: Sequence[str], row: Positions, part: Positions) -> npt.NDArray[np.float64]:
        """The cosine of each pair, also of pairs that came by their numbers."""
        if self.blank or not len(row):
            return np.zeros(len(row))
        used, where = np.unique(row, return_inverse=True)
        some = self._vectors.transform([rows[at] for at in used])
        values = np.empty(len(row))
        for start in range(0, len(row), ROWS_AT_ONCE):
            span = slice(start, start + ROWS_AT_ONCE)
            product = some[where[span]].multiply(self._parts[part[span]])
            values[span] = np.asarray(product.sum(axis=1)).ravel()
        return values
