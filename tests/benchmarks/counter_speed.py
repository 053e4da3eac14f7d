"""How fast the counter's pages are made with 2,000,000 offers stored and ten people clicking.

`python -m tests.benchmarks.counter_speed [offers] [seconds] [jobs] [statements]` prints for every page the median and
the 95th percentile of the time from a request's arrival to its last byte, as ten people see it who read for a moment
between two clicks, the time of the processor it took, and the weight of the page. Their figures are of this machine
and of its load; what is compared is the aim of 300 ms.
"""

import os
import random
import sqlite3
import statistics
import sys
import tempfile
import threading
import time
from collections import defaultdict
from pathlib import Path

from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from tests.benchmarks.long_shop import lengthen
from tests.web.world import APPROVED, NOW, ORDERED, QUOTED, TAKEN_IN, Browser, logged_in, new_database

PEOPLE = ("clerk", "clerk", "clerk", "clerk", "technician", "technician", "technician", "technician", "owner", "owner")
READS = 1.0
"""Seconds somebody looks at a page before the next click; people take longer."""

PAGES = {
    "technician": (
        *("/", "/jobs", "/jobs?page=2", "/find?number=NW-40388", "/search?for=NW-40388", "/receive", "/promised"),
        *(f"/jobs/{ORDERED}", f"/jobs/{ORDERED}/lines/1", f"/jobs/{ORDERED}/history", f"/jobs/{QUOTED}/links"),
        *(f"/jobs/{QUOTED}/quote", f"/jobs/{QUOTED}/answers", f"/jobs/{ORDERED}/bill", "/receive/PO-2026-0001"),
    ),
    "clerk": (
        *("/", "/find?number=NW-40388", "/search?for=NW-40388", "/search?for=Tilbrook", "/jobs"),
        *("/sheets", "/sheets/1", "/look-alikes", "/look-alikes/by-score", "/same-parts"),
        *("/look-alikes/number-rules", "/same-parts/number?number=NW-40388"),
        *("/same-parts/check", "/same-parts/makers", "/orders", "/orders/PO-2026-0001", "/orders/PO-2026-0001/paper"),
        *(f"/jobs/{ORDERED}", f"/jobs/{APPROVED}/to-order", f"/jobs/{APPROVED}/plan", f"/jobs/{TAKEN_IN}/plan"),
        *(f"/jobs/{TAKEN_IN}/write-quote", f"/jobs/{QUOTED}/quote", "/going-back", "/terms", "/rates"),
    ),
    "owner": (
        *("/", "/margins", f"/margins/{ORDERED}", "/what-if", "/shop", "/people", "/history", f"/jobs/{ORDERED}"),
        *(f"/jobs/{ORDERED}/not-as-approved", f"/jobs/{QUOTED}/not-as-approved", f"/jobs/{QUOTED}/quote/figures"),
    ),
}


