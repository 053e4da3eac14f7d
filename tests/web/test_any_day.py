"""Parts of which no sheet names a day, where a day is wanted: whom to ask, and how they are bought all the same."""

import re
import sqlite3
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.job_edit import opened
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, TAKEN_IN, Browser


@pytest.fixture(autouse=True)
def no_day_anywhere(app: Flask, tmp_path: Path) -> None:
    """Nothing is in stock, and every supplier says 'call'."""
    with sqlite3.connect(tmp_path / "shop.db") as store:
        store.execute(
            "UPDATE offers SET stock = 0, lead_text = 'call', lead_least = NULL, lead_most = NULL, "
            "lead_leaves_on = NULL"
        )
    store.close()


def test_the_plan_says_whom_to_ask_and_how_to_go_on(clerk: Browser) -> None:
    """And the way on leads to a plan whose day is not known."""
    page = clerk.get(f"/jobs/{TAKEN_IN}/plan")
    assert "no offer names a day, so none is sure by Jan 16, 2026; ask" in page and "--any-day" not in page
    (way,) = re.findall(r'href="([^"]*)">Plan it whatever day the parts come', page)
    there = clerk.get(way.replace("&amp;", "&"))
    assert "Not filled" not in there and "At the door" in there
    assert re.search(r'name="any_day" value="1" checked', there) and 'type="hidden" name="any_day"' in there


def test_the_way_on_is_shown_only_where_it_leads_on(app: Flask, clerk: Browser, tmp_path: Path) -> None:
    """Where nobody offers a part, no day helps."""
    with sqlite3.connect(tmp_path / "shop.db") as store:
        store.execute("DELETE FROM offers")
    store.close()
    page = clerk.get(f"/jobs/{TAKEN_IN}/plan")
    assert "Not filled" in page and "Plan it whatever day" not in page


def test_the_quote_can_be_written_without_a_day(app: Flask, clerk: Browser) -> None:
    """A later day does not help; without one it is written, and the job has none from then on."""
    page = f"/jobs/{TAKEN_IN}/write-quote"
    refused = clerk.send(page, need_by="2026-03-27")
    assert refused.status_code == 409 and "no offer names a day" in refused.text and "or any day" in refused.text
    assert "is written" in clerk.send(page, need_by="2026-03-27", any_day="1").text
    assert opened(Desk(store=app.config[STORE], at=NOW, who=CLERK), TAKEN_IN)[0].need_by is None
    assert "no fixed day" in clerk.get(f"/jobs/{TAKEN_IN}/history")


def test_find_says_whom_to_ask_where_a_day_is_wanted(clerk: Browser) -> None:
    """The offers are ranked by their cost all the same."""
    page = clerk.get("/find?number=NW-40388&need_by=2026-01-16")
    assert "o offer names a day, so none can be promised by Jan 16, 2026; ask when it can be here" in page
    assert "Offers in order" in page


def test_find_leads_on_where_only_what_is_in_time_was_asked(clerk: Browser) -> None:
    """Everything is set aside for its day: the way to see it ranked stands there, and whom to ask beside each."""
    page = clerk.get("/find?number=NW-40388&need_by=2026-01-16&in_time=yes")
    assert "No offer can be ranked" in page and "ask him when it can be here" in page
    (way,) = re.findall(r'href="([^"]*)">Rank those too', page)
    assert "Offers in order" in clerk.get(way.replace("&amp;", "&"))
