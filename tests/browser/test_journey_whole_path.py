"""The whole way of a job in a real browser: taken in, quoted, answered, ordered once, received and billed."""

import re

from playwright.sync_api import Page, expect

from tests.browser.journeys import orders_of, step, take_in, telephone
from tests.browser.pages import Pages
from tests.browser.served import Counter
from tests.web.world import APPROVED, ORDERING


def test_a_job_goes_its_whole_way_without_javascript(pages: Pages, counter: Counter) -> None:
    """By the bench and the clerk; the order, sent again after going back and from a second tab, is placed once."""
    bench, clerk = (pages.log_in(pages.open(script=False), role) for role in ("technician", "clerk"))
    job = take_in(bench)
    step(pages, bench, "path-1-taken-in")
    clerk.goto(f"/jobs/{job}")
    clerk.get_by_role("link", name="Write the quote").last.click()  # in the next step, and among the buttons
    clerk.get_by_role("button", name="Write the quote").click()
    expect(clerk.get_by_role("heading", level=1)).to_contain_text("revision 1")
    step(pages, clerk, "path-2-quote")
    telephone(bench, job, "1")
    step(pages, bench, "path-3-answered")

    order = _ordered_once(pages, counter, clerk, job)
    clerk.goto(f"/receive/{order}")
    clerk.get_by_role("button", name="All of it came").click()
    clerk.get_by_label("Number of the paper").fill("DN-77")
    clerk.get_by_label("Freight charged").fill("0")
    clerk.get_by_role("button", name="Take it in").click()
    expect(clerk.get_by_role("heading", level=1)).to_contain_text("Paper DN-77")
    step(pages, clerk, "path-6-received")

    clerk.goto(f"/jobs/{job}/bill")
    clerk.get_by_role("link", name="Look at the bill, then write it").click()
    step(pages, clerk, "path-7-bill-looked-at")
    clerk.get_by_role("button", name="Write the bill and close the job").click()
    expect(clerk.get_by_text("Written by Oona Brandeth")).to_be_visible()
    step(pages, clerk, "path-8-billed")


def _ordered_once(pages: Pages, counter: Counter, clerk: Page, job: str) -> str:
    clerk.goto(f"/jobs/{job}/to-order")
    step(pages, clerk, "path-4-to-order")
    other = clerk.context.new_page()
    other.goto(f"/jobs/{job}/to-order")
    clerk.bring_to_front()  # a tab that lies behind another is slow
    clerk.get_by_role("button", name="Order from").click()
    (order,) = orders_of(counter, job)
    step(pages, clerk, "path-5-ordered")
    clerk.go_back()
    again = clerk.get_by_role("button", name="Order from")
    if again.count():  # a browser that kept the page; one that asks anew finds nothing to order
        again.click()
    other.bring_to_front()
    other.get_by_role("button", name="Order from").click()
    step(pages, other, "path-5-sent-again")
    assert orders_of(counter, job) == [order]
    clerk.bring_to_front()
    return order


def test_a_double_click_on_the_order_button_orders_once(pages: Pages, counter: Counter) -> None:
    """With JavaScript, over the job that is approved and not ordered yet."""
    counter.at = ORDERING
    page = pages.at_work("clerk")
    page.goto(f"/jobs/{APPROVED}/to-order")
    step(pages, page, "double-click-1-to-order", main=True)
    button = page.get_by_role("button", name=re.compile("^(Order from|Place these)"))
    told = button.inner_text()
    button.dblclick()
    expect(page.get_by_role("heading", level=1)).not_to_contain_text("To order for job")
    step(pages, page, "double-click-2-ordered", main=True)
    many = re.search(r"Place these (\d+) orders", told)
    assert len(orders_of(counter, APPROVED)) == (int(many.group(1)) if many else 1)
