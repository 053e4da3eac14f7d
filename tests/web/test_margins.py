"""The owner's margins: groups, months, stages, one job, other bands; remembered until something is kept."""

import json
import re
from datetime import datetime

import pytest
from flask import Flask

from sourcing.actions import margins_kept
from sourcing.actions.answers import Spoken, record
from sourcing.actions.bill import write_bill
from sourcing.actions.desk import Desk
from sourcing.actions.margin_months import Months
from sourcing.actions.margins import margins_by
from sourcing.basics.bill import LeftOut
from sourcing.basics.margin import By, Margins
from sourcing.basics.value import to_json
from sourcing.documents.bill_paper import bill_html
from sourcing.web.desks import STORE
from tests.web.world import APPROVED, CLERK, NOW, ORDERED, QUOTED, TAKEN_IN, TECHNICIAN, Browser

PAGES = (
    *("/margins", "/margins.csv", "/margins.xlsx", "/margins.html", "/margins.json", "/margins/chart.svg", "/what-if"),
    *(f"/margins/{ORDERED}", f"/margins/{ORDERED}/bridge.svg", f"/margins/{ORDERED}/margins.csv"),
    *("/what-if?bands=0=1.6", "/what-if.xlsx?bands=0=1.6", "/what-if.csv?bands=0=1.6"),
)


def _desk(app: Flask, at: datetime = NOW, who: str = CLERK) -> Desk:
    return Desk(store=app.config[STORE], at=at, who=who)


@pytest.mark.parametrize("page", PAGES)
def test_margins_are_the_owners_alone(clerk: Browser, technician: Browser, owner: Browser, page: str) -> None:
    """No page and no file of them opens to anybody else."""
    assert owner.status(page) == 200
    assert (clerk.status(page), technician.status(page)) == (403, 403)


@pytest.mark.parametrize("by", ["job", "line", "supplier", "category", "month"])
def test_every_grouping_comes_to_the_same_in_all(owner: Browser, by: str) -> None:
    """32.83 % on price, 48.89 % on cost: both words stand over them."""
    page = owner.get(f"/margins?by={by}")
    assert "Margin on price" in page and "Markup on cost" in page
    last = page.split('<tr class="sum">')[1].split("</tr>")[0]
    assert "$443.92" in last and "32.83 %" in last and "48.89 %" in last


def test_the_page_says_what_the_action_says(app: Flask, owner: Browser) -> None:
    """The JSON is the value itself."""
    found = json.loads(owner.get("/margins.json?by=supplier&months=all"))
    assert found == json.loads(to_json(margins_by(_desk(app), "supplier")))


def test_months_narrow_what_is_loaded_and_shown(app: Flask, owner: Browser) -> None:
    """A yes given in another month is in neither the groups nor the sum; all months have it."""
    words = Spoken(yes=("agreed",), no=("A", "B", "C"), who="Maud Tilbrook", how="telephone", contact="555-0142")
    record(_desk(app, datetime(2026, 1, 15, 9, 0), TECHNICIAN), QUOTED, words)
    assert f">{QUOTED}</a>" in owner.get("/margins")
    assert "No line was approved in these months" in owner.get("/margins?since=2025-11&until=2025-12")
    assert "from January 2026 to January 2026" in owner.get("/margins?since=2026-01&until=2026-01")
    assert "3 jobs" in owner.get("/margins?months=all") and "3 jobs" in owner.get("/margins?since=2026-01")


def test_stages_show_their_own_lines(owner: Browser) -> None:
    """All lines were quoted, of one job only some ordered and received."""
    assert "8/8" in owner.get("/margins?stage=quoted") and "4/8" in owner.get("/margins?stage=ordered")


@pytest.mark.parametrize(
    "address", ["since=2026-13", "since=soon", "since=2026-02&until=2026-01", "by=mood", "stage=x"]
)
def test_what_is_no_month_or_grouping_is_told(owner: Browser, address: str) -> None:
    """In a sentence."""
    assert owner.client.get(f"/margins?{address}").status_code == 409


def test_margins_are_worked_out_once_until_something_is_kept(
    app: Flask, owner: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Page and drawing share them; a deed, whoever did it, makes them anew."""
    made: list[By] = []

    def counted(desk: Desk, by: By, within: Months | None) -> Margins:
        made.append(by)
        return margins_by(desk, by, within)

    monkeypatch.setattr(margins_kept, "margins_by", counted)
    owner.get("/margins"), owner.get("/margins/chart.svg"), owner.get("/margins")
    assert len(made) == 1
    with _desk(app).writing("count") as pen:
        pen.note("shop", "something was done")
    owner.get("/margins")
    assert len(made) == 2


def test_a_job_shows_every_stage_and_its_way(owner: Browser) -> None:
    """Quoted, ordered and received, what moved the earnings, and the leaks with their figures."""
    page = owner.get(f"/margins/{ORDERED}")
    assert all(word in page for word in (">quoted<", ">ordered<", ">received<", "Parts and freight together"))
    assert "8 of 10 pieces lie on the shelf" in page and f'src="/margins/{ORDERED}/bridge.svg"' in page
    assert ">ordered<" not in owner.get(f"/margins/{APPROVED}").split("What moved")[0]
    drawn = owner.client.get(f"/margins/{ORDERED}/bridge.svg")
    assert drawn.content_type.startswith("image/svg+xml") and "sandbox" in drawn.headers["Content-Security-Policy"]
    assert owner.client.get(f"/margins/{TAKEN_IN}").status_code == 409


def test_other_bands_are_tried_and_nothing_is_kept(app: Flask, owner: Browser) -> None:
    """The shop's own stand there first; at three times the cost more would have been earned."""
    bands = owner.get("/what-if").split("<textarea")[1].split("</textarea>")[0]
    assert "0.00 = 2.50&#10;5.00 = 2.00" in bands
    before = owner.get("/history")
    assert "more in all" in owner.get("/what-if?bands=0=3.00")
    assert "less in all" in owner.get("/what-if?bands=0=1.10")
    assert owner.get("/history").count("<li>") == before.count("<li>")
    for wrong in ("0=0.9", "lots", "0=many", ""):
        assert owner.client.get("/what-if", query_string={"bands": wrong}).status_code == 409


def test_what_was_not_used_and_can_go_back_is_told_beside_the_leak(app: Flask, owner: Browser) -> None:
    """It is no special order; and what can still be done about it stands there, as on the bill's own page."""
    write_bill(_desk(app), ORDERED, bill_html, LeftOut(labels=("A",), words="straightened instead"))
    page = owner.get(f"/margins/{ORDERED}")
    assert "Bought and not used, line A: $16.90" in page and "ead special order" not in page
    assert "Line A was not done: 2 x PB-3120 of PO-2026-0001 is here and not used" in page
    step = owner.get("/going-back/PO-2026-0001/3/goods")
    assert f"2 × PB-3120 are here and not used: line A of job {ORDERED} was not done." in step
    assert re.search(r'name="pieces"[^>]*value="2"', step) or re.search(r'value="2"[^>]*name="pieces"', step)
    assert "not used: line" not in owner.get("/going-back/PO-2026-0001/1/goods"), "that line was done"
