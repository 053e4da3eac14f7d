"""A sheet with headers nobody can know: the clerk is asked with its rows beside, says it, and the sheet is read."""

import re

import pytest
from playwright.sync_api import FilePayload, expect

from tests.browser.journeys import step
from tests.browser.pages import Pages, Profile
from tests.browser.served import Switch
from tests.web.sheets_world import in_hand

NAME = "stonegarth-2026-01-14.csv"
READING = 30_000
"""Milliseconds a sheet may take on a busy machine. The page looks again by itself, without script every few seconds:
a reload of ours at that moment would be lost to it, or it to ours."""

ROWS = "".join(f"{at * 3}.40,Skid shoe {at},ZQ-{at},{at * 2}.15\n" for at in range(1, 9))
UNKNOWN, UNSURE = "Vorn,Words,Tolk,Quux", "Price 2,Description,Part No,Price"
"""Headers that are no words; and two that are each a price, nobody knows which. The order is odd in both."""

SAID = {
    UNKNOWN: {"A: Vorn": "list price", "C: Tolk": "supplier number", "D: Quux": "net price"},
    UNSURE: {"Price 2": "list price", "Price": "net price"},
}


@pytest.mark.parametrize(
    ("headers", "profile", "script"),
    [(UNKNOWN, "desktop", True), (UNSURE, "phone", False)],
    ids=["unknown, script", "unsure, no script"],
)
def test_the_clerk_says_what_columns_are(
    pages: Pages, server: Switch, headers: str, profile: Profile, script: bool
) -> None:
    """Nothing is marked beforehand; what she says is read, and is remembered for the supplier's next sheet."""
    assert server.app
    in_hand(server.app)
    page = pages.at_work("clerk", profile, script=script)
    page.goto("/sheets")
    sheet: FilePayload = {"name": NAME, "mimeType": "text/csv", "buffer": f"{headers}\n{ROWS}".encode()}
    page.get_by_label("Price sheets").set_input_files(sheet)
    page.get_by_role("button", name="Read them").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(f"Before it is kept: {NAME}", timeout=READING)
    expect(page.get_by_role("region", name="Rows of the sheet 1")).to_contain_text("Skid shoe 3")
    expect(page.locator("input:checked")).to_have_count(0)
    page.get_by_role("button", name="That is what it means").click()
    expect(page.locator("#refused")).to_be_visible()  # silence is no answer
    said = SAID[headers]
    for column, meaning in said.items():
        if headers == UNKNOWN:
            page.get_by_label(column).select_option(meaning)
        else:
            page.get_by_role("group", name=column, exact=True).get_by_role("radio", name=meaning).check()
    step(pages, page, f"columns-1-asked-{profile}", main=script)
    page.get_by_role("button", name="That is what it means").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile("^Sheet 7 of Stonegarth"), timeout=READING)
    step(pages, page, f"columns-2-read-{profile}")
    page.goto("/sheets/of/stonegarth")
    for column, meaning in said.items():
        header = page.locator("dt", has_text=re.compile(f"^{column.split(': ')[-1]}$"))
        expect(header.locator("+ dd")).to_have_text(meaning)
