"""Why goods are bought here and in this number: the reasons an owner sees on an order."""

from decimal import Decimal

from sourcing.basics.landed_cost import CostLine, LandedItem, LandedOrder
from sourcing.basics.offer import PriceBreak
from sourcing.basics.value import changed
from sourcing.ordering.reasons import line_reasons, order_reasons
from tests.builders import usd
from tests.documents.buying_values import PELLBROOK, STONEGARTH, landed_item, landed_order
from tests.documents.values import BEHIND

PINS = changed(PELLBROOK, pack=10)
FREE = CostLine(name="Freight", kind="freight", amount=usd("0.00"), rule="free from 150.00 USD of goods")
HANDLING = CostLine(name="Handling", kind="handling", amount=usd("2.00"), rule="2.00 USD per order")


def with_lines(*lines: CostLine, items: int = 1) -> LandedOrder:
    """An order of so many items with these charges."""
    one = landed_order(landed_item(STONEGARTH, 1, "119.00", "131.50"), "Stonegarth Trade Parts", "12.50")
    goods = CostLine(name="Goods", kind="goods", amount=usd("119.00"), rule="1 x 119.00")
    return changed(one, items=one.items * items, lines=(goods, *lines))


def bought(item: LandedItem, needed: int, ordered: int) -> tuple[str, ...]:
    """Reasons of an item in that number."""
    return line_reasons(BEHIND, changed(item, item=changed(item.item, needed=needed, ordered=ordered)))


def test_free_freight_and_an_order_discount_are_reasons() -> None:
    """A discount of one line is not: it is there without the others."""
    discount = CostLine(name="Order discount", kind="discount", amount=usd("-6.00"), rule="5 % from 100.00")
    own = CostLine(name="Discount", kind="discount", amount=usd("-1.00"), rule="2 %")
    assert order_reasons(with_lines(FREE, discount, own), 1) == (
        "the order passes free freight: free from 150.00 USD of goods",
        "the order passes a discount: -6.00 USD, 5 % from 100.00",
    )


def test_charges_paid_once_are_a_reason_where_lines_share_them() -> None:
    """Freight that is included in the price is none."""
    flat = changed(FREE, amount=usd("14.95"), rule="flat 14.95")
    assert order_reasons(with_lines(flat, HANDLING), 1) == ()
    assert order_reasons(with_lines(flat, HANDLING, items=2), 2) == (
        "paid once for 2 lines of 2 jobs: freight 14.95 USD, handling 2.00 USD",
    )
    assert order_reasons(with_lines(changed(FREE, rule="included in the price"), items=2), 1) == ()


def test_pieces_beyond_the_need_are_explained() -> None:
    """A pack, a multiple, a minimum, a cheaper break; what goes on the shelf, and at what."""
    pins = landed_item(PINS, 10, "7.90", "7.90", surplus="6.32")
    assert bought(pins, 2, 10)[-1] == "10 ordered though 2 needed: pack of 10, 8 go on the shelf at 6.32 USD"
    multiple = landed_item(changed(STONEGARTH, order_multiple=3), 3, "357.00", "357.00", surplus="119.00")
    assert "sold in multiples of 3, 1 goes on the shelf at 119.00 USD" in bought(multiple, 2, 3)[-1]
    least = landed_item(changed(STONEGARTH, minimum=5), 5, "595.00", "595.00", surplus="476.00")
    assert "at least 5 are sold" in bought(least, 1, 5)[-1]
    breaks = tuple(PriceBreak(from_quantity=at, price=Decimal(each)) for at, each in ((1, "10.00"), (5, "5.50")))
    cheaper = landed_item(changed(STONEGARTH, breaks=breaks), 5, "27.50", "27.50", surplus="5.50")
    assert "the price from 5 on makes them cheaper together than fewer" in bought(cheaper, 4, 5)[-1]


def test_no_surplus_no_excuse() -> None:
    """Only where it was quoted from, and that the price was promised."""
    item = landed_item(STONEGARTH, 1, "119.00", "131.50")
    assert line_reasons(BEHIND, item) == ("quoted from it: goods and share of freight",)
    assert line_reasons(changed(BEHIND, held=True), item)[1].startswith("the customer was promised the price")
