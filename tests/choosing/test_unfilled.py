"""Needs that nobody fills, or not in time, or not together with the others: said with the reason, never left silent."""

from datetime import date
from decimal import Decimal

from sourcing.basics.plan import PlanWishes
from tests.builders import door, lead, offer, usd
from tests.choosing.small import THURSDAY, bought, need, plan

IN_TIME = PlanWishes(need_by=THURSDAY)
IN_FIVE_DAYS = lead("5 days", 5, 5)
CALL = lead("call", None, None)


def test_a_need_nobody_sells_is_said_and_the_others_are_planned() -> None:
    """Two needs, one of them on no sheet."""
    held = plan([need("1"), need("2", 3)], {"1": [offer()]}, [door()])
    assert held.unfilled == ("2: 3 x PART-2: nobody offers it on a sheet that holds",)
    assert bought(held) == {"1": [("X-1", 1)]} and held.total == usd("20.00")


def test_what_the_wishes_leave_out_is_not_said_to_be_sold_by_nobody() -> None:
    """Two are there and three are asked from stock."""
    wishes = PlanWishes(in_stock_only=True, trusted_only=True)
    held = plan([need(quantity=3)], {"1": [offer(stock=2)]}, [door()], wishes)
    assert held.unfilled == (
        "1: 3 x PART-1: nobody offers it on a sheet that holds by a trusted match with all of it in stock",
    )


def test_nobody_in_time_names_the_nearest() -> None:
    """Pellbrook's five days are sooner than Larkmoor's ten; Stonegarth names no day."""
    offers = [
        offer("larkmoor", "L-1", stock=0, lead_time=lead("10 days", 10, 10)),
        offer("stonegarth", "S-1", stock=0, lead_time=CALL),
        offer("pellbrook", "P-1", "99.00", stock=0, lead_time=IN_FIVE_DAYS),
    ]
    doors = [door(who) for who in ("larkmoor", "stonegarth", "pellbrook")]
    held = plan([need()], {"1": offers}, doors, IN_TIME)
    words = "1: 1 x PART-1: nobody has it here by 2026-01-15; nearest is Pellbrook on 2026-01-22"
    assert held.unfilled == (f"{words}; ask Stonegarth too, for no day is named there",)
    assert (held.orders, held.total, held.latest, held.proven) == ((), usd("0.00"), None, False)


def test_of_equally_near_ones_the_cheaper_is_named() -> None:
    """Both in five days, whichever comes first in the input."""
    late = [
        offer("larkmoor", "L-1", "12.00", stock=0, lead_time=IN_FIVE_DAYS),
        offer("stonegarth", "S-1", "11.00", stock=0, lead_time=IN_FIVE_DAYS),
    ]
    for some in (late, late[::-1]):
        held = plan([need()], {"1": some}, [door("larkmoor"), door("stonegarth")], IN_TIME)
        assert "nearest is Stonegarth on 2026-01-22" in held.unfilled[0]


def test_where_no_day_is_named_the_cheapest_is_to_be_asked() -> None:
    """Nobody is near: whom to ask does not hang on the order of the input."""
    silent = [
        offer("larkmoor", "L-1", "12.00", stock=0, lead_time=CALL),
        offer("stonegarth", "S-1", "11.00", stock=0, lead_time=CALL),
    ]
    for some in (silent, silent[::-1]):
        held = plan([need()], {"1": some}, [door("larkmoor"), door("stonegarth")], IN_TIME)
        (words,) = held.unfilled
        assert words.startswith(
            "1: 1 x PART-1: no offer names a day, so none is sure by 2026-01-15; ask Stonegarth or "
        )
        assert "ask Stonegarth or Larkmoor when it can be here, or take it whatever day it comes" in words


def test_who_names_no_day_is_to_be_asked_beside_the_nearest() -> None:
    """He may have it sooner than the one whose day is known; the nearest himself is not named twice."""
    some = [
        offer("larkmoor", "L-1", "12.00", stock=0, lead_time=IN_FIVE_DAYS),
        offer("larkmoor", "L-2", "13.00", stock=0, lead_time=CALL),
        offer("stonegarth", "S-1", "11.00", stock=0, lead_time=CALL),
    ]
    (words,) = plan([need()], {"1": some}, [door("larkmoor"), door("stonegarth")], IN_TIME).unfilled
    assert words.endswith("nearest is Larkmoor on 2026-01-22; ask Stonegarth too, for no day is named there")


