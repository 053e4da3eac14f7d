"""A customer who has her page open twice, or goes back once she has answered: no second answer, no dead end."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.hers import THANKS, choose, kept, line
from tests.browser.journeys import step
from tests.browser.pages import Pages
from tests.browser.served import Counter

GIVEN = {"1": "approved", "2": "approved", "A": "waiting", "B": "waiting", "C": "waiting"}


def sends(page: Page, name: str = "Maud Tilbrook") -> None:
    """Her name, and the button."""
    page.get_by_label("Your name").fill(name)
    page.get_by_role("button", name="Send my answers").click()


def is_thanked(page: Page) -> None:
    """The confirmation stands there, and no form."""
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)
    expect(page.get_by_role("button", name="Send my answers")).to_have_count(0)


def test_sent_from_two_tabs_the_first_counts(pages: Pages, counter: Counter, link: str) -> None:
    """The second is shown what was answered, and that it was not taken itself."""
    first = pages.open("phone")
    second = first.context.new_page()
    for tab in (first, second):
        tab.goto(link)
    first.bring_to_front()  # a tab that lies behind another is slow
    choose(first, _1="Approve", _2="Approve")
    sends(first)
    is_thanked(first)
    second.bring_to_front()
    choose(second, _1="Decline", _2="Decline", A="Approve")
    sends(second)
    is_thanked(second)
    expect(second.locator("#refused")).to_contain_text("was not taken")
    step(pages, second, "customer-second-tab", main=True)
    assert kept(counter) == GIVEN


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_back_after_the_answer_leads_to_the_answer(pages: Pages, counter: Counter, link: str, script: bool) -> None:
    """Over the total worked out (without script), or over a refusal (with it); her marks stand in no second answer."""
    page = pages.open("phone", script=script)
    page.goto(link)
    choose(page, _1="Approve", _2="Approve")
    if script:
        sends(page, "Nobody Known")
        expect(page.locator("#refused")).to_be_visible()
    else:
        page.get_by_role("button", name="Work out the total").click()
        expect(page.locator("#total")).to_have_text("$312.69")
    sends(page)
    is_thanked(page)
    for _ in range(2):
        page.go_back()
        is_thanked(page)
    page.go_forward()
    is_thanked(page)
    assert kept(counter) == GIVEN


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_with_too_many_lines_for_a_list_of_totals_the_server_works_them_out(
    pages: Pages, counter: Counter, link: str, monkeypatch: pytest.MonkeyPatch, script: bool
) -> None:
    """The button sends, and a figure stands only for the marks it was worked out for: never $0.00 for what is open."""
    monkeypatch.setattr("sourcing.quoting.choices.MOST_CHOICES", 4)  # the quote has five lines to answer
    page = pages.open("phone", script=script)
    page.goto(link)
    assert page.locator("#answers").get_attribute("data-totals") is None
    expect(page.locator("#total")).to_have_text("not worked out yet")
    choose(page, _1="Approve", _2="Approve", A="Approve")
    expect(page.locator("#total")).to_have_text("not worked out yet")
    page.get_by_role("button", name="Work out the total").click()
    expect(page.locator("#total")).to_have_text("$374.77")
    expect(line(page, "A").get_by_label("Approve")).to_be_checked()
    if script:
        choose(page, A="Decline")
        expect(page.locator("#total")).to_have_text("not worked out yet")
        choose(page, A="Approve")
        expect(page.locator("#total")).to_have_text("$374.77")
    pages.shot(page, f"customer-many{'' if script else '-no-script'}")
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_role("button", name="Work out the total").click()
    expect(page.locator("#total")).to_have_text("$374.77")
    sends(page)
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)
    assert kept(counter) == {**GIVEN, "A": "approved"}