def fill(database: Path, wanted: int) -> None:
    """Put rows onto every supplier's newest sheet until so many offers are stored: numbers nobody has, real columns."""
    with sqlite3.connect(database) as kept:
        kept.execute("PRAGMA synchronous=OFF")
        columns = [row[1] for row in kept.execute("PRAGMA table_info(offers)") if row[1] != "offer"]
        new = {
            "supplier_number": "supplier_number || '-' || :k",
            "supplier_key": "supplier_key || :k",
            "maker_number": "CASE maker_number WHEN '' THEN '' ELSE maker_number || '-' || :k END",
            "maker_number_key": "CASE maker_number_key WHEN '' THEN '' ELSE maker_number_key || :k END",
        }
        values = ", ".join(new.get(name, f'"{name}"') for name in columns)
        names = ", ".join(f'"{name}"' for name in columns)
        kept.execute("CREATE TEMP TABLE real AS SELECT * FROM offers")
        there = kept.execute("SELECT count(*) FROM real").fetchone()[0]
        for k in range(1, wanted // there + 1):
            left = wanted - there * k
            query = f"INSERT INTO offers ({names}) SELECT {values} FROM real LIMIT {max(left, 0)}"
            kept.execute(query, {"k": f"{k:05d}"})
        stored = "SELECT count(*) FROM offers WHERE offers.sheet = sheets.sheet"
        kept.execute(f"UPDATE sheets SET offers = ({stored}), rows = rows - offers + ({stored})")
    kept.close()


def click(browser: Browser, role: str, until: float, took: dict[tuple[str, str], list[float]]) -> None:
    """One person at work until then."""
    chance = random.Random(f"{role} {threading.get_ident()}")
    while time.monotonic() < until:
        page = chance.choice(PAGES[role])
        began, busy = time.perf_counter(), time.thread_time()
        answer = browser.client.get(page)
        took[role, page].append(time.perf_counter() - began)
        worked[role, page].append(time.thread_time() - busy)
        weights[page] = max(weights[page], len(answer.data))
        assert answer.status_code in (200, 303), f"{page} for {role}: {answer.status}"
        time.sleep(chance.uniform(READS / 2, READS * 3 / 2))


weights: dict[str, int] = defaultdict(int)
worked: dict[tuple[str, str], list[float]] = defaultdict(list)
"""Seconds of the processor by role and page; unlike the time that passed, they leave out what else the machine does."""


def busiest(figures: list[float]) -> float:
    """The 95th percentile; of one figure, it."""
    return statistics.quantiles(figures, n=20, method="inclusive")[-1] if len(figures) > 1 else figures[0]


def main(wanted: int = 2_000_000, seconds: int = 60, jobs: int = 500, statements: int = 20_000) -> None:
    """Fill, let ten people click, print. `jobs` and `statements`: how many open jobs and statements there are."""
    folder = Path(tempfile.mkdtemp(prefix="counter-speed-"))
    database = new_database(folder)
    began = time.monotonic()
    fill(database, wanted)
    lengthen(database, jobs, statements)
    there = f"{wanted} offers, {jobs} jobs, {statements} statements"
    print(f"{there} stored in {time.monotonic() - began:.0f} s, {database.stat().st_size / 1e6:.0f} MB")
    app = make_app(CounterSetup(database=str(database), clock=lambda: NOW))
    for role in PAGES:  # what is loaded once for all is loaded now
        first = logged_in(app, role)
        for page in PAGES[role]:
            began = time.perf_counter()
            first.client.get(page)
            at_first = 1000 * (time.perf_counter() - began)
            began, busy = time.perf_counter(), time.thread_time()
            first.client.get(page)
            wall, busy = 1000 * (time.perf_counter() - began), 1000 * (time.thread_time() - busy)
            print(
                f"  alone, {role:10} {page:36} {wall:7.0f} ms, of the processor {busy:5.0f} ms (first {at_first:5.0f})"
            )
    took: dict[tuple[str, str], list[float]] = defaultdict(list)
    until = time.monotonic() + seconds
    workers = [threading.Thread(target=click, args=(logged_in(app, role), role, until, took)) for role in PEOPLE]
    for one in workers:
        one.start()
    for one in workers:
        one.join()
    everything = sorted(figure for figures in took.values() for figure in figures)
    for (role, page), figures in sorted(took.items()):
        worst = busiest(figures)
        weight = weights[page] / 1000
        busy = 1000 * busiest(worked[role, page])
        print(
            f"{role:10} {page:36} {len(figures):4} times, median {1000 * statistics.median(figures):5.0f} ms, "
            f"95 % under {1000 * worst:5.0f} ms, processor {busy:5.0f} ms, {weight:5.1f} kB"
        )
    processor = 1000 * busiest([figure for figures in worked.values() for figure in figures])
    print(
        f"all: {len(everything)} pages, 95 % under {1000 * busiest(everything):.0f} ms (aim: 300), "
        f"of the processor under {processor:.0f} ms, load average {os.getloadavg()[0]:.1f}"
    )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