def test_without_a_day_an_offer_that_names_none_is_planned() -> None:
    """The day it is all here is then not known."""
    held = plan([need()], {"1": [offer(stock=0, lead_time=CALL)]}, [door()])
    assert bought(held) == {"1": [("X-1", 1)]} and held.latest is None and held.proven


def test_its_own_day_is_named_before_the_plans() -> None:
    """The plan's day would do, the need's own is sooner."""
    wishes = PlanWishes(need_by=date(2026, 1, 30))
    late = [offer(stock=0, lead_time=IN_FIVE_DAYS)]
    held = plan([need(need_by=THURSDAY)], {"1": late}, [door()], wishes)
    assert "nobody has it here by 2026-01-15" in held.unfilled[0]


def test_needs_that_minimum_orders_keep_apart_leave_out_as_few_as_can_be() -> None:
    """Larkmoor takes no order below 50.00: its 20.00 alone are left out, the 60.00 of another need are bought."""
    at = door("larkmoor", minimum_order=Decimal(50))
    offers = {"1": [offer("larkmoor", "L-1", "20.00")], "2": [offer("stonegarth", "S-2", "60.00")]}
    doors = [at, door("stonegarth")]
    held = plan([need("1"), need("2")], offers, doors, PlanWishes(more_than_needed="never"))
    assert held.unfilled == (
        "1: 1 x PART-1: no set of orders that fills the other needs too holds to every supplier's minimum order",
    )
    assert bought(held) == {"2": [("S-2", 1)]} and held.proven
    both = {"1": offers["1"], "2": [offer("larkmoor", "L-2", "30.00")]}
    assert not plan([need("1"), need("2")], both, doors, PlanWishes(more_than_needed="never")).unfilled


def test_needs_that_so_few_suppliers_can_not_fill() -> None:
    """One supplier at most, two of three parts are Stonegarth's: the third is said, with that rule."""
    offers = {
        "1": [offer("stonegarth", "S-1")],
        "2": [offer("stonegarth", "S-2")],
        "3": [offer("larkmoor", "L-3", "1.00")],
    }
    needs = [need(label) for label in "123"]
    held = plan(needs, offers, [door("stonegarth"), door("larkmoor")], PlanWishes(most_suppliers=1))
    assert [*bought(held)] == ["1", "2"]
    assert held.unfilled == (
        "3: 1 x PART-3: no set of orders that fills the other needs too holds to every supplier's minimum order,"
        " at most 1 supplier",
    )


def test_needs_that_can_not_come_together() -> None:
    """No supplier has both: both are left out, for half of what must come together is of no use."""
    offers = {
        "1": [offer("stonegarth", "S-1")],
        "2": [offer("larkmoor", "L-2")],
        "3": [offer("larkmoor", "L-3")],
    }
    needs = [need("1", together="pair"), need("2", together="pair"), need("3", need_by=THURSDAY)]
    held = plan(needs, offers, [door("stonegarth"), door("larkmoor")])
    assert bought(held) == {"3": [("L-3", 1)]}
    assert [words[:2] for words in held.unfilled] == ["1:", "2:"]
    assert held.unfilled[0].endswith("every supplier's minimum order, that 'pair' comes together")


def test_a_divided_need_beyond_all_stock_names_the_stock() -> None:
    """Three and one are there, five are asked from stock, by Thursday."""
    offers = {"1": [offer("stonegarth", "S-1", stock=3), offer("larkmoor", "L-1", stock=1)]}
    wishes = PlanWishes(in_stock_only=True, need_by=THURSDAY, most_suppliers=2)
    held = plan([need(quantity=5, may_split=True)], offers, [door("stonegarth"), door("larkmoor")], wishes)
    assert held.unfilled == (
        "1: 5 x PART-1: no set of orders that fills the other needs too holds to every supplier's minimum order,"
        " at most 2 suppliers, what is in stock, the days it is needed by",
    )
