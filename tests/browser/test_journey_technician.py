"""The technician's day in a real browser, on a phone and at the bench's screen."""

import io

import pytest
from PIL import Image
from playwright.sync_api import expect

from sourcing.actions.desk import open_desk
from sourcing.actions.orders import place_orders
from tests.browser.journeys import step, take_in, telephone
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Counter
from tests.web.orders_world import OPEN
from tests.web.world import APPROVED, CLERK, ORDERING


@pytest.mark.parametrize("profile", PROFILES)
def test_the_technicians_day(pages: Pages, counter: Counter, profile: Profile) -> None:
    """A job with a finding, an add-on and its photo; an answer by telephone; goods counted in by typing and Enter."""
    desk = open_desk(str(counter.database), ORDERING, CLERK)
    place_orders(desk, [APPROVED])
    desk.store.close()
    page = pages.at_work("technician", profile)
    job = take_in(page)
    page.get_by_label("Something else was seen").fill("Skid shoes are worn.")
    page.get_by_role("button", name="Write it down").click()
    expect(page.get_by_text("Skid shoes are worn.").first).to_be_visible()
    page.get_by_role("link", name="Add what was found").click()
    for field, words in {
        "title": "Straighten the belt keepers",
        "hours": "0.3",
        "found": "Bent.",
        "why": "They hold the belt.",
        "if_declined": "The belt may jump off.",
    }.items():
        page.locator(f"[name={field}]").fill(words)
    page.get_by_role("button", name="Keep", exact=True).click()
    page.get_by_role("link", name="Add a photo").click()
    page.get_by_label("Photo", exact=True).set_input_files(
        {"name": "IMG_1.jpg", "mimeType": "image/jpeg", "buffer": _photo()}
    )
    page.get_by_label("Shows").select_option("A")
    page.get_by_label("What is to be seen").fill("a bent keeper")
    page.get_by_role("button", name="Keep the photo").click()
    expect(page.get_by_role("img", name="a bent keeper")).to_be_visible()
    step(pages, page, "technician-1-job", main=True)

    page.goto(f"/jobs/{job}/write-quote")
    page.get_by_role("button", name="Write the quote").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("revision 1")
    step(pages, page, "technician-2-quote")
    telephone(page, job, "1", "A")
    step(pages, page, "technician-3-answered", main=True)

    page.goto("/receive")
    expect(page.get_by_label("Scan or type")).to_be_focused()
    page.keyboard.type(OPEN)
    page.keyboard.press("Enter")
    expect(page.locator("#scan")).to_be_focused()
    page.keyboard.type("PB-4038")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Came for line 1, PB-4038")).to_have_value("1")
    step(pages, page, "technician-4-counted", main=True)
    page.get_by_label("Number of the paper").fill("DN-5")
    page.get_by_role("button", name="Take it in").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Paper DN-5")
    step(pages, page, "technician-5-received")


def _photo() -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (600, 400), "gray").save(out, "JPEG")
    return out.getvalue()
