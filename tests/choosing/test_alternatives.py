"""Other ways to buy the same needs: each with what it costs more and why, or why it can't be had."""

import re
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.freight import Freight
from sourcing.basics.plan import Alternative, Plan, PlanWishes
from sourcing.basics.value import changed
from sourcing.choosing.alternatives import _soonest
from tests.builders import door, flat, lead, offer, usd
from tests.choosing.planned import plan_of
from tests.choosing.random_trials import random_trial
from tests.choosing.small import THURSDAY, SilentOnThursday, need, plan

LINE_BY_LINE = "cheapest price line by line"
NOT_AS_ASKED = "it does not hold to what was asked of the plan (suppliers, days, stock, what comes together)"
PART = re.compile(r"(?:: |, )([a-z -]+) (-?[\d.]+) instead of (-?[\d.]+)")


def beside(of: Plan) -> dict[str, Alternative]:
    """The alternatives by name."""
    return {one.name: one for one in of.alternatives}


def two_parts(stonegarth: str = "12.00", larkmoor: str = "10.00") -> Plan:
    """Stonegarth has the first for 10.00, Larkmoor for 12.00; the second as told. Freight 10.00 and 11.00."""
    offers = {
        "1": [offer("stonegarth", "S-1", "10.00"), offer("larkmoor", "L-1", "12.00")],
        "2": [offer("stonegarth", "S-2", stonegarth), offer("larkmoor", "L-2", larkmoor)],
    }
    return plan([need("1"), need("2")], offers, [door("stonegarth"), door("larkmoor", freight=flat("11.00"))])


def test_each_has_its_total_its_day_and_what_it_costs_more() -> None:
    """The plan is Stonegarth alone, 22.00 + 10.00; line by line 20.00 + 21.00; Larkmoor alone 22.00 + 11.00."""
    held = two_parts()
    told = beside(held)
    assert held.total == usd("32.00")
    line = told[LINE_BY_LINE]
    assert (line.total, line.more, line.latest) == (usd("41.00"), usd("9.00"), THURSDAY)
    assert line.why == (
        "9.00 USD more: goods 20.00 instead of 22.00, freight 21.00 instead of 10.00; 2 orders (Larkmoor, Stonegarth)"
    )
    alone = told["everything from Larkmoor"]
    assert (alone.total, alone.more) == (usd("33.00"), usd("1.00"))
    assert alone.why == "1.00 USD more: freight 11.00 instead of 10.00; 1 order (Larkmoor)"


def test_the_plan_itself_is_said_so() -> None:
    """Everything from Stonegarth is the plan itself."""
    same = beside(two_parts())["everything from Stonegarth"]
    assert (same.more, same.why) == (usd("0.00"), "it is this plan")


@pytest.mark.parametrize("seed", range(80))
def test_what_is_named_sums_to_the_difference(seed: int) -> None:
    """Every charge that differs is named with both sums, and nothing else makes the difference."""
    trial = random_trial(seed)
    for one in plan_of(trial).alternatives:
        if one.name.startswith("all of it"):  # it fills more needs than the plan, so it is not compared with it
            assert one.more is None
            continue
        assert (one.total is None) == (one.more is None)
        if one.more is not None:
            parts = PART.findall(one.why)
            named = sum((Decimal(mine) - Decimal(plans) for _, mine, plans in parts), Decimal(0))
            assert named == one.more.amount, one.why
            assert all(mine != plans for _, mine, plans in parts)


def test_suppliers_who_could_do_it_alone_stand_cheapest_first_and_five_at_most() -> None:
    """Seven could; an eighth lacks one part."""
    who = ["alsted", "bramhall", "corrig", "dunlow", "esker", "fernley", "garrick"]
    offers = {
        label: [offer(one, f"{one}-{label}", f"{20 - at}.00") for at, one in enumerate(who)] for label in ("1", "2")
    }
    offers["1"].append(offer("harlow", "H-1", "1.00"))
    held = plan([need("1"), need("2")], offers, [door(one) for one in [*who, "harlow"]])
    alone = [one.name for one in held.alternatives if one.name.startswith("everything")]
    assert alone == [f"everything from {one.title()}" for one in reversed(who[2:])]


def test_a_supplier_no_best_plan_could_hold_is_still_an_alternative() -> None:
    """99.00 is taken out before solving; what buying there would cost is told all the same."""
    offers = {"1": [offer("larkmoor", "L-1", "10.00"), offer("stonegarth", "S-1", "99.00")]}
    held = plan([need()], offers, [door("larkmoor"), door("stonegarth")])
    assert beside(held)["everything from Stonegarth"].more == usd("89.00")


