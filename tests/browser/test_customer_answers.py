"""A customer answers on her own phone: with and without script, by keyboard, with the network gone in the middle."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.axe import violations
from tests.browser.hers import THANKS, choose, draw, kept, line
from tests.browser.looks import keyboard_only, no_sideways_scroll, weight
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Counter
from tests.web.linked import links_page
from tests.web.world import QUOTED

MOST_BYTES = 100_000


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_she_reads_chooses_and_sends(pages: Pages, counter: Counter, link: str, profile: Profile, script: bool) -> None:
    """The whole way; her page then is what she keeps, and the shop has the same."""
    page = pages.open(profile, script=script)
    page.goto(link)
    choose(page, _1="Approve", _2="Approve", A="Approve", B="Decline")
    if script:
        draw(page)
    else:
        page.get_by_role("button", name="Work out the total").click()
    expect(page.locator("#total")).to_have_text("$374.77")
    pages.shot(page, f"customer-choosing{'' if script else '-no-script'}")
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)
    assert page.get_by_alt_text("Signature of Maud Tilbrook").count() == script
    no_sideways_scroll(page)
    pages.shot(page, f"customer-answered{'' if script else '-no-script'}")
    assert kept(counter) == {"1": "approved", "2": "approved", "A": "approved", "B": "declined", "C": "waiting"}


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("profile", PROFILES)
def test_her_pages_can_be_read_and_reached_by_everybody(pages: Pages, link: str, profile: Profile, dark: bool) -> None:
    """The quote, the quote with a refusal above it, and the confirmation; and all of it is light."""
    page = pages.open(profile, color_scheme="dark" if dark else "light")
    assert weight(page, link) < MOST_BYTES
    _holds(page, "Send my answers")
    page.get_by_label("Your name").fill("Nobody Known")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.locator("#refused")).to_be_focused()
    assert violations(page) == []  # the keyboard goes on from the refusal, not from the top
    no_sideways_scroll(page)
    choose(page, _1="Approve", _2="Approve")
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)
    _holds(page, "Print this page")


def _holds(page: Page, button: str) -> None:
    assert violations(page) == []
    assert f'button "{button}"' in keyboard_only(page)
    no_sideways_scroll(page)


@pytest.mark.parametrize("profile", PROFILES)
def test_the_shops_pages_of_links_can_be_read_and_reached(pages: Pages, profile: Profile) -> None:
    """The form, the link shown once, the question before it is ended."""
    page = pages.at_work("technician", profile)
    page.goto(links_page())
    _holds(page, "Make the link")
    page.get_by_role("button", name="Make the link").click()
    _holds(page, "Log out here and hand the tablet over")
    pages.shot(page, "link-made")
    page.goto(f"{links_page()}/1/revoke")
    _holds(page, "End link 1")


def test_the_script_shows_for_every_choice_what_the_server_works_out(pages: Pages, link: str) -> None:
    """All 32, marked one after the other in the page; the server's own list is tested against its totals elsewhere."""
    page = pages.open("phone")
    page.goto(link)
    seen: list[str] = page.evaluate(
        """() => [...Array(32).keys()].map(choice => {
          ['1', '2', 'A', 'B', 'C'].forEach((label, at) => {
            const word = choice >> at & 1 ? 'approve' : choice % 3 ? 'decline' : '';
            document.querySelector(`input[name="line-${label}"][value="${word}"]`).click();
          });
          return document.getElementById('total').textContent;
        })"""
    )
    assert seen == page.locator("#answers").get_attribute("data-totals").split("|")  # type: ignore[union-attr]
    assert len(set(seen)) == 32


def test_by_keyboard_alone(pages: Pages, counter: Counter, link: str) -> None:
    """Arrow keys choose, Tab goes on, Enter in the name sends nothing by itself."""
    page = pages.open()
    page.goto(link)
    line(page, "1").get_by_label("Not yet").focus()
    for label in ("1", "2", "A", "B", "C"):
        page.keyboard.press("ArrowRight" if label != "B" else "ArrowLeft")
        expect(line(page, label).get_by_label("Approve" if label != "B" else "Decline")).to_be_checked()
        page.keyboard.press("Tab")
    expect(page.get_by_label("Your name")).to_be_focused()
    page.keyboard.type("Maud Tilbrook")
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="Send my answers")).to_be_visible()
    assert set(kept(counter).values()) == {"waiting"}
    expect(page.get_by_label("Your name")).to_have_value("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)
    assert kept(counter) == {"1": "approved", "2": "approved", "A": "approved", "B": "declined", "C": "approved"}


def test_without_network_nothing_is_lost_and_it_is_sent_once(pages: Pages, counter: Counter, link: str) -> None:
    """The page says so and keeps all; when the network is back the same button sends it."""
    page = pages.open("phone")
    page.goto(link)
    choose(page, _1="Approve", _2="Approve")
    page.get_by_label("Your name").fill("Maud Tilbrook")
    draw(page)
    page.context.set_offline(True)
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_text("There is no network just now")).to_be_visible()
    expect(line(page, "1").get_by_label("Approve")).to_be_checked()
    page.context.set_offline(False)
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_alt_text("Signature of Maud Tilbrook")).to_be_visible()
    assert kept(counter)["1"] == "approved"


