"""Quantity-break headers, and stock columns of one warehouse. Spellings: common practice, no source."""

import pytest

from sourcing.basics.sheet import Field
from sourcing.sheets.headers.header_words import Meaning, break_quantity, field_of, meaning_of


@pytest.mark.parametrize(
    ("header", "pieces"),
    [("1-9", 1), ("10-49", 10), ("50+", 50), ("Qty 5+", 5), ("ab 10", 10), ("Net 10+", 10), ("10 +", 10),
    ("10–49", 10),
     ("1 to 4", 1), ("5 or more", 5), ("100 and up", 100), ("Qty 1-4", 1), ("ab 25 Stück", 25), (">= 10", 10),
     ("Qty 5", 5), ("1-4 USD", 1), ("10 u. mehr", 10), ("10 et +", 10), ("10 et plus", 10), ("10 y más", 10),
     ("10 o más", 10), ("10 en meer", 10), ("10 of meer", 10), ("Price @ 10", 10), ("@10", 10), ("Net (10+)", 10),
     ("10 pcs", 10), ("≥10", 10), ("1 - 9 Stk", 1), ("de 10 à 49", 10), ("von 10 bis 49", 10), ("van 10 tot 49", 10),
     ("de 10 a 49", 10), ("à partir de 10", 10), ("desde 10", 10), ("vanaf 10", 10), ("dès 10", 10), ("<10", 1),
     ("up to 9", 1), ("bis 9", 1), (">50", 51), ("1,000+", 1000), ("1.000+", 1000), ("Menge 10", 10), ("10+ pcs", 10),
     ("50 u.m.", 50), ("Prix 10+", 10), ("Precio 10-49", 10), ("Prijs vanaf 10", 10), ("$ 10-49", 10)],
)  # fmt: skip
def test_quantity_breaks(header: str, pieces: int) -> None:
    assert (break_quantity(header), field_of(header)) == (pieces, "net price")


@pytest.mark.parametrize(
    "header",
    ["9-1", "0-4", "10", "per 100", "Net per 100", "Price 2026", "A 1-4", "2026-03-05", "", "Price 1", "Price 2",
    "Net 2",
     "Staffel 2", "Break 3", "List 10+", "1-2 weeks", "10 days", "2-4 Tage", "MSRP 5+", "UVP ab 10", "10%",
     "10 lbs", "1/4",
     "ab 10 VPE", "ab 10 Euro Bestellwert", "10x", "3-phase", "4L 10-49", "5/8", "1.5-2", "Pack of 10", "12-24 V"],
)  # fmt: skip
def test_no_quantity_breaks(header: str) -> None:
    assert break_quantity(header) is None


@pytest.mark.parametrize(
    ("header", "place"),
    [("Stock East", "East"), ("Qty Dallas", "Dallas"), ("WH1 Qty", "WH1"), ("Bestand Lager Nord", "Nord"),
    ("Lager Süd", "Süd"),
     ("stock Lyon", "Lyon"), ("On hand - East", "East"), ("Stock (East)", "East"), ("Voorraad Utrecht", "Utrecht"),
     ("Existencias Madrid", "Madrid"), ("Qty Avail. Reno", "Reno"), ("In Stock Salt Lake City", "Salt Lake City"),
     ("Stock WH 2", "WH 2"), ("Stock warehouse East", "East"), ("Dispo Lyon", "Lyon"), ("Lager 2", "Lager 2"),
     ("Stock N", "N")],
)  # fmt: skip
def test_stock_of_one_warehouse(header: str, place: str) -> None:
    assert meaning_of(header) == Meaning("stock", place=place)


@pytest.mark.parametrize(
    ("header", "field"),
    [("Stock number", "supplier number"), ("Stock status", "stock"), ("Total stock", "stock"),
    ("Stock code", "supplier number"),
     ("Qty per pack", "pack"), ("Min qty", "minimum"), ("Lagerbestand", "stock"), ("All warehouses", None)],
)  # fmt: skip
def test_other_words_with_stock_keep_their_meaning(header: str, field: Field | None) -> None:
    assert (meaning_of(header).field, meaning_of(header).place) == (field, "")


@pytest.mark.parametrize(
    "header",
    ["Stock date", "Stock due", "Qty ordered", "Qty on order", "Qty per layer", "Inner qty", "Pallet qty",
    "Stock value",
     "In stock 5", "Stock 5", "Qty in transit", "Reorder qty", "Lagerort", "Lager Nr", "Lagerplatz", "Stock type",
     "Stock price", "Backorder qty", "Qty sold", "Stock item", "Non stock", "Available from", "Stock 12/05",
     "Low stock"],
)  # fmt: skip
def test_no_warehouse(header: str) -> None:
    assert meaning_of(header).place == "" and meaning_of(header).field != "stock"
