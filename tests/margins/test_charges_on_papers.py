"""Charges on the suppliers' papers beside freight: each counted once, under whatever name the order has it. By hand."""

from decimal import Decimal

import pytest

from sourcing.basics.margin import JobMargin
from sourcing.basics.order import PaperCharge, ReceiptLine
from sourcing.basics.value import changed
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
