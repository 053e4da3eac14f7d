"""Landed cost as others have published it: import examples, the merchandise processing fee, quantity discounts."""

from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.landed_cost import LandedOrder
from sourcing.basics.money import total
from sourcing.basics.terms import EntryFee, TaxPaid
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.quantity import goods_at
from tests.builders import door, flat, item, named, offer, usd

D = Decimal


def imported(goods: str, freight: str, insurance: str, **terms: Any) -> LandedOrder:
    """An order whose duty is on cost, insurance and freight together, as most countries outside the US take it."""
    carried = str(D(freight) + D(insurance))
    return landed_order([item(offer(price=goods))], door(freight=flat(carried), **terms))


def sums(order: LandedOrder) -> tuple[str, str, str]:
    """Duty, tax and total, after seeing that the lines are the total."""
    assert total((line.amount for line in order.lines), "USD") == order.total
    duty, tax = (total((line.amount for line in order.lines if line.kind == kind), "USD") for kind in ("duty", "tax"))
    return str(duty.amount), str(tax.amount), str(order.total.amount)


@pytest.mark.parametrize(
    ("source", "parts", "duty_percent", "tax_percent", "uplift", "expected"),
    [
        (
            "a published import-duty calculator page: duty and tax on goods, shipping and insurance",
            ("1000.00", "100.00", "0"),
            *("2", "20", "0"),
            ("22.00", "224.40", "1346.40"),
        ),
        (
            "a published import-cost page (its text says 1000, its sums use 10,000)",
            ("10000.00", "1000.00", "200.00"),
            *("20", "18", "0"),
            ("2240.00", "2419.20", "15859.20"),
        ),
        (
            "a published South African example: 10 % uplift in the tax base only, in ZAR",
            ("12000.00", "1500.00", "300.00"),
            *("20", "15", "10"),
            ("2760.00", "2691.00", "19251.00"),
        ),
    ],
)
def test_published_import_examples(
    source: str,
    parts: tuple[str, str, str],
    duty_percent: str,
    tax_percent: str,
    uplift: str,
    expected: tuple[str, str, str],
) -> None:
    """Duty on goods and freight, tax on goods, freight and duty; pages read second-hand, arithmetic re-checked."""
    tax = TaxPaid(name=source, percent=D(tax_percent), uplift_percent=D(uplift))
    order = imported(*parts, duty_percent=D(duty_percent), duty_on="goods and freight", tax=tax)
    assert sums(order) == expected


def test_published_freight_inwards() -> None:
    """Goods 80.00 and freight inwards 5.00 stand in stock at 85.00, not 80.00. Source: a published accounting page."""
    order = landed_order([item(offer(price="80.00"))], door(freight=flat("5.00")))
    assert order.total == usd("85.00") == order.items[0].landed


@pytest.mark.parametrize(
    ("entered", "fee"),
    [
        ("2500", "29.66"),
        ("5000", "29.66"),
        ("8562.36", "29.66"),  # 0.3464 % is 29.66 exactly to the cent
        ("8563", "29.66"),
        ("10000", "34.64"),
        ("100000", "346.40"),
        ("200000", "575.35"),
    ],
)
def test_merchandise_processing_fee(entered: str, fee: str) -> None:
    """0.3464 % of the entered value, at least 29.66 and at most 575.35.

    Source: United States merchandise processing fee of formal entries, fiscal year 2023 (19 CFR 24.23 as adjusted; read
    in a customs broker's notice, year inferred there); the fees themselves are computed from that row.
    """
    rule = EntryFee(name="Merchandise processing fee", percent=D("0.3464"), least=D("29.66"), most=D("575.35"))
    order = landed_order([item(offer(price=entered))], door(freight=flat("0"), entry_fees=(rule,)))
    assert named(order.lines)["Merchandise processing fee"] == fee
    assert order.total == usd(entered) + usd(fee)


SCHEDULE = [(1, "0.30"), (500, "0.29"), (1000, "0.28")]
"""Textbook breaks: 0.30 each below 500, 0.29 from 500, 0.28 from 1000."""


@pytest.mark.parametrize(
    ("pieces", "all_pieces", "pieces_above"),
    [
        (499, "149.70", "149.70"),
        (500, "145.00", "149.99"),
        (516, "149.64", "154.63"),
        (517, "149.93", "154.92"),
        (999, "289.71", "294.70"),
        (1000, "280.00", "294.98"),
        (1500, "420.00", "434.98"),
    ],
)
def test_all_units_and_incremental_discounts(pieces: int, all_pieces: str, pieces_above: str) -> None:
    """A textbook's trash-bag discount schedule: 0.30 below 500, 0.29 from 500, 0.28 from 1000 (Nahmias, Production and
    Operations Analysis, chapter on quantity discounts: schedule from memory; sums computed by hand here).

    From the break quantity on means the piece that reaches it too: the 500th costs 0.29 (this program's rule). The book
    writes its incremental cost of 500 as 500 x 0.30; one piece's difference of 0.01 is the only one.
    """
    bags = offer(breaks=SCHEDULE)
    for word, expected in (("all pieces", all_pieces), ("pieces above", pieces_above)):
        order = landed_order([item(bags, pieces)], door(breaks=word, freight=flat("0")))
        assert str(order.total.amount) == expected


def test_buying_to_the_break_pays_between_484_and_499() -> None:
    """All units: 500 bags cost 145.00, as 483.33 bags do at 0.30. From the same textbook schedule, computed."""
    bags = offer(breaks=SCHEDULE)
    dearer = [n for n in range(1, 500) if goods_at(bags, n, "all pieces").amount > D("145.00")]
    assert (dearer[0], dearer[-1]) == (484, 499)
