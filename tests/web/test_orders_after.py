"""What happens to an order afterwards, at the counter: confirmed, changed, cancelled, claimed."""

import re
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.history import history
from sourcing.actions.orders import one_order_now
from sourcing.actions.receive import Delivery, receive
from tests.web.orders_world import BELT, OPEN, SHEAR, counter_with_order, desk_of
from tests.web.world import APPROVED, Browser, logged_in


@pytest.fixture
def ordered(tmp_path: Path) -> Iterator[Flask]:
    """The counter with an order on its way."""
    with counter_with_order(tmp_path) as app:
        yield app


@pytest.fixture
def keeper(ordered: Flask) -> Browser:
    """The clerk at that counter."""
    return logged_in(ordered, "clerk")


def test_a_confirmation_without_a_word_confirms_all_as_it_stands(ordered: Flask, keeper: Browser) -> None:
    """Blank fields say nothing else."""
    page = keeper.send(f"/orders/{OPEN}/confirm", said_by="Ilse at the desk")
    assert "all of it is as ordered" in page.text and "confirmed by Ilse at the desk" in page.text.casefold().replace(
        "ilse", "Ilse"
    )
    now = one_order_now(desk_of(ordered), OPEN)
    assert now.confirmed and now.line(BELT).unit_price == Decimal("119.00")  # type: ignore[union-attr]


def test_what_is_confirmed_otherwise_is_said_on_the_page_of_the_order(ordered: Flask, keeper: Browser) -> None:
    """Price, number and day; and where the customer's yes does not cover it, the page that shows the ways out."""
    said = {f"price_{BELT}": "139.59", f"number_{BELT}": "CV-B880K", f"last_{BELT}": "2026-01-20"}
    page = keeper.send(f"/orders/{OPEN}/confirm", **said).text
    assert "Confirmed otherwise" in page and "139.59" in page and "CV-B880K" in page
    assert f"/jobs/{APPROVED}/not-as-approved" in page
    assert "Confirmed otherwise" in keeper.get(f"/orders/{OPEN}")  # also for whoever comes later


def test_a_price_that_is_no_amount_is_refused_and_comes_back(ordered: Flask, keeper: Browser) -> None:
    """Nothing is kept, and nothing is to be typed twice."""
    page = keeper.send(f"/orders/{OPEN}/confirm", **{f"price_{BELT}": "12,50", "words": "rang at nine"})
    assert page.status_code == 409 and "12,50" in page.text and "rang at nine" in page.text
    assert not one_order_now(desk_of(ordered), OPEN).confirmed


def test_what_cancelling_costs_is_said_before_it_is_done(ordered: Flask, keeper: Browser) -> None:
    """Without the belt the order no longer passes free freight; looking keeps nothing, not even in the history."""
    before = len(history(desk_of(ordered), APPROVED))
    page = keeper.get(f"/orders/{OPEN}/cancel?line={BELT}")
    assert "Free freight is no longer passed" in page and "$12.50" in page
    assert len(history(desk_of(ordered), APPROVED)) == before
    assert one_order_now(desk_of(ordered), OPEN).wanted[BELT] == 1


def test_a_line_is_cancelled_once_and_its_paper_is_shown(ordered: Flask, keeper: Browser) -> None:
    """A double click makes one cancellation, and both lead to its paper."""
    address = f"/orders/{OPEN}/cancel?line={BELT}"
    hidden = keeper.hidden(address, address)
    pages = [keeper.send_again(hidden, address, line=str(BELT), words="found one in the shed") for _ in range(2)]
    assert [page.request.path for page in pages] == [f"/orders/{OPEN}/paper"] * 2
    assert "Change 1 of purchase order" in pages[0].text
    now = one_order_now(desk_of(ordered), OPEN)
    assert BELT not in now.wanted and len(now.events) == 1
    paper = keeper.get(f"/orders/{OPEN}/paper-itself?change=1")
    assert "found one in the shed" in paper


