"""Charges on the suppliers' papers beside freight: each counted once, under whatever name the order has it. By hand."""

from decimal import Decimal

import pytest

from sourcing.basics.margin import JobMargin
from sourcing.basics.margin_facts import Purchase
from sourcing.basics.order import PaperCharge, ReceiptLine
from sourcing.basics.value import changed
from sourcing.margins.came import as_came
from sourcing.margins.ordered import as_ordered
from sourcing.ordering.receiving import freight_shares
from tests.builders import usd
from tests.margins.facts import bought, charge, facts, order, purchase, quote, quoted, receipt
from tests.margins.test_lines_and_leaks import cost, made, steps


@pytest.mark.parametrize("name", ["Entry fee", "entry FEE"])
def test_an_entry_fee_on_the_suppliers_paper_is_counted_once(name: str) -> None:
    """Ordered with 5.00 of it, charged 6.00 by the paper under the order's name; under another it comes on top."""
    fee = changed(charge("entry fee", "5.00"), name="Entry fee")
    one = order(bought(1, "1", "20.00", "5.00"), charges=[fee])
    of = facts(quote(quoted("1", "60.00", "20.00", "5.00")))

    def with_paper(charged: str) -> JobMargin:
        return made(of, purchase(one, receipt(one, other_charges=(PaperCharge(name=charged, amount=usd("6.00")),))))

    assert cost(with_paper(name), "received") == "26.00"
    assert steps(with_paper(name)) == {"freight and fees above the quote": "-1.00"}
    assert cost(with_paper("Fuel"), "received") == "31.00"


def test_a_charge_on_the_first_of_two_papers_is_all_there_is_once_everything_has_come() -> None:
    """6.00 of handling ordered over two lines; the first paper charges all of it, the second none."""
    lines = bought(1, "1", "20.00", "3.00"), bought(2, "2", "20.00", "3.00")
    one = order(*lines, charges=[charge("handling", "6.00")])
    of = facts(quote(quoted("1", "60.00", "20.00", "3.00"), quoted("2", "60.00", "20.00", "3.00")))
    stated = (PaperCharge(name="handling", amount=usd("6.00")),)
    first, second = (ReceiptLine(line=at, quantity=1, unit_price=Decimal("20.00")) for at in (1, 2))
    papers = receipt(one, [first], paper="DN-1", other_charges=stated), receipt(one, [second], paper="DN-2")
    assert cost(made(of, purchase(one, *papers)), "received") == "46.00"


def of_three() -> tuple[Purchase, JobMargin]:
    """Three lines ordered for 313.50, 31.97 and 6.90 with 11.50 of freight, shared 10.23, 1.04, 0.23. The first is
    confirmed dearer, at 110.00 each, and charged at 112.00; freight 12.75 and 2.00 of handling nobody ordered."""
    shares = {1: ("313.50", "10.23", 3), 2: ("31.97", "1.04", 1), 3: ("6.90", "0.23", 2)}
    lines = [
        bought(at, str(at), goods, more, needed=pieces, ordered=pieces) for at, (goods, more, pieces) in shares.items()
    ]
    one = order(*lines, charges=[charge("freight", "11.50")])
    prices = {1: "112.00", 2: "31.97", 3: "6.90"}
    came = [ReceiptLine(line=at, quantity=shares[at][2], unit_price=Decimal(price)) for at, price in prices.items()]
    paper = receipt(one, came, "12.75", other_charges=(PaperCharge(name="Handling", amount=usd("2.00")),))
    confirmed = changed(purchase(one, paper), goods={1: Decimal("330.00"), 2: Decimal("31.97"), 3: Decimal("6.90")})
    quoted_lines = [
        quoted(str(at), "500.00", goods, more, quantity=pieces) for at, (goods, more, pieces) in shares.items()
    ]
    return confirmed, made(facts(quote(*quoted_lines)), confirmed)


def test_a_price_confirmed_since_moves_no_charge_between_lines() -> None:
    """By value of goods (336.00, 31.97 and 13.80 of 381.77): freight 11.22, 1.07, 0.46, handling 1.76, 0.17, 0.07."""
    _, margin = of_three()
    costs = {one.label: dict(one.stages)["received"].cost for one in margin.lines}
    assert costs == {"1": usd("348.98"), "2": usd("33.21"), "3": usd("14.33")}
    assert cost(margin, "received") == "396.52"


def test_no_line_is_told_to_be_ordered_with_less_than_nothing() -> None:
    """Nobody ordered other charges: on each line they were ordered with 0.00."""
    purchase_of, margin = of_three()
    assert [one.charges - one.carrier for one in as_ordered(purchase_of, 2, frozenset())] == [0, 0, 0]
    assert margin.bridge is not None
    told = [words for step in margin.bridge.steps for words in step.why if "other charges" in words]
    said = "line {}: other charges {} on the papers of PO-2026-0001, ordered with 0.00"
    assert told == [said.format(*one) for one in (("1", "1.76"), ("2", "0.17"), ("3", "0.07"))]


def test_freight_is_shared_as_the_receipts_own_page_shares_it() -> None:
    """Twelve pieces charged and ten came: each line bears freight by the value of what came, 40.00 and 10.00."""
    lines = bought(1, "1", "48.00", "4.00", needed=12, ordered=12), bought(2, "2", "10.00", "1.00")
    one = order(*lines, charges=[charge("freight", "5.00")])
    came = (
        ReceiptLine(line=1, quantity=10, unit_price=Decimal("4.00"), on_paper=12),
        ReceiptLine(line=2, quantity=1, unit_price=Decimal("10.00")),
    )
    paper = receipt(one, came, "6.00")
    ordered = as_ordered(purchase(one, paper), 2, {1, 2})
    shares = {at: line.freight for at, line in as_came(purchase(one, paper), ordered, "USD").items()}
    assert shares == {1: 480, 2: 120}
    assert {at: share.minor() for at, share in freight_shares(one, paper).items()} == shares


def test_a_cent_of_rounding_is_no_charge_below_nothing() -> None:
    """Freight and handling of 0.50 each over 3.00, 3.00 and 4.00 of goods, shared by the order as one sum of 1.00."""
    shares = {1: ("3.33", "0.33"), 2: ("3.33", "0.33"), 3: ("3.34", "0.34")}
    lines = [bought(at, str(at), *share) for at, share in shares.items()]
    one = order(*lines, charges=[charge("freight", "0.50"), charge("handling", "0.50")])
    found = as_ordered(purchase(one, receipt(one)), 2, {1, 2, 3})
    assert sum(line.carrier for line in found) == sum(line.papers for line in found) == 50
    assert all(line.charges == line.carrier + line.papers for line in found)
