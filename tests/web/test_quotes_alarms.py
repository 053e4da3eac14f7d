"""What is no longer as approved, at the counter: what each role sees of it, and the way out that is taken."""

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from html import unescape
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.job_alarms import job_alarms
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import one_order_now
from sourcing.actions.statement_deeds import withdraw_statement
from sourcing.basics.order import LineEvent
from tests.web.orders_world import BELT, OPEN, counter_with_order, desk_of
from tests.web.world import APPROVED, ORDERED, Browser, logged_in

PAGE = f"/jobs/{APPROVED}/not-as-approved"
COSTS = ("119.00", "141.00", "136.00", "Tavishollow")
MARGINS = ("margin", "Margin", "markup", "Markup", "earn", "x 1.40", "32.83", "48.89")


@pytest.fixture
def dearer(tmp_path: Path) -> Iterator[Flask]:
    """The supplier confirmed the belt dearer, later, and under another number."""
    with counter_with_order(tmp_path) as app:
        said = LineEvent(line=BELT, unit_price=Decimal("141.00"), earliest=date(2026, 1, 21), latest=date(2026, 1, 22))
        confirm(desk_of(app), OPEN, Confirmation(lines=(said,)))
        yield app


def test_everything_as_approved_is_said(owner: Browser, technician: Browser) -> None:
    """For a job of which all came as it was approved."""
    for browser in (owner, technician):
        assert "Everything stands as it was approved." in browser.get(f"/jobs/{ORDERED}/not-as-approved")


def test_the_owner_sees_the_ways_out_with_what_they_earn(dearer: Flask) -> None:
    """Both figures of what differs, each way with total, cost, margin and markup, and the question."""
    page = logged_in(dearer, "owner").get(PAGE)
    for told in (
        "119.00",
        "141.00",
        "Jan 22, 2026",
        "Parts earn",
        "Markup on cost",
        "Ask the customer:",
        "hold",
        "switch",
    ):
        assert told in page, told
    assert "May we go on?" in page and "x 1.40" in page
    assert "margin" in logged_in(dearer, "owner").client.get(f"{PAGE}.txt").text


def test_the_clerk_sees_costs_and_no_margin(dearer: Flask) -> None:
    """Not on the page of the alarms, not where it is decided, not as a file."""
    clerk = logged_in(dearer, "clerk")
    for address in (PAGE, f"{PAGE}/1"):
        page = clerk.get(address)
        assert "141.00" in page and "May we go on?" in page
        assert [one for one in MARGINS if one in page] == [], address
    assert clerk.status(f"{PAGE}.txt") == 403


def test_the_technician_sees_only_what_to_ask(dearer: Flask) -> None:
    """The question with what the customer would pay; neither cost nor reason."""
    technician = logged_in(dearer, "technician")
    page = technician.get(PAGE)
    assert "May we go on?" in page and "the price, the day" in page
    assert [one for one in (*COSTS, *MARGINS) if one in page] == []
    for address in (f"{PAGE}/1", f"{PAGE}.txt"):
        assert technician.status(address) == 403
    assert technician.client.post(f"{PAGE}/1", data={"way": "hold"}).status_code in (400, 403)


def test_the_price_is_held_with_the_customers_yes_to_the_later_day(dearer: Flask) -> None:
    """Once, though the form is sent twice; the alarm is gone, the decision is on record."""
    clerk, page = logged_in(dearer, "clerk"), f"{PAGE}/1"
    hidden = clerk.hidden(page, page)
    fields = {"way": "hold", "words": "she waits", "who": "Maud Tilbrook", "how": "telephone"}
    answers = [clerk.send_again(hidden, page, **fields) for _ in range(2)]
    assert all(one.status_code == 200 and "Everything stands as it was approved." in one.text for one in answers)
    assert "up to a cost of" in answers[0].text
    found = job_alarms(desk_of(dearer), APPROVED, is_owner=True)
    assert not [one for one in found.alarms if one.label == "1"]
    assert [(one.label, one.way, one.agreed_by, one.who) for one in found.decided] == [
        ("1", "hold", "Maud Tilbrook", "Oona Brandeth")
    ]
    assert "Maud Tilbrook said yes." in clerk.get(PAGE)
    assert "she waits" in clerk.get(f"/jobs/{APPROVED}/answers")


def test_a_switch_the_customer_agreed_to_cancels_the_line(dearer: Flask) -> None:
    """It is told on which order, and what is to be done next."""
    clerk = logged_in(dearer, "clerk")
    fields = {"way": "switch", "who": "Maud Tilbrook", "how": "telephone"}
    answer = clerk.send(f"{PAGE}/1", **fields)
    assert answer.status_code == 200 and f"The line is cancelled on {OPEN}." in answer.text
    assert f'href="/jobs/{APPROVED}/write-quote' in answer.text
    line = one_order_now(desk_of(dearer), OPEN).line(BELT)
    assert line is not None and line.pieces == 0


@pytest.mark.parametrize(
    "fields",
    [
        {"way": ""},
        {"way": "ask", "who": "Maud Tilbrook", "how": "telephone"},
        {"way": "hold", "who": "", "how": "telephone"},
        {"way": "hold", "who": "another", "another": "Nobody Known", "how": "telephone"},
    ],
)
def test_what_can_not_be_decided_so_is_refused(dearer: Flask, fields: dict[str, str]) -> None:
    """No way named, a yes to a new price, half of a yes, a yes of somebody not entitled: nothing is kept."""
    answer = logged_in(dearer, "clerk").send(f"{PAGE}/1", words="because", **fields)
    assert answer.status_code == 409 and ">because</textarea>" in answer.text
    assert job_alarms(desk_of(dearer), APPROVED, is_owner=True).decided == ()


def test_a_line_that_stands_as_approved_has_nothing_to_decide(clerk: Browser) -> None:
    """It is said, not shown as a fault."""
    assert clerk.status(f"/jobs/{ORDERED}/not-as-approved/1") == 409
    assert clerk.status(f"/jobs/{ORDERED}/not-as-approved/Z") == 409


def test_a_row_that_is_there_and_no_longer_ours_is_told_so(app: Flask, clerk: Browser) -> None:
    """The statement was withdrawn, the sheet is the same: who reads 'not on the sheet' would ask the supplier."""
    desk = desk_of(app)
    for statement in range(1, 11):
        withdraw_statement(desk, statement, "misread")
    page = unescape(clerk.get(f"/jobs/{APPROVED}/not-as-approved"))
    said = "is on the newest sheet of Pellbrook Power Parts, and our table no longer says that it is"
    assert f"PB-4038 {said} BELT-AUGER" in page and "is not on the newest sheet" not in page
