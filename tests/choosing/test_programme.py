"""What the programme holds to: packs, breaks, more pieces than needed, stock shared, needs divided over offers."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sourcing.basics.landed_cost import Arrival, OrderItem
from sourcing.basics.plan import MoreThanNeeded, PlanWishes
from sourcing.basics.terms import OrderDiscount, Split
from sourcing.choosing.choices import choice
from sourcing.choosing.programme import Bundle, Conditions, Programme
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.schedule import schedule
from sourcing.landed_cost.sums import item_sums
from tests.builders import door, flat, item, lead, offer, usd
from tests.choosing.small import AT, THURSDAY, Clock, bought, need, plan

WAYS: tuple[MoreThanNeeded, ...] = ("whatever pays", "cheaper break", "never")
STOCK = PlanWishes(in_stock_only=True)


@pytest.mark.parametrize(
    ("way", "pieces", "total"), [(WAYS[0], 5, "50.00"), (WAYS[1], 4, "60.00"), (WAYS[2], 4, "60.00")]
)
def test_one_piece_more_for_free_freight(way: MoreThanNeeded, pieces: int, total: str) -> None:
    """Four at 10.00 and freight of 20.00; with a fifth the order passes 50.00 and freight is free."""
    wishes = PlanWishes(more_than_needed=way)
    held = plan([need(quantity=4)], {"1": [offer()]}, [door(freight=flat("20.00", "50"))], wishes)
    assert (bought(held)["1"], held.total) == ([("X-1", pieces)], usd(total))


@pytest.mark.parametrize("way", WAYS)
def test_more_pieces_for_a_minimum_order_only_where_it_is_allowed(way: MoreThanNeeded) -> None:
    """Orders below 35.00 are refused: two pieces at 10.00 become four, or the need is left open."""
    at, wishes = door(minimum_order=Decimal(35)), PlanWishes(more_than_needed=way)
    held = plan([need(quantity=2)], {"1": [offer()]}, [at], wishes)
    if way == "whatever pays":
        assert (bought(held)["1"], held.total) == ([("X-1", 4)], usd("50.00"))
    else:
        assert not held.orders and "every supplier's minimum order" in held.unfilled[0]


@pytest.mark.parametrize(("way", "pieces"), [(WAYS[0], 5), (WAYS[1], 5), (WAYS[2], 4)])
def test_a_cheaper_break_is_more_pieces_for_less(way: MoreThanNeeded, pieces: int) -> None:
    """Four at 10.00 are 40.00, five at 7.00 are 35.00."""
    wishes = PlanWishes(more_than_needed=way)
    held = plan([need(quantity=4)], {"1": [offer(breaks=[(1, "10.00"), (5, "7.00")])]}, [door()], wishes)
    assert bought(held)["1"] == [("X-1", pieces)]


def test_packs_minimums_and_multiples_hold_whatever_is_asked() -> None:
    """Three needed: pack of two and multiple of three make six; the minimum of ten makes ten; and never fewer."""
    sold: list[tuple[dict[str, Any], int]] = [
        ({"pack": 2, "order_multiple": 3}, 6),
        ({"minimum": 10}, 10),
        ({"pack": 4}, 4),
    ]
    for fields, pieces in sold:
        held = plan([need(quantity=3)], {"1": [offer(**fields)]}, [door()], PlanWishes(more_than_needed="never"))
        assert bought(held)["1"] == [("X-1", pieces)]
        (item,) = held.orders[0].landed.items
        assert item.item.needed == 3 and item.item.surplus == pieces - 3


def test_surplus_counts_as_got_back_at_the_stated_share() -> None:
    """A pack of four at 4.00 each is 16.00, half of it surplus; two loose are 10.00. At 80 per cent it is 9.60."""
    offers = {"1": [offer("larkmoor", "L-1", "4.00", pack=4), offer("larkmoor", "L-2", "5.00")]}
    full = plan([need(quantity=2)], offers, [door()], PlanWishes(more_than_needed="never"))
    assert (bought(full)["1"], full.counted) == ([("L-2", 2)], usd("20.00"))
    wishes = PlanWishes(more_than_needed="never", surplus_credit_percent=Decimal(80))
    credited = plan([need(quantity=2)], offers, [door()], wishes)
    assert bought(credited)["1"] == [("L-1", 4)]
    assert (credited.total, credited.counted, credited.bound) == (usd("26.00"), usd("19.60"), usd("19.60"))


def test_pieces_bought_by_choice_are_charged_in_full() -> None:
    """A fifth piece for free freight is no surplus that a pack forced: nothing of it is got back."""
    wishes = PlanWishes(surplus_credit_percent=Decimal(100))
    held = plan([need(quantity=4)], {"1": [offer()]}, [door(freight=flat("20.00", "50"))], wishes)
    assert (bought(held)["1"], held.counted) == ([("X-1", 5)], usd("50.00"))


def test_what_the_first_pack_forces_counts_and_the_next_pack_does_not() -> None:
    """Packs of two for one piece: two packs pass free freight. One piece of four is forced, half of its 10.00 back."""
    wishes = PlanWishes(surplus_credit_percent=Decimal(50))
    held = plan([need()], {"1": [offer(pack=2)]}, [door(freight=flat("30.00", "40"))], wishes)
    assert (bought(held)["1"], held.total, held.counted) == ([("X-1", 4)], usd("40.00"), usd("35.00"))


def test_what_is_got_back_is_no_more_than_it_cost_after_the_largest_discount() -> None:
    """A pack of two for one piece, 20.00 less 10 per cent of the order: all of the 9.00 back, not 10.00."""
    off = (OrderDiscount(from_value=Decimal(5), percent=Decimal(10)),)
    wishes = PlanWishes(surplus_credit_percent=Decimal(100), more_than_needed="never")
    held = plan([need()], {"1": [offer(pack=2)]}, [door(order_discounts=off)], wishes)
    assert (held.total, held.counted, held.bound) == (usd("28.00"), usd("19.00"), usd("19.00"))


def test_surplus_of_a_divided_need_is_charged_in_full() -> None:
    """The same offers for a need that may be split: nothing is got back, and the loose ones are cheaper."""
    offers = {"1": [offer("larkmoor", "L-1", "4.00", pack=4), offer("larkmoor", "L-2", "5.00")]}
    wishes = PlanWishes(more_than_needed="never", surplus_credit_percent=Decimal(80))
    held = plan([need(quantity=2, may_split=True)], offers, [door()], wishes)
    assert (bought(held)["1"], held.counted) == ([("L-2", 2)], usd("20.00"))


def test_a_divided_need_takes_what_is_there_of_the_cheaper() -> None:
    """Five needed, three at 8.00 in stock, the rest at 10.00: 44.00 and two freights of 1.00; whole it is 51.00."""
    offers = {"1": [offer("stonegarth", "S-1", "8.00", stock=3), offer("larkmoor", "L-1", "10.00")]}
    doors = [door("stonegarth", freight=flat("1.00")), door("larkmoor", freight=flat("1.00"))]
    whole = plan([need(quantity=5)], offers, doors, STOCK)
    assert (bought(whole)["1"], whole.total) == ([("L-1", 5)], usd("51.00"))
    divided = plan([need(quantity=5, may_split=True)], offers, doors, STOCK)
    assert (bought(divided)["1"], divided.total) == ([("L-1", 2), ("S-1", 3)], usd("46.00"))


def test_a_divided_need_pays_for_whole_packs() -> None:
    """Five needed: a pack of four at 2.00 each and one loose at 5.00 are 13.00, two packs 16.00, five loose 25.00."""
    offers = {"1": [offer("larkmoor", "L-4", "2.00", pack=4), offer("larkmoor", "L-1", "5.00")]}
    held = plan([need(quantity=5, may_split=True)], offers, [door()])
    assert (bought(held)["1"], held.total) == ([("L-1", 1), ("L-4", 4)], usd("23.00"))


def test_shares_of_a_divided_need_are_no_way_round_never_more_than_needed() -> None:
    """Three of one offer and two of another would pass free freight: five pieces where four are needed."""
    offers = {"1": [offer("larkmoor", "L-1", stock=3), offer("larkmoor", "L-2", stock=3)]}
    at = door(freight=flat("25.00", "50"))
    never = PlanWishes(more_than_needed="never")
    held = plan([need(quantity=4, may_split=True)], offers, [at], never)
    assert held.total == usd("65.00") and sum(pieces for _, pieces in bought(held)["1"]) == 4
    pays = plan([need(quantity=4, may_split=True)], offers, [at])
    assert pays.total == usd("50.00") and sum(pieces for _, pieces in bought(pays)["1"]) == 5


def test_what_is_here_first_is_used_first_and_the_rest_is_surplus() -> None:
    """Five needed of packs of three from two suppliers: the later pack has one piece over."""
    offers = {"1": [offer("larkmoor", "L-1", pack=3, stock=3), offer("stonegarth", "S-1", pack=3, stock=3)]}
    doors = [door("larkmoor", transit_days=(4, 4)), door("stonegarth")]
    held = plan([need(quantity=5, may_split=True)], offers, doors, STOCK)
    items = {one.item.offer.supplier: one.item for order in held.orders for one in order.landed.items}
    assert (items["stonegarth"].needed, items["larkmoor"].needed, items["larkmoor"].surplus) == (3, 2, 1)


def test_needs_that_share_an_offer_share_its_stock() -> None:
    """Three pieces are there and two needs of two: from stock only, one need must go elsewhere at 19.00."""
    shared = [offer("larkmoor", "L-1", "10.00", stock=3), offer("stonegarth", "S-1", "19.00", stock=9)]
    offers, needs = {"1": shared, "2": shared}, [need("1", 2), need("2", 2)]
    held = plan(needs, offers, [door("larkmoor"), door("stonegarth")], STOCK)
    assert sorted(some[0][0] for some in bought(held).values()) == ["L-1", "S-1"]
    four = [offer("larkmoor", "L-1", "10.00", stock=4), *shared[1:]]
    held = plan(needs, {"1": four, "2": four}, [door("larkmoor"), door("stonegarth")], STOCK)
    assert bought(held) == {"1": [("L-1", 2)], "2": [("L-1", 2)]}


@pytest.mark.parametrize(("fields", "who"), [({"need_by": THURSDAY}, ["L-1", "S-1"]), ({}, ["L-1", "L-1"])])
def test_beyond_a_shared_stock_both_wait(fields: dict[str, Any], who: list[str]) -> None:
    """Two of three pieces would be in time alone. Both can't: the rest comes in a week, and all of it is sent then."""
    late = lead("5 days", 5, 5)
    shared = [offer("larkmoor", "L-1", "10.00", stock=3, lead_time=late), offer("stonegarth", "S-1", "19.00", stock=9)]
    needs = [need("1", 2, **fields), need("2", 2)]
    held = plan(needs, {"1": shared, "2": shared}, [door("larkmoor"), door("stonegarth")])
    assert sorted(some[0][0] for some in bought(held).values()) == who


