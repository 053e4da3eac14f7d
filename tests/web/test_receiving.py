"""Goods taken in at the counter: counted scan by scan, wrong numbers said loudly, who says what was charged."""

import json
import sqlite3
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.claims import differences_of
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.order_full import OrderFull, order_full
from sourcing.basics.order import LineEvent
from tests.web.orders_world import BEARING, BELT, CAME, KEEPER, OPEN, SHEAR, counter_with_order, desk_of
from tests.web.test_orders import COSTS
from tests.web.world import APPROVED, CLERK, TECHNICIAN, Browser, logged_in

HERE = f"/receive/{OPEN}"


@pytest.fixture
def ordered(tmp_path: Path) -> Iterator[Flask]:
    """The counter with an order on its way."""
    with counter_with_order(tmp_path) as app:
        yield app


@pytest.fixture
def keeper(ordered: Flask) -> Browser:
    """The clerk at that counter."""
    return logged_in(ordered, "clerk")


@pytest.fixture
def mechanic(ordered: Flask) -> Browser:
    """The technician at that counter."""
    return logged_in(ordered, "technician")


def standing(app: Flask) -> OrderFull:
    """The order as it stands now."""
    return order_full(desk_of(app), OPEN)


def counted(page: str, line: int) -> str:
    """What stands in the count of a line."""
    return page.split(f'name="came_{line}"', 1)[1].split('value="', 1)[1].split('"', 1)[0]


@pytest.mark.parametrize("typed", [OPEN, "po20260002", "PO 2026 0002"])
def test_an_orders_number_leads_to_it_however_it_is_scanned(keeper: Browser, typed: str) -> None:
    """Case, blanks and hyphens don't count."""
    answer = keeper.client.get("/receive", query_string={"for": typed})
    assert answer.headers["Location"] == HERE


@pytest.mark.parametrize("typed", ["PB-2220", "pb 2220", "6203-2RS"])
def test_a_number_on_a_part_finds_the_order_that_waits_for_it_and_counts_it(keeper: Browser, typed: str) -> None:
    """The supplier's number or the maker's; the part in the hand is the first one counted."""
    answer = keeper.client.get("/receive", query_string={"for": typed}, follow_redirects=True)
    assert answer.request.path == HERE and counted(answer.text, BEARING) == "1"


def test_a_number_nobody_waits_for_is_said_loudly(keeper: Browser) -> None:
    """With the orders that are open below."""
    page = keeper.get("/receive?for=XX-1")
    assert "No open order waits for XX-1" in page and f"Take in {OPEN}" in page


def test_a_paper_taken_in_before_is_recognised(keeper: Browser) -> None:
    """Before anything is counted twice."""
    assert "Paper DN-88213 was taken in before" in keeper.get("/receive?for=dn88213")


def test_each_scan_counts_one_more_and_keeps_what_was_counted(ordered: Flask, keeper: Browser) -> None:
    """Without a script: Enter sends, the page comes back counted. Nothing is kept until 'Take it in'."""
    first = keeper.send(HERE, do="scan", scan="PB-3120").text
    assert counted(first, SHEAR) == "1"
    second = keeper.send(HERE, do="scan", scan="nw31207", **{f"came_{SHEAR}": "1", "paper": "DN-9"}).text
    assert counted(second, SHEAR) == "2" and 'value="DN-9"' in second
    assert not standing(ordered).receipts


def test_one_scan_more_than_ordered_is_said(keeper: Browser) -> None:
    """A part scanned twice must not become a part that came."""
    page = keeper.send(HERE, do="scan", scan="PB-4038", **{f"came_{BELT}": "1"}).text
    assert "line 1 had all of its pieces; this one is more than ordered" in page


def test_a_number_on_no_line_counts_for_nothing_until_somebody_says_for_which(ordered: Flask, keeper: Browser) -> None:
    """It is said loudly, judged against every line, and kept under the number that stands on it."""
    page = keeper.send(HERE, do="scan", scan="XX-77").text
    assert "XX-77 is on no line of this order" in page and "another part" in page
    assert [counted(page, at) for at in (BELT, KEEPER, SHEAR, BEARING)] == ["", "", "", ""]
    page = keeper.send(HERE, do=f"other:{BEARING}", scanned="XX-77").text
    assert counted(page, BEARING) == "1" and 'name="number_4"' in page and 'value="XX-77"' in page
    said = {f"came_{BEARING}": "1", f"number_{BEARING}": "XX-77", f"under_{BEARING}": "1"}
    done = keeper.send(HERE, do="keep", paper="DN-9", freight="0", **said).text
    assert "put XX-77 aside" in done and "0 good" in done
    assert standing(ordered).came.get(BEARING, 0) == 0 and standing(ordered).left[BEARING] == 1


