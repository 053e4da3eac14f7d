"""What is wrong with a basket is told in one sentence each, with the place; and never as a fault of the program."""

import json
from copy import deepcopy
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.basket.baskets import BASKET, read, spoilt, told

SPOILT: list[tuple[str, object, str]] = [
    ("needs.0.quantty", 2, "needs[0].quantty: not a field; correct its name or take it out. Perhaps: quantity."),
    ("needs.0.quantity", ..., "needs[0].quantity is left out; write a whole number up to a thousand million."),
    ("needs.0.quantity", 0, "needs[0].quantity is 0; ask for at least 1."),
    ("needs.0.quantity", "2", "needs[0].quantity is '2'; write a whole number"),
    ("needs.0.quantity", 2.5, "needs[0].quantity is 2.5; write a whole number"),
    ("needs.0.quantity", 10**40, "needs[0].quantity is 1000000"),
    ("needs.0.label", " ", "needs[0].label is blank; write one."),
    ("needs.0.need_by", "2026-01-12", "needs[0].need_by is 2026-01-12; name a day from 2026-01-13 on"),
    ("needs.0.need_by", "13.1.2026", "needs[0].need_by is '13.1.2026'; write a day, such as 2026-01-13."),
    ("needs.0.need_by", "2026-02-30", "needs[0].need_by is '2026-02-30'; write a day"),
    ("needs.1", {"label": "1", "our_part": "X", "quantity": 1}, "needs[1]: it has the same label as needs[0];"),
    ("needs", [], "needs: nothing is needed; add at least one need."),
    ("offers.0.supplier", "stonegrth", "offers[0].supplier: there are no terms for 'stonegrth'"),
    ("offers.0.currency", "EUR", "offers[0].currency is EUR; write prices in the currency of the supplier's terms"),
    ("offers.0.breaks.0.price", "-1", "offers[0].breaks[0].price is -1; leave the entry out if there is no price."),
    ("offers.0.breaks.0.price", 0, "offers[0].breaks[0].price is 0; leave the entry out"),
    ("offers.0.breaks.0.price", "12,50", "offers[0].breaks[0].price is '12,50'; write a number with a point"),
    ("offers.0.breaks.0.price", "NaN", "offers[0].breaks[0].price is 'NaN'; write a number with a point"),
    ("offers.0.breaks.0.price", True, "offers[0].breaks[0].price is true; write a number with a point"),
    ("offers.0.breaks.0.price", None, "offers[0].breaks[0].price is null; write a number with a point"),
    ("offers.0.breaks.1.from_quantity", 1, "offers[0].breaks[1]: two prices from 1 pieces on; keep"),
    ("offers.0.breaks.0.from_quantity", 20, "offers[0].breaks[1]: from 10 pieces on stands after from 20; write the"),
    ("offers.0.pack", 0, "offers[0].pack is 0; count at least 1."),
    ("offers.0.stock", -1, "offers[0].stock is -1; write it without a minus."),
    ("offers.0.weight_kg", "-0.5", "offers[0].weight_kg is -0.5; leave it out if it is not known."),
    ("offers.0.origin", "Germany", "offers[0].origin is 'Germany'; write the country as two letters"),
    ("offers.0.gtin", "4006381333932", "offers[0].gtin is '4006381333932'; write 8, 12, 13 or 14 digits of which"),
    ("offers.0.gtin", "12345", "offers[0].gtin is '12345'; write 8, 12, 13 or 14 digits"),
    ("offers.0.priced_on", "2026-01-14", "offers[0].priced_on is 2026-01-14; a price can't be of a day after"),
    ("offers.0.lead_time", {"least": 5, "most": 2}, "offers[0].lead_time: 5 to 2 days can't be;"),
    ("offers.0.lead_time", {"least": 5}, "offers[0].lead_time: least and most go together;"),
    ("offers.0.standing", "good", "offers[0].standing is 'good'; write one of: 'fitted', 'maker', 'supplier'"),
    ("offers.2", deepcopy(BASKET["offers"][0]), "offers[2]: it is the same offer as offers[0];"),
    ("offers.2", "SG-1", "offers[2] is 'SG-1'; write an object with named fields"),
    ("rates.0.dated", ..., "rates[0].dated is left out; write a day, such as 2026-01-13."),
    ("rates.0.dated", "2026-01-14", "suppliers[1].currency: there is no rate from EUR to USD on or before 2026-01-13"),
    ("rates", [], "suppliers[1].currency: there is no rate from EUR to USD on or before 2026-01-13"),
    ("rates.0.rate", "0", "rates[0].rate is 0; a rate is above zero."),
    ("rates.0.into", "GBP", "rates[0].into is GBP; give rates into the basket's currency, USD."),
    ("suppliers.0.transit_days", [2, 1], "suppliers[0].transit_days: has the larger number first"),
    ("suppliers.0.transit_days", 2, "suppliers[0].transit_days is 2; write a list of 2."),
    ("suppliers.0.freight.charge", ..., "suppliers[0].freight.charge"),
    ("suppliers.0.freight.rule", "flatt", "suppliers[0].freight.rule is 'flatt'; write one of: 'asked', 'by order val"),
    ("suppliers.0.cut_off", "1 pm", "suppliers[0].cut_off is '1 pm'; write a time of day, such as 13:00."),
    ("suppliers.0.calendar", {"country": "XX"}, "suppliers[0]: no public holidays are known for 'XX'"),
    ("suppliers.0.time_zone", "Europe/Berlin", "suppliers[0]: the cut-off of 'stonegarth' is on a clock in"),
    ("suppliers.2", deepcopy(BASKET["suppliers"][0]), "suppliers[2]: it is for the same supplier and day as"),
    ("wishes", {"objective": "cost and days"}, "wishes.objective: 'cost and days' needs the price of a day;"),
    ("wishes", {"most_suppliers": 0}, "wishes.most_suppliers is 0; allow at least 1"),
    ("wishes", {"surplus_credit_percent": 101}, "wishes.surplus_credit_percent is 101; write per cent from 0 to 100."),
    ("wishes", {"need_by": "2025-12-31"}, "wishes.need_by is 2025-12-31; name a day from 2026-01-13 on"),
    ("at", "2026-01-13T10:15Z", "at is '2026-01-13T10:15Z'; write a moment on the shop's clock"),
    ("currency", "DOLLAR", "currency is DOLLAR; write the shop's currency by ISO 4217, such as USD."),
    ("currency", ..., "currency is left out; write text in quotes."),
]  # fmt: skip


