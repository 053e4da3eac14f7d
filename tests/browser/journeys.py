"""What every step of a journey in a browser leaves and holds, and the steps several journeys share."""

from typing import Literal

from playwright.sync_api import Locator, Page, expect

from sourcing.actions.desk import open_desk
from sourcing.actions.orders import all_orders
from tests.browser.axe import violations
from tests.browser.looks import no_sideways_scroll, thorough
from tests.browser.pages import Pages
from tests.browser.served import Counter
from tests.web.world import CLERK, NOW


def step(pages: Pages, page: Page, name: str, *, main: bool = False) -> None:
    """Leave a picture of this step; nothing sticks out sideways, and axe finds nothing on a main page (script on)
    where it is to be gone through."""
    pages.shot(page, f"journey-{name}")
    no_sideways_scroll(page)
    assert not (main and thorough(page)) or violations(page) == [], page.url


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


MOST_TABS = 80
FROM_THE_TOP = "one => document.activeElement === document.body && document.getElementById('main').contains(one)"


def reach(page: Page, wanted: Locator) -> None:
    """Press Tab until this has the focus; from the top of a page by its link past the head. Fails where it does not
    come by within MOST_TABS."""
    wanted.wait_for(state="attached")
    one = wanted.element_handle()
    if page.evaluate(FROM_THE_TOP, one):
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
    for _ in range(MOST_TABS):
        if page.evaluate("one => one === document.activeElement", one):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"{page.url}: {wanted} is not reached by the Tab key")


def go(page: Page, role: Literal["link", "button"], words: str) -> None:
    """Reach a link or button by the Tab key and press Enter; the page it leads to is there then."""
    reach(page, page.get_by_role(role, name=words, exact=True).first)
    enter(page)


def enter(page: Page) -> None:
    """Press Enter, and wait for the page it leads to."""
    with page.expect_navigation():
        page.keyboard.press("Enter")


def write(page: Page, **fields: str) -> None:
    """Reach fields by the Tab key, in their order, and type; a day is typed as the American calendar has it."""
    for field, keys in fields.items():
        reach(page, page.locator(f"[name={field}]"))
        page.keyboard.type(keys)


def choose(page: Page, group: str, answer: str) -> None:
    """Reach the radios of that name by the Tab key, and go with the arrow keys to the answer."""
    radios = page.get_by_role("group", name=group, exact=True).get_by_role("radio")
    wanted = page.get_by_role("group", name=group, exact=True).get_by_label(answer, exact=True)
    for _ in range(MOST_TABS):
        if radios.evaluate_all("all => all.includes(document.activeElement)"):
            break
        page.keyboard.press("Tab")
    for _ in range(radios.count()):
        if not wanted.is_checked():
            page.keyboard.press("ArrowRight")
    expect(wanted).to_be_checked()