def test_a_second_other_number_on_a_line_is_refused(keeper: Browser) -> None:
    """One line of a paper holds one other number: the second would be lost."""
    said = {f"came_{BEARING}": "1", f"number_{BEARING}": "XX-77", f"under_{BEARING}": "1"}
    page = keeper.send(HERE, do=f"other:{BEARING}", scanned="YY-88", **said)
    assert page.status_code == 409 and counted(page.text, BEARING) == "1"


def test_all_of_it_came_fills_in_what_is_open_and_waits_for_the_word(ordered: Flask, keeper: Browser) -> None:
    """Filling in is no receipt."""
    page = keeper.send(HERE, do="all").text
    assert [counted(page, at) for at in (BELT, KEEPER, SHEAR, BEARING)] == ["1", "10", "2", "1"]
    assert not standing(ordered).receipts


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"paper": "DN-9", "freight": "0"}, "No piece of order PO-2026-0002 is counted yet"),
        ({"paper": "DN-9", f"came_{BELT}": "1"}, "Nothing is said of freight"),
        ({"freight": "0", f"came_{BELT}": "1"}, "is no number of a delivery note"),
        ({"paper": "DN-9", "freight": "0", f"came_{BELT}": "1", "charge_1": "5.00"}, "name without an amount"),
        ({"paper": "DN-9", "freight": "0", f"came_{BELT}": "one"}, "one"),
    ],
)
def test_what_is_not_said_is_never_taken_as_nothing(
    ordered: Flask, keeper: Browser, fields: dict[str, str], words: str
) -> None:
    """A blank count is not all of it, a blank freight is not none; what was typed comes back."""
    page = keeper.send(HERE, do="keep", **fields)
    assert page.status_code == 409 and words in page.text
    assert not standing(ordered).receipts


def test_goods_are_taken_in_once_with_what_the_paper_charges(ordered: Flask, keeper: Browser) -> None:
    """Damaged pieces are not good ones, another price is told; a double click is one delivery."""
    fields = {"do": "keep", "paper": "DN-9", "freight": "4.50", "charge_name_1": "Handling", "charge_1": "2.00"}
    fields |= {f"came_{SHEAR}": "2", f"damaged_{SHEAR}": "1", f"price_{SHEAR}": "9.45"}
    hidden = keeper.hidden(HERE, HERE)
    pages = [keeper.send_again(hidden, HERE, **fields) for _ in range(2)]
    assert [page.request.path for page in pages] == [f"{HERE}/paper"] * 2
    assert "1 of 2 damaged" in pages[0].text and "charged 9.45 instead of 8.45" in pages[0].text
    (receipt,) = standing(ordered).receipts
    assert (receipt.freight.amount, receipt.other_charges[0].name) == (Decimal("4.50"), "Handling")
    assert standing(ordered).left[SHEAR] == 1


def test_the_technician_counts_and_the_clerk_says_what_was_charged(
    ordered: Flask, keeper: Browser, mechanic: Browser
) -> None:
    """What the paper charges is not known until then, and that is said everywhere; it is never taken as nothing."""
    done = mechanic.send(
        HERE, do="keep", paper="DN-9", **{f"came_{BELT}": "1", f"damaged_{BELT}": "1", f"price_{BELT}": "1.00"}
    )
    assert done.request.path == f"{HERE}/paper" and not [cost for cost in COSTS if cost in done.text]
    (receipt,) = standing(ordered).receipts
    assert receipt.only_counted and receipt.received_by == TECHNICIAN
    assert receipt.lines[0].unit_price == Decimal("119.00")  # a price is not hers to say
    assert "hat paper DN-9 charges is not taken in yet" in keeper.get(f"{HERE}/paper?paper=DN-9")
    assert "Only counted so far: DN-9" in keeper.get("/orders")
    assert not differences_of(desk_of(ordered), OPEN).claimed.amount
    address = f"{HERE}?counted=DN-9"
    assert counted(keeper.get(address), BELT) == "1"
    keeper.send(address, address, do="keep", freight="6.00", **{f"came_{BELT}": "1"})
    (receipt,) = standing(ordered).receipts
    assert not receipt.only_counted and receipt.freight.amount == Decimal("6.00")
    assert len(standing(ordered).aside) == 1