@pytest.mark.parametrize(
    ("path", "value", "sentence"), SPOILT, ids=[f"{path}={value}"[:50] for path, value, _ in SPOILT]
)
def test_what_is_wrong_is_told_with_its_place(path: str, value: object, sentence: str) -> None:
    """The sentence is among those told, after the file's name."""
    assert any(one.startswith(f"basket.json: {sentence}") for one in told(spoilt(path, value))), told(
        spoilt(path, value)
    )


def test_the_basket_itself_is_taken() -> None:
    """What the other tests spoil is whole."""
    assert told(json.dumps(BASKET).encode()) == []


def test_splitting_and_coming_together_exclude_each_other() -> None:
    """A need that comes from several suppliers can't come in one order."""
    both = {"label": "1", "our_part": "BELT-AUGER", "quantity": 2, "may_split": True, "together": "kit"}
    assert told(spoilt("needs.0", both))[0].startswith("basket.json: needs[0]: it may be split and must come together")


def test_a_size_nobody_can_read_is_refused() -> None:
    """It would hold nothing back."""
    (words,) = told(spoilt("needs.0.size", "B thirty-six"))
    assert words.startswith("basket.json: needs[0].size is 'B thirty-six'; write a standard designation")


def test_everything_wrong_is_told_at_once() -> None:
    """One sentence each, in the order of the fields."""
    tree = deepcopy(BASKET)
    tree["needs"][0]["quantity"] = 0
    tree["offers"][0]["stock"] = -4
    tree["offers"][1]["breaks"][0]["price"] = "-2"
    tree["rates"][0]["rate"] = 0
    assert len(told(json.dumps(tree).encode())) == 4


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "basket.json: line 1, column 1: this is not JSON"),
        (b'{"currency": "USD",\n "needs": [}', "basket.json: line 2, column 12: this is not JSON"),
        (b'{"currency": "NaN",\n "at": NaN}', "basket.json: line 2, column 8: this is not JSON (NaN is not a number"),
        (b'{"currency": -Infinity}', "basket.json: line 1, column 14: this is not JSON (-Infinity is not a number"),
        (b"[" * 100_000, "basket.json: the file has lists or objects in one another beyond all reason"),
        (b"[]", "basket.json: the file is a list of 0; write an object with named fields"),
        (b'{\n"currency": "\xe4"}', "'basket.json' can't be used: line 2 is not UTF-8 text; save it as UTF-8"),
        ('{"currency": "USD"}'.encode("utf-16"), "'basket.json' can't be used: line 1 is not UTF-8 text"),
        (b'{"currency": "USD", "currency": "EUR"}', "basket.json: currency is written twice; keep the one that holds."),
    ],
)
def test_what_is_no_json_is_told_with_line_and_column(data: bytes, sentence: str) -> None:
    """RFC 8259 knows no NaN, and says nothing of names written twice: here they are refused."""
    assert told(data)[0].startswith(sentence), told(data)