def test_what_is_needed_soon_does_not_wait_for_a_stock_that_others_use_up() -> None:
    """Larkmoor sends all together: two needs that ask for more than his stock make the third, his own, come late."""
    late = lead("5 days", 5, 5)
    shared = [offer("larkmoor", "L-1", "10.00", stock=3, lead_time=late), offer("stonegarth", "S-1", "99.00", stock=9)]
    third = [offer("larkmoor", "L-3", "10.00"), offer("stonegarth", "S-3", "19.00")]
    needs, doors = [need("1", 2), need("2", 2), need("3", need_by=THURSDAY)], [door("larkmoor"), door("stonegarth")]
    held = plan(needs, {"1": shared, "2": shared, "3": third}, doors)
    assert bought(held) == {"1": [("L-1", 2)], "2": [("L-1", 2)], "3": [("S-3", 1)]}


def test_sooner_on_the_front_is_sooner_also_where_stock_is_shared() -> None:
    """Both of Larkmoor is cheapest and waits for the rest of its stock; by Thursday one need goes elsewhere."""
    late = lead("5 days", 5, 5)
    shared = [offer("larkmoor", "L-1", "10.00", stock=3, lead_time=late), offer("stonegarth", "S-1", "19.00", stock=9)]
    offers, wishes = {"1": shared, "2": shared}, PlanWishes(more_than_needed="never", front=True)
    held = plan([need("1", 2), need("2", 2)], offers, [door("larkmoor"), door("stonegarth")], wishes, Clock(30))
    assert [(one.total, one.latest) for one in held.front] == [
        (usd("50.00"), date(2026, 1, 22)),
        (usd("78.00"), THURSDAY),
    ]


