"""The purchase order: what the supplier needs, and nothing of the shop's own affairs."""

import csv
import io
import json
from datetime import date, datetime
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from sourcing.basics.money import Money
from sourcing.basics.order import LineEvent, OrderEvent, PurchaseOrder
from sourcing.basics.order_now import OrderNow
from sourcing.basics.value import changed, from_json, to_json
from sourcing.documents.order_paper import (
    CSV_HEADERS,
    change_html,
    change_title,
    order_csv,
    order_html,
    order_paper_size,
    price_words,
)
from sourcing.documents.order_xlsx import order_xlsx
from sourcing.ordering.order_now import order_now
from tests.documents.buying_values import ORDER
from tests.documents.html_reader import Page
from tests.documents.values import HOSTILE

NOT_FOR_SUPPLIERS = ("777.77", "888.88", "666.66", "555.55", "999.99", "2026-0001", "WY-BELT-1", "Tilbrook", "argin")


def test_the_order_says_what_is_ordered() -> None:
    text = Page(order_html(ORDER)).text
    for words in (
        "Purchase order PO-2026-0003", "Kesselried Antriebsteile Am Wehr 3", "Ship to Wickenby Yard Machine Repair",
        "Ordered on 2026-01-12, by Oona Brandeth", "Needed by 2026-01-16",
        "1 00417 NW-40388 Antriebsriemen, Schneefräse 1 98.40 EUR each 98.40 EUR",
        "2 KR-5/100 NW-40388 Antriebsriemen, Schneefräse 20 2 x pack of 10 8.125 EUR per 100 1.63 EUR",
        "Goods 100.03 EUR",
    ):  # fmt: skip
        assert words in text, words


@pytest.mark.parametrize("words", NOT_FOR_SUPPLIERS)
def test_nothing_of_the_shops_own_is_on_it(words: str) -> None:
    body = order_html(ORDER).partition("</style>")[2]
    assert words not in body and words not in order_csv(ORDER)


def test_csv_keeps_leading_zeros_and_exact_prices() -> None:
    rows = list(csv.DictReader(io.StringIO(order_csv(ORDER))))
    assert [row["supplier number"] for row in rows] == ["00417", "KR-5/100"]
    assert [(row["price"], row["price for pieces"], row["line total"]) for row in rows] == [
        ("98.4", "1", "98.40"),
        ("8.125", "100", "1.63"),
    ]
    assert [(row["pieces"], row["pack"], row["packs"]) for row in rows] == [("1", "1", ""), ("20", "10", "2")]
    assert {row["need by"] for row in rows} == {"2026-01-16"}
    assert order_csv(ORDER).endswith("\r\n")


def test_a_discount_and_a_missing_day_are_told() -> None:
    text = Page(order_html(changed(ORDER, discount_percent=Decimal("5"), need_by=None))).text
    assert "after our discount of 5 %" in text and "as soon as your terms allow" in text
    assert "discount" not in Page(order_html(ORDER)).text


def test_pieces_that_are_no_whole_packs_are_not_given_as_packs() -> None:
    odd = changed(ORDER, lines=(changed(ORDER.lines[1], ordered=25),))
    assert "x pack" not in Page(order_html(odd)).text and "25 pack of 10" in Page(order_html(odd)).text
    assert next(csv.DictReader(io.StringIO(order_csv(odd))))["packs"] == ""


def test_hostile_text_is_harmless_in_both() -> None:
    line = changed(ORDER.lines[0], supplier_number="=1+1", description=HOSTILE)
    hostile = changed(ORDER, lines=(line,), supplier_name=HOSTILE, ship_to=(HOSTILE,), need_by=date(2026, 1, 16))
    assert "<script" not in order_html(hostile)
    row = next(csv.DictReader(io.StringIO(order_csv(hostile))))
    assert row["supplier number"] == "'=1+1" and "\u202e" not in row["description"]


def test_prices_lose_no_digit() -> None:
    assert price_words(Decimal("11.9"), "USD", 1) == "11.90 USD each"
    assert price_words(Decimal("10.995"), "USD", 100) == "10.995 USD per 100"
    assert price_words(Decimal("1200"), "JPY", 1) == "1200 JPY each"


