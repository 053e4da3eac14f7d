"""A total with another price's order discount: the true one with its own, and steady in each of the two alone."""

import random
from decimal import Decimal

from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.terms import OrderDiscount
from sourcing.basics.value import changed
from sourcing.landed_cost.charges import order_discount_at
from sourcing.landed_cost.discount_apart import goods_value, total_with_discount_of
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order
from tests.builders import door, flat, item, offer, usd
from tests.landed_cost.random_orders import random_door, random_item


def dearer(of: OrderItem, by: Decimal) -> OrderItem:
    """The item with every price so much higher."""
    steps = tuple(changed(step, price=step.price + by) for step in of.offer.breaks)
    return changed(of, offer=changed(of.offer, breaks=steps))


def test_with_its_own_discount_it_is_the_total_of_the_landed_order() -> None:
    """1,000 random orders, every rule of the terms on now and then; refused and unknown ones have no total."""
    for seed in range(1_000):
        chance = random.Random(seed)
        at = random_door(chance, whole_grams=False)
        one = random_item(chance, at, whole_grams=False)
        whole = landed_order([one], at)
        taken = None if whole.refusal or whole.missing else whole.total
        assert total_with_discount_of(one, one, at) == taken, seed
        assert goods_value(one, at) == whole.order_value.minor(), seed


def test_it_never_falls_with_the_goods_nor_rises_with_the_discount() -> None:
    """Wherever both prices come to the same steps of the supplier's charges."""
    compared = 0
    for seed in range(1_000):
        chance = random.Random(seed)
        at = random_door(chance)
        low = random_item(chance, at)
        high = dearer(low, Decimal(chance.choice(["0.01", "0.07", "1"])))
        if not _alike(low, high, at):
            continue
        own, more, less = (total_with_discount_of(*pair, at) for pair in ((low, low), (high, low), (low, high)))
        if own and more and less:
            compared += 1
            assert less <= own <= more, seed
    assert compared > 300


def _alike(low: OrderItem, high: OrderItem, at: Door) -> bool:
    """Whether neither a discount nor a limit of value lies between the two prices."""
    one, two = (landed_order([of], at) for of in (low, high))
    limits = [at.terms.minimum_order, at.terms.freight.free_from if at.terms.freight else None]
    bands = [band.from_value for band in at.terms.freight.bands] if at.terms.freight else []
    between = [end for end in (*limits, *bands) if end and one.order_value.amount < end <= two.order_value.amount]
    same = order_discount_at(one.order_value, at.terms) == order_discount_at(two.order_value, at.terms)
    return same and not between


def test_by_hand() -> None:
    """40.00 less 5 % of 50.00, and 10.00 freight: 47.50; with its own 5 %: 48.00."""
    off = (OrderDiscount(from_value=Decimal(10), percent=Decimal(5)),)
    at = door(freight=flat("10.00"), order_discounts=off)
    forty, fifty = item(offer(price="40.00")), item(offer(price="50.00"))
    assert total_with_discount_of(forty, fifty, at) == usd("47.50")
    assert total_with_discount_of(forty, forty, at) == usd("48.00")
