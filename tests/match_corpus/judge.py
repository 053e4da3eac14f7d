"""Figures about a matching, from the truth and the lines it gave. Pure: nothing is read, run or printed here.

A row of the sheet is one question. `gold` holds the rows that have a part, with every place the part is listed at:
any of them is right. A row not in `gold` has none, and any part for it is wrong. All figures are shares from 0 to 1;
a share of nothing is 1 (nothing was given, nothing was wrong), and its count says so.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

Gold = Mapping[int, frozenset[int]]


@dataclass(frozen=True)
class Line:
    """One line of a matching: the part proposed for a row, in which tier, how well scored, as which rank (from 1).

    `against`: something is said to speak against it.
    """

    row: int
    part: int
    tier: str
    score: float
    rank: int
    against: bool = False


@dataclass(frozen=True)
class Share:
    """`right` pairs of `given`, where `wanted` rows have a part."""

    right: int
    given: int
    wanted: int

    @property
    def precision(self) -> float:
        """Right of given."""
        return self.right / self.given if self.given else 1.0

    @property
    def recall(self) -> float:
        """Right of wanted."""
        return self.right / self.wanted if self.wanted else 1.0

    @property
    def f1(self) -> float:
        """The harmonic mean of both, as van Rijsbergen (1979) has it."""
        return 2 * self.right / (self.given + self.wanted) if self.given + self.wanted else 1.0


@dataclass(frozen=True)
class Bin:
    """Of the first lines scored from `low` up to below `high`: how many, their mean score, how many were right."""

    low: float
    high: float
    count: int
    mean_score: float
    right: int


def _is_right(gold: Gold, line: Line) -> bool:
    return line.part in gold.get(line.row, frozenset())


def _share(gold: Gold, lines: Collection[Line]) -> Share:
    return Share(sum(_is_right(gold, line) for line in lines), len(lines), len(gold))


def firsts(lines: Iterable[Line]) -> list[Line]:
    """The line of rank 1 of every row. Two for one row are refused: each would be counted."""
    found = [line for line in lines if line.rank == 1]
    if len({line.row for line in found}) != len(found):
        raise ValueError("a row has two lines of rank 1")
    return found


def automatic(gold: Gold, lines: Iterable[Line]) -> Share:
    """The lines of tier 'automatic': what the program would take without asking."""
    return _share(gold, [line for line in lines if line.tier == "automatic"])


def wrong_automatic(gold: Gold, lines: Iterable[Line]) -> list[Line]:
    """The lines a shop would order a wrong part by."""
    return [line for line in lines if line.tier == "automatic" and not _is_right(gold, line)]


def among_first(gold: Gold, lines: Iterable[Line], places: int) -> float:
    """Of the rows that have a part: the share that has it among the first so many lines."""
    found = {line.row for line in lines if line.rank <= places and _is_right(gold, line)}
    return len(found) / len(gold) if gold else 1.0


def pairs(gold: Gold, lines: Iterable[Line], threshold: float) -> Share:
    """The first lines that reach the threshold, as the answer to every row."""
    return _share(gold, [line for line in firsts(lines) if line.score >= threshold])


def _by_score(gold: Gold, lines: Iterable[Line]) -> list[tuple[float, Share]]:
    """At each score that occurs, from the highest: the share of what is taken at that threshold."""
    found = sorted(firsts(lines), key=lambda line: -line.score)
    right, out = 0, []
    for given, line in enumerate(found, 1):
        right += _is_right(gold, line)
        if given == len(found) or found[given].score < line.score:
            out.append((line.score, Share(right, given, len(gold))))
    return out


def best_pairs(gold: Gold, lines: Iterable[Line]) -> tuple[float, Share]:
    """The threshold with the best F1, chosen with the truth in hand, and what it gives; no line gives threshold 1."""
    return max(_by_score(gold, lines), key=lambda one: one[1].f1, default=(1.0, Share(0, 0, len(gold))))


def recall_at(gold: Gold, lines: Iterable[Line], precision: float) -> float:
    """The best recall at a threshold with at least that precision, chosen with the truth in hand; else 0."""
    return max((share.recall for _, share in _by_score(gold, lines) if share.precision >= precision), default=0.0)


def calibration(gold: Gold, lines: Iterable[Line], edges: Sequence[float]) -> list[Bin]:
    """The first lines in bins of score; the last holds its upper edge too. A good score is right as often as it
    says.
    """
    found = firsts(lines)
    bins = []
    for low, high in pairwise(edges):
        here = [one for one in found if low <= one.score < high or (high == edges[-1] and one.score == high)]
        mean = sum(one.score for one in here) / len(here) if here else 0.0
        bins.append(Bin(low, high, len(here), mean, sum(_is_right(gold, one) for one in here)))
    return bins


def of_rows(gold: Gold, lines: Iterable[Line], rows: Collection[int]) -> tuple[Gold, list[Line]]:
    """Truth and lines of some rows only, as for judging what was not learnt from."""
    return {row: parts for row, parts in gold.items() if row in rows}, [line for line in lines if line.row in rows]
