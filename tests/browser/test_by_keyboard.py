"""The main job by keyboard alone: nothing puts the focus anywhere but Tab, arrows, Enter and what is typed."""

from playwright.sync_api import Page, expect

from tests.browser.journeys import choose, enter, go, orders_of, reach, write
from tests.browser.pages import Pages
from tests.browser.served import Counter
from tests.web.world import CLERK, PASSWORDS


def test_a_job_goes_its_whole_way_by_keyboard(pages: Pages, counter: Counter) -> None:
    """Logged in, taken in, quoted, answered by telephone, ordered, counted in by a scanner, billed."""
    page = pages.open()
    page.goto("/log-in")
    write(page, name=CLERK, password=PASSWORDS[CLERK])
    enter(page)
    job = _taken_in(page)
    _quoted_and_answered(page)

    go(page, "link", f"Job {job}")
    go(page, "link", "To order")
    go(page, "button", page.get_by_role("button", name="Order from").inner_text())
    (order,) = orders_of(counter, job)
    _counted_in(page, order)

    go(page, "link", job)
    go(page, "link", "Deposit and bill")
    go(page, "link", "Look at the bill, then write it")
    go(page, "button", "Write the bill and close the job")
    expect(page.get_by_text(f"Written by {CLERK}")).to_be_visible()
    reach(page, page.get_by_role("link", name="Read or print the bill by itself"))


def _taken_in(page: Page) -> str:
    go(page, "link", "Take in a job")
    write(page, name="Ada Brenmoor", telephone="555-0177", machine_description="snow thrower")
    write(page, title="Replace the auger drive belt", part="OV 20 417", quantity="1", hours="1.5", need_by="01302026")
    go(page, "button", "Take it in")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Ada Brenmoor")
    return page.url.rsplit("/", 1)[-1].partition("#")[0]


def _quoted_and_answered(page: Page) -> None:
    go(page, "link", "Write the quote")
    go(page, "button", "Write the quote")
    expect(page.get_by_role("heading", level=1)).to_contain_text("revision 1")
    go(page, "link", "Take an answer down")
    choose(page, "Answer to line 1", "Yes")
    choose(page, "Who answered", "Ada Brenmoor")
    choose(page, "How", "By telephone")
    write(page, contact="555-0177")
    go(page, "button", "Write the answers down")
    expect(page.get_by_text("Approved: 1.").first).to_be_visible()


def _counted_in(page: Page, order: str) -> None:
    """By a scanner, whose fields have the focus when the page opens."""
    go(page, "link", "Receive")
    page.keyboard.type(order)
    enter(page)
    lines = page.locator("#lines input[data-number]")
    page.keyboard.type(lines.get_attribute("data-number") or "")
    page.keyboard.press("Enter")
    expect(lines).to_have_value("1")
    write(page, paper="DN-91", freight="0")
    go(page, "button", "Take it in")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Paper DN-91")
