"""How soon a page can be read on a phone over a slow mobile network, and what it weighs.

`python -m tests.benchmarks.first_content` opens the main pages in Chromium, at a phone's size, over a network slowed
down to what the open documentation of Lighthouse calls slow 4G (from memory: 1.6 Mbit/s down, 750 kbit/s up, 150 ms
for a round trip), with the processor slowed down four times (its figure for a phone of the middle class, from memory
too). Each is opened with nothing kept (cold) and once more (warm). Chromium adds the 150 ms to every request; that a
phone needs a round trip or more to connect at all before the first one is not in the figures.

Printed are the milliseconds to the first content (Paint Timing, W3C: 'first-contentful-paint') as the middle of so
many visits, and the weight of a cold visit over the network. Aims: under 1,000 ms, under 100 kB without photos. The
figures are of this machine and of its load. Milliseconds of the server alone stand beside.
"""

import statistics
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import CDPSession, Page, sync_playwright

from sourcing.actions.customer_links import make_link, new_secret
from sourcing.actions.desk import open_desk
from tests.browser.conftest import CHROMIUM
from tests.browser.looks import weight
from tests.browser.pages import Pages
from tests.browser.served import counter_behind, switch
from tests.web.world import CLERK, NOW, QUOTED, TAKEN_IN

DOWN, UP, ROUND_TRIP = 1_600_000 / 8, 750_000 / 8, 150
SLOWER = 4

FIRST_CONTENT = """() => new Promise((done) => {
  new PerformanceObserver((list) => {
    const first = list.getEntriesByName('first-contentful-paint')[0];
    if (first) done(first.startTime);
  }).observe({type: 'paint', buffered: true});
  setTimeout(() => done(NaN), 10000);
})"""
ANSWERED = (
    "() => { const [it] = performance.getEntriesByType('navigation'); return it.responseStart - it.requestStart; }"
)

PAGES = {
    "Today": "/",
    "job": f"/jobs/{QUOTED}",
    "find a number": "/find?number=NW-40388",
    "quote": f"/jobs/{QUOTED}/quote",
    "answers": f"/jobs/{QUOTED}/answers",
    "receive, count": "/receive/PO-2026-0001",
    "plan": f"/jobs/{TAKEN_IN}/plan",
    "margins": "/margins",
}


def slow(page: Page) -> CDPSession:
    """A phone's network and processor for this page from now on."""
    session = page.context.new_cdp_session(page)
    conditions = {"offline": False, "latency": ROUND_TRIP, "downloadThroughput": DOWN, "uploadThroughput": UP}
    session.send("Network.enable")
    session.send("Network.emulateNetworkConditions", conditions)
    session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    return session


def visits(page: Page, address: str, times: int, cold: bool) -> Iterator[tuple[float, float]]:
    """Milliseconds to the first content, and to the first byte of the answer, of so many visits."""
    session = slow(page)
    for _ in range(times):
        page.goto("about:blank")
        if cold:
            session.send("Network.clearBrowserCache")
        page.goto(address)
        yield page.evaluate(FIRST_CONTENT), page.evaluate(ANSWERED)
    session.detach()


def told(page: Page, name: str, address: str, times: int) -> None:
    """One page, printed."""
    bytes_ = weight(page, address)
    cold = list(visits(page, address, times, cold=True))
    page.goto(address)
    warm = list(visits(page, address, times, cold=False))
    middle = [statistics.median(one[at] for one in some) for some in (cold, warm) for at in (0, 1)]
    worst = max(one[0] for one in (*cold, *warm))
    print(
        f"{name:16} first content cold {middle[0]:5.0f} ms, warm {middle[2]:5.0f} ms, worst {worst:5.0f} ms; "
        f"first byte {middle[1]:4.0f} and {middle[3]:4.0f} ms; {bytes_ / 1000:5.1f} kB"
    )


def main(times: int) -> None:
    """Open them all."""
    folder = Path(tempfile.mkdtemp(prefix="first-content-"))
    with sync_playwright() as started, switch() as server, counter_behind(server, folder) as counter:
        browser = started.chromium.launch(executable_path="/usr/bin/chromium", args=CHROMIUM)
        desk, secret = open_desk(str(counter.database), NOW, CLERK), new_secret()
        make_link(desk, QUOTED, secret)
        desk.store.close()
        pages = Pages(browser, counter.address, folder)
        nobody, owner = pages.open("phone"), pages.logged_in("owner", "phone")
        told(nobody, "log-in", "/log-in", times)
        told(nobody, "customer's page", f"/q/{secret}", times)
        for name, address in PAGES.items():
            told(owner, name, address, times)
        browser.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)
