"""Finding a part in a browser: scanned into the head of any page, read at the bench and at the counter."""

import pytest
from playwright.sync_api import expect

from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll, thorough
from tests.browser.pages import PROFILES, Pages, Profile

FROM_THE_TOP = "() => { const top = document.body; top.tabIndex = -1; top.focus(); top.removeAttribute('tabindex'); }"
"""A page made for scanning begins in its field; Tab is tried from the top all the same."""


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_a_number_scanned_anywhere_finds_its_part(pages: Pages, script: bool) -> None:
    """Through the box in the head of the first page; at the counter with its cost, and how that came."""
    page = pages.at_work("clerk", "desktop", script=script)
    page.goto("/")
    page.get_by_label("Look up").focus()
    page.keyboard.type("nw 40388")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("Auger drive belt")
    expect(page.get_by_role("row", name="Larkmoor Wholesale")).to_contain_text("$116.00")
    page.get_by_text("Cost, number and days of Pellbrook Power Parts").click()
    expect(page.get_by_role("region", name="Cost at the door, place 2, Pellbrook Power Parts")).to_contain_text(
        "$12.50"
    )
    page.get_by_label("Part number").fill("NW-4O388")
    page.keyboard.press("Enter")
    page.get_by_role("link", name="NW-40388").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Auger drive belt")


@pytest.mark.parametrize("profile", PROFILES)
def test_the_pages_of_finding_can_be_read_and_reached(pages: Pages, profile: Profile) -> None:
    """WCAG 2.2 AA by axe-core, by keyboard alone, nothing sticking out; the drawing is there."""
    addresses = {
        "find": "/find",
        "found": "/find?number=NW-40388&need_by=2026-01-20&a_day=4",
        "not-found": "/find?number=NW-4O388",
        "offer": "/find/offer?supplier=pellbrook&number=PB-4038",
        "belt": "/find/belt?driver=3-1/2&driven=9&centres=12",
        "looked-up": "/search?for=belt",
    }
    for role in ("clerk", "technician"):
        page = pages.at_work(role, profile)
        for name, address in addresses.items():
            if role == "technician" and name == "offer":
                continue
            page.goto(address)
            page.evaluate("() => document.querySelectorAll('main details').forEach(one => { one.open = true; })")
            assert not thorough(page) or violations(page) == [], address
            page.evaluate(FROM_THE_TOP)
            if thorough(page):
                keyboard_only(page)
            no_sideways_scroll(page)
            drawn = page.locator("img.scatter")
            if role == "clerk" and name == "found":
                drawn.scroll_into_view_if_needed()
                expect(drawn).to_have_js_property("complete", True)
                assert drawn.evaluate("img => img.naturalWidth") > 0
            assert role == "clerk" or not drawn.count()
            pages.shot(page, f"{name}-{role}")
