"""The helpers of this folder tell what they are there to tell: each is tried on a page that is wrong on purpose."""

import threading

import pytest
from playwright.sync_api import Page, expect

from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll, weight
from tests.browser.pages import PROFILES, Pages, Profile
from tests.browser.served import Counter
from tests.web.world import CLERK

GOOD = """<!DOCTYPE html><html lang="en"><head><title>A page</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<style>:focus-visible { outline: 3px solid #000; } button, a { display: inline-block; padding: 1rem }</style></head>
<body><main><h1>A page</h1>BODY</main></body></html>"""
POLICY = "default-src 'none'; script-src 'self'; style-src 'unsafe-inline'"


def _shown(page: Page, body: str) -> Page:
    """The page GOOD with that body, sent with a strict policy as the counter's pages are."""
    answer = {"body": GOOD.replace("BODY", body), "content_type": "text/html; charset=utf-8"}
    page.route("**/tried", lambda route: route.fulfill(**answer, headers={"Content-Security-Policy": POLICY}))
    page.goto("/tried")
    return page


def test_axe_finds_nothing_on_a_good_page(pages: Pages) -> None:
    """Also with a policy that lets no script in."""
    assert violations(_shown(pages.open(), '<p>Words.</p><button type="button">Go</button>')) == []


@pytest.mark.parametrize(
    ("body", "rule"),
    [
        ("<input>", "label"),
        ('<p style="color:#999;background:#fff">Pale words.</p>', "color-contrast"),
        ('<button type="button" style="padding:0;font-size:8px">a</button>' * 2, "target-size"),
        ('<p lang="xx-nonsense">Words.</p>', "valid-lang"),
    ],
)
def test_axe_tells_what_is_wrong(pages: Pages, body: str, rule: str) -> None:
    """A rule of WCAG 2.0 A, of 2.0 AA, of 2.2 AA (target size, 2.5.8), and of 2.0 AA for parts (3.1.2)."""
    assert {line.split()[0] for line in violations(_shown(pages.open(), body))} == {rule}


@pytest.mark.parametrize("profile", PROFILES)
def test_a_page_wider_than_its_window_is_told(pages: Pages, profile: Profile) -> None:
    """With the name of what sticks out, on the phone too, where the browser zooms out of it."""
    page = pages.open(profile)
    no_sideways_scroll(_shown(page, "<p>Words.</p>"))
    page.unroute("**/tried")
    with pytest.raises(AssertionError, match="div#broad"):
        no_sideways_scroll(_shown(page, '<div id="broad" style="width: 1400px">Words</div>'))


def test_the_keyboard_reaches_every_control_of_a_good_page(pages: Pages) -> None:
    """Each once, in the order of the page; a group of radios is one stop."""
    radios = "".join(f'<label><input type="radio" name="answer">{word}</label>' for word in ("Yes", "No"))
    body = f'<a href="/tried">Back</a>{radios}<details><summary>More</summary><a href="/">Hidden</a></details>'
    body += '<label>When <input type="date" id="when"></label><button type="button">Go</button>'
    reached = keyboard_only(_shown(pages.open(), body))
    assert reached == ['a "Back"', 'input "Yes"', 'summary "More"', 'input "When"', 'button "Go"']


@pytest.mark.parametrize(
    ("body", "told"),
    [
        ('<button type="button" style="outline:none">Bare</button>', r'"Bare".*can\'t be seen'),
        ('<div id="far" style="position:absolute;left:-999px"><a href="/">Far</a></div>', '"Far".*out of sight'),
    ],
)
def test_a_focus_that_is_lost_is_told(pages: Pages, body: str, told: str) -> None:
    """Focus without a mark, focus off the screen."""
    with pytest.raises(AssertionError, match=told):
        keyboard_only(_shown(pages.open(), body + '<button type="button">Go</button>'))


@pytest.mark.parametrize(
    ("deed", "told"),
    [
        ("event.preventDefault()", "can't leave"),
        ("{ event.preventDefault(); document.querySelector('button').focus() }", "round and round|not reached"),
    ],
)
def test_a_trap_for_the_keyboard_is_told(pages: Pages, deed: str, told: str) -> None:
    """A control that keeps the Tab key, and one that sends it back."""
    body = '<a href="/">Home</a><button type="button">First</button><input aria-label="Trap"><a href="/">After</a>'
    page = _shown(pages.open(), body)
    page.evaluate(f"document.querySelector('input').addEventListener('keydown', event => {deed})")
    with pytest.raises(AssertionError, match=told):
        keyboard_only(page)


def test_a_failing_script_and_a_broken_policy_are_complained_of(pages: Pages) -> None:
    """A test can't pass over them: the fixture looks at its end."""
    page = _shown(pages.open(), '<script>document.title = "in the page"</script>')
    with page.expect_event("pageerror"):
        page.evaluate("() => { setTimeout(() => { throw new Error('on purpose') }) }")
    assert any("Content Security Policy" in one for one in pages.complaints)
    assert any("on purpose" in one for one in pages.complaints)
    with pytest.raises(AssertionError, match="on purpose"):
        pages.check()
    pages.complaints.clear()


def test_weight_counts_what_comes_without_photos(pages: Pages) -> None:
    """A page of the counter weighs something, and no more than its files."""
    page = pages.open()
    bare = weight(page, "/log-in")
    assert 2_000 < bare < 100_000


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_somebody_can_log_in(pages: Pages, profile: Profile, script: bool) -> None:
    """With and without JavaScript; a picture is left."""
    page = pages.logged_in("clerk", profile, script=script)
    expect(page.get_by_text(CLERK).first).to_be_visible()
    no_sideways_scroll(page)
    assert pages.shot(page, "today").stat().st_size > 1_000


def test_windows_are_of_different_people(pages: Pages) -> None:
    """What one logs in as is not the other's."""
    pages.logged_in("clerk")
    other = pages.open()
    other.goto("/")
    expect(other.get_by_role("button", name="Log in")).to_be_visible()


def test_dark_and_still_are_told_to_the_page(pages: Pages) -> None:
    """The wishes of a person reach the style sheets."""
    page = pages.open("phone", color_scheme="dark", reduced_motion="reduce")
    page.goto("/log-in")
    wishes = ("(prefers-color-scheme: dark)", "(prefers-reduced-motion: reduce)", "(pointer: coarse)")
    assert all(page.evaluate(f"matchMedia('{wish}').matches") for wish in wishes)


def test_the_counter_is_served_beside_the_test(counter: Counter) -> None:
    """In a thread of its own, so a test can turn its clock."""
    assert "counter" in {thread.name for thread in threading.enumerate()}
    assert counter.address.startswith("http://127.0.0.1:") and counter.now() == counter.at
