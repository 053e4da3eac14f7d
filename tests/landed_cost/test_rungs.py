"""Which quantities are worth considering: the fewest, cheaper breaks, and more up to where nothing can be gained."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sourcing.basics.freight import Freight, FreightBand, WeightBand
from sourcing.basics.offer import Offer
from sourcing.basics.plan import MoreThanNeeded
from sourcing.basics.terms import OrderDiscount
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.rungs import Gain, Rung, gain_of, rungs
from sourcing.landed_cost.schedule import schedule
from tests.builders import door, flat, offer

PAYS: MoreThanNeeded = "whatever pays"
BREAK: MoreThanNeeded = "cheaper break"
NEVER: MoreThanNeeded = "never"


def seen(of: Offer, needed: int, at: Door, way: MoreThanNeeded = PAYS, **asked: Any) -> list[tuple[int, int, int]]:
    """The ladders as plain numbers. `may_split`, `in_stock_only`."""
    gain = gain_of(schedule(at, 10_000))
    held = (way, asked.get("may_split", False), asked.get("in_stock_only", False))
    return [one[:3] for one in rungs(of, needed, at, held, gain)]


def quantities(of: Offer, needed: int, at: Door, way: MoreThanNeeded = PAYS, **asked: Any) -> list[int]:
    """Every quantity in any of the ladders."""
    held = seen(of, needed, at, way, **asked)
    return sorted(start + step * at_step for start, step, more in held for at_step in range(more + 1))


PLAIN = door(freight=Freight(rule="included"))
"""Nothing to gain but a cheaper price."""


def test_with_nothing_to_gain_only_the_fewest() -> None:
    """Whole packs and multiples of both, at least the minimum."""
    assert seen(offer(), 3, PLAIN) == [(3, 1, 0)]
    assert seen(offer(pack=2, order_multiple=3), 7, PLAIN) == [(12, 6, 0)]
    assert seen(offer(minimum=10), 3, PLAIN) == [(10, 1, 0)]
    assert seen(offer(breaks=[(4, "10.00")]), 3, PLAIN) == [(4, 1, 0)], "the sheet sells no fewer than four"


@pytest.mark.parametrize(("way", "pieces"), [(PAYS, [4, 5]), (BREAK, [4, 5]), (NEVER, [4])])
def test_a_break_that_makes_the_line_cheaper(way: MoreThanNeeded, pieces: list[int]) -> None:
    """Four at 10.00, five at 7.00; from eight on at 6.00 it is dearer than five."""
    assert quantities(offer(breaks=[(1, "10.00"), (5, "7.00"), (8, "6.00")]), 4, PLAIN, way) == pieces


def test_a_break_that_costs_more_is_not_considered() -> None:
    """Five at 9.00 are 45.00 and four 40.00; at 8.00 each they cost the same, which gains nothing."""
    assert quantities(offer(breaks=[(1, "10.00"), (5, "9.00")]), 4, PLAIN) == [4]
    assert quantities(offer(breaks=[(1, "10.00"), (5, "8.00")]), 4, PLAIN) == [4]


def test_each_further_break_must_beat_the_better_ones_before() -> None:
    """Four 40.00, five 35.00, six at 5.00 only 30.00, seven at 4.90 is 34.30."""
    steps = [(1, "10.00"), (5, "7.00"), (6, "5.00"), (7, "4.90")]
    assert quantities(offer(breaks=steps), 4, PLAIN, BREAK) == [4, 5, 6]


def test_breaks_for_the_pieces_above_never_make_a_line_cheaper() -> None:
    """The same steps, meant for the pieces from there on only."""
    at = door(freight=Freight(rule="included"), breaks="pieces above")
    assert quantities(offer(breaks=[(1, "10.00"), (5, "1.00")]), 4, at) == [4]


@pytest.mark.parametrize(("way", "most"), [(PAYS, 6), (BREAK, 4), (NEVER, 4)])
def test_more_for_free_freight_up_to_the_value_that_frees_it(way: MoreThanNeeded, most: int) -> None:
    """Freight 25.00, free from 60.00: six pieces of 10.00 reach it, a seventh gains nothing."""
    at = door(freight=flat("25.00", "60"))
    assert quantities(offer(), 4, at, way) == list(range(4, most + 1))


def test_no_more_than_the_freight_is_worth() -> None:
    """Free from 200.00 and 25.00 at stake: beyond two more pieces of 10.00 the pieces cost more than they save."""
    assert quantities(offer(), 4, door(freight=flat("25.00", "200"))) == [4, 5, 6]


def test_a_minimum_order_is_reached_whatever_it_costs() -> None:
    """No order below 95.00, nothing to save: ten pieces of 10.00; beyond it nothing is gained."""
    at = door(freight=Freight(rule="included"), minimum_order=Decimal(95))
    assert quantities(offer(), 1, at) == list(range(1, 11))
    just = door(freight=Freight(rule="included"), minimum_order=Decimal("90.50"))
    assert quantities(offer(), 1, just) == list(range(1, 11)), "nine pieces are half a dollar short"
    fee = door(freight=Freight(rule="included"), minimum_order=Decimal(95), small_order_fee=Decimal("20.00"))
    assert quantities(offer(), 1, fee) == [1, 2, 3], "a fee of 20.00 is worth two pieces"


def test_thresholds_look_at_goods_after_the_lines_discount() -> None:
    """At half price twenty pieces of 10.00 pass the 98.00 of the minimum order."""
    at = door(freight=Freight(rule="included"), minimum_order=Decimal(98), discount_percent=Decimal(50))
    assert quantities(offer(), 19, at) == [19, 20]
    assert max(quantities(offer(), 20, at)) == 20


def test_what_is_at_stake_is_weighed_in_the_shops_currency() -> None:
    """Freight of 1000 yen at 0.02 is 20.00 dollars: two pieces of 500 yen more."""
    at = door(rate="0.02", currency="JPY", freight=flat("1000", "100000"))
    assert quantities(offer(price="500", currency="JPY"), 4, at) == [4, 5, 6]


def test_an_order_discount_may_pay_without_end_up_to_where_it_holds() -> None:
    """From 68.00 half of the order is taken off: seven pieces, whatever the others cost."""
    half_off = (OrderDiscount(from_value=Decimal(68), percent=Decimal(50)),)
    at = door(freight=Freight(rule="included"), order_discounts=half_off)
    assert quantities(offer(), 2, at) == [2, 3, 4, 5, 6, 7]


def test_quantities_beyond_the_stock_are_a_ladder_of_their_own() -> None:
    """Six are there: what is more comes later. All of it together is every quantity once."""
    at = door(freight=flat("25.00", "69"))
    held = seen(offer(stock=6), 5, at)
    assert held == [(5, 1, 1), (7, 1, 0)]
    assert seen(offer(stock=7, pack=2), 5, at) == [(6, 2, 0), (8, 2, 0)]


def test_from_stock_only_what_is_there() -> None:
    """Six are there; a blank stock is not known; ten are not there."""
    at = door(freight=flat("25.00", "90"))
    assert quantities(offer(stock=6), 5, at, in_stock_only=True) == [5, 6]
    assert seen(offer(stock=None), 5, at, in_stock_only=True) == []
    assert seen(offer(stock=6), 10, at, in_stock_only=True) == []
    assert quantities(offer(stock=6), 6, at, in_stock_only=True) == [6]


@pytest.mark.parametrize("way", [PAYS, BREAK, NEVER])
def test_a_need_that_may_be_split_takes_any_share_of_an_offer(way: MoreThanNeeded) -> None:
    """Five needed: one to five pieces, over the break at three and the stock of four."""
    of = offer(breaks=[(1, "10.00"), (3, "9.00")], stock=4)
    assert quantities(of, 5, PLAIN, way, may_split=True) == [1, 2, 3, 4, 5]
    assert quantities(offer(pack=2), 5, PLAIN, way, may_split=True) == [2, 4, 6]


def test_a_share_may_also_be_more_than_needed_where_that_pays() -> None:
    """Four needed, free freight from 60.00 with 25.00 at stake: six, and for a cheaper break only that."""
    at = door(freight=flat("25.00", "60"))
    assert quantities(offer(), 4, at, may_split=True) == [1, 2, 3, 4, 5, 6]
    assert quantities(offer(), 4, at, NEVER, may_split=True) == [1, 2, 3, 4]
    of = offer(breaks=[(1, "10.00"), (5, "7.00")])
    assert quantities(of, 4, PLAIN, BREAK, may_split=True) == [1, 2, 3, 4, 5]
    assert quantities(of, 4, PLAIN, NEVER, may_split=True) == [1, 2, 3, 4]


def test_no_quantity_stands_in_two_ladders() -> None:
    """Breaks, stock and packs at once."""
    at = door(freight=flat("90.00", "400"))
    of = offer(breaks=[(1, "10.00"), (3, "9.50"), (8, "9.00")], stock=9, pack=2)
    for may_split in (False, True):
        held = quantities(of, 5, at, may_split=may_split)
        assert held == sorted(set(held)) and 6 in held


def gain(**fields: Any) -> Gain:
    """What more goods can gain at a door with these terms."""
    return gain_of(schedule(door(**fields), 10_000))


def test_what_can_be_gained_is_read_off_the_terms() -> None:
    """Freight 10.00 free from 80.00 and a fee of 5.00 below 30.00: 15.00 up to 80.00."""
    small = {"minimum_order": Decimal(30), "small_order_fee": Decimal(5)}
    held = gain(freight=flat("10.00", "80"), **small)
    assert held == Gain(saving=Fraction(1500), up_to=8000, always=0)
    assert gain(freight=flat("10.00"), minimum_order=Decimal(30)).always == 3000, "refused below it"


def test_charges_in_per_cent_of_what_is_saved_are_saved_too() -> None:
    """Freight of 10.00 with a fee for paying of 3 per cent on all of it."""
    assert gain(freight=flat("10.00", "80"), payment_percent=Decimal(3)).saving >= Decimal("1030")


def test_bands_and_weights_count_at_their_dearest() -> None:
    """Bands of 12.00 and 4.00; by weight up to 30.00."""
    bands = (
        FreightBand(from_value=Decimal(0), charge=Decimal(12)),
        FreightBand(from_value=Decimal(50), charge=Decimal(4)),
    )
    held = gain(freight=Freight(rule="by order value", bands=bands))
    assert (held.saving, held.up_to) == (Fraction(1200), 5000)
    weights = (
        WeightBand(to_weight=Decimal(1), charge=Decimal(9)),
        WeightBand(to_weight=Decimal(50), charge=Decimal(30)),
    )
    heavy = gain(freight=Freight(rule="by weight", weight_bands=weights, free_from=Decimal(500)))
    assert (heavy.saving, heavy.up_to) == (Fraction(3000), 50000)


def test_freight_known_only_in_larger_orders_is_reached_whatever_it_costs() -> None:
    """Said when asked, free from 60.00."""
    assert gain(freight=Freight(rule="asked", free_from=Decimal(60))).always == 6000


def test_freight_by_weight_without_an_end_is_worth_any_quantity_below_the_threshold() -> None:
    """So much a kilogram, free from 60.00: what is saved grows with the order."""
    per_weight = Freight(rule="per weight", per_weight=Decimal(2), free_from=Decimal(60))
    assert gain(freight=per_weight).always == 6000


def test_a_rung_has_its_numbers_in_this_order() -> None:
    """First quantity, pieces of a step, further steps; more than needed unless said."""
    assert Rung(4, 2, 3) == (4, 2, 3, None)


@pytest.mark.parametrize(
    ("way", "least"),
    [
        (PAYS, {2: None, 4: None, 6: None}),
        (NEVER, {2: 1, 4: 3, 6: 5}),
        (BREAK, {2: 1, 4: 3, 6: 3}),
    ],
)
def test_for_how_many_pieces_of_a_split_need_a_quantity_may_be_bought(
    way: MoreThanNeeded, least: dict[int, int | None]
) -> None:
    """Packs of two: four are for three at least. Six at 6.00 are 36.00, cheaper than four at 10.00: for three too."""
    of = offer(breaks=[(1, "10.00"), (6, "6.00")], pack=2)
    held = rungs(of, 6, PLAIN, (way, True, False), gain_of(schedule(PLAIN, 1)))
    shares = {
        one.pieces + at * one.step: None if one.least is None else one.least + at * one.step
        for one in held
        for at in range(one.more + 1)
    }
    assert shares == least
