"""What every step of a journey in a browser leaves and holds, and the steps several journeys share."""

from playwright.sync_api import Page, expect

from sourcing.actions.desk import open_desk
from sourcing.actions.orders import all_orders
from tests.browser.axe import violations
from tests.browser.looks import no_sideways_scroll
from tests.browser.pages import Pages
from tests.browser.served import Counter
from tests.web.world import CLERK, NOW


def step(pages: Pages, page: Page, name: str, *, main: bool = False) -> None:
    """Leave a picture of this step; nothing sticks out sideways, and axe finds nothing on a main page (script on)."""
    pages.shot(page, f"journey-{name}")
    no_sideways_scroll(page)
    assert not main or violations(page) == [], page.url


def take_in(page: Page) -> str:
    """Take in a job for an auger drive belt, by the page itself; its number."""
    page.goto("/jobs")
    page.get_by_role("link", name="Take in a job").click()
    fields = {
        "name": "Ada Brenmoor",
        "telephone": "555-0177",
        "machine_description": "two-stage snow thrower",
        "complaint": "The auger stands still.",
        "title": "Replace the auger drive belt",
        "part": "OV 20 417",
        "quantity": "1",
        "hours": "1.5",
        "need_by": "2026-01-30",
    }
    for field, words in fields.items():
        page.locator(f"[name={field}]").fill(words)
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Ada Brenmoor")
    return page.url.rsplit("/", 1)[-1]


def telephone(page: Page, job: str, *labels: str) -> None:
    """Take down a yes to these lines, said on the telephone."""
    page.goto(f"/jobs/{job}/answers")
    for label in labels:
        group = page.get_by_role("group", name=f"Answer to line {label}", exact=True)
        group.get_by_label("Yes", exact=True).check()
    page.get_by_label("Ada Brenmoor").check()
    page.get_by_label("By telephone").check()
    page.get_by_label("Number called, or address").fill("555-0177")
    page.get_by_role("button", name="Write the answers down").click()
    expect(page.get_by_text(f"Approved: {', '.join(labels)}.").first).to_be_visible()


def orders_of(counter: Counter, job: str) -> list[str]:
    """The numbers of a job's orders as they are kept."""
    desk = open_desk(str(counter.database), NOW, CLERK)
    try:
        return [one.number for one in all_orders(desk, job)]
    finally:
        desk.store.close()
