"""The figures of one matching in one place, of many seeds together, and as text. Pure."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import astuple, dataclass, fields

from tests.match_corpus import judge
from tests.match_corpus.judge import Bin, Gold, Line

THRESHOLD = 0.5
"""From this score on the first line counts as the answer; fixed beforehand."""

TOP_ZONE = 0.95
"""From this score on a person may accept in bulk; fixed beforehand."""

EDGES = (0.0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1.0)


@dataclass(frozen=True)
class Figures:
    """Shares from 0 to 1; `automatic_wrong` counts rows. 'at best' chooses with the truth in hand. The top zone goes
    by the score alone; bulk is what of it has nothing against it.
    """

    automatic_precision: float
    automatic_recall: float
    automatic_wrong: float
    among_first_five: float
    f1: float
    precision: float
    recall: float
    f1_at_best: float
    best_threshold: float
    top_zone_precision: float
    top_zone_recall: float
    bulk_precision: float
    bulk_recall: float
    recall_at_precision_99: float


LOWER_IS_BETTER = frozenset({"automatic_wrong"})


def figures(gold: Gold, lines: Sequence[Line]) -> Figures:
    """All figures of one matching."""
    automatic, half = judge.automatic(gold, lines), judge.pairs(gold, lines, THRESHOLD)
    top = judge.pairs(gold, lines, TOP_ZONE)
    bulk = judge.pairs(gold, [line for line in lines if not line.against], TOP_ZONE)
    threshold, best = judge.best_pairs(gold, lines)
    return Figures(
        automatic_precision=automatic.precision,
        automatic_recall=automatic.recall,
        automatic_wrong=automatic.given - automatic.right,
        among_first_five=judge.among_first(gold, lines, 5),
        f1=half.f1,
        precision=half.precision,
        recall=half.recall,
        f1_at_best=best.f1,
        best_threshold=threshold,
        top_zone_precision=top.precision,
        top_zone_recall=top.recall,
        bulk_precision=bulk.precision,
        bulk_recall=bulk.recall,
        recall_at_precision_99=judge.recall_at(gold, lines, 0.99),
    )


def together(many: Sequence[Figures]) -> tuple[Figures, Figures]:
    """The mean of every figure over the seeds, and the worst of every figure."""
    columns = list(zip(*map(astuple, many), strict=True))
    names = [one.name for one in fields(Figures)]
    worst = [max(c) if name in LOWER_IS_BETTER else min(c) for name, c in zip(names, columns, strict=True)]
    return Figures(*(sum(c) / len(c) for c in columns)), Figures(*worst)


def summed(many: Sequence[Sequence[Bin]]) -> list[Bin]:
    """The same bins of many seeds as one."""
    out = []
    for bins in zip(*many, strict=True):
        count = sum(one.count for one in bins)
        mean = sum(one.mean_score * one.count for one in bins) / count if count else 0.0
        out.append(Bin(bins[0].low, bins[0].high, count, mean, sum(one.right for one in bins)))
    return out


@dataclass(frozen=True)
class KindCount:
    """Of the rows of one kind: how many, with a part, with the part among five, wrong automatic."""

    kind: str
    rows: int
    with_part: int
    among_five: int
    wrong_automatic: int


def by_kind(kinds: Sequence[str], gold: Gold, lines: Iterable[Line]) -> list[KindCount]:
    """The rows counted by what they are, the most wrong first."""
    lines = list(lines)
    shown = {line.row for line in lines if line.rank <= 5 and line.part in gold.get(line.row, ())}
    wrong = {line.row for line in judge.wrong_automatic(gold, lines)}
    counts = {
        what: Counter(kinds[row] for row in rows)
        for what, rows in (("all", range(len(kinds))), ("part", gold), ("shown", shown), ("wrong", wrong))
    }
    made = [
        KindCount(kind, count, counts["part"][kind], counts["shown"][kind], counts["wrong"][kind])
        for kind, count in counts["all"].items()
    ]
    return sorted(made, key=lambda one: (-one.wrong_automatic, one.among_five - one.with_part, one.kind))


def figures_text(mean: Figures, worst: Figures) -> str:
    """A line a figure: mean and worst."""
    pairs = zip(fields(Figures), astuple(mean), astuple(worst), strict=True)
    return "\n".join(f"  {one.name.replace('_', ' '):26}{middle:8.3f}   worst {low:8.3f}" for one, middle, low in pairs)


def bins_text(bins: Iterable[Bin]) -> str:
    """A line a bin: how many first lines, their mean score, and the share that was right."""
    return "\n".join(
        f"  {one.low:4.2f}-{one.high:4.2f} {one.count:7} lines, mean score {one.mean_score:5.3f}, "
        f"right {one.right / one.count:5.3f}"
        for one in bins
        if one.count
    )


def kinds_text(kinds: Iterable[KindCount], most: int) -> str:
    """A line a kind of row, so many of them."""
    return "\n".join(
        f"  {one.kind:58} {one.rows:5} rows, part among five {one.among_five}/{one.with_part}, "
        f"wrong automatic {one.wrong_automatic}"
        for one in list(kinds)[:most]
    )
