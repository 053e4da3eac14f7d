"""The main pages are light: what a first visit brings over the network, styles and scripts with it, photos left out."""

from tests.browser.looks import weight
from tests.browser.pages import Pages
from tests.web.world import QUOTED, TAKEN_IN

MOST_BYTES = 100_000
MAIN = (
    *("/", "/jobs", f"/jobs/{QUOTED}", f"/jobs/{TAKEN_IN}/plan", f"/jobs/{QUOTED}/quote", f"/jobs/{QUOTED}/answers"),
    *("/find?number=NW-40388", "/orders", "/receive/PO-2026-0001", "/sheets", "/look-alikes", "/same-parts"),
    *("/margins", "/shop"),
)


def test_a_first_visit_to_any_main_page_brings_less_than_100_kb(pages: Pages) -> None:
    """To the owner, whose pages have most on them."""
    page = pages.at_work("owner", "phone")
    heavy = {address: some for address in MAIN if (some := weight(page, address)) >= MOST_BYTES}
    assert not heavy