@pytest.mark.parametrize(("own", "who"), [(THURSDAY, ["L-1", "S-1"]), (None, ["L-1", "L-1"])])
def test_a_need_with_its_day_never_shares_more_than_there_is(own: Any, who: list[str]) -> None:
    """The same where each part is sent as soon as it is ready: whose piece waits, nobody knows."""
    split, late = Split(sends="as ready"), lead("5 days", 5, 5)
    shared = [offer("larkmoor", "L-1", "10.00", stock=3, lead_time=late), offer("stonegarth", "S-1", "19.00", stock=9)]
    doors = [door("larkmoor", split=split), door("stonegarth")]
    held = plan([need("1", 2, need_by=own), need("2", 2)], {"1": shared, "2": shared}, doors)
    assert sorted(some[0][0] for some in bought(held).values()) == who


def test_nothing_is_in_stock_that_the_sheet_does_not_state() -> None:
    """A blank stock is not known, and a stock of two holds no three."""
    offers = {"1": [offer("larkmoor", "L-1", "1.00", stock=None), offer("larkmoor", "L-2", "2.00", stock=2)]}
    held = plan([need(quantity=3)], offers, [door()], STOCK)
    assert not held.orders and len(held.unfilled) == 1
    assert bought(plan([need(quantity=3)], offers, [door()]))["1"] == [("L-1", 3)]