def test_a_number_beyond_all_reason_is_refused_where_it_stands() -> None:
    """In digits as in exponents, without working it out."""
    for number in ("1e400", "1e-400", "1e999999999999999999", "1" * 5000, "0." + "3" * 40):
        data = spoilt("offers.0.breaks.0.price", 123456).replace(b"123456", number.encode())
        assert told(data)[0].startswith("basket.json: offers[0].breaks[0].price is "), number[:20]


def _leaves(node: Any, way: str = "") -> list[str]:
    if isinstance(node, dict):
        inside = [_leaves(one, f"{way}.{name}" if way else name) for name, one in node.items()]
    elif isinstance(node, list):
        inside = [_leaves(one, f"{way}.{at}") for at, one in enumerate(node)]
    else:
        return [way]
    return [leaf for some in inside for leaf in some] + ([way] if way else [])


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)


@given(st.sampled_from(_leaves(BASKET)), JSON)
def test_anything_anywhere_is_taken_or_told(path: str, value: object) -> None:
    """No value in any place is a fault of the program."""
    data = spoilt(path, value)
    if not told(data):
        read(data)


@given(st.binary(max_size=200))
def test_any_bytes_are_taken_or_told(data: bytes) -> None:
    """Not one of them is a basket."""
    assert told(data)


def test_two_offers_of_one_number_in_one_row_are_refused_with_both_places() -> None:
    """They could not be told apart; another row, or a source left out, tells them apart."""
    source = {"sheet": 1, "file": "f.csv", "worksheet": "", "row": 7, "sheet_date": "2026-01-10"}
    tree = deepcopy(BASKET)
    tree["offers"].append({**tree["offers"][0], "pack": 3, "source": source})
    tree["offers"][0]["source"] = source
    (words,) = told(json.dumps(tree).encode())
    assert "offers[2]: it has the number and the source of offers[0]; name the worksheet and row" in words
    tree["offers"][2]["source"] = source | {"row": 8}
    assert told(json.dumps(tree).encode()) == []


def test_a_right_check_digit_is_taken() -> None:
    """GS1 General Specifications: 4+0x3+0+6x3+3+8x3+1+3x3+3+3x3+9+3x3 = 89, so the last digit is 1."""
    assert told(spoilt("offers.0.gtin", "4006381333931")) == []