def test_the_technician_reads_of_wrong_goods_but_of_no_amount(
    ordered: Flask, keeper: Browser, mechanic: Browser
) -> None:
    """On a paper the clerk took in with another price and a damaged piece."""
    fields = {f"came_{SHEAR}": "2", f"damaged_{SHEAR}": "1", f"price_{SHEAR}": "9.45"}
    keeper.send(HERE, do="keep", paper="DN-9", freight="4.50", total="99.00", **fields)
    page = mechanic.get(f"{HERE}/paper?paper=DN-9")
    assert "1 of 2 damaged" in page
    assert not [cost for cost in (*COSTS, "9.45", "4.50", "99.00") if cost in page]


def test_a_paper_counted_twice_is_refused_and_leads_to_the_first(mechanic: Browser) -> None:
    """Also for the technician, who may not open the order's own page."""
    mechanic.send(HERE, do="keep", paper="DN-9", **{f"came_{BELT}": "1"})
    page = mechanic.send(HERE, do="keep", paper="dn 9", **{f"came_{SHEAR}": "2"})
    assert page.status_code == 409 and f'<a href="{HERE}">Papers taken in</a>' in page.text
    assert f'href="{HERE}/paper?paper=DN-9"' in page.text and counted(page.text, SHEAR) == "2"


def test_a_paper_taken_in_wrongly_is_set_aside_and_taken_in_again(ordered: Flask, keeper: Browser) -> None:
    """The page says where to take it back; a reason is needed; both stay to be read."""
    done = keeper.send(HERE, do="keep", paper="DN-9", freight="0", **{f"came_{BELT}": "1"})
    assert f'href="{HERE}/paper?paper=DN-9#set-aside"' in done.text
    address = f"{HERE}/paper?paper=DN-9"
    assert keeper.send(address, address, paper="DN-9", words="").status_code == 409
    keeper.send(address, address, paper="DN-9", words="that was the neighbour's parcel")
    found = standing(ordered)
    assert not found.receipts and found.left[BELT] == 1
    assert "neighbour&#39;s parcel" in keeper.get(f"/orders/{OPEN}")
    again = keeper.send(HERE, do="keep", paper="DN-9", freight="0", **{f"came_{BELT}": "1"})
    assert again.request.path == f"{HERE}/paper"


def test_goods_go_back_and_are_credited(ordered: Flask, keeper: Browser) -> None:
    """A damaged belt waits to be sent, then for credit, then for nothing; less than expected is said."""
    keeper.send(HERE, do="keep", paper="DN-9", freight="0", **{f"came_{BELT}": "1", f"damaged_{BELT}": "1"})
    page = keeper.get("/going-back")
    assert "to be sent" in page and "PB-4038" in page
    step = f"/going-back/{OPEN}/{BELT}/goods"
    keeper.send(step, step="sent", pieces="1", paper="R-1")
    assert "for credit" in keeper.get("/going-back")
    done = keeper.send(step, step="credited", pieces="1", credit="100.00")
    assert "$19.00 less" in done.text
    assert "PB-4038" not in keeper.get("/going-back")


def test_a_step_taken_down_wrongly_is_taken_back_on_its_page(ordered: Flask, keeper: Browser) -> None:
    """With why; both stay to be read. A page on which the step was another one takes nothing back."""
    keeper.send(HERE, do="keep", paper="DN-9", freight="0", **{f"came_{BELT}": "1", f"damaged_{BELT}": "1"})
    step = f"/going-back/{OPEN}/{BELT}/goods"
    assert "Taken down so far" not in keeper.get(step)
    kept = keeper.send(step, step="sent", pieces="1", paper="R-1")
    assert f'<a href="{step}#taken-down">Take it back</a>' in kept.text and "for credit" in keeper.get("/going-back")
    old = keeper.hidden(step, f"{step}/take-back")
    keeper.send(step, step="credited", pieces="1", credit="100.00", words="so he said")
    late = keeper.send_again(old, f"{step}/take-back", why="slip")
    assert late.status_code == 409 and "Somebody has taken down or back another step" in late.text
    assert "Credited</span>. He gave back $100.00. so he said" in " ".join(late.text.split())
    silent = keeper.send(step, f"{step}/take-back", why=" ")
    assert silent.status_code == 409 and '<a href="#field-why">' in silent.text
    for why in ("another order's note", "it lies here still"):
        assert keeper.send(step, f"{step}/take-back", why=why).status_code == 200
    page = keeper.get(step).replace("&#39;", "'")
    assert page.count("Taken back:") == 2 and f"{CLERK}: another order's note" in page
    assert "Take the last step back" not in page and "to be sent" in keeper.get("/going-back")
    assert "step of going back taken back" in keeper.get(f"/jobs/{APPROVED}/history")


