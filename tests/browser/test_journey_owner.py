"""The owner's evening in a real browser, at the desktop and on a phone."""

import pytest
from playwright.sync_api import expect

from tests.browser.journeys import step
from tests.browser.pages import PROFILES, Pages, Profile


@pytest.mark.parametrize("profile", PROFILES)
def test_the_owners_evening(pages: Pages, profile: Profile) -> None:
    """What was earned and why less, what other bands would have brought, and somebody new who then logs in."""
    page = pages.at_work("owner", profile)
    page.goto("/margins?months=all")
    expect(page.get_by_role("heading", name="Under the floor")).to_be_visible()
    expect(page.get_by_role("heading", name="Leaks by name")).to_be_visible()
    step(pages, page, "owner-1-margins", main=True)
    page.get_by_role("link", name="What if other bands had held?").click()
    page.get_by_label("Markup bands to try").fill("0=1.6")
    page.get_by_role("button", name="Try these bands").click()
    expect(page.get_by_role("heading", name="What came of it")).to_be_visible()
    expect(page.get_by_role("region", name="Other bands")).to_contain_text("by these bands")
    step(pages, page, "owner-2-what-if", main=True)

    page.goto("/people")
    page.get_by_label("Name").fill("Ada Brenmoor")
    page.get_by_label("First password").fill("nine candles in a quiet shed")
    page.get_by_role("button", name="Let in").click()
    expect(page.get_by_role("rowheader", name="Ada Brenmoor")).to_be_visible()
    step(pages, page, "owner-3-somebody-new", main=True)
    new = pages.open(profile)
    new.goto("/log-in")
    new.get_by_label("Your name").fill("Ada Brenmoor")
    new.get_by_label("Password").fill("nine candles in a quiet shed")
    new.get_by_role("button", name="Log in").click()
    expect(new.get_by_role("button", name="Log out")).to_be_attached()
    new.goto("/jobs")
    expect(new.get_by_role("heading", level=1)).to_have_text("Jobs")
    step(pages, new, "owner-4-she-is-in")
