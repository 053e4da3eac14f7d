"""Deposit and bill at the counter: money written down once, the bill looked at before it closes the job."""

from datetime import date
from decimal import Decimal

import pytest
from flask import Flask

from sourcing.actions.answers import Spoken, record
from sourcing.actions.bill import bill_if_any
from sourcing.actions.deposits import deposits_of, take_deposit
from sourcing.actions.given_away import given_away_on
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.documents import pdf
from sourcing.documents.quote_paper import quote_html
from tests.documents.html_reader import Page
from tests.web.orders_world import desk_of
from tests.web.world import APPROVED, ORDERED, QUOTED, Browser, logged_in

PAGE, WRITE = f"/jobs/{ORDERED}/bill", f"/jobs/{ORDERED}/bill/write"
TAKE, GIVE = f"/jobs/{ORDERED}/deposit/take", f"/jobs/{ORDERED}/deposit/give-back"


def test_a_deposit_is_written_down_once(app: Flask, clerk: Browser) -> None:
    """Also by a double click; it leads to where it can be given back."""
    hidden = clerk.hidden(PAGE, TAKE)
    pages = [clerk.send_again(hidden, TAKE, taken="100.00", how="cash", words="in notes") for _ in range(2)]
    assert all(page.status_code == 200 and "$100.00" in page.text for page in pages)
    assert f'href="{PAGE}#give-back"' in pages[0].text
    assert [str(one.amount) for one in deposits_of(desk_of(app), ORDERED).kept] == ["100.00 USD"]


def test_the_same_deposit_a_second_time_is_pointed_out(clerk: Browser) -> None:
    """Two forms of the same amount on one day may be one deposit."""
    clerk.send(PAGE, TAKE, taken="50.00", how="cash")
    assert "the same amount was written down before today" in clerk.send(PAGE, TAKE, taken="50.00", how="cash").text


@pytest.mark.parametrize(
    "fields", [{"taken": "ten", "how": "cash"}, {"taken": "9999.00", "how": "cash"}, {"taken": "10.00", "how": ""}]
)
def test_a_wrong_deposit_is_refused_with_what_was_typed(app: Flask, clerk: Browser, fields: dict[str, str]) -> None:
    """Nothing is written down."""
    answer = clerk.send(PAGE, TAKE, **fields)
    assert answer.status_code == 409 and f'value="{fields["taken"]}"' in answer.text
    assert deposits_of(desk_of(app), ORDERED).kept == ()


def test_money_is_given_back_and_never_more_than_is_held(app: Flask, clerk: Browser) -> None:
    """The form stands there only while money is held."""
    assert GIVE not in clerk.get(PAGE)
    take_deposit(desk_of(app), ORDERED, Decimal("40.00"), "cash")
    assert clerk.send(PAGE, GIVE, back="40.01", how_back="cash").status_code == 409
    assert clerk.send(PAGE, GIVE, back="15.50", how_back="cash", words_back="too much").status_code == 200
    assert str(deposits_of(desk_of(app), ORDERED).held) == "24.50 USD"


def test_the_bill_is_looked_at_before_it_is_written(app: Flask, clerk: Browser) -> None:
    """Looking keeps nothing; the frame has the paper as it would be."""
    page = clerk.get(WRITE)
    assert "Only a look" in page and "$427.91" in page and f'src="{WRITE[:-5]}look.html"' in page
    assert "B-2026-0001" in clerk.get(f"{PAGE}/look.html")
    assert bill_if_any(desk_of(app), ORDERED) is None