def test_later_deliveries_are_paid_for_once_each() -> None:
    """Sent as ready at 6.00 a later delivery: what waits is cheaper by 5.00 at Larkmoor and yet dearer."""
    split = Split(sends="as ready", later_charge=Decimal(6))
    offers = {
        "1": [offer("larkmoor", "L-1", "10.00")],
        "2": [
            offer("larkmoor", "L-2", "10.00", stock=0, lead_time=lead("3 days", 3, 3)),
            offer("larkmoor", "L-3", "15.00"),
        ],
    }
    held = plan([need("1"), need("2")], offers, [door(split=split)])
    assert (bought(held)["2"], held.total) == ([("L-3", 1)], usd("35.00"))
    both = {label: [some[0]] for label, some in offers.items()}
    assert plan([need("1"), need("2")], both, [door(split=split)]).total == usd("36.00")


def programme(*prices: str, limit: date | None = None) -> Programme:
    """One need, an offer at each price; the second comes in a week."""
    days: dict[int, dict[str, Any]] = {1: {"stock": 0, "lead_time": lead("5 days", 5, 5)}}
    items = [item(offer(number=f"L-{at}", price=price, **days.get(at, {}))) for at, price in enumerate(prices)]
    choices = [choice(0, one, 1, (1, 0), lambda each: (item_sums(each, AT_LARKMOOR), _comes(each))) for one in items]
    return Programme(choices, Conditions(needs=1), {"larkmoor": schedule(AT_LARKMOOR, 1000)}, {}, limit)


AT_LARKMOOR = door()


def _comes(of: OrderItem) -> Arrival:
    return arrival(of, AT_LARKMOOR, AT)


def chosen(of: Programme) -> tuple[list[str], float]:
    """What is picked, and the programme's cost."""
    outcome = of.solve(5)
    return [pick.choice.item.offer.supplier_number for pick in of.picks(outcome)], round(outcome.value, 3)


def names(of: Programme, *numbers: str) -> frozenset[tuple[object, ...]]:
    """The names of these offers' choices."""
    return frozenset(one.choice.name for one in of.taken if one.choice.item.offer.supplier_number in numbers)


def test_only_what_is_here_by_the_day_is_in_the_programme() -> None:
    """The cheaper one comes in a week; by Wednesday nothing does."""
    assert chosen(programme("20.00", "15.00")) == (["L-1"], 2500)
    assert chosen(programme("20.00", "15.00", limit=THURSDAY)) == (["L-0"], 3000)
    assert not programme("20.00", "15.00", limit=date(2026, 1, 14)).fillable()
    assert programme("20.00", "15.00", limit=THURSDAY).fillable()


def test_what_is_ruled_out_is_not_picked_again() -> None:
    """The least, and without it the next."""
    held = programme("20.00", "15.00")
    held.forbid(names(held, "L-1"))
    assert chosen(held) == (["L-0"], 3000)


def test_only_plans_up_to_a_cost() -> None:
    """At most 25.00 is met exactly, at most 24.99 is not to be had."""
    held = programme("20.00", "15.00")
    held.at_most(2500)
    assert chosen(held) == (["L-1"], 2500)
    held.at_most(2499)
    assert held.solve(5).impossible


def test_what_a_bundle_truly_costs_more_counts_for_exactly_it() -> None:
    """15.00 turn out to cost 3.00 more, then 30.00 more, then can't be ordered at all."""
    for more, then in ((300, (["L-1"], 2800)), (3000, (["L-0"], 3000)), (None, (["L-0"], 3000))):
        held = programme("20.00", "15.00")
        held.charge(Bundle("larkmoor", names(held, "L-1"), None if more is None else Fraction(more)))
        assert chosen(held) == then
    held = programme("20.00", "15.00")
    held.charge(Bundle("larkmoor", names(held, "L-1"), Fraction(300)))
    assert held.cost_of("larkmoor", held.solve(5)) == 2800
    held.charge(Bundle("", names(held, "L-1"), Fraction(100)))
    assert chosen(held) == (["L-1"], 2900)


def test_a_bundle_of_more_than_is_in_the_programme_says_nothing() -> None:
    """A part of it does not come in time, so that exactly it can't be picked."""
    whole, held = programme("20.00", "15.00"), programme("20.00", "15.00", limit=THURSDAY)
    held.charge(Bundle("larkmoor", names(whole, "L-0", "L-1"), None))
    assert chosen(held) == (["L-0"], 3000)


def test_needs_may_be_left_out_only_where_that_is_asked() -> None:
    """The cheapest is to leave the need out; without leave it is filled."""
    held = programme("20.00", "15.00")
    assert chosen(held) == (["L-1"], 2500)
    left = held.leave_out()
    assert [*left] == [0]
    assert chosen(held) == ([], 0)
