"""Look-alikes and the table in a browser: answers by single keys, a scanner that answers nothing; read and reached."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll, thorough
from tests.browser.pages import PROFILES, Pages, Profile

FROM_THE_TOP = "() => { const top = document.body; top.tabIndex = -1; top.focus(); top.removeAttribute('tabindex'); }"
FIRST, AGAINST = "/look-alikes/45", "/look-alikes/114"
"""A row, and one against which something speaks."""

ADDRESSES = {
    "look-alikes": "/look-alikes",
    "look-alike": AGAINST,
    "look-alikes-by-score": "/look-alikes/by-score?supplier=larkmoor&least=0.9",
    "look-alikes-file": "/look-alikes/file",
    "look-alikes-answers": "/look-alikes/answers",
    "number-rules": "/look-alikes/number-rules",
    "same-parts": "/same-parts",
    "same-number": "/same-parts/number?number=NW-40388&to=NW-41388",
    "same-statement": "/same-parts/statements/5?standing=maker",
    "same-add": "/same-parts/add",
    "same-check": "/same-parts/check",
    "same-makers": "/same-parts/makers",
    "same-take-in": "/same-parts/take-in",
}


def test_look_alikes_are_judged_by_single_keys(pages: Pages) -> None:
    """No, later, and a yes that asks for words first; not while typing, not by a scanner, not where turned off."""
    page = pages.at_work("clerk")
    page.goto(FIRST)
    heading = page.get_by_role("heading", level=1)
    expect(heading).to_contain_text("DM-77120")
    expect(page.get_by_role("button", name="Turn the keys off")).to_be_visible()
    page.keyboard.type("nyn", delay=20)
    page.wait_for_timeout(400)  # what a scanner sends is followed by nothing
    expect(page).to_have_url(f"{pages.address}{FIRST}")
    page.keyboard.press("n")
    expect(page.get_by_text("it does not come back")).to_be_visible()
    expect(page).not_to_have_url(f"{pages.address}{FIRST}")
    page.goto(AGAINST)
    expect(page.get_by_role("button", name="Turn the keys off")).to_be_visible()  # the script has begun
    page.keyboard.press("y")
    words = page.get_by_label("Why, in words")
    expect(words).to_be_focused()
    words.press_sequentially("only", delay=300)
    expect(page).to_have_url(f"{pages.address}{AGAINST}")
    page.get_by_role("button", name="Turn the keys off").click()
    page.keyboard.press("l")
    page.wait_for_timeout(400)
    expect(page).to_have_url(f"{pages.address}{AGAINST}")
    page.get_by_role("button", name="Turn the keys on").click()
    page.keyboard.press("l")
    expect(page).not_to_have_url(f"{pages.address}{AGAINST}")


@pytest.mark.parametrize("profile", PROFILES)
def test_look_alikes_and_the_table_can_be_read_and_reached(pages: Pages, profile: Profile) -> None:
    """WCAG 2.2 AA by axe-core, by keyboard alone, nothing sticking out."""
    page = pages.at_work("clerk", profile)
    for name, address in ADDRESSES.items():
        _read_and_reached(pages, page, name, address)


def _read_and_reached(pages: Pages, page: Page, name: str, address: str) -> None:
    page.goto(address)
    assert not (thorough(page) and violations(page)), name
    no_sideways_scroll(page)
    page.evaluate(FROM_THE_TOP)
    if thorough(page):
        keyboard_only(page)
    pages.shot(page, name)
