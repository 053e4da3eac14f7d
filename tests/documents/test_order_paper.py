"""The purchase order: what the supplier needs, and nothing of the shop's own affairs."""

import csv
import io
from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.value import changed
from sourcing.documents.order_paper import order_csv, order_html, price_words
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
