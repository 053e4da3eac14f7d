"""How fast a quote of many lines is: plan, build, explain, paper; each beside its goal.

Run by hand: `python -m tests.benchmarks.quote_speed [lines]`. Lines are drawn with a fixed seed; half of those beyond
the first twenty are add-ons, up to 26. The median of several runs is shown.
"""

import random
import statistics
import sys
import time
from collections.abc import Callable
from decimal import Decimal

from sourcing.basics.job import Job
from sourcing.basics.quote import FrozenQuote, Quote
from sourcing.basics.value import changed
from sourcing.documents.quote_explained import owners_text
from sourcing.documents.quote_paper import quote_html, quote_pdf
from sourcing.quoting.bought import Bought
from sourcing.quoting.explain import explain
from tests.builders import offer
from tests.documents.test_quote_explained import OWNERS
from tests.quoting.quoted import bought, job, need, quote

GOALS = {"build": 50, "explain": 50, "owner's text": 50, "html": 50, "pdf": 1000}
"""Milliseconds for a quote of 60 lines."""
RUNS = 5


def drawn(count: int) -> tuple[Job, Bought]:
    """A job of so many lines with parts from four suppliers."""
    dice = random.Random(20260302)
    extra = min(26, max(0, (count - 20) // 2))
    labels = [*(str(at) for at in range(1, count - extra + 1)), *(chr(65 + at) for at in range(extra))]
    suppliers = ("stonegarth", "larkmoor", "pellbrook", "tavishollow")
    lines, offers, pieces = [], {}, {}
    for label in labels:
        pieces[label] = dice.randint(1, 4)
        offers[label] = offer(dice.choice(suppliers), f"N-{label}", f"{dice.randint(40, 20000) / 100:.2f}")
        words = {"found": "Worn to the bolts on the left.", "why": "It takes the wear for the housing behind it."}
        lines.append(need(f"Replace part {label}", f"P{label}", pieces[label], hours=Decimal("0.3"), **words))
    return job(lines[: count - extra], lines[count - extra :]), bought(offers, pieces)


def median_ms(work: Callable[[], object]) -> float:
    """Of several runs, after one to warm up."""
    work()
    seconds = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        seconds.append(time.perf_counter() - start)
    return statistics.median(seconds) * 1000


def main(count: int) -> None:
    """Print a row for each step."""
    wanted, what = drawn(count)
    made: Quote = quote(wanted, what)
    frozen = FrozenQuote(quote=made, paper=quote_html(made), sha256="")
    owners = changed(OWNERS, frozen=frozen, explained=explain(made))
    steps: dict[str, Callable[[], object]] = {
        "build": lambda: quote(wanted, what),
        "explain": lambda: explain(made),
        "owner's text": lambda: owners_text(owners),
        "html": lambda: quote_html(made),
        "pdf": lambda: quote_pdf(frozen),
    }
    print(f"{len(made.lines)} lines, {len(frozen.paper)} characters of HTML")
    for name, work in steps.items():
        took = median_ms(work)
        print(f"{name:14} {took:8.1f} ms, {took / GOALS[name]:5.2f} of the goal of {GOALS[name]} ms for 60 lines")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 60)
