"""Discounts, fees and taxes of an order, worked by hand; each amount stands in a line that says its rule."""

from decimal import Decimal

import pytest

from sourcing.basics.landed_cost import LandedOrder
from sourcing.basics.money import total
from sourcing.basics.problem import Refused
from sourcing.basics.rate import Rate
from sourcing.basics.terms import CashDiscount, EntryFee, OrderDiscount, TaxPaid
from sourcing.basics.value import changed
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.quantity import goods_at, price_each, sensible_quantities
from tests.builders import door, flat, item, named, offer, usd

TIERS = offer(breaks=[(1, "10.00"), (5, "9.00"), (10, "8.00")])


def rules(order: LandedOrder) -> dict[str, str]:
    """Lines as name to rule."""
    return {line.name: line.rule for line in order.lines}


@pytest.mark.parametrize(
    ("pieces", "all_pieces", "above"),
    [(4, "40.00", "40.00"), (5, "45.00", "49.00"), (9, "81.00", "85.00"), (12, "96.00", "109.00")],
)
def test_breaks_for_all_pieces_or_for_those_above(pieces: int, all_pieces: str, above: str) -> None:
    """Nine: 9 x 9.00, or 4 x 10.00 and 5 x 9.00. Twelve: 12 x 8.00, or 4 x 10.00, 5 x 9.00 and 3 x 8.00."""
    assert goods_at(TIERS, pieces, "all pieces") == usd(all_pieces)
    assert goods_at(TIERS, pieces, "pieces above") == usd(above)


def test_pieces_above_never_make_more_pieces_cheaper() -> None:
    """So only the fewest are worth considering, and the price each is their average."""
    assert sensible_quantities(TIERS, 9, "all pieces") == (9, 10)
    assert sensible_quantities(TIERS, 9, "pieces above") == (9,)
    assert price_each(TIERS, 4, "pieces above") == Decimal("10.00")
    assert price_each(TIERS, 9, "pieces above") == Decimal("9.444444")
    order = landed_order([item(TIERS, 9)], door(breaks="pieces above"))
    assert rules(order)["Goods X-1"] == "4 x 10.00 USD and 5 x 9.00 USD"


@pytest.mark.parametrize(
    ("price", "off"), [("99.99", None), ("100.00", "-2.00"), ("249.99", "-5.00"), ("250.00", "-12.50")]
)
def test_order_discount_by_value(price: str, off: str | None) -> None:
    """2 % from 100.00, 5 % from 250.00; 249.99 x 2 % = 4.9998."""
    steps = tuple(OrderDiscount(from_value=Decimal(at), percent=Decimal(of)) for at, of in ((100, 2), (250, 5)))
    order = landed_order([item(offer(price=price))], door(order_discounts=steps))
    assert named(order.lines).get("Order discount") == off
    assert order.order_value == usd(price)
    assert total((one.landed for one in order.items), "USD") == order.total


def test_order_discount_shares_fall_on_the_items() -> None:
    """10 % off 30.00 and 60.00: the first bears 1.00 of the 3.00 freight less 3.00 discount, largest remainder."""
    half = (OrderDiscount(from_value=Decimal(0), percent=Decimal(10)),)
    items = [item(offer(price="30.00"), need="1"), item(offer(price="60.00"), need="2")]
    order = landed_order(items, door(order_discounts=half, freight=flat("3.00")))
    assert [one.landed for one in order.items] == [usd("28.00"), usd("56.00")]


def test_discount_and_duty_on_it() -> None:
    """200.00 less 5 % order discount, duty 3 %: 6.00 on the goods, -0.30 on the discount."""
    held = door(
        order_discounts=(OrderDiscount(from_value=Decimal(0), percent=Decimal(5)),),
        duty_percent=Decimal(3),
        freight=flat("0"),
    )
    order = landed_order([item(offer(price="200.00"))], held)
    assert named(order.lines)["Duty on the order discount"] == "-0.30"
    assert order.total == usd("195.70")


def test_cash_discount_stands_apart() -> None:
    """2 % of 190.00 (200.00 less 5 %) would be saved by paying in 10 days; no line and no total holds it."""
    held = door(
        order_discounts=(OrderDiscount(from_value=Decimal(0), percent=Decimal(5)),),
        cash_discount=CashDiscount(percent=Decimal(2), within_days=10),
        freight=flat("10.00"),
    )
    order = landed_order([item(offer(price="200.00"))], held)
    assert order.cash_discount is not None and order.cash_discount.amount == usd("-3.80")
    assert "Cash discount" not in named(order.lines) and order.total == usd("200.00")


def test_handling_of_the_order_and_of_each_line() -> None:
    """3.50 once and 0.75 for each of two lines."""
    held = door(handling=Decimal("3.50"), handling_per_line=Decimal("0.75"))
    order = landed_order([item(offer(), need="1"), item(offer(), need="2")], held)
    assert (named(order.lines)["Handling"], named(order.lines)["Handling of lines"]) == ("3.50", "1.50")


def test_payment_fee_on_goods_less_discount_and_freight() -> None:
    """2.9 % of 100.00 - 10.00 + 12.00 = 102.00 is 2.958."""
    held = door(
        order_discounts=(OrderDiscount(from_value=Decimal(0), percent=Decimal(10)),),
        freight=flat("12.00"),
        payment_percent=Decimal("2.9"),
        handling=Decimal(50),
    )
    order = landed_order([item(offer(price="100.00"))], held)
    assert named(order.lines)["Payment fee"] == "2.96"
    assert rules(order)["Payment fee"] == "2.9 % of goods after discounts and freight 102.00 USD"


