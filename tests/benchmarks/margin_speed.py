"""How long the margins of all jobs take: from values already loaded, and whole from a database; ratios to plain sums.

Run by hand: `python -m tests.benchmarks.margin_speed [jobs] [lines each]`. Invented jobs with orders, receipts, bills.
The measure beside it is pandas putting price and cost of the same lines, worked out already, into a frame and adding
them up by supplier and month: no rule, no leak, no reason. Everything in one run, so that the ratios hold on any
machine; the seconds are of this one.
"""

import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from datetime import datetime
from decimal import Decimal
from pathlib import Path
from typing import TypeVar

import pandas as pd

from sourcing.actions.desk import open_desk
from sourcing.actions.margin_loading import Loaded
from sourcing.actions.margins import added_up, every_line, margins_by
from sourcing.basics.collecting import without_collecting
from sourcing.basics.margin_facts import JobFacts, Purchase
from sourcing.basics.settings import MarkupBand, Settings, Shop
from sourcing.margins.bought import book_of
from sourcing.margins.job_margin import OwnersRules
from sourcing.margins.line import LineFigures
from sourcing.margins.minor import reader
from tests.margins.many_jobs import keep, papers

T = TypeVar("T")
KEYS, SUMS = ["supplier", "month"], ["price", "cost", "billed", "last_cost"]
AT = datetime(2026, 12, 31, 9, 30)
SETTINGS = Settings(
    shop=Shop(name="Wickenby Yard Machine Repair"),
    currency="USD",
    locale="en_US",
    markup_bands=(MarkupBand(from_cost=Decimal(0), multiplier=Decimal("1.5")),),
    labour_rate=Decimal(96),
    technician_cost=Decimal(34),
    margin_floor_percent=Decimal(25),
)


def timed(what: str, do: Callable[[], T], times: int = 3) -> tuple[T, float]:
    """What it gives, and the least of the processor's time it took: other work on the machine does not count."""
    best = float("inf")
    for _ in range(times):
        start = time.process_time()
        found = do()
        best = min(best, time.process_time() - start)
    print(f"{what:58} {best:8.3f} s")
    return found, best


def margins_of(facts: Sequence[JobFacts], purchases: Sequence[Purchase]) -> list[LineFigures]:
    """Everything the owner's page has, from values already loaded; no amount is remembered from before."""
    reader.cache_clear()
    with without_collecting():
        rules = {one.quote.job: OwnersRules(floor_percent=Decimal(25)) for one in facts}
        loaded = Loaded(jobs=tuple(facts), book=book_of(purchases, "USD"), rules=rules, currency="USD")
        lines = every_line(loaded)
        added_up(loaded, lines, "job")
        return lines


def frame_of(lines: Sequence[LineFigures]) -> pd.DataFrame:
    """The same lines as columns of whole numbers."""
    columns = ("supplier", "month", "price", "cost", "billed", "last_cost")
    return pd.DataFrame({name: [getattr(line, name) for line in lines] for name in columns})


def main(jobs: int = 10_000, lines: int = 10) -> None:
    """Print the times and their ratios."""
    made = list(papers(jobs, lines))
    facts, purchases = [one.facts for one in made], [few for one in made for few in one.purchases]
    print(f"{jobs:,} jobs, {sum(len(one.quote.lines) for one in facts):,} lines, {len(purchases):,} orders")
    found, rules = timed("margins and leaks from loaded values", lambda: margins_of(facts, purchases))
    _, plain = timed("pandas: a frame of the lines and its sums", lambda: frame_of(found).groupby(KEYS)[SUMS].sum())
    print(f"rules, leaks and sums against bare sums: {rules / plain:.1f} times as long")
    with tempfile.TemporaryDirectory() as folder:
        desk = open_desk(str(Path(folder) / "sourcing.db"), AT, "Oona Brandeth")
        with desk.store.writing() as connection:
            keep(connection, made, SETTINGS)
        _, whole = timed("the whole action from a database file", lambda: margins_by(desk, "job"), 2)
        print(f"the whole against the rules alone: {whole / rules:.1f} times as long")


if __name__ == "__main__":
    main(*(int(one) for one in sys.argv[1:]))