def test_no_step_of_another_kind_is_taken_back(keeper: Browser, mechanic: Browser) -> None:
    """Nor one that is not there; and nobody takes one back who may not see what the shop pays."""
    to = f"/going-back/{CAME}/1/goods"
    hidden = keeper.hidden(to, to)
    assert "Nothing is taken down" in keeper.send_again({**hidden, "known": "0"}, f"{to}/take-back", why="x").text
    assert keeper.client.post(f"/going-back/{CAME}/1/lawn/take-back", data=keeper.hidden(to, to)).status_code == 404
    assert mechanic.client.post(f"{to}/take-back", data={"why": "x", "known": "0"}).status_code in (400, 403)


def test_giving_up_needs_a_word(keeper: Browser) -> None:
    """What was typed comes back."""
    page = keeper.send(f"/going-back/{CAME}/1/goods", step="lost", pieces="1", paper="R-77")
    assert page.status_code == 409 and 'value="R-77"' in page.text
    assert keeper.send(f"/going-back/{CAME}/1/goods", step="", pieces="1").status_code == 409
    assert keeper.status(f"/going-back/{CAME}/1/lawn") == 404


def test_what_a_paper_does_not_explain_is_asked_of_who_sees_costs(keeper: Browser, mechanic: Browser) -> None:
    """The technician reads what came; the sentence names an amount the supplier charged."""
    keeper.send(HERE, do="keep", paper="DN-9", freight="4.50", total="99.00", **{f"came_{BELT}": "1"})
    page = f"{HERE}/paper?paper=DN-9"
    assert "is not explained by its lines" in keeper.get(page)
    shown = mechanic.get(page)
    assert "PB-4038" in shown and "explained" not in shown


def test_charges_the_order_has_stand_ready_under_its_own_names(ordered: Flask, keeper: Browser) -> None:
    """So that a fee that was agreed is neither claimed nor counted twice; a blank is no charge; nothing twice."""
    fee = {"name": "Entry fee", "kind": "entry fee", "rule": "by hand", "amount": {"amount": "6.00", "currency": "USD"}}
    with sqlite3.connect(desk_of(ordered).store.shown) as store:
        store.execute(
            "UPDATE purchase_orders SET body = json_insert(body, '$.charges[#]', json(?)) WHERE number = ?",
            (json.dumps(fee), OPEN),
        )
    store.close()
    assert '<label for="field-ordered_charge_1">Entry fee</label>' in keeper.get(HERE)
    fields = {"do": "keep", "paper": "DN-9", "freight": "0", f"came_{SHEAR}": "2", "ordered_charge_1": "6.00"}
    again = keeper.send(HERE, **fields, charge_name_1="Entry fee", charge_1="6.00")
    assert again.status_code == 409 and "stands there twice" in again.text
    page = keeper.send(HERE, **fields)
    assert page.status_code == 200 and "Entry fee" in page.text
    (receipt,) = standing(ordered).receipts
    assert [(one.name, one.amount.amount) for one in receipt.other_charges] == [("Entry fee", Decimal("6.00"))]
    assert [one for one in differences_of(desk_of(ordered), OPEN).differences if one.kind == "charge"] == []


def test_a_number_the_table_ties_to_the_part_is_shown_as_the_same_part(keeper: Browser) -> None:
    """It stands on no line of the order; the path says why it serves."""
    page = keeper.send(HERE, do="scan", scan="OV 20 417").text
    assert "OV 20 417 is on no line of this order" in page and '<span class="word">same part</span>' in page


def test_what_is_still_wanted_is_the_number_ordered_beside_the_one_he_sends(ordered: Flask, keeper: Browser) -> None:
    """By the order of it: a number he sends of his own accord is not what the shop waits for."""
    confirm(desk_of(ordered), OPEN, Confirmation(lines=(LineEvent(line=BELT, number="XX-99"),), said_by="Ilse"))
    number = standing(ordered).now.line(BELT).line.supplier_number  # type: ignore[union-attr]
    for page in ("/orders", "/receive"):
        assert f"1 × {number} (he says he sends XX-99)" in keeper.get(page)