def test_what_can_not_be_had_says_why_in_the_suppliers_words() -> None:
    """Larkmoor takes no order below 50.00; of Pellbrook nobody knows the freight."""
    offers = {
        "1": [offer("larkmoor", "L-1", "9.00"), offer("pellbrook", "P-1", "9.50"), offer("stonegarth", "S-1", "10.00")]
    }
    doors = [door("larkmoor", minimum_order=Decimal(50)), door("pellbrook", freight=Freight(rule="asked"))]
    held = plan([need()], offers, [*doors, door("stonegarth")], PlanWishes(more_than_needed="never"))
    told = beside(held)
    assert told[LINE_BY_LINE].why == "Larkmoor takes no order below 50 USD; this one has 9.00"
    assert told["everything from Larkmoor"] == changed(told[LINE_BY_LINE], name="everything from Larkmoor")
    assert "freight" in told["everything from Pellbrook"].why.lower()
    impossible = [one for one in held.alternatives if one.total is None]
    assert len(impossible) == 3 and all((one.more, one.latest) == (None, None) for one in impossible)
    assert [one.name for one in held.alternatives][1] == "everything from Stonegarth", "what can be had stands first"


def test_what_does_not_hold_to_what_was_asked_is_no_alternative() -> None:
    """One supplier at most: line by line would be two."""
    offers = {
        "1": [offer("stonegarth", "S-1", "10.00"), offer("larkmoor", "L-1", "12.00")],
        "2": [offer("stonegarth", "S-2", "12.00"), offer("larkmoor", "L-2", "10.00")],
    }
    doors = [door("stonegarth"), door("larkmoor")]
    held = plan([need("1"), need("2")], offers, doors, PlanWishes(most_suppliers=1))
    assert beside(held)[LINE_BY_LINE] == Alternative(name=LINE_BY_LINE, total=None, latest=None, why=NOT_AS_ASKED)
    assert beside(held)["everything from Stonegarth"].total is not None


def test_the_soonest_is_named_where_the_plan_is_not_it() -> None:
    """Tavishollow's second part is here on Wednesday, but the first comes on Thursday from anybody."""
    offers = {
        "1": [offer("stonegarth", "S-1")],
        "2": [
            offer("stonegarth", "S-2", stock=0, lead_time=lead("5 days", 5, 5)),
            offer("stonegarth", "S-3", "13.00"),
            offer("tavishollow", "T-2", "12.00"),
        ],
    }
    doors = [door("stonegarth"), door("tavishollow", transit_days=(1, 1))]
    held = plan([need("1"), need("2")], offers, doors)
    soonest = beside(held)["soonest"]
    assert (soonest.total, soonest.latest, soonest.more) == (usd("33.00"), THURSDAY, usd("3.00"))
    assert "everything from Tavishollow" not in beside(held), "he does not sell the first part"
    quick = plan([need("1"), need("2")], {**offers, "2": offers["2"][1:]}, doors)
    assert quick.latest == THURSDAY and beside(quick)["soonest"].why == "it is this plan"


def test_a_soonest_day_on_which_nothing_can_be_had_is_passed_over() -> None:
    """Wednesday's supplier takes no order so small: the soonest is Thursday's."""
    offers = {
        "1": [
            offer("stonegarth", "S-1", "5.00", stock=0, lead_time=lead("5 days", 5, 5)),
            offer("larkmoor", "L-1"),
            offer("tavishollow", "T-1"),
        ]
    }
    doors = [door("stonegarth"), door("larkmoor"), door("tavishollow", transit_days=(1, 1), minimum_order=Decimal(500))]
    held = plan([need()], offers, doors, PlanWishes(more_than_needed="never"))
    assert beside(held)["soonest"].latest == THURSDAY


def test_line_by_line_fills_a_need_that_may_be_split_in_one_piece() -> None:
    """Three at 8.00 are there and four are needed: line by line buys four at 9.00, not the three."""
    offers = {"1": [offer("larkmoor", "L-1", "8.00", stock=3), offer("larkmoor", "L-2", "9.00")]}
    held = plan([need(quantity=4, may_split=True)], offers, [door()], PlanWishes(in_stock_only=True))
    assert (held.total, beside(held)[LINE_BY_LINE].total) == (usd("43.00"), usd("46.00"))


def test_a_day_that_was_not_searched_to_its_end_is_not_passed_over_for_a_later() -> None:
    """Friday's plan is not called the soonest where Thursday may have one."""
    search: Any = SilentOnThursday()
    assert _soonest(search, search.found(date(2026, 1, 30))) is None


def test_less_than_the_plan_where_the_plan_is_asked_to_be_soon() -> None:
    """The soonest plan costs 25.00; cheapest line by line is 5.00 less."""
    offers = {"1": [offer("stonegarth", "S-1", "10.00"), offer("tavishollow", "T-1", "15.00")]}
    doors = [door("stonegarth"), door("tavishollow", transit_days=(1, 1))]
    told = beside(plan([need()], offers, doors, PlanWishes(objective="date")))
    assert told[LINE_BY_LINE].more == usd("-5.00")
    assert told[LINE_BY_LINE].why == "5.00 USD less: goods 10.00 instead of 15.00; 1 order (Stonegarth)"
