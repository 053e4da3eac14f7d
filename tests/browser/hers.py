"""What a customer does on her page, and what the shop then has."""

from playwright.sync_api import Locator, Page

from sourcing.actions.answers import standing
from sourcing.actions.desk import open_desk
from tests.browser.served import Counter
from tests.web.world import QUOTED

THANKS = "Your answers are with us. Thank you."


def line(page: Page, label: str) -> Locator:
    """The question about a line."""
    return page.get_by_role("group", name=f"Your answer to line {label}")


def choose(page: Page, **answers: str) -> None:
    """Mark lines: one='Approve', A='Decline'."""
    for label, answer in answers.items():
        line(page, label.removeprefix("_")).get_by_label(answer).check()


def draw(page: Page) -> None:
    """A stroke on the canvas."""
    page.locator("#pad").scroll_into_view_if_needed()
    box = page.locator("#pad").bounding_box()
    assert box
    page.mouse.move(box["x"] + 30, box["y"] + 30)
    page.mouse.down()
    page.mouse.move(box["x"] + 200, box["y"] + 90, steps=8)
    page.mouse.up()


def kept(counter: Counter) -> dict[str, str]:
    """What the shop has, by label."""
    desk = open_desk(str(counter.database), counter.at, "a test")
    try:
        return dict(standing(desk, QUOTED).answers.by_label)
    finally:
        desk.store.close()
