"""The schedule, the sums and the quick total say what the landed order says, whatever the terms."""

import random
from decimal import Decimal
from typing import Literal

import pytest

from sourcing.basics.freight import Freight, FreightBand, Oversize, WeightBand
from sourcing.basics.money import total
from sourcing.basics.problem import Refused
from sourcing.basics.schedule import ItemSums
from sourcing.basics.value import changed
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.quantity import pieces_to_order
from sourcing.landed_cost.quick import QuickDoor
from sourcing.landed_cost.schedule import MOST_STEPS, freight_at, order_sums, schedule, schedule_total
from sourcing.landed_cost.sums import item_sums
from tests.builders import door, flat, item, offer
from tests.landed_cost.random_orders import random_door, random_item

UNITS: tuple[Literal["kg", "lb"], ...] = ("kg", "lb")


def heaviest(sums: list[ItemSums]) -> int:
    """The weight charged for these items."""
    return max(sum(one.grams for one in sums), sum(one.volume_grams for one in sums))


def exact(at: Door, grams: int) -> bool:
    """Whether the schedule can say freight to the cent: no freight per weight that is cut to so many steps, and no
    parcels, which whole pieces may need more of."""
    freight = at.terms.freight
    if freight is not None and freight.rule == "per parcel":
        return False
    if freight is None or freight.rule != "per weight" or freight.weight_step is None:
        return True
    return freight.weight_step * 1000 * MOST_STEPS >= grams


@pytest.mark.parametrize("seed", range(40))
def test_schedule_and_landed_order_agree_to_the_cent(seed: int) -> None:
    """Fifty orders a seed, weights in whole grams, one to five lines, up to three deliveries."""
    chance = random.Random(seed)
    for _ in range(50):
        at = random_door(chance)
        items = [random_item(chance, at) for _ in range(chance.randint(1, 5))]
        deliveries = chance.randint(1, 3)
        order = landed_order(items, at, deliveries)
        assert total((line.amount for line in order.lines), "USD") == order.total
        assert total((one.landed for one in order.items), "USD") == order.total
        sums = [item_sums(one, at) for one in items]
        grams = heaviest(sums)
        held = schedule(at, grams)
        if order.missing:
            assert order_sums(held, sums, deliveries) is None, (at, order.missing)
        elif exact(at, grams):
            assert schedule_total(held, sums, deliveries) == order.total.minor(), (at, items)
        else:
            assert schedule_total(held, sums, deliveries) <= order.total.minor(), (at, items)
        step = [one for one in held.steps if one.from_value <= sum(each.value for each in sums)][-1]
        assert step.refused == bool(order.refusal)


@pytest.mark.parametrize("seed", range(20))
def test_with_parts_of_grams_the_schedule_never_says_more(seed: int) -> None:
    """Pounds, and weights to a hundredth of a gram: grams are rounded down."""
    chance, compared = random.Random(1000 + seed), 0
    for _ in range(50):
        at = random_door(chance, whole_grams=False)
        items = [random_item(chance, at, whole_grams=False) for _ in range(chance.randint(1, 5))]
        order = landed_order(items, at)
        if not order.missing and not any(landed_order([one], at).missing for one in items):
            sums = [item_sums(one, at) for one in items]
            assert schedule_total(schedule(at, heaviest(sums)), sums) <= order.total.minor(), (at, items)
            compared += 1
    assert compared > 25


@pytest.mark.parametrize("seed", range(20))
def test_the_quick_total_is_the_landed_order_s(seed: int) -> None:
    """Ordered alone in the fewest pieces; None exactly where something is missing or the order refused."""
    chance = random.Random(2000 + seed)
    for _ in range(10):
        at = random_door(chance, whole_grams=False)
        quick = QuickDoor(at)
        for _ in range(10):
            one = random_item(chance, at, whole_grams=False)
            alone = item(one.offer, one.needed, pieces_to_order(one.offer, one.needed))
            order = landed_order([alone], at)
            open_or_refused = order.missing or order.refusal
            assert quick.landed(one.offer, one.needed) == (None if open_or_refused else order.total.minor())


