"""A discount on the final paper: 'less 5.00' on its line, sums of what is left, and not a word of the owner's."""

from decimal import Decimal

from sourcing.basics.bill import Off
from sourcing.basics.quote import QuoteLine
from sourcing.basics.value import changed
from sourcing.documents.bill_paper import bill_html, bill_text, sum_rows
from sourcing.quoting.bill import make_bill
from tests.builders import usd
from tests.documents.html_reader import Page
from tests.quoting.bill_values import FRIDAY, LINES, line, made, quote

ASKED = Off(amounts=(("A", Decimal("5.00")), ("D", Decimal("14.95"))), words="she threatened to go elsewhere")
BILL = make_bill(made(off=ASKED), "B-2026-0001", FRIDAY, "Oona Brandeth")


def test_the_line_says_what_it_was_what_is_off_and_what_is_left() -> None:
    """Parts 25.60 and labour 28.80 make 54.40; less 5.00 leaves 49.40."""
    page = " ".join(Page(bill_html(BILL)).text.split())
    assert "Parts, 2 at $12.80: $25.60; Labour, 0.3 h at $96.00: $28.80; less $5.00" in page
    assert "$49.40" in page
    assert "Freight: $14.95; less $14.95" in page and "$0.00" in page
    words = " ".join(bill_text(BILL).split())
    assert "A Keepers: $49.40 (less $5.00)" in words


def test_the_sums_on_the_paper_add_up_to_the_amount_before_tax() -> None:
    assert sum((amount.amount for _, amount in sum_rows(BILL)), Decimal(0)) == BILL.total.before_tax.amount
    assert sum((one.price.amount for one in BILL.lines), Decimal(0)) + Decimal("9.60") == BILL.total.before_tax.amount


def test_the_reason_is_the_owners_and_not_on_the_paper() -> None:
    assert "threatened" not in bill_html(BILL) + bill_text(BILL)


def test_a_line_of_one_thing_still_shows_the_amount_before() -> None:
    """Its price alone would hide what it was."""
    fee = line("3", "Winter storage", fee_price=usd("20.00"), hours="0", labour_price=usd("0.00"))
    every: tuple[QuoteLine, ...] = (*LINES, changed(fee, labour_rate=None))
    off = Off(amounts=(("3", Decimal("20.00")),), words="regular customer")
    found = make_bill(made(quote(*every), off=off), "B-2026-0001", FRIDAY, "Oona Brandeth")
    assert "Fee: $20.00; less $20.00" in " ".join(Page(bill_html(found)).text.split())


def test_a_bill_without_a_discount_is_as_it_was() -> None:
    """No line says less."""
    plain = make_bill(made(), "B-2026-0001", FRIDAY, "Oona Brandeth")
    assert "less $" not in bill_html(plain) + bill_text(plain)