def test_after_the_browsers_own_error_page_all_is_still_there(pages: Pages, counter: Counter, link: str) -> None:
    """The network breaks while the answer is on its way, unseen by the browser: Back, and send once more."""
    page = pages.open("phone")
    page.goto(link)
    choose(page, _1="Approve", _2="Approve", C="Decline")
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_label("Anything else you want to tell us").fill("No hurry")
    draw(page)
    page.route(
        "**/q/**", lambda route: route.abort("connectionreset") if route.request.method == "POST" else route.continue_()
    )
    with page.expect_event("requestfailed"):
        page.get_by_role("button", name="Send my answers").click(no_wait_after=True)
    expect(page.locator("#answers")).to_have_count(0)  # the browser's own error page stands there
    assert set(kept(counter).values()) == {"waiting"}
    page.unroute("**/q/**")
    page.goto(link)
    expect(line(page, "C").get_by_label("Decline")).to_be_checked()
    expect(page.get_by_label("Your name")).to_have_value("Maud Tilbrook")
    expect(page.get_by_label("Anything else you want to tell us")).to_have_value("No hurry")
    expect(page.locator("#total")).to_have_text("$312.69")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_alt_text("Signature of Maud Tilbrook")).to_be_visible()
    assert kept(counter) == {"1": "approved", "2": "approved", "A": "waiting", "B": "waiting", "C": "declined"}


def test_an_answer_that_arrived_though_its_page_did_not_is_not_doubled(
    pages: Pages, counter: Counter, link: str
) -> None:
    """Sent, kept, and the network gone before the confirmation came: opened again, her page is the confirmation."""
    page = pages.open("phone")
    page.goto(link)
    choose(page, _1="Approve", _2="Approve")
    page.get_by_label("Your name").fill("Maud Tilbrook")

    def lose(route: object) -> None:
        if route.request.method == "POST":  # type: ignore[attr-defined]
            route.fetch(max_redirects=0)  # type: ignore[attr-defined]
            route.abort("connectionreset")  # type: ignore[attr-defined]
        else:
            route.continue_()  # type: ignore[attr-defined]

    page.route("**/q/**", lose)
    with page.expect_event("requestfailed"):
        page.get_by_role("button", name="Send my answers").click(no_wait_after=True)
    expect(page.locator("#answers")).to_have_count(0)  # the browser's own error page stands there
    assert kept(counter)["1"] == "approved"
    page.unroute("**/q/**")
    page.goto(link)
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)


def test_a_drawn_signature_is_still_there_after_a_refusal(pages: Pages, counter: Counter, link: str) -> None:
    """A name that is not on the quote: she corrects it, and need not draw again."""
    page = pages.open("phone")
    page.goto(link)
    choose(page, _1="Approve", _2="Approve")
    draw(page)
    page.get_by_label("Your name").fill("Nobody Known")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.locator("#refused")).to_be_focused()
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_alt_text("Signature of Maud Tilbrook")).to_be_visible()


def test_the_tablet_is_handed_over(pages: Pages) -> None:
    """The browser is logged out and shows her page; Back leads to no page of the shop."""
    page = pages.at_work("clerk", "phone")
    page.goto(links_page())
    page.get_by_role("button", name="Make the link").click()
    page.get_by_role("button", name="Log out here and hand the tablet over").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(f"Quote for job {QUOTED}")
    page.goto("/")
    expect(page.get_by_role("button", name="Log in")).to_be_visible()


@pytest.mark.parametrize("what", ["slip", "confirmation"])
def test_it_prints_clean(pages: Pages, link: str, tmp_path: Path, what: str) -> None:
    """The slip is one page without the counter's places; the confirmation has no buttons."""
    page = pages.open()
    if what == "slip":
        page = pages.at_work("clerk")
        page.goto(links_page())
        page.get_by_role("button", name="Make the link").click()
    else:
        page.goto(link)
        choose(page, _1="Approve", _2="Approve")
        page.get_by_label("Your name").fill("Maud Tilbrook")
        page.get_by_role("button", name="Send my answers").click()
    page.emulate_media(media="print")
    for button in page.get_by_role("button").all():
        expect(button).to_be_hidden()
    pdf = page.pdf(path=tmp_path / "printed.pdf")
    assert pdf.startswith(b"%PDF")
    if what == "slip":
        from pypdf import PdfReader

        assert len(PdfReader(tmp_path / "printed.pdf").pages) == 1


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
@pytest.mark.parametrize("profile", PROFILES)
def test_what_was_refused_leads_her_to_the_field(pages: Pages, link: str, profile: Profile, script: bool) -> None:
    """By a link that puts her into it; what she had typed is still there."""
    page = pages.open(profile, script=script)
    page.goto(link)
    choose(page, _1="Approve", _2="Approve")
    page.get_by_label("Your name").fill("Nobody Known")
    page.get_by_role("button", name="Send my answers").click()
    page.get_by_role("link", name="Go to this field: Your name").click()
    field = page.get_by_label("Your name")
    expect(field).to_be_focused()
    expect(field).to_be_in_viewport()
    expect(field).to_have_value("Nobody Known")
    expect(field).to_have_accessible_description(re.compile("only who is named there can answer.*has not noted"))
    pages.shot(page, f"customer-refused{'' if script else '-no-script'}")
    field.fill("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(THANKS)


def test_a_line_that_was_not_answered_is_led_to_and_says_so(pages: Pages, link: str) -> None:
    page = pages.open("phone")
    page.goto(link)
    page.get_by_label("Your name").fill("Maud Tilbrook")
    page.get_by_role("button", name="Send my answers").click()
    page.get_by_role("link", name="Go to this field: Your answer to line 1").click()
    group = page.get_by_role("radiogroup", name="Your answer to line 1")
    expect(group.get_by_role("radio", name="Approve")).to_be_focused()
    expect(group).to_have_accessible_description(re.compile("no line has a yes or a no yet", re.IGNORECASE))
    assert violations(page) == []
