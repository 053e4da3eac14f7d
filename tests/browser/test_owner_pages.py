"""The owner's and the clerk's pages of shop and margins in a browser: WCAG 2.2 AA, on a phone, without JavaScript."""

from playwright.sync_api import expect

from tests.browser.axe import violations
from tests.browser.looks import no_sideways_scroll
from tests.browser.pages import Pages
from tests.web.world import ORDERED

READ = (
    *("/shop", "/shop/files", "/people", "/people/2", "/history", "/rates", "/terms", "/terms/of/kesselried"),
    *("/terms/of/stonegarth/change", "/terms/of/stonegarth/withdraw", "/terms/new", "/terms/take-in"),
    *(f"/shop/change/{part}" for part in ("shop", "prices", "labour", "charges", "days", "papers")),
    *("/margins?stage=ordered", f"/margins/{ORDERED}", "/what-if?bands=0=1.6"),
)


def test_pages_of_shop_and_margins_can_be_read_on_a_phone(pages: Pages) -> None:
    """Nothing of WCAG 2.2 AA is broken, and nothing but a wide table scrolls sideways."""
    page = pages.at_work("owner", "phone")
    for address in READ:
        page.goto(address)
        assert (address, violations(page)) == (address, [])
        no_sideways_scroll(page)


def test_terms_change_without_javascript(pages: Pages) -> None:
    """Enter in a field shows what would change; it is kept only when that was seen; going back sends nothing twice."""
    page = pages.at_work("clerk", "phone", script=False)
    page.goto("/terms/of/stonegarth/change")
    page.get_by_label("Minimum order", exact=True).fill("30.00")
    page.get_by_label("Minimum order", exact=True).press("Enter")
    expect(page.get_by_text("Nothing is kept yet.")).to_be_visible()
    pages.shot(page, "terms-change-seen-first")
    page.get_by_role("button", name="Keep it").click()
    expect(page.get_by_text("are changed")).to_be_visible()
    expect(page.get_by_text("'Minimum order' 25.00 -> 30.00")).to_have_count(1)