def test_all_of_it_can_be_cancelled(ordered: Flask, keeper: Browser) -> None:
    """Then nothing stands and nothing can be taken in."""
    address = f"/orders/{OPEN}/cancel?all=yes"
    assert "Nothing of the order stands any more" in keeper.get(address)
    keeper.send(address, address, all="yes")
    assert one_order_now(desk_of(ordered), OPEN).cancelled
    assert "cancelled" in keeper.client.get(f"/receive/{OPEN}").text
    assert "cancelled" in keeper.get(f"/orders/{OPEN}")


def test_pieces_are_changed_after_a_look(ordered: Flask, keeper: Browser) -> None:
    """Fewer than the job needs is said; more than approved is refused."""
    address = f"/orders/{OPEN}/change?pieces_{SHEAR}=1"
    assert "needs 2 for line A, 1 stand on this order" in keeper.get(address)
    keeper.send(address, address, **{f"pieces_{SHEAR}": "1"})
    assert one_order_now(desk_of(ordered), OPEN).wanted[SHEAR] == 1
    too_many = keeper.client.get(f"/orders/{OPEN}/change?pieces_{SHEAR}=9")
    assert too_many.status_code == 409 and "Change the order" not in too_many.text
    assert keeper.client.get(f"/orders/{OPEN}/change?pieces_{SHEAR}=two").status_code == 409


def test_a_claim_is_written_of_what_was_charged_too_much(ordered: Flask, keeper: Browser) -> None:
    """It is a file; and that it was written stands in the history."""
    paid = Delivery(paper="DN-7", freight=Decimal(0), quantities={BELT: 1}, prices={BELT: Decimal("129.00")})
    receive(desk_of(ordered), OPEN, paid)
    assert "Claim $10.00" in keeper.get(f"/orders/{OPEN}")
    answer = keeper.send(f"/orders/{OPEN}/claim", kind="txt")
    assert answer.headers["Content-Disposition"] == f'attachment; filename="{OPEN}-claim.txt"'
    assert "In all: 10.00 USD" in answer.text
    assert any(one.deed == "claim" for one in history(desk_of(ordered), APPROVED))


def test_an_order_where_nothing_cost_more_offers_no_claim(keeper: Browser) -> None:
    """The button is not there, and the page says why."""
    assert "Claim $" not in keeper.get(f"/orders/{OPEN}")
    assert "Write it" not in keeper.get(f"/orders/{OPEN}/claim")


def test_a_second_word_that_says_nothing_is_not_called_as_ordered(ordered: Flask, keeper: Browser) -> None:
    """The price confirmed dearer before stands; and what is still to ask is not told under 'Done'."""
    first = keeper.send(f"/orders/{OPEN}/confirm", **{f"price_{BELT}": "139.59"}).text
    assert re.search(r'<p class="careful" role="status">The customer[^<]*yes does not cover it', first)
    page = keeper.send(f"/orders/{OPEN}/confirm").text
    assert "he says nothing new" in page and "all of it is as ordered" not in page
    assert "as he said before" in keeper.get(f"/jobs/{APPROVED}/history")


def test_each_amount_that_is_not_claimed_says_so_beside_it(ordered: Flask, keeper: Browser) -> None:
    """129.00 for 119.00: 10.00 is claimed. That the paper says 131.00 in all is only asked about."""
    paid = Delivery(
        paper="DN-7",
        freight=Decimal(0),
        quantities={BELT: 1},
        prices={BELT: Decimal("129.00")},
        supplier_total=Decimal("131.00"),
    )
    receive(desk_of(ordered), OPEN, paid)
    page = " ".join(keeper.get(f"/orders/{OPEN}/claim").split())
    why = "not claimed, only asked about: a line of the paper may not have been taken down"
    assert f'<strong>$2.00</strong> <span class="quiet">({why})</span>' in page
    assert "<strong>$10.00</strong></li>" in page and page.count("not claimed") == 1
