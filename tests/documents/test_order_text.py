"""Orders as text: for the supplier nothing of the shop's own; for the shop what is ordered, why, and what is open."""

from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.money import Money
from sourcing.basics.order import LineEvent
from sourcing.basics.value import changed
from sourcing.documents.order_text import (
    altered_text,
    confirmed_text,
    looked_text,
    order_message,
    order_now_text,
    orders_text,
    placed_text,
    since_words,
)
from sourcing.ordering.order_now import order_now
from tests.documents.buying_values import ORDER
from tests.documents.test_order_paper import NOT_FOR_SUPPLIERS
from tests.documents.values import HOSTILE
from tests.ordering.order_values import event, order

SLIPPED = event("confirmed", LineEvent(line=1, unit_price=Decimal("152.90"), latest=date(2026, 3, 18)), said_by="Ilse")
FIRST_GONE = event("cancelled", LineEvent(line=1, pieces=0), day=9)


def test_the_message_says_what_the_paper_says() -> None:
    core = changed(ORDER.lines[0], core_charge=Money(amount=Decimal("25.00"), currency="EUR"))
    text = order_message(changed(ORDER, lines=(core, ORDER.lines[1]), shop_telephone="555 0142"))
    for words in (
        "Purchase order PO-2026-0003 of Wickenby Yard Machine Repair", "needed by 2026-01-16",
        "1. 1 x 00417 (NW-40388) Antriebsriemen, Schneefräse, 98.40 EUR each, core charge 25.00 EUR",
        "2 x pack of 10", "Goods 100.03 EUR; freight by your terms", "555 0142",
    ):  # fmt: skip
        assert words in " ".join(text.split()), words


@pytest.mark.parametrize("words", NOT_FOR_SUPPLIERS)
def test_nothing_of_the_shops_own_is_in_the_message(words: str) -> None:
    assert words not in order_message(ORDER)


def test_hostile_text_forges_no_line() -> None:
    text = order_message(changed(ORDER, supplier_note=HOSTILE, supplier_name=HOSTILE))
    assert "\u202e" not in text and "\x1b" not in text


def test_a_look_says_that_nothing_is_ordered() -> None:
    """With what it costs, for which job, why, what is doubtful and what is held."""
    why = changed(ORDER, reasons=("the order passes free freight",))
    text = looked_text([why], ["line 2 waits."], ["job 2026-0007 also waits."])
    assert text.startswith("Nothing is ordered yet.")
    for words in ("999.99 USD at the door", "job 2026-0001 line 1", "passes free freight", "Freight: 555.55 USD"):
        assert words in text
    assert "Look at this: job 2026-0007 also waits.\nHeld back: line 2 waits.\n" in text
    assert looked_text([], ["x"], []).startswith("Nothing can be ordered.")


def test_a_placed_order_says_where_its_paper_is() -> None:
    text = placed_text([(ORDER, "PO-2026-0003.html")], [], [])
    assert "PO-2026-0003 to Kesselried Antriebsteile: 1 x 00417, 20 x KR-5/100" in text
    assert "here 2026-01-15 to 2026-01-16. The paper is in PO-2026-0003.html." in text


def test_the_list_tells_what_is_open_and_by_when() -> None:
    """What moved is counted only for what is still to come; a cancelled order waits for nothing."""
    slipped = order_now(order(), (SLIPPED,))
    assert "1 x NW-77120, 4 x NW-31207 2026-03-18, moved 1 time" in orders_text([(slipped, {1: 1, 2: 4})])
    keepers = orders_text([(slipped, {2: 4})])
    assert "2026-03-04" in keepers and "moved" not in keepers
    gone = order_now(order(), (FIRST_GONE, event("cancelled", LineEvent(line=2, pieces=0))))
    assert "cancelled" in orders_text([(gone, {})]) and "all came" in orders_text([(slipped, {})])
    assert orders_text([]) == "No order has been placed.\n"


def test_one_order_shows_every_day_and_word() -> None:
    text = " ".join(order_now_text(order_now(order(), (SLIPPED, FIRST_GONE)), {2: 4}).split())
    for words in (
        "1. NW-77120: cancelled; 1 ordered at first", "2. 4 x NW-31207 for job 2026-0001 line 2, 15.80 USD each",
        "4 still to come; here by: 2026-03-04 said 2026-03-02 by our reckoning",
        "confirmed by Ilse, taken down by Oona Brandeth: line 1 152.90 USD each, here 2026-03-18",
        "cancelled by Oona Brandeth: line 1 cancelled", "Goods now 63.20 USD",
    ):  # fmt: skip
        assert words in text, words
    assert "has not confirmed it yet" in order_now_text(order_now(order()), {})
    assert "has not confirmed it yet" not in text


def test_a_confirmation_says_whether_the_yes_still_covers_it() -> None:
    now = order_now(order(), (SLIPPED,))
    assert confirmed_text(now, (), ()).endswith("All of it is as ordered.\n")
    assert confirmed_text(now, ("13.90 more",), ()).endswith("The customer's yes still covers it.\n")
    alarmed = confirmed_text(now, ("13.90 more",), ("job 2026-0001 line 1: dearer",))
    assert "Not as approved: job 2026-0001 line 1: dearer." in alarmed and "'sourcing alarms 2026-0001'" in alarmed


def test_a_change_says_what_stands_and_what_to_send() -> None:
    now = order_now(order(), (FIRST_GONE,))
    text = " ".join(altered_text("Change 1 of purchase order", now, ("freight 14.95",), "c.html").split())
    assert "Change 1 of purchase order PO-2026-0001: 4 x NW-31207; goods 63.20 USD. The paper is in c.html" in text
    assert "Note: freight 14.95." in text
    gone = order_now(order(), (event("cancelled", LineEvent(line=1, pieces=0), LineEvent(line=2, pieces=0)),))
    assert "nothing of it stands" in altered_text("Cancellation", gone, (), "c.html")


def test_an_order_printed_again_says_that_it_no_longer_holds() -> None:
    """A cancelled order must not be sent again by mistake; a confirmed one may be."""
    assert since_words(order_now(order(), (SLIPPED,))) == ""
    assert "it was changed on 2026-03-09" in since_words(order_now(order(), (FIRST_GONE,)))
    both = event("cancelled", LineEvent(line=1, pieces=0), LineEvent(line=2, pieces=0))
    assert "it was cancelled on 2026-03-03" in since_words(order_now(order(), (both,)))
