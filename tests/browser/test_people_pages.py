"""Logging in and the first page, for everybody: WCAG 2.2 AA by axe-core, by keyboard alone, in any window."""

import pytest

from tests.browser.axe import violations
from tests.browser.looks import keyboard_only, no_sideways_scroll
from tests.browser.pages import PROFILES, Pages, Profile


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("profile", PROFILES)
def test_the_log_in_can_be_read_and_reached(pages: Pages, profile: Profile, dark: bool) -> None:
    """Before anybody is logged in."""
    page = pages.open(profile, color_scheme="dark" if dark else "light")
    page.goto("/log-in")
    assert violations(page) == []
    assert 'button "Log in"' in keyboard_only(page)
    no_sideways_scroll(page)
    pages.shot(page, f"log-in-{'dark' if dark else 'light'}")


@pytest.mark.parametrize(("profile", "role"), [("desktop", "owner"), ("phone", "clerk"), ("phone", "technician")])
def test_the_first_page_can_be_read_and_reached(pages: Pages, profile: Profile, role: str) -> None:
    """And the page for one's own password."""
    page = pages.at_work(role, profile)
    for address in ("/", "/my-password"):
        page.goto(address)
        assert violations(page) == []
        assert 'button "Log out"' in keyboard_only(page)
        no_sideways_scroll(page)
