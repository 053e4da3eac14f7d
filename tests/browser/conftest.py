"""A browser in front of the counter: one Chromium and one server a run, a fresh shop and fresh windows a test."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Playwright, sync_playwright

from sourcing.actions.customer_links import make_link, new_secret
from sourcing.actions.desk import open_desk
from tests.browser.pages import Pages
from tests.browser.served import Counter, Switch, counter_behind, switch
from tests.web.world import CLERK, QUOTED

NONE = "NO BROWSER: the pages were NOT tried in a browser ({}). Debian: apt-get install chromium"
CHROMIUM = (
    *("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"),
    *("--disable-sync", "--no-first-run", "--disable-dev-shm-usage"),
)


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """Playwright, started once."""
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    """Debian's Chromium, or all tests that want a browser are skipped."""
    program = shutil.which("chromium")
    if program is None:
        pytest.skip(NONE.format("chromium is not installed"))
    try:
        started = playwright.chromium.launch(executable_path=program, args=CHROMIUM)
    except Error as error:
        pytest.skip(NONE.format(f"chromium does not start: {error.message.splitlines()[0]}"))
    yield started
    started.close()


@pytest.fixture(scope="session")
def server() -> Iterator[Switch]:
    """The server of the run."""
    with switch() as made:
        yield made


@pytest.fixture(scope="session")
def screenshots(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where screenshots are left: the folder SOURCING_SCREENSHOTS names, else pytest's own."""
    told = os.environ.get("SOURCING_SCREENSHOTS")
    folder = Path(told).resolve() if told else tmp_path_factory.getbasetemp() / "screenshots"
    folder.mkdir(parents=True, exist_ok=True)
    return folder


@pytest.fixture
def counter(server: Switch, tmp_path: Path) -> Iterator[Counter]:
    """The counter of this test, over a fresh copy of the test world. `counter.at` is its clock."""
    with counter_behind(server, tmp_path) as made:
        yield made


@pytest.fixture
def pages(browser: Browser, counter: Counter, screenshots: Path) -> Iterator[Pages]:
    """Opens pages of the counter; at the end fails where a script failed, the policy was broken or the server did."""
    made = Pages(browser, counter.address, screenshots)
    try:
        yield made
        made.check()
    finally:
        made.close()


@pytest.fixture
def link(counter: Counter) -> str:
    """The address of a customer's link, as the clerk's page would have made it."""
    desk, secret = open_desk(str(counter.database), counter.at, CLERK), new_secret()
    make_link(desk, QUOTED, secret)
    desk.store.close()
    return f"{counter.address}/q/{secret}"