@pytest.mark.parametrize(("price", "fee"), [("2500.00", "29.66"), ("10000.00", "34.64"), ("200000.00", "575.35")])
def test_entry_fee_between_least_and_most(price: str, fee: str) -> None:
    """0.3464 % of the goods, at least 29.66 and at most 575.35: the United States' merchandise processing fee of fiscal
    year 2023, figures as published by a freight forwarder; the charges re-computed."""
    mpf = EntryFee(
        name="Processing fee", percent=Decimal("0.3464"), least=Decimal("29.66"), most=Decimal("575.35"), currency="USD"
    )
    order = landed_order([item(offer(price=price))], door(entry_fees=(mpf,), freight=flat("0")))
    assert named(order.lines)["Processing fee"] == fee


def test_an_entry_fee_in_the_shop_s_or_a_third_currency() -> None:
    """The supplier bills in EUR, the broker 20.00 CAD at 0.75, customs 5 % of the duty and 2.00 USD."""
    fees = (
        EntryFee(name="Broker", charge=Decimal(20), currency="CAD"),
        EntryFee(name="Customs", charge=Decimal(2), percent=Decimal(5), of="duty", currency="USD"),
    )
    held = door(currency="EUR", rate="1.10", entry_fees=fees, duty_percent=Decimal(10), freight=flat("0"))
    belt = item(offer(price="100.00", currency="EUR"))
    with pytest.raises(Refused, match="CAD"):
        landed_order([belt], held)
    cad = Rate(currency="CAD", into="USD", rate=Decimal("0.75"), dated=held.rate.dated)
    order = landed_order([belt], changed(held, other_rates=(cad,)))
    assert (named(order.lines)["Broker"], named(order.lines)["Customs"]) == ("15.00", "2.55")
    assert "1 CAD = 0.75 USD" in rules(order)["Broker"]


def test_tax_on_an_uplifted_base() -> None:
    """12,000 goods, 1,500 freight (300 insurance in it), duty 20 % on both, tax 15 % of 1.1 x 13,800 + 2,760 = 17,940:
    2,691. The South African worked example of value added tax on imports, as a customs adviser's page prints it."""
    held = door(
        freight=flat("1800.00"),
        duty_percent=Decimal(20),
        duty_on="goods and freight",
        tax=TaxPaid(name="Import tax", percent=Decimal(15), uplift_percent=Decimal(10)),
    )
    order = landed_order([item(offer(price="12000.00"))], held)
    found = named(order.lines)
    assert (found["Duty"], found["Duty on freight"], found["Import tax"]) == ("2400.00", "360.00", "2691.00")
    assert order.total == usd("19251.00")


def test_every_charge_has_a_kind_and_a_rule() -> None:
    """So that no reader has to guess from a name what a line is for."""
    fee = EntryFee(name="Clearing", charge=Decimal(5))
    held = door(
        handling=Decimal(1),
        handling_per_line=Decimal(1),
        entry_fee=Decimal(1),
        entry_fees=(fee,),
        duty_percent=Decimal(1),
        discount_percent=Decimal(1),
        order_discounts=(OrderDiscount(from_value=Decimal(0), percent=Decimal(1)),),
        payment_percent=Decimal(1),
        minimum_order=Decimal(100),
        small_order_fee=Decimal(1),
        tax=TaxPaid(name="Tax", percent=Decimal(1), on=("goods", "freight", "duty", "fees")),
    )
    order = landed_order([item(offer())], held)
    assert all(line.kind and line.rule for line in order.lines)
    assert {line.kind for line in order.lines} == {
        "goods", "discount", "freight", "handling", "small-order fee", "duty", "entry fee", "payment fee", "tax",
    }  # fmt: skip


def test_an_order_discount_lowers_the_uplifted_base_too() -> None:
    """10 % off 100.00, base raised by 10 %: tax 20 % of 1.1 x 90.00 = 99.00."""
    held = door(
        order_discounts=(OrderDiscount(from_value=Decimal(0), percent=Decimal(10)),),
        tax=TaxPaid(name="Tax", percent=Decimal(20), on=("goods",), uplift_percent=Decimal(10)),
    )
    order = landed_order([item(offer(price="100.00"))], held)
    assert named(order.lines)["Tax"] == "19.80"
    assert rules(order)["Tax"] == "20 % of goods (goods raised by 10 %) 99.00 USD"


def test_currencies_with_other_decimals() -> None:
    """12,345 JPY (no decimals) at 0.0067: 82.71; 3 % order discount 370.35 JPY, taken at once: 2.48 (2.481345).
    1.235 KWD (three decimals) at 3.25: 4.01 (4.01375)."""
    off = (OrderDiscount(from_value=Decimal(0), percent=Decimal(3)),)
    yen = door(currency="JPY", rate="0.0067", order_discounts=off, freight=flat("0"))
    order = landed_order([item(offer(price="12345", currency="JPY"))], yen)
    assert (named(order.lines)["Goods X-1"], named(order.lines)["Order discount"]) == ("82.71", "-2.48")
    dinar = door(currency="KWD", rate="3.25", freight=flat("0"))
    assert landed_order([item(offer(price="1.235", currency="KWD"))], dinar).total == usd("4.01")