def test_the_bill_is_written_once_and_read_by_everybody(app: Flask, clerk: Browser, technician: Browser) -> None:
    """A double click writes one; the paper is shown and saved to the letter."""
    hidden = clerk.hidden(WRITE, WRITE)
    pages = [clerk.send_again(hidden, WRITE, do="write") for _ in range(2)]
    assert [page.status_code for page in pages] == [200, 200]
    assert "Bill B-2026-0001 is written" in pages[0].text
    frozen = bill_if_any(desk_of(app), ORDERED)
    assert frozen is not None and frozen.bill.made_by == "Oona Brandeth"
    assert technician.get(f"{PAGE}/paper.html") == technician.get(f"{PAGE}/save.html") == frozen.paper
    for kind in ("pdf", "txt"):
        assert technician.status(f"{PAGE}/save.{kind}") == 200
    assert technician.status(f"{PAGE}/save.exe") == 404
    assert TAKE not in clerk.get(PAGE) and "billed already" in clerk.get(WRITE)


def test_a_line_not_done_and_one_with_something_off_are_billed_so(app: Flask, clerk: Browser) -> None:
    """The wishes stand in the address, so that what was looked at is what is written."""
    wishes = f"{WRITE}?not_done=B&words=bearing+was+fine&off-1=5.00&off_words=regular+customer"
    page = clerk.get(wishes)
    assert "Only a look" in page and 'value="B" checked' in page and 'value="5.00"' in page
    form = f"{WRITE}?not_done=B&amp;words=bearing+was+fine&amp;off-1=5.00&amp;off_words=regular+customer"
    said = {"not_done": "B", "words": "bearing was fine", "off-1": "5.00", "off_words": "regular customer"}
    answer = clerk.send_again(clerk.hidden(wishes, form), wishes, do="write", **said)
    assert answer.status_code == 200, answer.text
    frozen = bill_if_any(desk_of(app), ORDERED)
    assert frozen is not None
    assert [one.label for one in frozen.bill.not_done] == ["B"] and frozen.bill.not_done[0].words == "bearing was fine"
    assert [(one.label, str(one.amount)) for one in frozen.bill.off] == [("1", "5.00 USD")]
    assert "Still to do" in answer.text and "Still to do" not in logged_in(app, "technician").get(PAGE)


@pytest.mark.parametrize("fields", [{"off-1": "5.00", "off_words": "regular"}, {"not_done": "B", "words": "was fine"}])
def test_what_is_filled_in_and_was_not_looked_at_is_looked_at_first(
    app: Flask, clerk: Browser, fields: dict[str, str]
) -> None:
    """A bill without it could never be taken back; the second press writes it."""
    page = clerk.send(WRITE, do="write", **fields)
    assert "Nothing is written yet" in page.text and bill_if_any(desk_of(app), ORDERED) is None
    assert all(f'value="{one}"' in page.text for one in fields.values())
    again = clerk.send_again(clerk.hidden(WRITE, WRITE), page.request.full_path, do="write", **fields)
    frozen = bill_if_any(desk_of(app), ORDERED)
    assert again.status_code == 200 and frozen is not None and (frozen.bill.off or frozen.bill.not_done)


def test_a_wish_taken_back_is_looked_at_too(app: Flask, clerk: Browser) -> None:
    """What stands in the address alone is not what the form says."""
    page = clerk.send_again(clerk.hidden(WRITE, WRITE), f"{WRITE}?off-1=5.00&off_words=regular", do="write")
    assert "Nothing is written yet" in page.text and bill_if_any(desk_of(app), ORDERED) is None
    assert page.request.full_path.rstrip("?") == WRITE


def test_why_it_can_not_be_billed_yet_is_said(app: Flask, clerk: Browser) -> None:
    """Goods that have not come, a reason that is missing, an amount that is none: a page to read, not a fault."""
    page = clerk.get(f"/jobs/{APPROVED}/bill/write")
    assert "It can't be written yet" in page and "Write the bill and close" not in page
    assert "without a reason" in clerk.get(f"{WRITE}?not_done=B")
    assert "It can't be written yet" in clerk.get(f"{WRITE}?off-1=much&off_words=x")
    assert bill_if_any(desk_of(app), APPROVED) is None