def test_who_to_ask_the_note_and_the_core_charge_are_on_it() -> None:
    """Telephone and e-mail of the shop beside where the goods go; no core charge is stated as none, not as zero."""
    core = changed(ORDER.lines[0], core_charge=Money(amount=Decimal("25.00"), currency="EUR"))
    more = changed(
        ORDER, shop_telephone="555 0142", shop_email="a@wickenby.example", supplier_note="Ring first", lines=(core,)
    )
    text = Page(order_html(more)).text
    for words in ("Wickenby 555 0142 a@wickenby.example", "Note Ring first", "core charge 25.00 EUR"):
        assert words in text, words
    row = next(csv.DictReader(io.StringIO(order_csv(more))))
    assert (row["core charge"], row["telephone"], row["note"]) == ("25.00", "555 0142", "Ring first")
    assert "core charge" not in Page(order_html(ORDER)).text
    assert next(csv.DictReader(io.StringIO(order_csv(ORDER))))["core charge"] == ""


def test_an_order_kept_before_there_were_more_fields_still_prints() -> None:
    """Its JSON has none of them; paper size falls back to A4."""
    old = json.loads(to_json(ORDER))
    for name in ("reasons", "rate", "shop_telephone", "shop_email", "supplier_note", "locale", "paper_size"):
        del old[name]
    for line in old["lines"]:
        for name in ("core_charge", "weight_kg", "reasons", "category"):
            del line[name]
    read = from_json(json.dumps(old), PurchaseOrder)
    assert read == ORDER and order_paper_size(read) == "A4"
    assert "Purchase order PO-2026-0003" in Page(order_html(read)).text


def test_paper_follows_the_shop() -> None:
    """What its settings say goes before what is usual where it is."""
    assert order_paper_size(changed(ORDER, locale="en_US")) == "letter"
    assert order_paper_size(changed(ORDER, locale="en_US", paper_size="A4")) == "A4"


def happened(*events: OrderEvent) -> OrderNow:
    """The order after these."""
    return order_now(ORDER, events)


CUT = OrderEvent(
    order="PO-2026-0003", what="changed", at=datetime(2026, 1, 13, 9, 0), who="Piet Halloway-Rusk",
    words="One pack is enough", lines=(LineEvent(line=2, pieces=10),),
)  # fmt: skip
GONE = changed(CUT, what="cancelled", at=datetime(2026, 1, 14, 9, 0), words="", lines=(LineEvent(line=1, pieces=0),))
REST = changed(GONE, at=datetime(2026, 1, 15, 9, 0), lines=(LineEvent(line=2, pieces=0),))


def test_the_paper_of_a_change_says_what_holds_from_now_on() -> None:
    """Pieces now and before, the reason told to the supplier, the new sum; untouched lines as they are."""
    text = Page(change_html(happened(CUT), CUT, 1)).text
    for words in (
        "Change 1 of purchase order PO-2026-0003", "Changed on 2026-01-13, by Piet Halloway-Rusk",
        "Why One pack is enough", "1 98.40 EUR each 98.40 EUR", "10 was 20 1 x pack of 10 8.125 EUR per 100 0.81 EUR",
        "Goods from now on 99.21 EUR", "Prices as agreed.",
    ):  # fmt: skip
        assert words in text, words
    assert "was 1 " not in text


def test_a_later_change_tells_what_was_before_it_and_not_at_first() -> None:
    """The second change cancels the belt; the keepers' earlier change is no news any more."""
    text = Page(change_html(happened(CUT, GONE), GONE, 2)).text
    assert "Change 2 of purchase order PO-2026-0003" in text
    assert "cancelled was 1 0.00 EUR" in text and "was 20" not in text
    assert "Goods from now on 0.81 EUR" in text


def test_when_nothing_is_left_it_is_a_cancellation() -> None:
    """In title and lines."""
    now = happened(CUT, GONE, REST)
    assert change_title(now, REST, 3) == "Cancellation of purchase order"
    text = Page(change_html(now, REST, 3)).text
    assert "Cancellation of purchase order PO-2026-0003" in text and "Goods from now on 0.00 EUR" in text


@pytest.mark.parametrize("words", NOT_FOR_SUPPLIERS)
def test_nothing_of_the_shops_own_is_on_a_change(words: str) -> None:
    body = change_html(happened(CUT), CUT, 1).partition("</style>")[2]
    assert words not in body


def test_the_workbook_holds_the_csvs_rows() -> None:
    """Numbers as numbers, exact; text as text."""
    sheet = load_workbook(io.BytesIO(order_xlsx(ORDER))).active
    assert sheet is not None and sheet.title == "PO-2026-0003"
    rows = [dict(zip(CSV_HEADERS, row, strict=True)) for row in sheet.iter_rows(min_row=2, values_only=True)]
    assert [row["supplier number"] for row in rows] == ["00417", "KR-5/100"]
    assert [str(row["price"]) for row in rows] == ["98.4", "8.125"]
    assert order_xlsx(ORDER) == order_xlsx(ORDER)
