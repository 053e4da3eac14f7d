"""From offers and doors to a plan: quantities, weights, what can't be priced, and the clock that stops the search."""

from decimal import Decimal

from sourcing.actions.plan_offers import Place, Wanted, planned
from sourcing.basics.freight import Freight, Oversize, WeightBand
from sourcing.basics.plan import PlanWishes
from sourcing.basics.terms import DutyRate, Split
from tests.builders import door, lead, offer, usd
from tests.choosing.small import AT, Clock, bought, need, plan


def test_the_quantity_is_in_the_offers_own_unit() -> None:
    """One pair is needed: of an offer of loose pieces two fill it, of one sold by the pair one does."""
    offers = {"1": [Wanted(offer("larkmoor", "L-1", "6.00"), 2), Wanted(offer("larkmoor", "L-2", "13.00"), 1)]}
    held = planned([need()], offers, Place({"larkmoor": door()}, AT, "USD"), PlanWishes())
    assert bought(held) == {"1": [("L-1", 2)]} and held.total == usd("22.00")
    (item,) = held.orders[0].landed.items
    assert (item.item.needed, item.item.surplus) == (2, 0)


def test_shares_of_a_divided_need_are_counted_in_their_own_units() -> None:
    """Two pairs: one pair of two loose pieces, of which no more are there, and one sold by the pair."""
    loose, pairs = offer("larkmoor", "L-1", "6.00", stock=3), offer("larkmoor", "L-2", "13.00")
    offers = {"1": [Wanted(loose, 4), Wanted(pairs, 2)]}
    wishes = PlanWishes(in_stock_only=True)
    held = planned([need(quantity=2, may_split=True)], offers, Place({"larkmoor": door()}, AT, "USD"), wishes)
    assert bought(held) == {"1": [("L-1", 2), ("L-2", 1)]} and held.total == usd("35.00")


def test_an_offer_whose_duty_or_size_is_not_known_is_in_no_plan() -> None:
    """Origin not stated where duty hangs on it; size not stated where oversize costs. The dearer one is planned."""
    rates = (DutyRate(percent=Decimal(25), origin="CN"),)
    asked = Freight(rule="flat", charge=Decimal(10), oversize=Oversize(charge=Decimal(30)))
    for fields in ({"duty_rates": rates}, {"freight": asked}):
        offers = {
            "1": [offer("larkmoor", "L-1", "1.00"), offer("larkmoor", "L-2", "9.00", origin="US", oversize=False)]
        }
        held = plan([need()], offers, [door(**fields)])
        assert bought(held) == {"1": [("L-2", 1)]}
        assert not plan([need()], {"1": offers["1"][:1]}, [door(**fields)]).orders


def test_an_order_as_heavy_as_all_needs_together_has_its_freight() -> None:
    """Three needs of 4 kg from one supplier: 12 kg are in the band up to 20 kg."""
    charges = ((5, 6), (10, 12), (20, 24))
    bands = tuple(WeightBand(to_weight=Decimal(top), charge=Decimal(charge)) for top, charge in charges)
    at = door(freight=Freight(rule="by weight", weight_bands=bands))
    offers = {label: [offer(number=f"L-{label}", weight_kg=Decimal(4))] for label in "123"}
    assert plan([need(label) for label in "123"], offers, [at]).total == usd("54.00")


def test_pieces_are_weighed_in_the_quantity_that_is_needed() -> None:
    """Eleven pieces of 1 kg, freight by started kilogram: 11 x 2.00."""
    per_weight = Freight(rule="per weight", per_weight=Decimal(2), weight_step=Decimal(1))
    held = plan([need(quantity=11)], {"1": [offer(weight_kg=Decimal(1))]}, [door(freight=per_weight)])
    assert held.total == usd("132.00") and held.proven


def test_suppliers_who_send_all_together_are_told_from_those_who_do_not() -> None:
    """The pulley waits ten days; only where parts are sent as ready is another supplier's belt not needed in time."""
    waiting = offer("larkmoor", "L-2", stock=0, lead_time=lead("10 days", 10, 10))
    offers = {"1": [offer("larkmoor", "L-1"), offer("stonegarth", "S-1", "50.00")], "2": [waiting]}
    needs = [need("1", need_by=AT.date().replace(day=20)), need("2")]
    together = plan(needs, offers, [door("larkmoor"), door("stonegarth")])
    ready = plan(needs, offers, [door("larkmoor", split=Split(sends="as ready")), door("stonegarth")])
    assert (bought(together)["1"], bought(ready)["1"]) == ([("S-1", 1)], [("L-1", 1)])


def test_waiting_is_counted_from_the_day_of_the_order() -> None:
    """Tuesday to Thursday: two days at 1.50."""
    wishes = PlanWishes(objective="cost and days", value_per_day=Decimal("1.50"))
    assert plan([need()], {"1": [offer()]}, [door()], wishes).waiting == usd("3.00")


def test_the_search_stops_by_the_clock_it_is_given() -> None:
    """A clock that stands still gives the whole front; one that runs out at once leaves its end unproven."""
    offers = {"1": [offer(), offer("stonegarth", "S-1", "31.00")]}
    doors = [door(transit_days=(4, 4)), door("stonegarth")]
    wishes = PlanWishes(seconds=1, front=True)
    still = plan([need()], offers, doors, wishes, Clock(10**6))
    stopped = plan([need()], offers, doors, wishes, Clock(2))
    assert [one.proven for one in still.front] == [True, True]
    assert [one.proven for one in stopped.front] == [False]
