"""One unit more, and the fewest more that make the whole order no dearer: the order landed again, compared."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.freight import Freight, WeightBand
from sourcing.basics.landed_cost import LandedOrder, OneMore, OrderItem
from sourcing.basics.offer import Offer
from sourcing.basics.terms import OrderDiscount
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.one_more import next_cheaper, one_more, tried_to
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.quantity import pieces_to_order
from tests.builders import door, flat, item, offer, usd

D = Decimal


def lands(at: Door) -> Any:
    """Lands items at that door."""

    def land(items: Sequence[OrderItem]) -> LandedOrder:
        return landed_order(items, at)

    return land


def more(items: Sequence[OrderItem], at: Door) -> OneMore:
    """One unit more of the first item."""
    return one_more(landed_order(items, at), 0, at.terms, lands(at))


def cheaper(items: Sequence[OrderItem], at: Door) -> OneMore | None:
    """The fewest pieces more of the first item for no more money."""
    return next_cheaper(landed_order(items, at), 0, at.terms, lands(at))


def test_one_more_in_the_middle_costs_its_price() -> None:
    """Freight is flat: the second piece costs 10.00 and nothing else changes."""
    found = more([item(offer())], door())
    assert (found.ordered, found.more, found.difference, found.changes) == (2, 1, usd("10.00"), ())
    assert found.per_piece == usd("10.00")


def test_one_more_comes_in_whole_packs() -> None:
    """Ten pins more at 85.00 per hundred: 8.50, so 0.85 a piece."""
    pins = offer(price="85.00", price_basis=100, pack=10)
    found = more([item(pins, needed=2, ordered=10)], door())
    assert (found.ordered, found.more, found.difference) == (20, 10, usd("8.50"))
    assert found.per_piece is not None and found.per_piece.amount == D("0.85")


def test_one_more_passes_free_freight() -> None:
    """145.00 and 10.00 of freight; the next piece at 5.00 makes 150.00 and freight free: 5.00 less in all."""
    found = more([item(offer(price="5.00"), needed=29)], door(freight=flat("10.00", "150.00")))
    assert found.difference == usd("-5.00")
    assert found.changes == (
        "Freight: 0.00 USD instead of 10.00 USD, free from 150.00 USD of goods; this order has 150.00",
    )


def test_one_more_reaches_a_price_break() -> None:
    """Four at 10.00 are 40.00, five at 7.00 are 35.00."""
    found = more([item(offer(breaks=[(1, "10.00"), (5, "7.00")]), needed=4)], door())
    assert (found.difference, found.changes) == (usd("-5.00"), ("price break from 5 pieces: 7.00 USD each",))


def test_one_more_reaches_the_minimum_order() -> None:
    """Below 25 a fee of 4.50, or no order at all; two pieces of 15.00 pass it."""
    fee = more([item(offer(price="15.00"))], door(minimum_order=D(25), small_order_fee=D("4.50")))
    assert (fee.difference, fee.changes) == (usd("10.50"), ("Small-order fee: 4.50 USD falls away",))
    none = more([item(offer(price="15.00"))], door(minimum_order=D(25)))
    assert none.difference is None and not none.refusal
    assert none.changes == ("the supplier takes the order: it reaches 25 USD",)


def test_an_order_still_refused_has_no_difference() -> None:
    """Two pieces are still too few."""
    found = more([item(offer(price="5.00"))], door(minimum_order=D(25)))
    assert found.difference is None and "takes no order below 25 USD" in found.refusal


def test_unknown_freight_leaves_the_difference_open() -> None:
    """What is not known of both orders may differ between them."""
    found = more([item(offer())], door(freight=None))
    assert (found.difference, found.per_piece) == (None, None) and found.missing
    assert cheaper([item(offer())], door(freight=None)) is None


def test_freight_that_is_no_longer_known_does_not_fall_away() -> None:
    """The next piece is heavier than the last band: nothing is said to be free."""
    bands = (WeightBand(to_weight=D(5), charge=D(8)),)
    at = door(freight=Freight(rule="by weight", weight_bands=bands))
    found = more([item(offer(weight_kg=D(3)))], at)
    assert found.difference is None and found.missing
    assert found.changes == ("Freight: 8.00 USD, and then not known",)


def test_more_of_one_item_lifts_the_whole_order() -> None:
    """The belt alone pays freight; six keepers at 4.00 more bring 126.90 past 150.00 and cost 24.00 less 30.00."""
    order = [item(offer(price="4.00"), need="2"), item(offer(number="X-2", price="126.90"), need="1")]
    found = cheaper(order, door(freight=flat("30.00", "150.00")))
    assert found is not None and (found.more, found.difference) == (5, usd("-10.00"))


@pytest.mark.parametrize(("freight", "expected"), [("20.00", 2), ("19.99", None)])
def test_no_dearer_means_equal_is_told(freight: str, expected: int | None) -> None:
    """Two pieces more at 10.00 for freight of 20.00 cost nothing; for 19.99 they cost a cent."""
    found = cheaper([item(offer(), needed=3)], door(freight=flat(freight, "50.00")))
    assert (found.more if found else None) == expected


def test_how_many_more_until_the_supplier_takes_the_order() -> None:
    """Minimum 25.00 at 4.00 a piece: seven pieces, five more than two."""
    found = cheaper([item(offer(price="4.00"), needed=2)], door(minimum_order=D(25)))
    assert found is not None and (found.ordered, found.more) == (7, 5)


def test_it_looks_past_the_last_break_and_every_limit() -> None:
    """A break at 40 and free freight from 150 at 2.00 a piece: 75 pieces; packs round up."""
    of = offer(breaks=[(1, "3.00"), (40, "2.00")], pack=4)
    at = door(freight=flat("10.00", "150.00"))
    assert tried_to(landed_order([item(of, 1, 4)], at), 0, at.terms) == 76


def test_the_search_ends_somewhere() -> None:
    """A threshold of a million is not searched for: 300 quantities are tried, in packs of four."""
    at = door(freight=flat("10.00", "1000000"))
    assert tried_to(landed_order([item(offer(pack=4), 1, 4)], at), 0, at.terms) == 1204


def test_an_order_discount_reached_at_the_cent_is_told() -> None:
    """From 30.00 on 5 % off: the third piece at 10.00 reaches it, the fourth changes nothing more."""
    at = door(order_discounts=(OrderDiscount(from_value=D("30.00"), percent=D(5)),))
    third = more([item(offer(), needed=2)], at)
    assert (third.changes, third.difference) == (("order discount of 5 % from 30.00 USD on",), usd("8.50"))
    fourth = more([item(offer(), needed=3)], at)
    assert (fourth.changes, fourth.difference) == ((), usd("9.50"))


def slow(items: Sequence[OrderItem], at: Door, of: Offer, last: int) -> int | None:
    """Every allowed quantity landed, without the code under test."""
    now = landed_order(items, at)
    for pieces in range(items[0].ordered + 1, last + 1):
        if pieces_to_order(of, pieces) == pieces:
            after = landed_order([item(of, items[0].needed, pieces)], at)
            if not after.refusal and (now.refusal or after.total <= now.total):
                return pieces
    return None


@given(
    st.integers(1, 30),
    st.lists(st.tuples(st.integers(2, 60), st.integers(50, 99)), max_size=3, unique_by=lambda one: one[0]),
    st.tuples(st.integers(0, 4000), st.integers(100, 40_000)),
    st.tuples(st.integers(0, 20_000), st.booleans()),
    st.integers(1, 4),
)
def test_the_fewest_more_by_trying_all(
    needed: int, falls: list[tuple[int, int]], freight: tuple[int, int], least: tuple[int, bool], pack: int
) -> None:
    """Against a plain loop over the same quantities, with breaks, packs, thresholds and minimum orders."""
    breaks, price = [(1, "6.00")], D("6.00")
    for quantity, percent in sorted(falls):
        price = (price * percent / 100).quantize(D("0.01"))
        breaks.append((quantity, str(price)))
    of = offer(breaks=breaks, pack=pack)
    at = door(
        freight=flat(str(D(freight[0]) / 100), str(D(freight[1]) / 100)),
        minimum_order=D(least[0]) / 100,
        small_order_fee=D("4.50") if least[1] else None,
    )
    items = [item(of, needed, pieces_to_order(of, needed))]
    found = cheaper(items, at)
    last = tried_to(landed_order(items, at), 0, at.terms)
    assert (found.ordered if found else None) == slow(items, at, of, last)
