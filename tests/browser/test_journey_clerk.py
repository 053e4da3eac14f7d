"""The clerk's morning in a real browser, at the desktop and on a phone."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.journeys import step
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Switch
from tests.web.sheets_world import PLAIN, in_hand
from tests.web.world import TAKEN_IN

READING = 30_000
"""Milliseconds a sheet may take: a process of its own reads it."""


@pytest.mark.parametrize("profile", PROFILES)
def test_the_clerks_morning(pages: Pages, server: Switch, profile: Profile) -> None:
    """A new sheet, what changed on it, a look-alike judged, a belt found, the plan of a job, its quote."""
    page = pages.at_work("clerk", profile)
    if profile == "phone":  # once with a process of its own, as in earnest; once in this one, which is quicker
        assert server.app
        in_hand(server.app)
    page.goto("/sheets")
    page.get_by_label("Price sheets").set_input_files(
        {"name": "stonegarth-2026-01-14.csv", "mimeType": "text/csv", "buffer": PLAIN}
    )
    page.get_by_role("button", name="Read them").click()
    if profile == "desktop":  # eight rows where there were hundreds: that is shown first
        page.get_by_role("button", name="Keep it so").click(timeout=READING)
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile("^Sheet 7 of Stonegarth"), timeout=READING)
    step(pages, page, "clerk-1-sheet-kept")
    page.get_by_role("link", name="What changed since sheet").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("What changed on sheet 7")
    step(pages, page, "clerk-2-what-changed", main=True)

    page.goto("/look-alikes/45")
    if profile == "desktop":
        expect(page.get_by_role("button", name="Turn the keys off")).to_be_visible()  # the script has begun
        page.keyboard.press("n")
    else:
        page.get_by_role("button", name="No, it is not").click()
    expect(page.get_by_text("it does not come back")).to_be_visible()
    step(pages, page, "clerk-3-look-alike-judged")

    page.get_by_label("Look up").fill("NW-40388")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("Auger drive belt")
    expect(page.get_by_text("PB-4038").filter(visible=True).first).to_be_visible()
    step(pages, page, "clerk-4-found", main=True)

    page.goto(f"/jobs/{TAKEN_IN}/plan?need_by=2026-01-30")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Plan of orders")
    step(pages, page, "clerk-5-plan", main=True)
    page.get_by_role("button", name="Write the quote").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("revision 1")
    step(pages, page, "clerk-6-quote")
