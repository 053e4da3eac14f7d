"""What else waits at the desk, on the first page and at the head of its job: counted papers, goods to be sent back."""

import re
from collections.abc import Iterator
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions import desk_work
from sourcing.actions.goods_back import BackStep, send_back
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.terms import set_terms
from tests.web.orders_world import BELT, KEEPER, OPEN, SHEAR, counter_with_order, desk_of
from tests.web.test_orders import COSTS
from tests.web.world import APPROVED, ORDERED, TECHNICIAN, Browser, logged_in

PAPERS, BACK = "Charges still to be said", "To be sent back to suppliers"


@pytest.fixture
def counted(tmp_path: Path) -> Iterator[Flask]:
    """The technician counted paper DN-9: the belt damaged, the shear bolts good."""
    with counter_with_order(tmp_path) as app:
        count(app)
        yield app


def count(app: Flask) -> None:
    """What the supplier takes back he takes within 30 days."""
    set_terms(desk_of(app), "pellbrook", {"return_terms.within_days": "30"})
    pieces = {BELT: 1, SHEAR: 2}
    said = Delivery(paper="DN-9", freight=Decimal(0), quantities=pieces, damaged={BELT: 1}, only_counted=True)
    receive(desk_of(app, who=TECHNICIAN), OPEN, said)


def part(page: str, heading: str) -> str:
    """That section of the first page; '' where there is none."""
    found = re.search(rf"<h2>{heading}.*?</section>", page, re.DOTALL)
    return " ".join(found.group(0).split()) if found else ""


def test_the_clerk_is_told_of_counted_papers_until_she_says_what_they_charge(counted: Flask) -> None:
    clerk = logged_in(counted, "clerk")
    told = part(clerk.get("/"), PAPERS)
    link = f'<a href="/receive/{OPEN}?counted=DN-9">Paper DN-9 of {OPEN}</a>'
    assert link in told and "Say what it charges." in told and '<span class="quiet">(1)</span>' in told
    assert link in clerk.get(f"/jobs/{APPROVED}") and link not in clerk.get(f"/jobs/{ORDERED}")
    amounts = {"came_1": "1", "came_3": "2", "damaged_1": "1", "price_1": "119.00", "freight": "0"}
    clerk.send(f"/receive/{OPEN}?counted=DN-9", do="keep", counted="DN-9", paper="DN-9", **amounts)
    assert PAPERS not in clerk.get("/") and link not in clerk.get(f"/jobs/{APPROVED}")


def test_what_must_go_back_is_told_with_its_last_day_until_it_is_sent(counted: Flask) -> None:
    """The damaged belt came on January 15; 30 days later is February 14."""
    clerk = logged_in(counted, "clerk")
    link = f'href="/going-back/{OPEN}/{BELT}/goods"'
    for page in (part(clerk.get("/"), BACK), clerk.get(f"/jobs/{APPROVED}")):
        assert link in page and "Send it by Feb 14, 2026." in page
    send_back(desk_of(counted), OPEN, BackStep(line=BELT, kind="goods", step="sent"))
    assert BACK not in clerk.get("/"), "what waits for its credit is the supplier's to do"
    assert link not in clerk.get(f"/jobs/{APPROVED}")


def test_terms_without_a_last_day_are_said_so(counted: Flask) -> None:
    set_terms(desk_of(counted), "pellbrook", {"return_terms.within_days": ""})
    assert "His terms name no last day." in part(logged_in(counted, "clerk").get("/"), BACK)


def test_a_last_day_that_is_past_is_said_so(tmp_path: Path) -> None:
    with counter_with_order(tmp_path, now=datetime(2026, 2, 15, 8, 0)) as app:
        count(app)
        told = part(logged_in(app, "clerk").get("/"), BACK)
    assert "The last day was Feb 14, 2026: ask him whether he still takes it." in told


def test_the_bench_sees_both_without_costs_and_without_pages_that_are_not_its_own(counted: Flask) -> None:
    bench = logged_in(counted, "technician")
    page = bench.get("/")
    papers, back = part(page, PAPERS), part(page, BACK)
    assert f'href="/receive/{OPEN}/paper?paper=DN-9"' in papers and "The clerk says what it charges." in papers
    assert f'href="/jobs/{APPROVED}"' in back and "/going-back" not in page
    for address in re.findall(r'href="(/[^"]*)"', papers + back):
        assert bench.status(address.replace("&amp;", "&")) == 200
    assert not [cost for cost in COSTS if cost in papers + back]


def test_no_more_are_shown_than_can_be_read_and_all_are_a_link_away(
    counted: Flask, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The head of a job has all of its own."""
    said = Delivery(paper="DN-10", freight=Decimal(0), quantities={KEEPER: 10}, damaged={KEEPER: 10}, only_counted=True)
    receive(desk_of(counted), OPEN, said)
    monkeypatch.setattr(desk_work, "MOST", 1)
    clerk = logged_in(counted, "clerk")
    papers, back = part(clerk.get("/"), PAPERS), part(clerk.get("/"), BACK)
    assert "DN-10" not in papers and '<a href="/orders">All 2 of them</a>' in papers
    assert back.count("<li>") == 1 and '<a href="/going-back">All 2 of them</a>' in back
    assert "DN-10" in clerk.get(f"/jobs/{APPROVED}")
    assert "/going-back" not in part(logged_in(counted, "technician").get("/"), BACK)


def test_where_nothing_of_the_kind_waits_nothing_is_said(clerk: Browser) -> None:
    page = clerk.get("/")
    assert PAPERS not in page and BACK not in page


def test_the_bill_says_which_charges_are_not_said_yet_and_can_be_written_where_freight_is_carried(
    tmp_path: Path,
) -> None:
    """Nothing on such a bill follows from what the paper charges, but what the job cost is not known yet."""
    with counter_with_order(tmp_path) as app:
        said = Delivery(paper="DN-9", freight=Decimal(0), only_counted=True)
        receive(desk_of(app, who=TECHNICIAN), OPEN, said)
        page = logged_in(app, "clerk").get(f"/jobs/{APPROVED}/bill/write")
    assert f"The charges of paper DN-9 of {OPEN} (Pellbrook Power Parts) are not said yet." in page
    assert f'<a href="/receive/{OPEN}?counted=DN-9">Say what paper DN-9 charges</a>' in page
    assert "The bill can be written without them." in page and "Write the bill and close the job" in page
