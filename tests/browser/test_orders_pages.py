"""Orders and receiving in a browser: a scanner counts with and without JavaScript; read, reached and not too wide."""

import pytest
from playwright.sync_api import Page, expect

from sourcing.actions.desk import open_desk
from sourcing.actions.orders import place_orders
from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll, thorough
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Counter
from tests.web.orders_world import OPEN
from tests.web.world import APPROVED, CLERK, ORDERING

FROM_THE_TOP = "() => { const top = document.body; top.tabIndex = -1; top.focus(); top.removeAttribute('tabindex'); }"
"""Pages made for scanning begin in their field; Tab is tried from the top all the same."""


@pytest.fixture(autouse=True)
def ordered(counter: Counter) -> None:
    """Job 2026-0002 is ordered, and nothing of it has come."""
    desk = open_desk(str(counter.database), ORDERING, CLERK)
    place_orders(desk, [APPROVED])
    desk.store.close()


def scan(page: Page, number: str) -> None:
    """What a scanner does: it types the number into the field that has the focus, and sends Enter."""
    expect(page.locator("#scan")).to_be_focused()
    page.keyboard.type(number)
    page.keyboard.press("Enter")


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_a_scanner_counts_a_delivery_in(pages: Pages, script: bool) -> None:
    """From the first field to the receipt, on the technician's phone; a wrong number is said and not counted."""
    page = pages.at_work("technician", "phone", script=script)
    page.goto("/receive")
    expect(page.get_by_label("Scan or type")).to_be_focused()
    page.keyboard.type(OPEN)
    page.keyboard.press("Enter")
    for number, told in (("PB-3120", "line 3"), ("nw-31207", "line 3"), ("PB-4038", "line 1")):
        scan(page, number)
        expect(page.locator("#said")).to_contain_text(told)
        expect(page.locator("#scan")).to_have_value("")
    expect(page.get_by_label("Came for line 3, PB-3120")).to_have_value("2")
    scan(page, "XX-77")
    expect(page.get_by_role("heading", name="XX-77 is on no line of this order")).to_be_visible()
    scan(page, "PB-4038")
    expect(page.get_by_text("this one is more than ordered")).to_be_visible()
    page.get_by_label("Came for line 1, PB-4038").fill("1")
    page.get_by_label("Number of the paper").fill("DN-5")
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Paper DN-5")
    expect(page.get_by_text("2 × PB-3120")).to_be_visible()
    pages.shot(page, f"taken-in-{'script' if script else 'no-script'}")


@pytest.mark.parametrize("profile", PROFILES)
def test_the_pages_of_orders_can_be_read_and_reached(pages: Pages, profile: Profile) -> None:
    """WCAG 2.2 AA by axe-core, by keyboard alone, nothing sticking out."""
    page = pages.at_work("clerk", profile)
    addresses = {
        "orders": "/orders?which=all",
        "order": f"/orders/{OPEN}",
        "order-paper": f"/orders/{OPEN}/paper",
        "order-confirm": f"/orders/{OPEN}/confirm",
        "order-change": f"/orders/{OPEN}/change?pieces_3=1",
        "order-cancel": f"/orders/{OPEN}/cancel?line=1",
        "to-order": f"/jobs/{APPROVED}/to-order",
        "receive": "/receive?for=XX-1",
        "count": f"/receive/{OPEN}?scanned=XX-77",
        "receipt": "/receive/PO-2026-0001/paper?paper=DN-88213",
        "going-back": "/going-back",
        "step-back": "/going-back/PO-2026-0001/1/goods",
    }
    for name, address in addresses.items():
        page.goto(address)
        assert not thorough(page) or violations(page) == [], address
        page.evaluate(FROM_THE_TOP)
        if thorough(page):
            keyboard_only(page)
        no_sideways_scroll(page)
        pages.shot(page, name)