def test_sums_are_the_landed_item_s_own_figures() -> None:
    """What the plan counts of an item is what its line of a single order shows."""
    chance = random.Random(5)
    for _ in range(200):
        at = random_door(chance)
        one = random_item(chance, at)
        sums, landed = item_sums(one, at), landed_order([one], at).items[0]
        assert (sums.value, sums.goods, sums.duty) == (
            landed.goods.minor(),
            landed.goods_cost.minor(),
            landed.duty.minor(),
        )
        assert sums.core == landed.core_charge.minor() and 0 <= sums.surplus <= landed.surplus_cost.minor()


def test_what_an_item_leaves_open_has_no_sums() -> None:
    """No weight where freight goes by weight; but an item that alone is free of freight needs none."""
    by_weight = Freight(rule="per weight", per_weight=Decimal(1), free_from=Decimal(100))
    with pytest.raises(ValueError, match="weight of X-1 is not stated"):
        item_sums(item(offer(price="99.99")), door(freight=by_weight))
    assert item_sums(item(offer(price="100.00")), door(freight=by_weight)).grams == 0
    asked = Freight(rule="flat", charge=Decimal(1), oversize=Oversize(charge=Decimal(1)))
    with pytest.raises(ValueError, match="size is not known"):
        item_sums(item(offer()), door(freight=asked))


def test_freight_nobody_knows_can_not_be_planned() -> None:
    """No freight, freight to be asked, a value no band covers: 0 is never taken for it."""
    gap = Freight(rule="by order value", bands=(FreightBand(from_value=Decimal(50), charge=Decimal(9)),))
    for freight, price in ((None, "10.00"), (Freight(rule="asked"), "10.00"), (gap, "49.99")):
        at = door(freight=freight)
        held, sums = schedule(at, 1000), [item_sums(item(offer(price=price)), at)]
        assert freight_at(held, sums) is None
        with pytest.raises(ValueError, match="not known"):
            schedule_total(held, sums)
    drive = Freight(rule="pick-up", round_trip_miles=Decimal(46))
    unstated = changed(door(freight=drive), mileage_rate=Decimal(0))
    assert freight_at(schedule(unstated, 1000), [item_sums(item(offer()), unstated)]) is None
    at = door(freight=gap)
    assert freight_at(schedule(at, 1000), [item_sums(item(offer(price="50.00")), at)]) == 900


def test_steps_of_weight_end_with_the_last_band() -> None:
    """Up to 2 kg 8.00, up to 5 kg 14.00, nothing is known of more; below the bands' ends to the gram."""
    bands = tuple(WeightBand(to_weight=Decimal(to), charge=Decimal(each)) for to, each in ((2, 8), (5, 14)))
    held = schedule(door(freight=Freight(rule="by weight", weight_bands=bands)), 9000)
    assert [(one.above, one.freight) for one in held.weight_steps] == [(0, 800), (2000, 1400)]
    assert held.heaviest == 5000
    pounds = Freight(rule="by weight", weight_bands=bands, weight_unit="lb", weight_step=Decimal("0.5"))
    assert [one.above for one in schedule(door(freight=pounds), 2000).weight_steps] == [0, 907]  # 2 lb: 907.18 g


def test_weight_bands_that_fall_are_told() -> None:
    """A heavier order can't be cheaper: the plan's steps could not hold it."""
    bands = tuple(WeightBand(to_weight=Decimal(to), charge=Decimal(each)) for to, each in ((2, 14), (5, 8)))
    falling = door(freight=flat("1.00"))
    freight = Freight(rule="by weight", weight_bands=bands)
    held = changed(falling, terms=changed(falling.terms, freight=freight))
    with pytest.raises(Refused, match="freight falls with weight"):
        schedule(held, 5000)


def test_very_many_steps_become_freight_per_kg() -> None:
    """A rate per kg in steps of 10 g: 0.80 per kg as it is, never more than the steps; 1.23 lb of 0.50 likewise."""
    for unit in UNITS:
        fine = Freight(rule="per weight", per_weight=Decimal("0.8"), weight_unit=unit, weight_step=Decimal("0.01"))
        at = door(freight=fine)
        held = schedule(at, 200_000)
        assert not held.weight_steps and held.freight_per_kg is not None
        for grams in ("0.004", "1.005", "3.3331"):
            heavy = item(offer(weight_kg=Decimal(grams)), 3)
            assert schedule_total(held, [item_sums(heavy, at)]) <= landed_order([heavy], at).total.minor()


def test_a_quick_total_needs_a_price() -> None:
    """No net price, no total."""
    assert QuickDoor(door()).landed(offer(price=None), 1) is None
