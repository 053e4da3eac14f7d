"""An order that comes in several deliveries, in whole minor units. Figures by hand."""

from decimal import Decimal

from sourcing.basics.margin_facts import Purchase
from sourcing.basics.money import Money
from sourcing.basics.order import PaperCharge, PurchaseOrder, Receipt, ReceiptLine
from sourcing.basics.value import changed
from sourcing.margins.bought import bought as bought_lines
from sourcing.margins.came import AsCame, as_came
from sourcing.margins.ordered import as_ordered
from tests.margins.facts import bought, charge, order, purchase, receipt


def half(of: PurchaseOrder, paper: str, freight: str, handling: str, rate: str) -> Receipt:
    """Two of the four pieces, at 10.00 each, with handling stated on the paper."""
    stated = PaperCharge(name="handling", amount=Money(amount=Decimal(handling), currency=of.currency))
    came = [ReceiptLine(line=1, quantity=2, unit_price=Decimal("10.00"))]
    return receipt(of, came, freight, paper=paper, rate=Decimal(rate), other_charges=(stated,))


def test_a_line_in_two_deliveries_is_added_up_at_the_rate_of_each_paper() -> None:
    """Goods 20.00 at 0.70 and at 0.80, before at the order's 0.70; freight and handling the same way."""
    line = bought(1, "1", "28.00", needed=4, ordered=4, unit_price=Decimal("10.00"))
    line = changed(line, goods=Money(amount=Decimal("40.00"), currency="CAD"))
    of = order(line, currency="CAD", rate=Decimal("0.70"))
    papers = half(of, "DN-1", "4.00", "2.00", "0.70"), half(of, "DN-2", "5.00", "1.00", "0.80")
    made = purchase(of, *papers)
    assert as_came(made, as_ordered(made, 2, {1}), "USD") == {
        1: AsCame(
            pieces=4, good=4, goods=3000, goods_before=2800, freight=680, later=400, other=220, rate=Decimal("0.80")
        )
    }


def test_freight_not_charged_yet_is_no_gain() -> None:
    """Of 20.00 freight ordered 5.00 has come with the first line: nothing is cheaper until all is here."""
    of = order(bought(1, "1", "10.00", "10.00"), bought(2, "2", "10.00", "10.00"), charges=[charge("freight", "20.00")])
    first = receipt(of, [ReceiptLine(line=1, quantity=1, unit_price=Decimal("10.00"))], "5.00")
    here, waiting = bought_lines(purchase(of, first), "USD")
    assert here.received is not None and waiting.received is None
    assert (here.received.rise.dearer, here.received.rise.moved) == (0, -500)


def _others(*papers: Receipt, of: PurchaseOrder) -> int:
    made: Purchase = purchase(of, *papers)
    (line,) = bought_lines(made, "USD")
    assert line.received is not None
    return line.received.others


def test_what_the_papers_state_takes_the_place_of_handling_and_small_order_fee() -> None:
    """Ordered with 3.00 handling, 2.00 small-order fee and 4.00 duty; the papers state 1.50 and 1.00 handling."""
    line = bought(1, "1", "40.00", "9.00", needed=4, ordered=4)
    of = order(line, charges=[charge("handling", "3.00"), charge("small-order fee", "2.00")])
    assert _others(half(of, "DN-1", "0.00", "1.50", "1"), half(of, "DN-2", "0.00", "1.00", "1"), of=of) == 400 + 250
    assert _others(receipt(of), of=of) == 900
