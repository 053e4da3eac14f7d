"""Quote, answers, alarms and bill in a browser: an answer taken down with and without JavaScript; read and reached."""

import pytest
from playwright.sync_api import Page, expect

from sourcing.actions.answers import standing
from sourcing.actions.desk import open_desk
from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll, thorough
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Counter
from tests.web.world import APPROVED, CLERK, NOW, ORDERED, QUOTED


def mark(page: Page, **answers: str) -> None:
    """Choose answers by label; '1' is given as _1."""
    for label, words in answers.items():
        group = page.get_by_role("group", name=f"Answer to line {label.strip('_')}", exact=True)
        group.get_by_label(words, exact=True).check()


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_an_answer_by_telephone_is_taken_down(pages: Pages, counter: Counter, script: bool) -> None:
    """On the technician's phone, with the total while the customer is still on the line."""
    page = pages.at_work("technician", "phone", script=script)
    page.goto(f"/jobs/{QUOTED}/answers")
    expect(page.locator("#total")).to_have_text("$0.00")
    mark(page, _1="Yes", _2="Yes", A="Yes", B="No")
    if not script:
        page.get_by_role("button", name="Work out").click()
    expect(page.locator("#total")).to_have_text("$374.77")
    pages.shot(page, f"answers-{'script' if script else 'no-script'}")
    page.get_by_label("Maud Tilbrook").check()
    page.get_by_label("By telephone").check()
    page.get_by_label("Number called, or address").fill("555-0142")
    page.get_by_role("button", name="Write the answers down").click()
    expect(page.get_by_text("Approved: 1, 2, A. Declined: B. Waiting: C.")).to_be_visible()
    desk = open_desk(str(counter.database), NOW, CLERK)
    kept = dict(standing(desk, QUOTED).answers.by_label)
    desk.store.close()
    assert kept == {"1": "approved", "2": "approved", "A": "approved", "B": "declined", "C": "waiting"}
    page.go_back()  # also over the total that was worked out: no dead end
    expect(page.get_by_role("heading", level=1)).to_contain_text("Answers to the quote")


@pytest.mark.parametrize("profile", PROFILES)
def test_the_pages_of_quotes_can_be_read_and_reached(pages: Pages, profile: Profile) -> None:
    """WCAG 2.2 AA by axe-core, by keyboard alone, nothing sticking out."""
    page = pages.at_work("owner", profile)
    addresses = {
        "quote": f"/jobs/{QUOTED}/quote",
        "quote-figures": f"/jobs/{QUOTED}/quote/figures",
        "quote-anew": f"/jobs/{QUOTED}/quote/anew?need_by=2026-01-22",
        "answers": f"/jobs/{APPROVED}/answers",
        "take-back": f"/jobs/{APPROVED}/answers/take-back",
        "alarms": f"/jobs/{APPROVED}/not-as-approved",
        "decide": f"/jobs/{APPROVED}/not-as-approved/1",
        "bill": f"/jobs/{ORDERED}/bill",
        "bill-look": f"/jobs/{ORDERED}/bill/write",
        "given-away": f"/jobs/{ORDERED}/given-away",
    }
    for name, address in addresses.items():
        page.goto(address)
        assert not thorough(page) or violations(page) == [], address
        if thorough(page):
            keyboard_only(page)
        no_sideways_scroll(page)
        pages.shot(page, name)