def test_the_technician_reads_but_moves_no_money(technician: Browser) -> None:
    """No form, no page, no deed."""
    page = technician.get(PAGE)
    assert "The clerk or the owner writes the bill." in page and TAKE not in page
    for address in (WRITE, f"{PAGE}/look.html", f"/jobs/{ORDERED}/given-away"):
        assert technician.status(address) == 403
    assert technician.status(f"{PAGE}/paper.html") == 404


def test_an_extra_given_away_is_on_record_and_its_cost_is_the_owners(
    app: Flask, clerk: Browser, owner: Browser
) -> None:
    """Recorded with who; never billed; a second time it is refused."""
    page = f"/jobs/{ORDERED}/given-away"
    fields = {"what": "cable clip", "cost": "1.37", "price": "3.11", "words": "was in the hand"}
    assert clerk.send(page, **fields).status_code == 200
    (one,) = given_away_on(desk_of(app), ORDERED)
    assert (one.what, str(one.cost), one.who) == ("cable clip", "1.37 USD", "Oona Brandeth")
    assert "1.37" in owner.get(page) and "1.37" not in clerk.get(page) and "cable clip" in clerk.get(page)
    assert clerk.send(page, **fields).status_code == 409
    assert clerk.send(page, what="pin", cost="", words="x").status_code == 409


def test_no_pdf_is_offered_where_none_can_be_made(clerk: Browser, monkeypatch: pytest.MonkeyPatch) -> None:
    """On the pages of bill, quote and order; the paper itself is there to be printed."""
    clerk.send_again(clerk.hidden(WRITE, WRITE), WRITE, do="write")
    pages = (PAGE, f"/jobs/{ORDERED}/quote", "/orders/PO-2026-0001/paper")
    assert all(": PDF</a>" in clerk.get(page) for page in pages)
    monkeypatch.setattr(pdf, "makes_pdf", lambda: False)
    assert not [page for page in pages if ": PDF</a>" in clerk.get(page)]
    assert "Save: Page" in clerk.get(PAGE)


def test_lines_she_never_answered_are_left_undone_without_a_no(app: Flask, clerk: Browser) -> None:
    """They stop the bill until somebody marks them; the paper says there was no answer, and puts none in her mouth."""
    desk, page = desk_of(app), f"/jobs/{QUOTED}/bill/write"
    write_quote(desk, QUOTED, quote_html, need_by=date(2026, 1, 30))
    record(desk, QUOTED, Spoken(yes=("1", "2"), no=("B",), who="Maud Tilbrook", how="telephone", contact="555-0142"))
    for order in place_orders(desk, [QUOTED]).orders:
        receive(desk, order.number, Delivery(paper=f"DN {order.number}", freight=Decimal(0)))
    text = Page(clerk.get(page)).text
    assert "line A of job 2026-0003 is waiting, so it can't be billed" in text.replace("Line", "line")
    assert "Not answered, so not done: it is not billed A. " in text
    looked = clerk.send(page, do="look", not_done=["A", "C"])
    assert looked.status_code == 200 and "It can't be written yet" not in looked.text
    address = f"{page}?not_done=A&not_done=C"
    hidden = clerk.hidden(address, address.replace("&", "&amp;"))
    assert clerk.send_again(hidden, address, do="write", not_done=["A", "C"]).status_code == 200
    frozen = bill_if_any(desk, QUOTED)
    assert frozen is not None and [one.label for one in frozen.bill.lines] == ["1", "2"]
    assert [(one.label, one.answered, one.words) for one in frozen.bill.not_done] == [
        ("A", False, ""),
        ("C", False, ""),
    ]
    assert [one.label for one in frozen.bill.declined] == ["B"]
    assert (
        "We have no answer of yours to this work" in frozen.paper and "You said yes to this work." not in frozen.paper
    )
    assert "Not answered, not done" in clerk.get(f"/jobs/{QUOTED}/bill/save.txt")
